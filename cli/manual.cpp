#include <memory>

#include "cli/load.h"
#include "cli/man_page.h"
#include "cli/verb.h"
#include "engine/job/reference/reference.h"

namespace mullion::cli {

void add_manual(CLI::App& app, Action& action) {
  CLI::App* verb = app.add_subcommand("manual", "Print what there is to read about the program");
  verb->require_subcommand(1);
  auto output = std::make_shared<std::string>("-");
  const auto add = [&](const char* name, const char* what,
                       const std::function<std::string()>& write) {
    CLI::App* page = verb->add_subcommand(name, what);
    page->add_option("-o,--output", *output, "The file to write; the terminal where not given");
    page->callback([&action, output, write] {
      action = [output, write] { return write_output(*output, write()); };
    });
  };
  add("job-file", "Every word of the job file, as Markdown", job_file_reference);
  add("man", "The manual page mullion(1), for man",
      [&app] { return man_page(command_tree(app), app.get_footer()); });
}

}  // namespace mullion::cli
