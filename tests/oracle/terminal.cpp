#include "tests/oracle/terminal.h"

#include <pty.h>
#include <sys/wait.h>
#include <unistd.h>

#include <stdexcept>

namespace oracle {

Run run_on_terminal(const std::vector<std::string>& words, const std::string& typed) {
  std::vector<char*> arguments;
  for (const std::string& word : words) arguments.push_back(const_cast<char*>(word.c_str()));
  arguments.push_back(nullptr);

  int terminal = -1;
  const pid_t child = ::forkpty(&terminal, nullptr, nullptr, nullptr);
  if (child < 0) throw std::runtime_error("cannot open a terminal");
  if (child == 0) {
    ::execvp(arguments[0], arguments.data());
    ::_exit(127);
  }
  const auto sent = ::write(terminal, typed.data(), typed.size());
  Run result;
  if (sent != static_cast<ssize_t>(typed.size())) throw std::runtime_error("cannot type");
  char buffer[4096];
  for (ssize_t got = 0; (got = ::read(terminal, buffer, sizeof buffer)) > 0;) {
    result.out.append(buffer, static_cast<std::size_t>(got));
  }
  ::close(terminal);
  int status = 0;
  ::waitpid(child, &status, 0);
  result.status = WIFSIGNALED(status) ? 128 + WTERMSIG(status) : WEXITSTATUS(status);
  return result;
}

}  // namespace oracle
