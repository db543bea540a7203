#include "tests/engine/layout/jobs.h"

#include <stdexcept>

#include "engine/job/read.h"

namespace test {
namespace {

std::string texts(const mullion::Problems& problems) {
  std::string out;
  for (const mullion::Problem& problem : problems) out += mullion::to_string(problem) + "\n";
  return out;
}

}  // namespace

mullion::Job job_of(const std::string& lines, const std::string& attributes) {
  auto job = mullion::parse_job(
      "<job version=\"1\" reference=\"T-1\" " + attributes + ">" + lines + "</job>", "test.xml");
  if (!job) throw std::runtime_error(texts(job.error()));
  return *job;
}

mullion::Layout laid_out(const std::string& lines, const std::string& attributes) {
  auto layout = mullion::lay_out(job_of(lines, attributes));
  if (!layout) throw std::runtime_error(texts(layout.error()));
  return *layout;
}

std::string notes_of(const std::string& lines, const std::string& attributes) {
  std::string out;
  for (const auto& note :
       mullion::told_notes(laid_out(lines, attributes), job_of(lines, attributes))) {
    out += note.message + "\n";
  }
  return out;
}

std::string conflict_of(const std::string& lines) {
  const auto layout = mullion::lay_out(job_of(lines));
  return layout ? std::string() : texts(layout.error());
}

}  // namespace test
