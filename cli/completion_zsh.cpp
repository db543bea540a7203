#include "cli/completion.h"

namespace mullion::cli::zsh {
namespace {

// Within single quotes, and within the brackets of _arguments.
std::string quoted(const std::string& text, const std::string& special) {
  std::string out;
  for (const char c : text) {
    if (c == '\'') {
      out += "'\\''";
      continue;
    }
    if (special.find(c) != std::string::npos) out += '\\';
    out += c;
  }
  return out;
}

std::string function_of(const Command& command) {
  return "_mullion" + (command.path.empty() ? "" : "_" + joined(command.path, "_"));
}

std::string action(const Parameter& parameter) {
  const std::string words = "(" + joined(parameter.words, " ") + ")";
  switch (parameter.takes) {
    case Takes::job_file:
      return "_files -g \"*.xml(-.)\"";
    case Takes::file:
      if (parameter.words.empty()) return "_files";
      return "_alternative \"words:name:" + words + "\" \"files:file:_files\"";
    default:
      return parameter.words.empty() ? " " : words;
  }
}

std::string line(const std::string& text) {
  return " \\\n    '" + text + "'";
}

std::string option_lines(const Parameter& option) {
  std::string out;
  for (const std::string& name : option.names) {
    std::string spec = option.repeated ? "*" : "(" + joined(option.names, " ") + ")";
    spec += name;
    if (option.takes != Takes::nothing && name.rfind("--", 0) == 0) spec += "=";
    spec += "[" + quoted(option.text, "[]\\") + "]";
    if (option.takes != Takes::nothing) spec += ":" + value_of(option) + ":" + action(option);
    out += line(spec);
  }
  return out;
}

std::string function_text(const Command& command) {
  std::string out = "\n" + function_of(command) + "() {\n";
  if (!command.verbs.empty()) out += "  local curcontext=$curcontext state line\n";
  out += "  _arguments -C";
  for (const Parameter& option : command.options) out += option_lines(option);
  if (command.verbs.empty()) {
    for (const Parameter& argument : command.arguments) {
      out += line((argument.repeated ? "*:" : ":") + value_of(argument) + ":" + action(argument));
    }
    return out + "\n}\n";
  }
  out += line("1:verb:->verb") + line("*::rest:->rest") + "\n  case $state in\n    verb)\n";
  out += "      local -a verbs=(";
  for (const Command& verb : command.verbs) {
    out += "\n        '" + verb.path.back() + ":" + quoted(verb.text, ":\\") + "'";
  }
  out += ")\n      _describe verb verbs ;;\n    rest)\n      case $line[1] in\n";
  for (const Command& verb : command.verbs) {
    out += "        " + verb.path.back() + ") " + function_of(verb) + " ;;\n";
  }
  return out + "      esac ;;\n  esac\n}\n";
}

}  // namespace

std::string completion(const Command& program) {
  std::string out = "#compdef mullion\n# Written by `mullion completion zsh`.\n";
  for (const Command* command : all_commands(program)) out += function_text(*command);
  return out +
         "\nif [[ $funcstack[1] == _mullion ]]; then\n  _mullion \"$@\"\nelse\n"
         "  compdef _mullion mullion\nfi\n";
}

}  // namespace mullion::cli::zsh
