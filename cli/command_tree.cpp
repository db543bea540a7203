#include "cli/command_tree.h"

namespace mullion::cli {
namespace {

void gather(const Command& command, std::vector<const Command*>& out) {
  out.push_back(&command);
  for (const Command& verb : command.verbs) gather(verb, out);
}

}  // namespace

std::string value_of(const Parameter& parameter) {
  if (parameter.names.front().front() != '-') return parameter.names.front();
  switch (parameter.takes) {
    case Takes::nothing:
      return "";
    case Takes::word:
      return "WORD";
    case Takes::number:
      return "NUMBER";
    case Takes::length:
      return "LENGTH";
    case Takes::size:
      return "SIZE";
    case Takes::name:
      return "NAME";
    case Takes::job_file:
    case Takes::file:
      return parameter.words.empty() ? "FILE" : "NAME|FILE";
  }
  return "";
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
