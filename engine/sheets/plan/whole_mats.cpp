#include "engine/sheets/plan/whole_mats.h"

#include <algorithm>
#include <map>
#include <set>

namespace mullion {
namespace {

// Of a trial: enough to see whether a few sheets hold the blanks. Our own figure.
constexpr std::int64_t effort_of_trial = 1'000'000;
constexpr int most_trials = 40;

struct OrderedMats {
  std::string order;
  std::vector<std::size_t> lines;
  int quantity = 0;
  int made = 0;
  std::set<Board> short_of;  // of its boards
};

class WholeMats {
 public:
  WholeMats(const std::vector<BlankOrder>& orders, const Stock& stock, const SheetCutter& cutter,
            const Scale& scale, const SheetPlanOptions& options)
      : orders_(orders), stock_(stock), cutter_(cutter), scale_(scale), options_(options) {
    for (std::size_t i = 0; i < orders.size(); ++i) {
      if (mats_.empty() || mats_.back().order != orders[i].order) {
        mats_.push_back({orders[i].order, {}, orders[i].quantity, 0, {}});
      }
      mats_.back().lines.push_back(i);
    }
  }

  Result<SheetPlan> run() {
    Result<SheetPlan> plan = plan_sheets(orders_, stock_, cutter_, scale_, options_);
    if (!plan || plan->is_complete()) return plan;
    note_short_boards(*plan);
    choose();
    // What is left out may have given fallouts, and a trial is not the plan itself: what the plan
    // still misses is left out too.
    for (;;) {
      plan = plan_sheets(made(), stock_, cutter_, scale_, options_);
      if (!plan || plan->is_complete()) break;
      if (note_short_boards(*plan)) {
        choose();
      } else {
        drop_missing(*plan);
      }
    }
    if (plan) complete(*plan);
    return plan;
  }

 private:
  Board board_of_line(const BlankOrder& line) const {
    return listed_board(line.board, stock_).value_or(line.board);
  }

  // Returns whether there is one that was not known to be short.
  bool note_short_boards(const SheetPlan& plan) {
    bool more = false;
    for (const BoardPlan& board : plan.boards) {
      if (!board.missing.empty()) more = short_.insert(board.board).second || more;
    }
    for (OrderedMats& mats : mats_) {
      for (const std::size_t line : mats.lines) {
        const Board board = board_of_line(orders_[line]);
        if (short_.contains(board)) mats.short_of.insert(board);
      }
    }
    return more;
  }

  // First as many mats from the first one on as can be made, then of each later order what still
  // can.
  void choose() {
    trials_ = 0;
    std::int64_t all = 0;
    for (const OrderedMats& mats : mats_) all += mats.quantity;
    make_first(largest(all, [this](std::int64_t count) { make_first(count); }));
    for (OrderedMats& mats : mats_) {
      const int before = mats.made;
      if (before == mats.quantity) continue;
      if (mats.short_of.empty()) {
        mats.made = mats.quantity;
        continue;
      }
      const auto more = [&](std::int64_t count) { mats.made = before + static_cast<int>(count); };
      more(largest(mats.quantity - before, more));
    }
  }

  void make_first(std::int64_t count) {
    for (OrderedMats& mats : mats_) {
      mats.made = static_cast<int>(std::min<std::int64_t>(count, mats.quantity));
      count -= mats.made;
    }
  }

  // The largest number up to `most` for which what `set` chooses can be made, by bisection; none at
  // all can.
  template <class Set>
  std::int64_t largest(std::int64_t most, Set set) {
    std::int64_t can = 0, cannot = most + 1;
    // One more is tried first: where it fails, so does any number, and that is the usual case.
    for (std::int64_t count = 1; can + 1 < cannot; count = can + (cannot - can) / 2) {
      set(count);
      (can_be_made() ? can : cannot) = count;
    }
    return can;
  }

