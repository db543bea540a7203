#include "cli/report.h"

#include <unistd.h>

#include <algorithm>
#include <cstdio>
#include <map>
#include <set>

#include "cli/excerpt.h"
#include "cli/filled.h"
#include "engine/explain/explain.h"
#include "engine/file/file.h"

namespace mullion::cli {
namespace {

constexpr std::size_t largest_source = 16u << 20;  // bytes

Ink ink_of(Severity severity) {
  switch (severity) {
    case Severity::error:
      return Ink::error;
    case Severity::warning:
      return Ink::warning;
    case Severity::note:
      return Ink::note;
  }
  return Ink::error;
}

// "file:1:2: error: message [code]", the place strong and the severity in its colour.
std::string headline(const Problem& problem, const Paint& paint) {
  Problem bare = problem;
  bare.file.clear();
  bare.place = {};
  const std::string said = to_string(bare), whole = to_string(problem);
  const std::size_t severity = said.find(':') + 1;
  std::string place = whole.substr(0, whole.size() - said.size());
  if (!place.empty()) place = paint(Ink::strong, printable(place));
  return place + paint(ink_of(problem.severity), said.substr(0, severity)) +
         printable(said.substr(severity)) + "\n";
}

// Source files, each read once.
class Sources {
 public:
  const std::string& text(const std::string& path) {
    const auto [entry, is_new] = texts_.try_emplace(path);
    if (is_new && !path.empty()) entry->second = read_file(path, largest_source).value_or("");
    return entry->second;
  }

 private:
  std::map<std::string, std::string> texts_;
};

void print(const std::string& text) {
  std::fwrite(text.data(), 1, text.size(), stderr);
}

}  // namespace

int status_of(const Problems& problems) {
  int status = success;
  for (const Problem& problem : problems) {
    if (problem.code == "file-read" || problem.code == "file-write") return bad_file;
    if (problem.severity != Severity::error) continue;
    if (problem.code == "usage") {
      status = bad_usage;
    } else if (status == success) {
      status = bad_job;
    }
  }
  return status;
}

int report(const Problems& problems) {
  const Paint paint(wants_colour(STDERR_FILENO));
  Sources sources;
  const Problem* before = nullptr;
  for (const Problem& problem : problems) {
    std::string text = headline(problem, paint);
    const bool shown = before && before->file == problem.file && before->place == problem.place;
    if (problem.place.line > 0 && !shown) {
      text += excerpt(sources.text(problem.file), problem.place, paint, ink_of(problem.severity));
    }
    print(text);
    before = &problem;
  }
  return status_of(problems);
}

void advise(const Problems& problems) {
  constexpr std::size_t column = 26;
  std::set<std::string> told;
  std::string text;
  for (const Problem& problem : problems) {
    const Explanation* entry = explanation_of(problem.code);
    if (entry == nullptr || !told.insert(problem.code).second) continue;
    std::string code = "  " + problem.code;
    code.append(column - std::min(column - 1, code.size()), ' ');
    text += code + filled(entry->advice, code.size()) + "\n";
  }
  if (!text.empty()) print("What to do:\n" + text);
}

int refuse(Exit status, const std::string& message) {
  print(headline({Severity::error, "", message, {}, ""}, Paint(wants_colour(STDERR_FILENO))));
  return status;
}

int bad_option(const char* option, const std::string& why) {
  return refuse(bad_usage, std::string(option) + ": " + why);
}

Problem option_problem(const std::string& option, const std::string& why) {
  return {Severity::error, "usage", option + ": " + why, {}, ""};
}

}  // namespace mullion::cli
