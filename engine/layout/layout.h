#pragma once

// Where every opening of the top mat lies.
//
// Coordinates are ticks from the mat's upper left corner **as seen from the front**, x to the
// right, y down. An opening's rectangle is the back edge of the top mat: the line that is drawn on
// the board's back and cut. Along every line across the mat the parts add up to the outer size.
//
// The arrangement is the best one exactly; then its sizes come to the job's increment. The sizes on
// the increment are proved the nearest ones only where few are free at a time (solver/snap.h),
// which Layout::on_increment tells; in a large arrangement nearer ones may exist, and where limits
// leave no room some stay off it. Notes say what was moved.

#include <optional>
#include <string>
#include <vector>

#include "engine/layout/statement.h"
#include "engine/locale/locale.h"

namespace mullion {

struct Rect {
  Length left, top, right, bottom;
  Length width() const { return right - left; }
  Length height() const { return bottom - top; }
  friend bool operator==(const Rect&, const Rect&) = default;
};

struct PlacedOpening {
  int number = 0;  // from 1, in the order of the job file: the same on every output
  std::string id;
  Rect rect;  // back edge of the top mat
};

// The circle or oval of a ring. Its centre may lie half a tick further to the right or down.
struct PlacedRing {
  Length centre, middle;  // from the mat's left and top edge
  Length across, down;
};

struct PlacedGroup {
  std::string id;
  Rect rect;
  std::vector<int> openings;  // numbers
  std::optional<PlacedRing> ring = {};
};

// How the best arrangement came to the increment.
enum class OnIncrement {
  as_it_was,  // nothing had to move
  nearest,    // proved: no sizes on the increment are better (solver/snap.h)
  near,       // good ones; better ones may exist
};

struct Layout {
  Length width, height;
  std::vector<PlacedOpening> openings;
  std::vector<PlacedGroup> groups;  // outermost first
  Sides borders;                    // outer edge to the outermost openings
  OnIncrement on_increment = OnIncrement::as_it_was;
  std::vector<LayoutNote> notes;  // what was moved to reach the increment, and by how much
};

// Solves the arrangement. Errors are conflicts and impossible rules, in the job's unit and the
// locale's language, each with the place of the statement that is part of it; and openings that lie
// on one another, or with too narrow a bar between them to hold, where a ring, a place on the mat
// or a moved part brings them so near ("layout-overlap", "layout-too-near").
Result<Layout> lay_out(const Job& job, const Locale& locale = {});

// The same without a word about why not.
std::optional<Layout> laid_out(const Job& job);

// The notes in words, in the job's unit, each at its place in the job file: "layout-moved".
Problems told_notes(const Layout& layout, const Job& job, const Locale& locale = {});

// A job that stays open while it is edited, laid out again after every change. What mattered in one
// layout is a hint where to begin the next. The best arrangement is unique, so a hint saves time
// and changes nothing: the result is that of mullion::lay_out, whatever was laid out before.
class OpenJob {
 public:
  Result<Layout> lay_out(const Job& job, const Locale& locale = {});

 private:
  std::vector<int> look_at_;  // numbers of rules of the last arrangement
};

}  // namespace mullion
