#pragma once

// Runs other programs and reads files, for tests.

#include <string>
#include <vector>

namespace oracle {

struct Run {
  int status = -1;  // exit status; 128 + signal where a signal ended it
  std::string out;  // standard output
  std::string err;
};

// The program is looked up in PATH. Waits until it ends.
Run run(const std::vector<std::string>& words);

// Runs the mullion program that was built beside the tests.
Run mullion(std::vector<std::string> words);

std::string read_file(const std::string& path);
void write_file(const std::string& path, const std::string& bytes);

// A new empty folder for one test's files; other test processes have their own of that name. It
// stays after the process only where MULLION_KEEP_SCRATCH is set.
std::string scratch_folder(const std::string& name);

std::string gallery(const std::string& file);  // path of a gallery file
std::string test_data(const std::string& file);

}  // namespace oracle
