#pragma once

// The command line: verbs with their arguments and options, what is to be done, and what is wrong
// with the words that were given. command_line.cpp alone sees the library that reads them.
//
//   const Verb verb = program.verb("frames", "List the smallest frame sizes that a job fits");
//   verb.argument("JOB", Takes::job_file, options->job, "The job file").required();
//   verb.option("--most", options->most, "How many sizes to list").between(1, 100).shows_usual();
//   verb.flag("--stock", options->stock, "Only boards of common frame sizes");
//   verb.runs([options] { return list_frames(*options); });
//
// A target keeps the value that it has where its option is not given; it lives as long as the
// command line does. Verb and Option are handles: a copy speaks of the same thing.

#include <cstddef>
#include <functional>
#include <memory>
#include <string>
#include <tl/expected.hpp>
#include <vector>

#include "cli/command_tree.h"

namespace CLI {
class App;
class Option;
}  // namespace CLI

namespace mullion::cli {

// Does the work and returns the exit status.
using Action = std::function<int()>;

// What is wrong with a text, as a sentence; empty where it may stand.
using Fault = std::function<std::string(const std::string&)>;

// An option, or an argument that has no dash.
class Option {
 public:
  static constexpr int any_number = -1;

  Option required(bool is_required = true) const;
  Option needs(const Option& other) const;

  Option among(std::vector<std::string> words) const;  // no others may be given
  Option known(std::vector<std::string> words) const;  // others may be given
  Option between(int least, int most) const;
  Option checked(Fault fault, std::vector<std::string> known_words) const;

  Option times(int least, int most) const;  // values of a list, instead of one or more
  Option one_each_time() const;             // the option is repeated for each value of a list
  Option shows_usual() const;               // --help tells the value that the target has now

 private:
  friend class Verb;
  friend class CommandLine;
  struct Value {
    Takes takes = Takes::nothing;
    std::vector<std::string> words;
    bool repeated = false;
  };
  Option(CLI::Option& option, Value& value) : option_(&option), value_(&value) {}

  CLI::Option* option_;
  Value* value_;
};

class Verb {
 public:
  // A verb below this one. Where there are any, one of them must be given.
  Verb verb(const std::string& name, const std::string& what) const;

  // Names are "JOB" of an argument, "-o,--output" of an option.
  Option argument(const std::string& name, Takes, std::string& to, const std::string& help) const;
  Option argument(const std::string& name, Takes, std::vector<std::string>& to,
                  const std::string& help) const;
  Option option(const std::string& names, Takes, std::string& to, const std::string& help) const;
  Option option(const std::string& names, Takes, std::vector<std::string>& to,
                const std::string& help) const;
  Option option(const std::string& names, Takes, std::function<void(const std::string&)> take,
                const std::string& help) const;
  Option option(const std::string& names, int& to, const std::string& help) const;
  Option option(const std::string& names, std::size_t& to, const std::string& help) const;
  Option option(const std::string& names, double& to, const std::string& help) const;
  Option flag(const std::string& names, bool& to, const std::string& help) const;

  // What --help of this verb ends with, before what it ends with everywhere.
  void ends_with(const std::string& text) const;

  void runs(Action action) const;

 private:
  friend class CommandLine;
  struct Program;
  Verb(CLI::App& app, Program& program) : app_(&app), program_(&program) {}
  Option with(CLI::Option* option, Takes takes) const;

  CLI::App* app_;
  Program* program_;
};

// A command line that cannot be read.
struct WrongUse {
  std::string verb;     // that was called, as far as it can be told; else "usage"
  std::string message;  // with a near name where there is one
};

class CommandLine {
 public:
  struct Texts {
    std::string about, version, end_of_help;
  };
  CommandLine(const std::string& name, Texts texts);
  ~CommandLine();
  CommandLine(const CommandLine&) = delete;
  CommandLine& operator=(const CommandLine&) = delete;

  Verb verb(const std::string& name, const std::string& what);

  bool has_verb(const std::string& name) const;
  Command tree() const;
  const std::string& end_of_help() const { return texts_.end_of_help; }

  // The action of the verb that was given, with all targets set. --help and --version are printed
  // at once, and there is then nothing left to do.
  tl::expected<Action, WrongUse> parse(int argc, const char* const* argv);

 private:
  Texts texts_;
  std::unique_ptr<Verb::Program> program_;
};

}  // namespace mullion::cli
