#include "cli/completion.h"

namespace mullion::cli::bash {
namespace {

constexpr const char* head = R"(# bash completion for mullion; written by `mullion completion bash`.

_mullion_files() {  # $1: a pattern that names of files end in, such as *.xml; empty for all
  local IFS=$'\n'
  compopt -o filenames 2>/dev/null
  COMPREPLY+=($(compgen -d -- "$cur"))
  if [[ -n $1 ]]; then
    COMPREPLY+=($(compgen -f -X "!$1" -- "$cur"))
  else
    COMPREPLY=($(compgen -f -- "$cur"))
  fi
}

_mullion() {
  local cur=${COMP_WORDS[COMP_CWORD]} before=$((COMP_CWORD - 1)) at=mullion i
  COMPREPLY=()
  if [[ $cur == "=" ]]; then cur=; fi
  if [[ ${COMP_WORDS[before]} == "=" ]]; then ((before--)); fi
  for ((i = 1; i < COMP_CWORD; i++)); do
    case "$at ${COMP_WORDS[i]}" in
)";

constexpr const char* tail = R"(  esac
}

complete -F _mullion mullion
)";

std::string place(const Command& command) {
  return command.path.empty() ? "mullion" : "mullion " + joined(command.path, " ");
}

std::string offer(const std::string& words) {
  return "COMPREPLY+=($(compgen -W '" + words + "' -- \"$cur\"))";
}

std::string values(const Parameter& parameter) {
  std::string out;
  if (parameter.takes == Takes::job_file) out = "_mullion_files '*.xml'";
  if (parameter.takes == Takes::file) out = "_mullion_files ''";
  if (!parameter.words.empty()) {
    out += (out.empty() ? "" : "; ") + offer(joined(parameter.words, " "));
  }
  return out.empty() ? ":" : out;
}

std::string options_with_values(const Command& command) {
  std::string out;
  for (const Parameter& option : command.options) {
    if (option.takes == Takes::nothing) continue;
    for (const std::string& name : option.names) {
      out += "    \"" + place(command) + " " + name + "\") " + values(option) + "; return ;;\n";
    }
  }
  return out;
}

std::string words(const Command& command) {
  std::vector<std::string> options, verbs;
  for (const Parameter& option : command.options) {
    options.insert(options.end(), option.names.begin(), option.names.end());
  }
  for (const Command& verb : command.verbs) verbs.push_back(verb.path.back());
  std::string out = "    \"" + place(command) + "\")\n      if [[ $cur == -* ]]; then\n        " +
                    offer(joined(options, " ")) + "\n      else\n        ";
  if (!verbs.empty()) {
    out += offer(joined(verbs, " "));
  } else {
    out += command.arguments.empty() ? ":" : values(command.arguments.front());
  }
  return out + "\n      fi ;;\n";
}

}  // namespace

std::string completion(const Command& program) {
  const std::vector<const Command*> commands = all_commands(program);
  std::string out = head;
  for (const Command* command : commands) {
    if (command->path.empty()) continue;
    out += "      \"" + place(*command) + "\") at='" + place(*command) + "' ;;\n";
  }
  out += "    esac\n  done\n  case \"$at ${COMP_WORDS[before]}\" in\n";
  for (const Command* command : commands) out += options_with_values(*command);
  out += "  esac\n  case $at in\n";
  for (const Command* command : commands) out += words(*command);
  return out + tail;
}

}  // namespace mullion::cli::bash
