#include "tests/engine/layout/languages.h"

#include <catch2/catch.hpp>

#include "tests/oracle/english.h"

namespace test {

using namespace mullion;

namespace {

std::string messages_of(const Problems& problems) {
  std::string out;
  for (const Problem& problem : problems) out += problem.message + "\n";
  return out;
}

}  // namespace

void check_languages(const std::function<Problems(const Locale&)>& told) {
  const Problems english = told({});
  if (english.empty()) return;
  for (const std::string_view language : Locale::languages()) {
    if (language == "en") continue;
    const Problems there = told(Locale::find(language).value());
    INFO(language << "\n" << messages_of(english) << messages_of(there));
    CHECK(there.size() == english.size());
    CHECK(oracle::english_in(messages_of(there)) == std::vector<std::string>{});
  }
}

}  // namespace test
