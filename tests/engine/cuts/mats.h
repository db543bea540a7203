#pragma once

// Mats made by hand for tests: windows by their lines on the top mat's back.

#include <optional>
#include <random>
#include <vector>

#include "engine/cuts/plan/plan.h"
#include "simulator.h"

namespace mats {

using mullion::Length;

struct Window {
  Length left, top, right, bottom;  // borders to the board's edges
};

// One board 1/16 in thick with rectangular windows.
mullion::Mat single(Length width, Length height, const std::vector<Window>& borders);
// With the same border on all sides.
mullion::Mat even(Length width, Length height, Length border);
// Another layer below, its lines set in by reveal and run.
void add_layer(mullion::Mat& mat, const mullion::Sides& reveal, Length thickness);
void set_thickness(mullion::MatLayer& layer, Length thickness);

// Gives the window of that index the shape in every layer, stated for the lowest.
void give_shape(mullion::Mat& mat, std::size_t window, const mullion::ShapeSpec& shape);

// The board's windows as simulator polygons; without those that have curves or slanting lines.
std::vector<simulator::Polygon> backs(const mullion::MatLayer& layer);
std::vector<simulator::Polygon> faces(const mullion::MatLayer& layer);

simulator::Cutter ideal(const mullion::CutterProfile& cutter);

// What is wrong with what the printed plan yields; empty: exactly the mat, each corner cut clean
// and no further. Straight edges at right angles must be exact, others as likeness.h says. The
// cutter's over-cuts must be the bevel's run. Every cut along an edge must lie on a side of a
// window of the openings that it names, and reach from corner to corner. Where the plan's lengths
// are rounded, all may be off by `slack`.
std::string difference(const mullion::Mat& mat, const std::string& plan_json,
                       const simulator::Cutter& cutter, unsigned lie = 0, Length slack = {});

// The job's mat at that bevel; nothing where the bevel leaves none.
std::optional<mullion::Mat> mat_at(mullion::Job job, int degrees);

// Any mat and any cutter, from a fixed seed.
mullion::Mat random_mat(std::mt19937& random);
mullion::CutterProfile random_cutter(std::mt19937& random);
// Half the time the plan's own choice.
std::optional<mullion::Way> random_way(std::mt19937& random, const mullion::CutterProfile& cutter);
// Taped or not, one or many, in any way.
mullion::PlanOptions random_options(std::mt19937& random, const mullion::CutterProfile& cutter);

// Two openings in one row, a reveal of 1/4 in.
mullion::Mat double_mat();

// A job as a framer writes it: rows in a column, up to three layers, some cut for some openings
// alone, a row with one window in the lowest layer, a spacer now and then; in either unit.
std::string random_job(std::mt19937& random);

}  // namespace mats
