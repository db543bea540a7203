#include "engine/sheets/plan/assign.h"

#include <algorithm>
#include <map>
#include <tuple>

namespace mullion {
namespace {

using Size = std::pair<Length, Length>;

struct LooseFallout {
  int stage;  // of the parent
  BlankCopy parent;
  Fallout fallout;
};

// A blank of a pattern that has no name yet.
struct Slot {
  int sheet;
  int* blank;  // in the pattern
};

void collect_slots(Pattern& pattern, int sheet, std::map<int, std::vector<Slot>>& by_size) {
  if (pattern.kind == Pattern::Kind::blank) {
    by_size[pattern.blank].push_back({sheet, &pattern.blank});
  }
  for (Pattern& part : pattern.parts) collect_slots(part, sheet, by_size);
}

// Of an unequal division the waste is the remainder.
void put_waste_last(Pattern& pattern) {
  std::stable_partition(pattern.parts.begin(), pattern.parts.end(),
                        [](const Pattern& part) { return part.kind != Pattern::Kind::waste; });
  for (Pattern& part : pattern.parts) put_waste_last(part);
}

class Assignment {
 public:
  Assignment(const NestingProblem& problem, const BoardNesting& board, BoardPlan& plan)
      : problem_(problem), board_(board), plan_(plan) {}

  // Larger sizes first: a fallout's parent is larger than whatever is cut from it.
  void run() {
    for (std::size_t i = 0; i < plan_.sheets.size(); ++i) {
      collect_slots(plan_.sheets[i].pattern, static_cast<int>(i), slots_);
    }
    std::vector<int> sizes;
    for (std::size_t i = 0; i < problem_.blanks.size(); ++i) sizes.push_back(static_cast<int>(i));
    std::stable_sort(sizes.begin(), sizes.end(),
                     [this](int a, int b) { return area(a) > area(b); });
    for (const int size : sizes) assign_size(size);
  }

 private:
  double area(int size) const {
    const BlankSize& blank = problem_.blanks[static_cast<std::size_t>(size)];
    return to_inches(blank.width) * to_inches(blank.height);
  }

  void assign_size(int size) {
    std::vector<Slot>& slots = slots_[size];
    for (const Slot& slot : slots) find_parent(plan_.sheets[static_cast<std::size_t>(slot.sheet)]);
    std::stable_sort(slots.begin(), slots.end(), [this](const Slot& a, const Slot& b) {
      return sheet_of(a).stage < sheet_of(b).stage;
    });
    std::size_t next = 0;
    for (const BlankCopy& copy : copies_of(size)) {
      if (next == slots.size()) {
        plan_.missing.push_back(copy);
        continue;
      }
      const Slot& slot = slots[next++];
      PlannedSheet& sheet = plan_.sheets[static_cast<std::size_t>(slot.sheet)];
      *slot.blank = static_cast<int>(sheet.blanks.size());
      sheet.blanks.push_back(copy);
      for (const Fallout& fallout : plan_.lines[static_cast<std::size_t>(copy.line)].fallouts) {
        loose_[{fallout.width, fallout.height}].push_back({sheet.stage, copy, fallout});
      }
    }
  }

  const PlannedSheet& sheet_of(const Slot& slot) const {
    return plan_.sheets[static_cast<std::size_t>(slot.sheet)];
  }

  // Lines whose openings leave fallouts come first, so that they are cut early.
  std::vector<BlankCopy> copies_of(int size) const {
    std::vector<BlankCopy> copies;
    for (const bool with_fallouts : {true, false}) {
      for (std::size_t line = 0; line < plan_.lines.size(); ++line) {
        if (board_.size_of_line[line] != size) continue;
        if (plan_.lines[line].fallouts.empty() == with_fallouts) continue;
        for (int copy = 1; copy <= plan_.lines[line].quantity; ++copy) {
          copies.push_back({static_cast<int>(line), copy});
        }
      }
    }
    return copies;
  }

  void find_parent(PlannedSheet& sheet) {
    if (sheet.stock >= 0 || sheet.parent.line >= 0) return;
    std::vector<LooseFallout>& loose = loose_[{sheet.width, sheet.height}];
    const auto first = std::min_element(
        loose.begin(), loose.end(),
        [](const LooseFallout& a, const LooseFallout& b) { return a.stage < b.stage; });
    sheet.parent = first->parent;
    sheet.fallout = first->fallout;
    sheet.stage = first->stage + 1;
    loose.erase(first);
  }

  const NestingProblem& problem_;
  const BoardNesting& board_;
  BoardPlan& plan_;
  std::map<int, std::vector<Slot>> slots_;
  std::map<Size, std::vector<LooseFallout>> loose_;
};

// Kinds of stock that give the same at the same price stand for each other: what is on hand goes
// first, and is bought only when it is gone.
class RackFirst {
 public:
  RackFirst(const NestingProblem& problem, const BoardNesting& board)
      : problem_(problem), board_(board), used_(problem.stock.size()) {}

  std::size_t take(std::size_t kind) {
    if (board_.stock_of_kind[kind] < 0) return kind;
    for (const bool on_rack : {true, false}) {
      for (std::size_t i = 0; i < problem_.stock.size(); ++i) {
        const std::optional<int>& on_hand = problem_.stock[i].on_hand;
        if (!alike(i, kind) || on_hand.has_value() != on_rack) continue;
        if (on_rack && used_[i] == *on_hand) continue;
        ++used_[i];
        return i;
      }
    }
    return kind;
  }

 private:
  bool alike(std::size_t a, std::size_t b) const {
    const StockKind &one = problem_.stock[a], &other = problem_.stock[b];
    return board_.stock_of_kind[a] >= 0 && one.width == other.width && one.height == other.height &&
           one.price == other.price;
  }

  const NestingProblem& problem_;
  const BoardNesting& board_;
  std::vector<int> used_;
};

// Sheets that are cut alike stand together.
void put_in_order(std::vector<PlannedSheet>& sheets) {
  const auto key = [](const PlannedSheet& sheet) {
    const std::int64_t strip =
        sheet.pattern.parts.empty() ? 0 : sheet.pattern.parts.front().width.ticks();
    return std::make_tuple(sheet.stage, sheet.stock < 0, sheet.stock,
                           static_cast<int>(sheet.pattern.kind), -strip);
  };
  std::stable_sort(
      sheets.begin(), sheets.end(),
      [&key](const PlannedSheet& a, const PlannedSheet& b) { return key(a) < key(b); });
}

}  // namespace

void assign_blanks(const Nesting& nesting, const NestingProblem& problem, const BoardNesting& board,
                   const Stock& stock, BoardPlan& plan) {
  RackFirst rack(problem, board);
  for (const CutSheet& cut : nesting.sheets) {
    const std::size_t kind = rack.take(static_cast<std::size_t>(cut.stock));
    PlannedSheet sheet;
    sheet.stock = board.stock_of_kind[kind];
    sheet.pattern = cut.pattern;
    put_waste_last(sheet.pattern);
    sheet.price = problem.stock[kind].price;
    if (sheet.stock >= 0) {
      const StockPiece& piece = stock.pieces[static_cast<std::size_t>(sheet.stock)];
      sheet.width = piece.width;
      sheet.height = piece.height;
      sheet.trim = piece.trim;
    } else {
      sheet.width = board.fallout_of_kind[kind].width;
      sheet.height = board.fallout_of_kind[kind].height;
    }
    plan.sheets.push_back(std::move(sheet));
  }
  Assignment(problem, board, plan).run();
  put_in_order(plan.sheets);
}

}  // namespace mullion
