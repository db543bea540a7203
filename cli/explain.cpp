#include "engine/explain/explain.h"

#include <cstdio>
#include <memory>

#include "cli/report.h"
#include "cli/verb.h"

namespace mullion::cli {
namespace {

constexpr std::size_t line_width = 80;

const char* name_of(Severity severity) {
  return severity == Severity::error ? "error" : severity == Severity::warning ? "warning" : "note";
}

// Words filled into lines, each line after the first with `indent` blanks before it.
std::string filled(std::string_view text, std::size_t indent) {
  std::string out;
  std::size_t column = indent;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(' '), text.size());
    const std::string_view word = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    if (column > indent && column + 1 + word.size() > line_width) {
      out += '\n' + std::string(indent, ' ');
      column = indent;
    }
    if (column > indent) {
      out += ' ';
      ++column;
    }
    out += word;
    column += word.size();
  }
  return out;
}

int list_all() {
  for (const Explanation& entry : explanations()) {
    std::printf("%-24s %-8s %s\n", std::string(entry.code).c_str(), name_of(entry.severity),
                std::string(entry.summary).c_str());
  }
  return success;
}

int refuse_unknown(const std::string& code) {
  std::vector<std::string_view> codes;
  for (const Explanation& entry : explanations()) codes.push_back(entry.code);
  const std::string_view near = near_name(code, codes);
  return refuse(bad_usage, "found no code \"" + code + "\"" +
                               (near.empty() ? "; `mullion explain` lists them all"
                                             : "; did you mean " + std::string(near) + "?"));
}

int explain(std::string code) {
  if (code.starts_with('[') && code.ends_with(']')) code = code.substr(1, code.size() - 2);
  if (code.empty()) return list_all();
  const Explanation* entry = explanation_of(code);
  if (entry == nullptr) return refuse_unknown(code);
  std::printf("%s (%s): %s\n\n%s\n\nWhat to do: %s\n", code.c_str(), name_of(entry->severity),
              std::string(entry->summary).c_str(), filled(entry->reason, 0).c_str(),
              filled(entry->advice, 12).c_str());
  return success;
}

}  // namespace

void add_explain(CLI::App& app, Action& action) {
  CLI::App* verb = app.add_subcommand(
      "explain", "Say what a code in a message means, why it matters and what to do");
  auto code = std::make_shared<std::string>();
  verb->add_option("CODE", *code, "Such as check-bar-thin; without one, all are listed");
  verb->callback([&action, code] { action = [code] { return explain(*code); }; });
}

}  // namespace mullion::cli
