#pragma once

// Bad job files for tests. A "@" in the text marks the place where the problem is; it is taken out
// before the text is read.

#include <catch2/catch.hpp>
#include <string>

#include "engine/job/read.h"

namespace complaint {

inline const std::string pictures =
    "<pictures><picture id=\"dune\" width=\"10\" height=\"8\"/>"
    "<picture id=\"pier\" width=\"10\" height=\"8\"/></pictures>\n";
inline const std::string layers = "<layers><layer/><layer/></layers>\n";
inline const std::string arrange =
    "<arrange><row id=\"all\"><opening picture=\"dune\"/><gap id=\"g1\"/>"
    "<opening picture=\"pier\"/></row></arrange>\n";

inline std::string job(const std::string& parts) {
  return "<job version=\"1\" unit=\"in\">\n" + parts + "</job>\n";
}

struct Marked {
  std::string text;
  mullion::Place place;
};

// Counts line feeds and the bytes that begin a character.
inline Marked unmark(const std::string& text) {
  const std::size_t mark = text.find('@');
  REQUIRE(mark != std::string::npos);
  Marked out{text.substr(0, mark) + text.substr(mark + 1), {1, 1}};
  for (const char c : text.substr(0, mark)) {
    const bool begins_character = (static_cast<unsigned char>(c) & 0xC0) != 0x80;
    if (begins_character) ++out.place.column;
    if (c == '\n') out.place = {out.place.line + 1, 1};
  }
  return out;
}

// The one problem of a bad job, with its code, place and message.
inline void expect(const std::string& marked, const std::string& code, const std::string& message) {
  INFO(marked);
  const Marked bad = unmark(marked);
  const auto job = mullion::parse_job(bad.text, "bad.xml");
  REQUIRE_FALSE(job);
  for (const auto& problem : job.error()) INFO(to_string(problem));
  REQUIRE(job.error().size() == 1);
  const mullion::Problem& problem = job.error().front();
  CHECK(problem.code == code);
  CHECK(problem.message == message);
  CHECK(problem.place.line == bad.place.line);
  CHECK(problem.place.column == bad.place.column);
  CHECK(problem.file == "bad.xml");
  CHECK(problem.severity == mullion::Severity::error);
}

}  // namespace complaint
