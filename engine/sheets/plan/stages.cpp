#include "engine/sheets/plan/stages.h"

#include <algorithm>
#include <optional>

namespace mullion {
namespace {

MatCopy mat_of(const BlankCopy& copy, const BoardPlan& board) {
  return {board.lines[static_cast<std::size_t>(copy.line)].order, copy.copy};
}

// What a mat waits for.
struct Needs {
  std::vector<MatCopy> parents;  // of the fallouts that its blanks come out of
  bool lacks_a_blank = false;
};

class Stages {
 public:
  explicit Stages(const SheetPlan& plan) {
    for (const BoardPlan& board : plan.boards) {
      for (const BlankCopy& copy : board.missing) needs_[mat_of(copy, board)].lacks_a_blank = true;
      for (const PlannedSheet& sheet : board.sheets) {
        for (const BlankCopy& copy : sheet.blanks) {
          Needs& needs = needs_[mat_of(copy, board)];
          if (sheet.stock < 0) needs.parents.push_back(mat_of(sheet.parent, board));
        }
      }
    }
  }

  // Nothing: the mat is never finished.
  std::optional<int> of(const MatCopy& mat) {
    if (const auto known = found_.find(mat); known != found_.end()) return known->second;
    found_[mat] = std::nullopt;  // while it waits, for itself too
    const Needs& needs = needs_.at(mat);
    if (needs.lacks_a_blank) return std::nullopt;
    int stage = 1;
    for (const MatCopy& parent : needs.parents) {
      const std::optional<int> before = of(parent);
      if (!before) return std::nullopt;
      stage = std::max(stage, *before + 1);
    }
    return found_[mat] = stage;
  }

  const std::map<MatCopy, Needs>& mats() const { return needs_; }

 private:
  std::map<MatCopy, Needs> needs_;
  std::map<MatCopy, std::optional<int>> found_;
};

}  // namespace

bool put_in_stages(SheetPlan& plan) {
  Stages stages(plan);
  SheetPlan staged = plan;
  for (BoardPlan& board : staged.boards) {
    for (PlannedSheet& sheet : board.sheets) {
      sheet.stage = 1;
      if (sheet.stock >= 0) continue;
      const std::optional<int> parent = stages.of(mat_of(sheet.parent, board));
      if (!parent) return false;
      sheet.stage = *parent + 1;
    }
    std::stable_sort(
        board.sheets.begin(), board.sheets.end(),
        [](const PlannedSheet& a, const PlannedSheet& b) { return a.stage < b.stage; });
  }
  std::vector<PlannedSheet*> all;
  for (BoardPlan& board : staged.boards) {
    for (PlannedSheet& sheet : board.sheets) all.push_back(&sheet);
  }
  std::stable_sort(all.begin(), all.end(), [](const PlannedSheet* a, const PlannedSheet* b) {
    return a->stage < b->stage;
  });
  for (std::size_t i = 0; i < all.size(); ++i) all[i]->number = static_cast<int>(i) + 1;
  plan = std::move(staged);
  return true;
}

std::map<MatCopy, int> stages_of_mats(const SheetPlan& plan) {
  Stages stages(plan);
  std::map<MatCopy, int> out;
  for (const auto& [mat, needs] : stages.mats()) {
    if (const std::optional<int> stage = stages.of(mat)) out[mat] = *stage;
  }
  return out;
}

std::vector<SheetOfBoard> sheets_in_order(const SheetPlan& plan) {
  std::vector<SheetOfBoard> all;
  for (const BoardPlan& board : plan.boards) {
    for (const PlannedSheet& sheet : board.sheets) all.push_back({&board, &sheet});
  }
  std::stable_sort(all.begin(), all.end(), [](const SheetOfBoard& a, const SheetOfBoard& b) {
    return a.sheet->number < b.sheet->number;
  });
  return all;
}

}  // namespace mullion