  bool can_be_made() {
    if (++trials_ > most_trials || !has_the_area()) return false;
    std::vector<BlankOrder> wanted;
    for (const BlankOrder& line : made()) {
      if (line.quantity > 0 && short_.contains(board_of_line(line))) wanted.push_back(line);
    }
    SheetPlanOptions options = options_;
    options.effort = std::min(options.effort, effort_of_trial);
    options.report = {};
    options.stop = nullptr;  // it is short
    const Result<SheetPlan> plan = plan_sheets(wanted, stock_, cutter_, scale_, options);
    return plan && plan->is_complete();
  }

  // Spares a trial that cannot succeed.
  bool has_the_area() const {
    std::map<Board, double> room;
    std::set<Board> endless;
    const auto area = [](Length width, Length height) {
      return to_inches(width) * to_inches(height);
    };
    for (const StockPiece& piece : stock_.pieces) {
      if (!piece.on_hand) endless.insert(piece.board);
      room[piece.board] +=
          piece.on_hand.value_or(0) * area(piece.usable_width(), piece.usable_height());
    }
    for (const BlankOrder& line : made()) {
      double fallouts = 0;
      for (const Fallout& fallout : line.fallouts) fallouts += area(fallout.width, fallout.height);
      room[board_of_line(line)] -= line.quantity * (area(line.width, line.height) -
                                                    (options_.reuse_fallouts ? fallouts : 0));
    }
    constexpr double rounding = 1e-6;
    return std::all_of(short_.begin(), short_.end(), [&](const Board& board) {
      return endless.contains(board) || room[board] >= -rounding;
    });
  }

  std::vector<BlankOrder> made() const {
    std::vector<BlankOrder> lines = orders_;
    for (const OrderedMats& mats : mats_) {
      for (const std::size_t line : mats.lines) lines[line].quantity = mats.made;
    }
    return lines;
  }

  // The last order that lacks a blank makes one mat less.
  void drop_missing(const SheetPlan& plan) {
    std::set<std::string> lacking;
    for (const BoardPlan& board : plan.boards) {
      for (const BlankCopy& copy : board.missing) {
        lacking.insert(board.lines[static_cast<std::size_t>(copy.line)].order);
      }
    }
    for (auto mats = mats_.rbegin(); mats != mats_.rend(); ++mats) {
      if (mats->made == 0 || !lacking.contains(mats->order)) continue;
      --mats->made;
      return;
    }
  }

  // Says what was ordered, and what of it is missing.
  void complete(SheetPlan& plan) const {
    std::map<std::string, const OrderedMats*> by_order;
    for (const OrderedMats& mats : mats_) {
      by_order[mats.order] = &mats;
      if (mats.made == mats.quantity) continue;
      plan.left_out.push_back({mats.order,
                               mats.quantity - mats.made,
                               mats.quantity,
                               {mats.short_of.begin(), mats.short_of.end()}});
    }
    for (BoardPlan& board : plan.boards) {
      for (std::size_t i = 0; i < board.lines.size(); ++i) {
        const OrderedMats& mats = *by_order.at(board.lines[i].order);
        board.lines[i].quantity = mats.quantity;
        for (int copy = mats.made + 1; copy <= mats.quantity; ++copy) {
          board.missing.push_back({static_cast<int>(i), copy});
        }
      }
    }
  }

  const std::vector<BlankOrder>& orders_;
  const Stock& stock_;
  const SheetCutter& cutter_;
  const Scale& scale_;
  const SheetPlanOptions& options_;
  std::vector<OrderedMats> mats_;
  std::set<Board> short_;
  int trials_ = 0;
};

}  // namespace

Result<SheetPlan> plan_whole_mats(const std::vector<BlankOrder>& orders, const Stock& stock,
                                  const SheetCutter& cutter, const Scale& scale,
                                  const SheetPlanOptions& options) {
  return WholeMats(orders, stock, cutter, scale, options).run();
}

}  // namespace mullion
