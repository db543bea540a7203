#pragma once

// What a rule of a layout says, and what the increment moved, as values. engine/layout/words.h puts
// them into words.

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "engine/job/job.h"

namespace mullion::layout {

enum Axis : int { across = 0, down = 1 };

// Where a rule of the system comes from.
struct Statement {
  enum class Kind {
    structure,  // holds of itself and is never named
    // Preferences that hold of themselves and are named where they could not be met.
    equal_gaps,
    equal_sizes,  // of openings whose size is free
    alignments,   // within rows and columns
    side_borders,
    end_borders,
    optical_border,
    alignment,  // of one part, across its row or column
    // What the job states.
    outer,
    frame,  // the outer size by the frame
    border,
    opening,
    gap,
    ring,   // where a part of a ring lies
    place,  // a measure from the mat's edge to a part
    least_opening,
    least_bar,
    least_border,
    held_bar,  // what can be cut and held where nothing is stated
    held_border,
    wider_bottom,
    bottom_times,
    rule,
  };
  struct Part {
    std::string id;              // of an opening or a group; empty: a group without one
    std::optional<Along> along;  // a group's
    friend bool operator==(const Part&, const Part&) = default;
  };

  Kind kind = Kind::structure;
  Place place;
  Length value;              // the stated number, where there is one
  Axis axis = across;        // outer, frame, border, opening, place; alignment: that of the group
  bool far = false;          // border, place: the right or the bottom one
  Part part;                 // opening, alignment, ring, place
  std::size_t rule = 0;      // index in the job's rules
  int group = -1, gap = -1;  // gap: the group's number, outermost first, and the gap's; -1: all
  bool adjustable = false;   // the framer could state another number
  bool gives_way = false;    // kept by the arrangement; a remainder of the increment may break it

  friend bool operator==(const Statement&, const Statement&) = default;
};

inline bool is_outer(const Statement& s) {
  return s.kind == Statement::Kind::outer || s.kind == Statement::Kind::frame;
}
inline bool is_limit(const Statement& s) {
  return s.kind == Statement::Kind::least_opening || s.kind == Statement::Kind::least_bar ||
         s.kind == Statement::Kind::least_border || s.kind == Statement::Kind::held_bar ||
         s.kind == Statement::Kind::held_border;
}
inline bool is_rule(const Statement& s) {
  return s.kind == Statement::Kind::rule || s.kind == Statement::Kind::wider_bottom ||
         s.kind == Statement::Kind::bottom_times;
}

}  // namespace mullion::layout

namespace mullion {

// A statement that no longer holds exactly.
struct OffBy {
  layout::Statement what;
  Length amount;
};
// So many more parts of rows and columns are out of line.
struct OutOfLine {
  std::size_t parts = 0;
  Length most;
};
// An outer size or a border that no step of the rule shows.
struct OffStep {
  layout::Statement what;
  Length size;
};
// Openings whose left (across) or top edge no step of the rule shows.
struct EdgesOffStep {
  layout::Axis axis = layout::across;
  std::vector<std::string> openings;  // ids
};
// A wish that is not met, by how much, and the statements that it gave way to; none where other
// wishes did not leave it room.
struct GaveWay {
  layout::Statement what;
  Length amount;
  std::vector<layout::Statement> to;
};
// What was moved to reach the increment, and by how much, and which wishes gave way.
using LayoutNote = std::variant<OffBy, OutOfLine, OffStep, EdgesOffStep, GaveWay>;

}  // namespace mullion
