#pragma once

// A week's orders as one run: which mats run together on the same stops, and what is written on the
// label of each blank.
//
// Exact lengths. Mats run together when they have the same outer size and, layer by layer, the same
// borders: the guide and the stops then stay as they are from one mat to the next.

#include <string>
#include <vector>

#include "engine/mat/mat.h"
#include "engine/sheets/plan/sheet_plan.h"

namespace mullion {

struct BatchJob {
  std::string order;
  int quantity = 1;
  Scale scale;
  Mat mat;
};

// The borders of one layer: from its outer edge to the nearest window on each side.
struct LayerBorders {
  int layer = 0;
  Sides borders;
  std::size_t windows = 0;
  friend bool operator==(const LayerBorders&, const LayerBorders&) = default;
};

struct RunGroup {
  Length width, height;
  std::vector<LayerBorders> layers;  // top to bottom; layers without a window are left out
  struct Member {
    std::string order;
    int quantity = 0;
  };
  std::vector<Member> members;  // in the order of the jobs
  int quantity() const;
};

// Larger groups first; groups of one size stand in the order of the jobs.
std::vector<RunGroup> run_groups(const std::vector<BatchJob>& jobs);

std::vector<BlankOrder> blanks_of(const std::vector<BatchJob>& jobs);

struct BlankLabel {
  std::string order, layer, board;
  int copy = 1, copies = 1;
  Length width, height;
  int sheet = 0;     // number of the sheet that it is cut from
  std::string code;  // for a scanner: order, layer number and copy, as "A-1017/2/3"
};

// One for each blank of the plan, in the order in which they are cut.
std::vector<BlankLabel> labels_of(const SheetPlan& plan);

}  // namespace mullion
