#pragma once

// What a PDF or SVG file shows, as programs that we did not write understand it.
//
// Coordinates are points of 1/72 in from the page's upper left corner, y down. MuPDF reads the
// strokes; Poppler or librsvg may read the file first and hand it on as a PDF of their own, so that
// two readers have to agree. Curves come as chords that stray by less than 0.003 pt. Strokes are
// cut off at rectangular clips and at the page's edge, as they are on paper.

#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace oracle {

struct Spot {
  double x = 0, y = 0;
};

struct Stroke {
  Spot from, to;
  double width = 0;
  bool dashed = false;
  std::string colour;  // #rrggbb
};

struct Label {
  std::string text;
  Spot at;             // where the baseline starts
  double length = 0;   // along the baseline
  double size = 0;     // of the font
  double turn = 0;     // degrees clockwise
  std::string colour;  // #rrggbb
};

struct DrawnPage {
  double width = 0, height = 0;
  std::vector<Stroke> strokes;
  std::vector<std::vector<Spot>> fills;   // corners of every filled path
  std::vector<std::string> fill_colours;  // of each of them, #rrggbb
  std::vector<Label> labels;
};

enum class Reader { mupdf, poppler };

// Throws std::runtime_error where a program cannot read the file.
std::vector<DrawnPage> drawn_pages(const std::string& path, Reader reader = Reader::mupdf);
DrawnPage drawn_svg(const std::string& path);  // by librsvg

// Cuts the stroke off at the box; false where nothing of it is left.
bool clip_to_box(Stroke& stroke, Spot upper_left, Spot lower_right);

// The labels' texts of a page, one a line.
std::string text_of(const DrawnPage& page);

// Whether strokes of the page together cover the whole line from one spot to the other, straying
// from it by at most `tolerance` points. Dashed strokes do not count.
bool shows_line(const DrawnPage& page, Spot from, Spot to, double tolerance);

// The upper left corner of a rectangle of that size whose four sides the page shows.
std::optional<Spot> find_rectangle(const DrawnPage& page, double width, double height,
                                   double tolerance);

// The strokes of a page, solid or dashed, sorted into squares: where the nearest ink lies is then
// found without a look at all of them. Refers to nothing of the page.
class NearestInk {
 public:
  NearestInk(const DrawnPage& page, bool dashed);

  // From the spot to the nearest stroke; `far` where none is as near as that.
  double distance(Spot spot) const;
  static constexpr double far = 18;

 private:
  std::map<std::pair<int, int>, std::vector<Stroke>> squares_;
};

}  // namespace oracle
