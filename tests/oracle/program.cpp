#include "tests/oracle/program.h"

#include <fcntl.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <stdexcept>

extern char** environ;

namespace oracle {
namespace {

// A folder of this process alone, so that tests may run side by side. It goes when the process
// ends, unless MULLION_KEEP_SCRATCH is set.
struct OwnFolder {
  const std::string path = std::string(MULLION_SCRATCH) + "/" + std::to_string(getpid());

  OwnFolder() {
    std::filesystem::remove_all(path);
    std::filesystem::create_directories(path);
  }
  OwnFolder(const OwnFolder&) = delete;
  OwnFolder& operator=(const OwnFolder&) = delete;
  ~OwnFolder() {
    std::error_code ignored;
    if (std::getenv("MULLION_KEEP_SCRATCH") == nullptr) {
      std::filesystem::remove_all(path, ignored);
    }
  }
};

const std::string& own_folder() {
  static const OwnFolder folder;
  return folder.path;
}

int wait_for(pid_t child) {
  int status = 0;
  waitpid(child, &status, 0);
  if (WIFSIGNALED(status)) return 128 + WTERMSIG(status);
  return WEXITSTATUS(status);
}

}  // namespace

Run run(const std::vector<std::string>& words) {
  const std::string out = own_folder() + "/run.out", err = own_folder() + "/run.err";

  std::vector<char*> arguments;
  for (const std::string& word : words) arguments.push_back(const_cast<char*>(word.c_str()));
  arguments.push_back(nullptr);

  posix_spawn_file_actions_t actions;
  posix_spawn_file_actions_init(&actions);
  posix_spawn_file_actions_addopen(&actions, 0, "/dev/null", O_RDONLY, 0);
  posix_spawn_file_actions_addopen(&actions, 1, out.c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0600);
  posix_spawn_file_actions_addopen(&actions, 2, err.c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0600);
  pid_t child = 0;
  const int failure =
      posix_spawnp(&child, words.at(0).c_str(), &actions, nullptr, arguments.data(), environ);
  posix_spawn_file_actions_destroy(&actions);
  if (failure != 0) throw std::runtime_error("cannot run " + words.at(0));

  Run result;
  result.status = wait_for(child);
  result.out = read_file(out);
  result.err = read_file(err);
  return result;
}

Run mullion(std::vector<std::string> words) {
  words.insert(words.begin(), MULLION_PROGRAM);
  return run(words);
}

std::string read_file(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  if (!in) throw std::runtime_error("cannot read " + path);
  std::ostringstream bytes;
  bytes << in.rdbuf();
  return bytes.str();
}

void write_file(const std::string& path, const std::string& bytes) {
  std::ofstream out(path, std::ios::binary);
  out << bytes;
  if (!out) throw std::runtime_error("cannot write " + path);
}

std::string scratch_folder(const std::string& name) {
  const std::string path = own_folder() + "/" + name;
  std::filesystem::remove_all(path);
  std::filesystem::create_directories(path);
  return path;
}

std::string gallery(const std::string& file) {
  return std::string(MULLION_GALLERY) + "/" + file;
}
std::string test_data(const std::string& file) {
  return std::string(MULLION_TEST_DATA) + "/" + file;
}

}  // namespace oracle
