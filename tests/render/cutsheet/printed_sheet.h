#pragma once

// A cut sheet as the eye takes it in: texts by where they stand on the page, boxes to tick, and the
// arrows in the pictures of the board. Knows nothing of the program that wrote it: it is given what
// MuPDF finds on the pages.

#include <map>
#include <string>
#include <utility>
#include <vector>

#include "tests/oracle/drawn_page.h"

namespace printed {

struct Arrow {
  oracle::Spot from, to;
};

// The board as it is drawn, its letters, and what is red in it.
struct Picture {
  oracle::Spot upper_left, lower_right;
  std::map<char, oracle::Spot> letters;
  std::vector<Arrow> arrows;
  std::vector<std::pair<int, oracle::Spot>> numbers;
};

enum class Kind {
  bar,        // white on black
  text,       // a paragraph
  item,       // behind a box to tick
  settings,   // what to set: all in one grey box
  placement,  // how the board lies, its picture, and the cuts behind their boxes to tick
};

struct Part {
  Kind kind = Kind::text;
  std::string text;  // of a placement: its heading
  std::string turn;  // of a placement
  std::vector<std::string> entries;
  Picture picture;
};

// In the order of reading. Throws std::runtime_error where parts that follow one another do not
// stand to the right of each other or below.
std::vector<Part> parts_of(const std::vector<oracle::DrawnPage>& pages);

}  // namespace printed
