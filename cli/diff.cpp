#include "engine/diff/diff.h"

#include <cstdio>
#include <memory>

#include "cli/load.h"
#include "cli/verb.h"

namespace mullion::cli {
namespace {

int tell_differences(const std::string& before, const std::string& after) {
  const Result<Loaded> a = load(before);
  if (!a) return report(a.error());
  const Result<Loaded> b = load(after);
  if (!b) return report(b.error());
  std::string out;
  for (const std::string& sentence : differences({a->job, a->layout}, {b->job, b->layout})) {
    out += sentence + "\n";
  }
  return write_output("-", out.empty() ? "nothing changed\n" : out);
}

}  // namespace

void add_diff(CLI::App& app, Action& action) {
  CLI::App* verb =
      app.add_subcommand("diff", "Say in words what changed from one version of a job to another");
  auto before = std::make_shared<std::string>(), after = std::make_shared<std::string>();
  verb->add_option("BEFORE", *before, "The earlier job file")->required();
  verb->add_option("AFTER", *after, "The later job file")->required();
  verb->callback([&action, before, after] {
    action = [before, after] { return tell_differences(*before, *after); };
  });
}

}  // namespace mullion::cli
