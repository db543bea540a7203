#pragma once

// What can be cut and held: how narrow a bar or a border may become where the job does not state
// it.
//
// A bar keeps one thickness of its board between two over-cuts of about one thickness (common
// practice, no source) and beyond the bevels of both its edges; a border keeps as much beyond its
// bevel and beyond the frame's lip. Behind a bar the pictures at its two sides lie side by side,
// and behind a border the picture lies on the board. The reveals of the layers below are taken into
// account: the more they show, the less of a picture reaches beyond the top mat's opening.
// All are whole increments.

#include "engine/layout/statement.h"

namespace mullion::layout {

// How far an opening's picture reaches beyond the top mat's edge on one side, across and down. Zero
// where it floats, or where the opening's size is free.
struct Reach {
  Length across, down;
};
Reach reach_of(const Job& job, const Opening& opening);

// `reach`: of the pictures on both sides together.
Length least_held_bar(const Job& job, Length reach);
Length least_held_border(const Job& job, Length reach);

// Whether a required rule gives the measure a size of its own ("border.left", a gap's id).
bool is_fixed(const Job& job, const std::string& measure);

// Whether a rule of any strength says where one of the named lies in that direction.
bool is_placed_by_rule(const Job& job, const std::vector<std::string>& ids, Axis axis);

}  // namespace mullion::layout
