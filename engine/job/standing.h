#pragma once

// Where an opening stands among the groups that have one window in a layer.
//
// A group may have a single window in one of the layers (Group::joined_layer). That layer then has
// no edge between the group's openings: only on those sides of an opening that may lie on the
// group's own sides. In a row the first opening has the group's left side and the last one its
// right side, and every one has its top and bottom; a column likewise.

#include <array>
#include <vector>

#include "engine/job/job.h"

namespace mullion {

struct JoinedGroup {
  int layer = 0;                  // that has one window for the group
  std::size_t group = 0;          // index in Layout::groups
  std::array<bool, 4> on_edge{};  // in the order of every_side
  const Group* what = nullptr;
};

struct Standing {
  const Opening* opening = nullptr;
  std::vector<JoinedGroup> joined;  // outermost first
};

// Every opening, in the order of the job file.
std::vector<Standing> standings_of(const Node& arrangement);

// Of one opening that is part of the arrangement; an opening from elsewhere stands alone.
Standing standing_of(const Node& arrangement, const Opening& opening);

// The group that has one window for the opening in that layer, or null.
const JoinedGroup* joined_in(const Standing& standing, int layer);

// The innermost group through whose one window the layer is seen, because no layer above has a
// window for the opening alone; or null.
const JoinedGroup* joined_above(const Job& job, const Standing& standing, int layer);

// Whether the layer has a window of its own for the opening.
bool is_cut_for(const Layer& layer, const Opening& opening);

// As in reveal.h, for a standing that is known already.
Sides line_inset(const Job& job, const Standing& standing, int layer_number);

}  // namespace mullion
