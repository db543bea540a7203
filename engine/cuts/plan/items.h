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

struct Item {
  int window = 0;
  BoardEdge kept = BoardEdge::top;
  ItemEnd far, near;
  OrderItem order;
};

// In the order of the lines. With the lines above, blocks are kept so that settings move together.
std::vector<Item> items_of(const StageRequest& request, const PlannedLines* above);

}  // namespace mullion
