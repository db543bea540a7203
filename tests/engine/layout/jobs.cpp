#include "tests/engine/layout/jobs.h"

#include <stdexcept>

#include "engine/job/read.h"
#include "tests/engine/layout/languages.h"

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
  const mullion::Layout layout = laid_out(lines, attributes);
  const mullion::Job job = job_of(lines, attributes);
  check_languages(
      [&](const mullion::Locale& locale) { return mullion::told_notes(layout, job, locale); });
  std::string out;
  for (const auto& note : mullion::told_notes(layout, job)) out += note.message + "\n";
  return out;
}

std::string conflict_of(const std::string& lines) {
  const mullion::Job job = job_of(lines);
  const auto layout = mullion::lay_out(job);
  if (layout) return {};
  check_languages(
      [&](const mullion::Locale& locale) { return mullion::lay_out(job, locale).error(); });
  return texts(layout.error());
}

}  // namespace test
