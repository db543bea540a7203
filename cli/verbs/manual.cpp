#include <memory>

#include "cli/load.h"
#include "cli/man_page.h"
#include "cli/verb.h"
#include "engine/job/reference/reference.h"

namespace mullion::cli {

void add_manual(CommandLine& program) {
  const Verb verb = program.verb("manual", "Print what there is to read about the program");
  auto output = std::make_shared<std::string>("-");
  const auto add = [&](const char* name, const char* what,
                       const std::function<std::string()>& write) {
    const Verb page = verb.verb(name, what);
    page.option("-o,--output", Takes::file, *output,
                "The file to write; the terminal where not given");
    page.runs([output, write] { return write_output(*output, write()); });
  };
  add("job-file", "Every word of the job file, as Markdown", job_file_reference);
  add("man", "The manual page mullion(1), for man",
      [&program] { return man_page(program.tree(), program.end_of_help()); });
}

}  // namespace mullion::cli
