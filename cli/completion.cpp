#include "cli/completion.h"

#include "cli/load.h"
#include "cli/verb.h"

namespace mullion::cli {

void add_completion(CLI::App& app, Action& action) {
  CLI::App* verb = app.add_subcommand("completion",
                                      "Print the script by which a shell completes the verbs, "
                                      "options and files of mullion");
  verb->require_subcommand(1);
  const auto add = [&](const char* shell, const char* use, std::string (*write)(const Command&)) {
    verb->add_subcommand(shell, use)->callback([&app, &action, write] {
      action = [&app, write] { return write_output("-", write(command_tree(app))); };
    });
  };
  add("bash", "For bash: source <(mullion completion bash)", bash_completion);
  add("zsh", "For zsh: save it as _mullion in a folder of $fpath", zsh_completion);
  add("fish", "For fish: mullion completion fish | source", fish_completion);
}

}  // namespace mullion::cli
