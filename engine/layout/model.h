#pragma once

// The arrangement of a job as a system of linear rules, each tied to the statement it comes from.
//
// Variables are ticks along one of the two axes. Levels of preference, strongest first, are the
// constants below; `Job::Rule` strengths take their places among them.

#include <array>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "engine/layout/statement.h"
#include "engine/solver/snap.h"

namespace mullion::layout {

namespace level {
inline constexpr int required = 0;
inline constexpr int strong_rule = 1;
inline constexpr int least_gap = 2;    // a free gap is no narrower than the usual one
inline constexpr int free_place = 2;   // what has no stated place on the mat lies in its middle
inline constexpr int symmetry = 3;     // left = right, top = bottom; alignment within a group
inline constexpr int equal_parts = 4;  // free gaps of an axis are equal
inline constexpr int remainder = 5;    // on the increment: symmetry of the borders
inline constexpr int medium_rule = 6;
inline constexpr int default_gap = 7;
inline constexpr int fill = 8;           // a group is no larger across than its largest part
inline constexpr int equal_borders = 9;  // side borders = top border
inline constexpr int weak_rule = 10;
inline constexpr int default_border = 11;
inline constexpr int free_sizes = 12;  // openings of free size are alike
}  // namespace level

struct Span {
  solver::Linear start, end;
  solver::Linear size() const { return end - start; }
};

struct Box {
  std::array<Span, 2> span;  // by Axis
};

struct NamedBox {
  std::string id;
  Box box;
  bool is_group = false;
  std::vector<int> openings;  // a group's, by number from 1
};

struct Model {
  // A group and its parts, in the direction across the group.
  struct Extent {
    Span group;
    std::vector<Span> parts;
    bool is_hull = false;  // a rule moves parts: one begins the group, and one ends it
  };

  // A group whose parts lie around its centre.
  struct RingOf {
    std::size_t group = 0;  // in `groups`
    std::array<solver::Linear, 2> centre;
    std::array<Length, 2> size;
  };

  solver::System system;
  std::vector<Statement> statements;  // a constraint's tag is its statement's index
  std::array<solver::Linear, 2> outer;
  std::array<Length, 2> least_outer;  // no solution is smaller: the openings side by side
  std::array<Span, 2> border;         // start: left or top border; end: right or bottom border
  std::vector<NamedBox> openings;     // in the order of the job file
  std::vector<NamedBox> groups;       // outermost first
  std::map<std::string, solver::Linear, std::less<>> gaps;  // by id
  std::vector<RingOf> rings;
  std::map<int, Axis> free_size_axis;     // by the variable that is the mean of its free sizes
  std::vector<Extent> extents;            // of groups whose largest part only a solution can tell
  std::vector<solver::Measure> measures;  // what is read off the rule, for snapping
};

// What the model takes for granted where the job is silent.
struct Defaults {
  Length border;
  Length gap;
  // bottom border / top border where the job asks for the optical centre
  solver::Rational optical_ratio = 1;
};

Model build_model(const Job& job, const Defaults& defaults);

// Adds the job's rules to a model; names were checked when the job was read.
void add_rules(Model& model, const Job& job);

// The form of a measure such as "border.left", "dune.width" or a gap's id. An empty form with a
// false flag where there is no such measure.
struct FoundMeasure {
  solver::Linear form;
  bool found = false;
};
FoundMeasure find_measure(const Model& model, std::string_view name);
const NamedBox* find_box(const Model& model, std::string_view id);

}  // namespace mullion::layout
