#pragma once

// A page as its reader sees it, step by step: read from its text by an XML parser, with nothing of
// what wrote it.

#include <string>
#include <vector>

namespace bench_test {

struct ShownDial {
  std::string name, shows;
  bool moves = false, set = true;
};

struct ShownText {
  std::string name, text;
  bool strong = false;
};

struct ShownPath {
  std::string name;
  std::vector<double> numbers;  // of its data, in their order
  std::string data;
};

struct ShownLetter {
  std::string name, text;
  double x = 0, y = 0;
};

struct ShownStep {
  std::string kind, heading;
  std::vector<std::string> where;  // the number of pieces is none of it
  int group = 0, pieces = 1;
  bool once = false;
  std::vector<ShownDial> dials;
  std::vector<ShownText> texts;
  std::vector<ShownPath> paths;
  std::vector<ShownLetter> letters;

  const ShownDial* dial(const std::string& name) const;  // "guide" is "guide stays" too
  const ShownText* text(const std::string& name) const;
  const ShownPath* path(const std::string& name) const;
};

// Throws std::runtime_error where the page is no well-formed XML.
std::vector<ShownStep> shown_steps(const std::string& html);

}  // namespace bench_test
