#include "cli/completion.h"

#include "cli/load.h"
#include "cli/verb.h"

namespace mullion::cli {

void add_completion(CommandLine& program) {
  const Verb verb = program.verb("completion",
                                 "Print the script by which a shell completes the verbs, "
                                 "options and files of mullion");
  const auto add = [&](const char* shell, const char* use, std::string (*write)(const Command&)) {
    verb.verb(shell, use).runs([&program, write] {
      return write_output("-", write(program.tree()));
    });
  };
  add("bash", "For bash: source <(mullion completion bash)", bash::completion);
  add("zsh", "For zsh: save it as _mullion in a folder of $fpath", zsh::completion);
  add("fish", "For fish: mullion completion fish | source", fish::completion);
}

}  // namespace mullion::cli
