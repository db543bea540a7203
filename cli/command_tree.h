#pragma once

// The command line as data: the verbs with their options and arguments (CommandLine::tree). What
// shells complete and what the manual page says is written from this.

#include <string>
#include <vector>

namespace mullion::cli {

// What the value of an option or argument is.
enum class Takes { nothing, word, number, length, size, name, job_file, file };

struct Parameter {
  std::vector<std::string> names;  // "-o" and "--output"; "JOB" of an argument
  std::string text;
  Takes takes = Takes::nothing;
  std::vector<std::string> words;  // values that are known
  bool required = false, repeated = false;
};

struct Command {
  std::vector<std::string> path;  // "cutter", "check"; empty of the program itself
  std::string text;
  std::vector<Parameter> options, arguments;
  std::vector<Command> verbs;
};

// What stands for the value in text, such as LENGTH; an argument's own name.
std::string value_of(const Parameter& parameter);

// The command itself and all below it, parents first.
std::vector<const Command*> all_commands(const Command& root);

// The names with this between them.
std::string joined(const std::vector<std::string>& words, const std::string& between);

}  // namespace mullion::cli
