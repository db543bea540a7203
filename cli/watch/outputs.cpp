#include "cli/watch/outputs.h"

#include "cli/verb.h"
#include "cli/watch/child.h"

namespace mullion::cli::watch {
namespace {

using Words = std::vector<std::string>;

void add_option(Words& words, const char* option, const std::string& value) {
  if (!value.empty()) words.insert(words.end(), {option, value});
}

// Paths that begin with a dash are no options.
std::string as_path(const std::string& path) {
  return path.starts_with('-') ? "./" + path : path;
}

}  // namespace

std::vector<Output> outputs_for(const Wishes& wishes) {
  const std::string job = as_path(wishes.job);
  std::vector<Output> outputs;
  const auto add = [&](const char* label, const char* name, const char* verb) -> Words& {
    const std::string file = as_path(wishes.folder) + "/" + name;
    outputs.push_back({label, name, {verb, job, "--output", file}});
    return outputs.back().words;
  };
  for (const auto& [label, name] : {std::pair("Page", "proof.html"), {"Proof", "proof.pdf"}}) {
    Words& words = add(label, name, "proof");
    add_option(words, "--shop", wishes.shop);
    add_option(words, "--prices", wishes.prices);
  }
  add_option(add("Template", "template.pdf", "template"), "--paper", wishes.paper);
  add_option(add("Cuts", "cuts.pdf", "cuts"), "--cutter", wishes.cutter);
  for (Output& output : outputs) add_option(output.words, "--language", wishes.language);
  return outputs;
}

Made make(const std::vector<Output>& outputs, const Wishes& wishes) {
  Words check{"check", as_path(wishes.job)};
  add_option(check, "--cutter", wishes.cutter);
  const Ended checked = run_again(check);
  Made made{checked.errors, {}};
  for (const Output& output : outputs) {
    if (checked.status == success) {
      const Ended ended = run_again(output.words);
      if (ended.status == success) continue;
      made.problems += ended.errors;
    }
    made.failed.push_back(output.label);
  }
  return made;
}

}  // namespace mullion::cli::watch
