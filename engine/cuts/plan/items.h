#pragma once

// A stage's straight lines as they lie on the cutter, with their settings for a way of working.

#include "engine/cuts/plan/stage.h"

namespace mullion {

struct ItemEnd {
  Point at;
  Length line;  // from the near edge
  Length over_cut;
  int neighbour = -1;  // the item that meets it here
  EndBy by = EndBy::stop;
};

// What holds for all cuts of a stage: how the blade leads the mark at the two ends.
Length near_lead(const CutterProfile& cutter);
Length far_lead(const CutterProfile& cutter);

struct Item {
  int window = 0;
  BoardEdge kept = BoardEdge::top;
  ItemEnd far, near;
  OrderItem order;
};

// Whether a way uses spacers at the squaring arm, or at the guide, in place of other settings.
bool spaces_along(Way way);
bool spaces_across(Way way);

// In the order of the lines. With the lines above, blocks are kept so that settings move together.
std::vector<Item> items_of(const StageRequest& request, const PlannedLines* above);

}  // namespace mullion
