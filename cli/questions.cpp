#include "cli/questions.h"

#include <unistd.h>

#include <cstdio>
#include <iostream>

#include "cli/terminal.h"

namespace mullion::cli {

bool can_ask() {
  return ::isatty(STDIN_FILENO) == 1 && ::isatty(STDERR_FILENO) == 1;
}

bool ask(const std::string& question, const std::string& usual, const Take& take) {
  while (true) {
    const std::string offered = usual.empty() ? "" : " [" + usual + "]";
    std::fprintf(stderr, "%s%s: ", question.c_str(), offered.c_str());
    std::string answer;
    if (!std::getline(std::cin, answer)) {
      std::fputs("\n", stderr);
      return false;
    }
    const std::string wrong = take(answer.empty() ? usual : answer);
    if (wrong.empty()) return true;
    std::fprintf(stderr, "  %s\n", printable(wrong).c_str());
  }
}

}  // namespace mullion::cli
