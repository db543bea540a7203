#include "cli/page/child.h"

#include <fcntl.h>
#include <poll.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <stdexcept>

#include "cli/verb.h"

namespace mullion::cli::page {
namespace {

constexpr std::size_t most_errors = std::size_t{64} * 1024;
constexpr std::size_t most_output = std::size_t{16} * 1024 * 1024;

// The end of a pipe that is read, and the one that a child writes to.
class Pipe {
 public:
  Pipe() {
    if (::pipe2(ends_, O_CLOEXEC) != 0) throw std::runtime_error("cannot make a pipe");
  }
  ~Pipe() {
    ::close(ends_[0]);
    close_writer();
  }
  Pipe(const Pipe&) = delete;
  Pipe& operator=(const Pipe&) = delete;

  int reader() const { return ends_[0]; }
  int writer() const { return ends_[1]; }
  void close_writer() {
    if (ends_[1] >= 0) ::close(ends_[1]);
    ends_[1] = -1;
  }

 private:
  int ends_[2] = {-1, -1};
};

pid_t spawn(std::vector<std::string> words, int output, int errors) {
  words.insert(words.begin(), "mullion");
  std::vector<char*> arguments;
  arguments.reserve(words.size() + 1);
  for (std::string& word : words) arguments.push_back(word.data());
  arguments.push_back(nullptr);

  posix_spawn_file_actions_t files;
  posix_spawn_file_actions_init(&files);
  posix_spawn_file_actions_addopen(&files, STDIN_FILENO, "/dev/null", O_RDONLY, 0);
  posix_spawn_file_actions_adddup2(&files, output, STDOUT_FILENO);
  posix_spawn_file_actions_adddup2(&files, errors, STDERR_FILENO);
  pid_t child = -1;
  const int wrong =
      posix_spawn(&child, "/proc/self/exe", &files, nullptr, arguments.data(), environ);
  posix_spawn_file_actions_destroy(&files);
  return wrong == 0 ? child : -1;
}

// False at the end.
bool read_some(int from, std::string& to, std::size_t most) {
  char buffer[4096];
  const ssize_t got = ::read(from, buffer, sizeof buffer);
  if (got < 0 && errno == EINTR) return true;
  if (got <= 0) return false;
  to.append(buffer, std::min(static_cast<std::size_t>(got), most - to.size()));
  return true;
}

void tell_lines(const std::string& text, std::size_t& told,
                const std::function<void(std::string_view)>& hears) {
  for (std::size_t end; hears && (end = text.find('\n', told)) != text.npos; told = end + 1) {
    hears(std::string_view(text).substr(told, end - told));
  }
}

}  // namespace

Ended run_again(const std::vector<std::string>& words, Halt& halt,
                const std::function<void(std::string_view)>& hears) {
  Pipe output, errors;
  const pid_t child = spawn(words, output.writer(), errors.writer());
  if (child < 0) throw std::runtime_error("cannot start another run of this program");
  halt.began(child);
  output.close_writer();
  errors.close_writer();
  Ended ended;
  std::size_t told = 0;
  std::array<pollfd, 2> ends{{{output.reader(), POLLIN, 0}, {errors.reader(), POLLIN, 0}}};
  while (ends[0].fd >= 0 || ends[1].fd >= 0) {
    if (::poll(ends.data(), ends.size(), -1) < 0 && errno != EINTR) break;
    if (ends[0].revents != 0 && !read_some(ends[0].fd, ended.output, most_output)) ends[0].fd = -1;
    if (ends[1].revents != 0 && !read_some(ends[1].fd, ended.errors, most_errors)) ends[1].fd = -1;
    tell_lines(ended.errors, told, hears);
    for (pollfd& one : ends) one.revents = 0;
  }
  const int status = halt.reap();
  ended.status = WIFEXITED(status) ? WEXITSTATUS(status) : failure;
  return ended;
}

}  // namespace mullion::cli::page
