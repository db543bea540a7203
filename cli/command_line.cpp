#include "cli/command_line.h"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <map>

#include "engine/xml/problem.h"

namespace mullion::cli {

// What CLI11 knows, and beside it what each value is.
struct Verb::Program {
  CLI::App app;
  std::map<const CLI::Option*, Option::Value> values;
  Action action;
};

Option Option::required(bool is_required) const {
  option_->required(is_required);
  return *this;
}

Option Option::needs(const Option& other) const {
  option_->needs(other.option_);
  return *this;
}

Option Option::among(std::vector<std::string> words) const {
  option_->check(CLI::IsMember(words));
  return known(std::move(words));
}

Option Option::known(std::vector<std::string> words) const {
  value_->words = std::move(words);
  return *this;
}

Option Option::between(int least, int most) const {
  option_->check(CLI::Range(least, most));
  return *this;
}

Option Option::checked(Fault fault, std::vector<std::string> known_words) const {
  option_->check(
      CLI::Validator([fault = std::move(fault)](std::string& text) { return fault(text); },
                     "{" + joined(known_words, ",") + "}"));
  return known(std::move(known_words));
}

Option Option::times(int least, int most) const {
  option_->expected(least, most);
  return *this;
}

Option Option::one_each_time() const {
  option_->expected(1)->take_all();
  value_->repeated = true;
  return *this;
}

Option Option::shows_usual() const {
  option_->capture_default_str();
  return *this;
}

Verb Verb::verb(const std::string& name, const std::string& what) const {
  app_->require_subcommand(1);
  return {*app_->add_subcommand(name, what), *program_};
}

Option Verb::with(CLI::Option* option, Takes takes) const {
  Option::Value& value = program_->values[option];
  value.takes = takes;
  return {*option, value};
}

Option Verb::argument(const std::string& name, Takes takes, std::string& to,
                      const std::string& help) const {
  return option(name, takes, to, help);
}

Option Verb::argument(const std::string& name, Takes takes, std::vector<std::string>& to,
                      const std::string& help) const {
  return option(name, takes, to, help);
}

Option Verb::option(const std::string& names, Takes takes, std::string& to,
                    const std::string& help) const {
  return with(app_->add_option(names, to, help), takes);
}

Option Verb::option(const std::string& names, Takes takes, std::vector<std::string>& to,
                    const std::string& help) const {
  return with(app_->add_option(names, to, help), takes);
}

Option Verb::option(const std::string& names, Takes takes,
                    std::function<void(const std::string&)> take, const std::string& help) const {
  return with(app_->add_option_function<std::string>(names, std::move(take), help), takes);
}

Option Verb::option(const std::string& names, int& to, const std::string& help) const {
  return with(app_->add_option(names, to, help), Takes::number);
}

Option Verb::option(const std::string& names, std::size_t& to, const std::string& help) const {
  return with(app_->add_option(names, to, help), Takes::number);
}

Option Verb::option(const std::string& names, double& to, const std::string& help) const {
  return with(app_->add_option(names, to, help), Takes::number);
}

Option Verb::flag(const std::string& names, bool& to, const std::string& help) const {
  return with(app_->add_flag(names, to, help), Takes::nothing);
}

void Verb::ends_with(const std::string& text) const {
  app_->footer(text + "\n" + app_->get_footer());
}

void Verb::runs(Action action) const {
  app_->callback([program = program_, action = std::move(action)] { program->action = action; });
}

namespace {

// What stands where a word is not known.
std::vector<std::string> words_of(const CLI::App& verb) {
  std::vector<std::string> words;
  for (const CLI::Option* option : verb.get_options()) {
    for (const std::string& name : option->get_lnames()) words.push_back("--" + name);
  }
  for (const CLI::App* below : verb.get_subcommands({})) words.push_back(below->get_name());
  return words;
}

std::string message_of(const CLI::App& app, const CLI::ParseError& error) {
  const CLI::App* verb = &app;
  std::string called = app.get_name();
  while (!verb->get_subcommands().empty()) {
    verb = verb->get_subcommands().front();
    called += " " + verb->get_name();
  }
  std::string message = error.what();
  if (const std::vector<std::string> unknown = app.remaining(true); !unknown.empty()) {
    const std::vector<std::string> known = words_of(*verb);
    const std::string_view near = near_name(unknown.front(), {known.begin(), known.end()});
    message = "found \"" + unknown.front() + "\", which " + called + " does not know";
    if (!near.empty()) message += "; did you mean \"" + std::string(near) + "\"?";
  }
  return message + " (see " + called + " --help)";
}

std::string verb_of(const CLI::App& app) {
  const auto verbs = app.get_subcommands();
  return verbs.empty() ? "usage" : verbs.front()->get_name();
}

Parameter parameter_of(const CLI::Option& option) {
  Parameter out;
  out.text = option.get_description();
  for (const std::string& name : option.get_snames()) out.names.push_back("-" + name);
  for (const std::string& name : option.get_lnames()) out.names.push_back("--" + name);
  if (out.names.empty()) out.names.push_back(option.get_name(true));
  out.required = option.get_required();
  out.repeated = option.get_items_expected_max() != 0 && option.get_expected_max() > 1;
  return out;
}

}  // namespace

CommandLine::CommandLine(const std::string& name, Texts texts)
    : texts_(std::move(texts)), program_(new Verb::Program{CLI::App(texts_.about, name), {}, {}}) {
  program_->app.set_version_flag("--version", texts_.version);
  program_->app.footer(texts_.end_of_help);
}

CommandLine::~CommandLine() = default;

Verb CommandLine::verb(const std::string& name, const std::string& what) {
  return Verb(program_->app, *program_).verb(name, what);
}

bool CommandLine::has_verb(const std::string& name) const {
  const auto verbs = program_->app.get_subcommands({});
  return std::any_of(verbs.begin(), verbs.end(),
                     [&](const CLI::App* verb) { return verb->get_name() == name; });
}

Command CommandLine::tree() const {
  const auto describe = [this](const CLI::App& app, std::vector<std::string> path,
                               const auto& again) -> Command {
    Command out{path, app.get_description(), {}, {}, {}};
    for (const CLI::Option* option : app.get_options({})) {
      if (option->get_group().empty()) continue;  // CLI11 hides what has no group
      Parameter parameter = parameter_of(*option);
      if (const auto value = program_->values.find(option); value != program_->values.end()) {
        parameter.takes = value->second.takes;
        parameter.words = value->second.words;
        parameter.repeated |= value->second.repeated;
      }
      (option->nonpositional() ? out.options : out.arguments).push_back(std::move(parameter));
    }
    for (const CLI::App* verb : app.get_subcommands({})) {
      path.push_back(verb->get_name());
      out.verbs.push_back(again(*verb, path, again));
      path.pop_back();
    }
    return out;
  };
  return describe(program_->app, {}, describe);
}

tl::expected<Action, WrongUse> CommandLine::parse(int argc, const char* const* argv) {
  CLI::App& app = program_->app;
  try {
    app.parse(argc, argv);
  } catch (const CLI::ParseError& error) {
    if (error.get_exit_code() != 0) {
      return tl::unexpected(WrongUse{verb_of(app), message_of(app, error)});
    }
    app.exit(error);
    return Action([] { return 0; });
  }
  return program_->action;
}

}  // namespace mullion::cli
