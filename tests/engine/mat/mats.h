#pragma once

// Mats from a few lines of XML.

#include "engine/mat/checks.h"
#include "engine/mat/mat.h"
#include "tests/engine/layout/jobs.h"

namespace test {

struct Built {
  mullion::Job job;
  mullion::Layout layout;
  mullion::Mat mat;

  const mullion::Window& window(int layer, int opening) const;
  mullion::Sides inset(int layer, int opening) const;  // of its back edge in the top mat's
};

const std::string inch_job = R"(unit="in" increment="1/16")";

// Throws std::runtime_error where there is no layout or no mat.
Built built(const std::string& lines, const std::string& attributes = inch_job);

// The problems of a job that has a layout but no mat.
std::string refusal_of(const std::string& lines, const std::string& attributes = inch_job);

// Codes of all findings, each once, with blanks between them.
std::string findings_of(const Built& built);
// The message of the one finding with that code; throws where there is none.
std::string message_of(const Built& built, const std::string& code);

}  // namespace test
