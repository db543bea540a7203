#pragma once

// What is made anew of a job each time it is saved, each by the verb that the framer would type.

#include <string>
#include <vector>

namespace mullion::cli::watch {

struct Output {
  std::string label;  // on the page's tab
  std::string name;   // of the file, such as "proof.html"
  std::vector<std::string> words;
};

struct Wishes {
  std::string job, folder, shop, prices, paper, cutter, language;
};

std::vector<Output> outputs_for(const Wishes& wishes);

struct Made {
  std::string problems;             // in the words of the terminal; notes and warnings too
  std::vector<std::string> failed;  // labels of outputs that are not up to date
};

// Checks the job, and makes every output where it is good. What fails leaves the older file alone.
Made make(const std::vector<Output>& outputs, const Wishes& wishes);

}  // namespace mullion::cli::watch
