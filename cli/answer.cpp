#include "cli/answer.h"

#include "engine/file/file.h"

namespace mullion::cli {

void Answer::add_option(const Verb& verb) {
  verb.flag("--json", json_, "Answer with one JSON document on standard output, problems included");
}

int Answer::fail(const Problems& problems) const {
  if (!json_) return report(problems);
  const int status = status_of(problems);
  const int written = write_output("-", outcome_json(verb_, {status, problems}));
  return written == success ? status : written;
}

int Answer::fail_job(std::string code, std::string message) const {
  return fail(Problem{Severity::error, std::move(code), std::move(message), {}, ""});
}

int Answer::save(const std::string& path, std::string_view bytes) const {
  const auto written = replace_file(path, bytes);
  if (written) return success;
  return fail(Problem{Severity::error, "file-write", written.error(), {}, ""});
}

}  // namespace mullion::cli
