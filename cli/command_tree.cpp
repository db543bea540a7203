#include "cli/command_tree.h"

#include <algorithm>
#include <set>
#include <sstream>

#include "engine/cuts/cutter/profile.h"
#include "render/paper/sheet_size.h"

namespace mullion::cli {
namespace {

// What an option of text takes is known by its name; a file where it does not stand here.
Takes kind_of(const std::string& name) {
  static const std::set<std::string> lengths = {
      "--unprintable", "--kerf",      "--gap",  "--border",   "--trim",   "--longest-cut",
      "--line",        "--near-end",  "--mark", "--far-end",  "--corner", "--farthest-stop",
      "--thickness",   "--across",    "--down", "--falling",  "--rising", "--keep-shorter",
      "--keep-longer", "--thickness", "--face", "--increment"};
  if (lengths.count(name)) return Takes::length;
  if (name == "--name" || name == "--glazing") return Takes::name;
  if (name == "JOB" || name == "BEFORE" || name == "AFTER") return Takes::job_file;
  if (name == "--paper") return Takes::word;
  return Takes::file;
}

std::vector<std::string> known_words(const std::string& name) {
  std::vector<std::string> out;
  if (name == "--paper") {
    out.push_back("board");
    for (const paper::SheetSize& size : paper::sheet_sizes()) out.push_back(size.name);
  } else if (name == "--cutter" || name == "CUTTER") {
    for (const CutterProfile& cutter : generic_cutters()) out.push_back(cutter.id);
  }
  return out;
}

// The words of a check for membership, which CLI11 tells as "TEXT:{in,mm}".
std::vector<std::string> words_of_check(const std::string& type) {
  const std::size_t from = type.find('{'), end = type.find('}');
  std::vector<std::string> out;
  if (from == std::string::npos || end == std::string::npos) return out;
  std::istringstream words(type.substr(from + 1, end - from - 1));
  for (std::string word; std::getline(words, word, ',');) out.push_back(word);
  return out;
}

std::string value_of(const Parameter& parameter) {
  if (!parameter.names.empty() && parameter.names.front().front() != '-') {
    return parameter.names.front();
  }
  switch (parameter.takes) {
    case Takes::nothing:
      return "";
    case Takes::word:
      return "WORD";
    case Takes::number:
      return "NUMBER";
    case Takes::length:
      return "LENGTH";
    case Takes::name:
      return "NAME";
    case Takes::job_file:
    case Takes::file:
      return parameter.words.empty() ? "FILE" : "NAME|FILE";
  }
  return "";
}

Parameter parameter_of(const CLI::Option& option) {
  Parameter out;
  out.text = option.get_description();
  for (const std::string& name : option.get_snames()) out.names.push_back("-" + name);
  for (const std::string& name : option.get_lnames()) out.names.push_back("--" + name);
  if (out.names.empty()) out.names.push_back(option.get_name(true));
  out.required = option.get_required();
  if (option.get_items_expected_max() != 0) {  // 0: a flag
    const std::string type = option.get_type_name();
    const std::string& name = out.names.back();
    out.repeated = option.get_expected_max() > 1;
    out.words = words_of_check(type);
    if (!out.words.empty()) {
      out.takes = Takes::word;
    } else if (type.rfind("TEXT", 0) == 0 || type.empty()) {
      out.takes = kind_of(name);
      out.words = known_words(name);
    } else {
      out.takes = Takes::number;
    }
  }
  out.value = value_of(out);
  return out;
}

Command describe(const CLI::App& app, const std::vector<std::string>& path) {
  Command out{path, app.get_description(), {}, {}, {}};
  for (const CLI::Option* option : app.get_options({})) {
    if (option->get_group().empty()) continue;  // CLI11 hides what has no group
    (option->nonpositional() ? out.options : out.arguments).push_back(parameter_of(*option));
  }
  for (const CLI::App* verb : app.get_subcommands({})) {
    std::vector<std::string> below = path;
    below.push_back(verb->get_name());
    out.verbs.push_back(describe(*verb, below));
  }
  return out;
}

void gather(const Command& command, std::vector<const Command*>& out) {
  out.push_back(&command);
  for (const Command& verb : command.verbs) gather(verb, out);
}

}  // namespace

Command command_tree(const CLI::App& app) {
  return describe(app, {});
}

std::vector<const Command*> all_commands(const Command& root) {
  std::vector<const Command*> out;
  gather(root, out);
  return out;
}

std::string joined(const std::vector<std::string>& words, const std::string& between) {
  std::string out;
  for (const std::string& word : words) out += (out.empty() ? "" : between) + word;
  return out;
}

}  // namespace mullion::cli
