#include "cli/watch/child.h"

#include <fcntl.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <stdexcept>

#include "cli/verb.h"

namespace mullion::cli::watch {
namespace {

constexpr std::size_t most_errors = std::size_t{64} * 1024;

pid_t spawn(std::vector<std::string> words, int errors) {
  words.insert(words.begin(), "mullion");
  std::vector<char*> arguments;
  arguments.reserve(words.size() + 1);
  for (std::string& word : words) arguments.push_back(word.data());
  arguments.push_back(nullptr);

  posix_spawn_file_actions_t files;
  posix_spawn_file_actions_init(&files);
  posix_spawn_file_actions_addopen(&files, STDIN_FILENO, "/dev/null", O_RDONLY, 0);
  posix_spawn_file_actions_addopen(&files, STDOUT_FILENO, "/dev/null", O_WRONLY, 0);
  posix_spawn_file_actions_adddup2(&files, errors, STDERR_FILENO);
  pid_t child = -1;
  const int wrong =
      posix_spawn(&child, "/proc/self/exe", &files, nullptr, arguments.data(), environ);
  posix_spawn_file_actions_destroy(&files);
  return wrong == 0 ? child : -1;
}

std::string read_all(int from) {
  std::string out;
  char buffer[4096];
  for (;;) {
    const ssize_t got = ::read(from, buffer, sizeof buffer);
    if (got < 0 && errno == EINTR) continue;
    if (got <= 0) return out;
    out.append(buffer, std::min(static_cast<std::size_t>(got), most_errors - out.size()));
  }
}

}  // namespace

Ended run_again(const std::vector<std::string>& words) {
  int ends[2];
  if (::pipe2(ends, O_CLOEXEC) != 0) throw std::runtime_error("cannot make a pipe");
  const pid_t child = spawn(words, ends[1]);
  ::close(ends[1]);
  const std::string errors = read_all(ends[0]);
  ::close(ends[0]);
  if (child < 0) throw std::runtime_error("cannot start another run of this program");
  int status = 0;
  while (::waitpid(child, &status, 0) < 0 && errno == EINTR) continue;
  return {WIFEXITED(status) ? WEXITSTATUS(status) : failure, errors};
}

}  // namespace mullion::cli::watch
