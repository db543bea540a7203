#include "cli/page/browser.h"

#include <fcntl.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cerrno>
#include <thread>

namespace mullion::cli::page {

bool show_in_browser(const std::string& address) {
  std::string program = "xdg-open", words = address;
  char* arguments[] = {program.data(), words.data(), nullptr};
  posix_spawn_file_actions_t files;
  posix_spawn_file_actions_init(&files);
  posix_spawn_file_actions_addopen(&files, STDIN_FILENO, "/dev/null", O_RDONLY, 0);
  posix_spawn_file_actions_addopen(&files, STDOUT_FILENO, "/dev/null", O_WRONLY, 0);
  posix_spawn_file_actions_addopen(&files, STDERR_FILENO, "/dev/null", O_WRONLY, 0);
  pid_t child = -1;
  const int wrong = posix_spawnp(&child, program.c_str(), &files, nullptr, arguments, environ);
  posix_spawn_file_actions_destroy(&files);
  if (wrong != 0) return false;
  std::thread([child] {
    while (::waitpid(child, nullptr, 0) < 0 && errno == EINTR) continue;
  }).detach();
  return true;
}

}  // namespace mullion::cli::page
