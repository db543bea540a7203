#include "engine/sheets/plan/sheet_plan.h"

#include <algorithm>
#include <map>

#include "engine/sheets/plan/assign.h"
#include "engine/sheets/plan/cuts.h"
#include "engine/sheets/plan/stages.h"
#include "engine/sheets/stock/size_text.h"

namespace mullion {
namespace {

Problem problem(std::string code, std::string message) {
  return {Severity::error, std::move(code), std::move(message), {}, {}};
}

// In one cut, or part by part after a cut across.
bool might_be_trimmed(const StockPiece& piece, const CutLimits& limits) {
  const Sides& trim = piece.trim;
  const bool damaged = trim.left > Length() || trim.right > Length() || trim.top > Length() ||
                       trim.bottom > Length();
  return !damaged || limits.allow(piece.height, piece.width) ||
         limits.allow(piece.width, piece.height);
}

Problem left_out(const StockPiece& piece, const Stock& stock) {
  return {Severity::warning, "sheets-trim-too-long",
          "sheet " + piece.id + " is left out: the cutter is too small to trim its damaged edge",
          piece.place, stock.file};
}

bool complete(const Nesting& nesting) {
  return std::all_of(nesting.missing.begin(), nesting.missing.end(),
                     [](int count) { return count == 0; });
}

class BoardPlanner {
 public:
  BoardPlanner(Board board, std::vector<BlankOrder> lines, const Stock& stock,
               const SheetCutter& cutter, const Scale& scale)
      : stock_(stock), cutter_(cutter), scale_(scale) {
    plan_.board = std::move(board);
    plan_.lines = std::move(lines);
    problem_.limits = cutter.limits;
    for (const BlankOrder& line : plan_.lines) add_size(line);
  }

  const Board& board() const { return plan_.board; }

  Problems add_stock() {
    Problems notes;
    for (std::size_t i = 0; i < stock_.pieces.size(); ++i) {
      const StockPiece& piece = stock_.pieces[i];
      if (piece.board != plan_.board) continue;
      if (!might_be_trimmed(piece, problem_.limits)) {
        notes.push_back(left_out(piece, stock_));
        continue;
      }
      const StockKind kind{piece.usable_width(), piece.usable_height(), piece.price, piece.on_hand};
      listed_.push_back(kind);
      if (piece.on_hand == 0) continue;
      problem_.stock.push_back(kind);
      names_.stock_of_kind.push_back(static_cast<int>(i));
      names_.fallout_of_kind.emplace_back();
    }
    return notes;
  }

  Problems impossible() const {
    if (listed_.empty()) return {no_such_board()};
    Problems problems;
    for (const BlankOrder& line : plan_.lines) {
      const BlankSize blank{line.width, line.height, !line.grain};
      const bool fits = std::any_of(listed_.begin(), listed_.end(), [&](const StockKind& kind) {
        return PatternSearch(kind.width, kind.height, problem_.limits, {blank}).find({1}).value > 0;
      });
      if (fits) continue;
      problems.push_back(problem("sheets-blank-too-large",
                                 "order " + line.order + ", " + line.layer + ": a blank of " +
                                     size_text(line.width, line.height, scale_) +
                                     " cannot be cut from any sheet of " +
                                     describe(plan_.board, scale_)));
    }
    return problems;
  }

  // Notes sheets that the cutter proves too small for when their pattern is known; the plan is then
  // made without them.
  BoardPlan plan(const SheetPlanOptions& options, const SheetPlanProgress& progress,
                 Problems& notes) {
    for (;;) {
      BoardPlan found = planned(options, progress);
      std::vector<int> too_large;
      for (const PlannedSheet& sheet : found.sheets) {
        if (!can_be_cut(sheet, cutter_)) too_large.push_back(sheet.stock);
      }
      if (too_large.empty()) return found;
      for (std::size_t kind = 0; kind < names_.stock_of_kind.size(); ++kind) {
        const int piece = names_.stock_of_kind[kind];
        if (std::find(too_large.begin(), too_large.end(), piece) == too_large.end()) continue;
        notes.push_back(left_out(stock_.pieces[static_cast<std::size_t>(piece)], stock_));
        problem_.stock[kind].on_hand = 0;
      }
    }
  }

 private:
  BoardPlan planned(const SheetPlanOptions& options, SheetPlanProgress progress) {
    BoardPlan plan = plan_;
    NestingProblem problem = problem_;
    BoardNesting names = names_;
    if (problem.stock.empty() || nothing_is_wanted()) {
      Nesting nothing;
      nothing.missing = problem.demands;
      assign_blanks(nothing, problem, names, stock_, plan);
      return plan;
    }
    NestingOptions nesting_options;
    nesting_options.effort = options.effort;
    nesting_options.patience /= static_cast<double>(progress.boards);
    nesting_options.stop = options.stop;
    if (options.report) {
      nesting_options.report = [&](const NestingProgress& nesting) {
        progress.nesting = nesting;
        options.report(progress);
      };
    }
    const std::size_t stock_alone = problem.stock.size();
    if (options.reuse_fallouts) add_fallouts(options.keep, problem, names);
    Nesting nesting = nest(problem, nesting_options);
    const bool fallouts_used =
        std::any_of(nesting.sheets.begin(), nesting.sheets.end(), [&](const CutSheet& sheet) {
          return static_cast<std::size_t>(sheet.stock) >= stock_alone;
        });
    if (fallouts_used) {
      NestingProblem without = problem;
      without.stock.resize(stock_alone);
      Nesting other = nest(without, nesting_options);
      // Fallouts are used only where they save something, since they take time and must be waited
      // for. Without its parent there is no fallout, so a plan with gaps makes do without any.
      if (!complete(nesting) || (complete(other) && other.cost <= nesting.cost)) {
        other.bound = nesting.bound;
        nesting = std::move(other);
      } else if (complete(other)) {
        plan.cost_without_fallouts = other.cost;
      }
    }
    plan.cost = nesting.cost;
    plan.bound = nesting.bound;
    assign_blanks(nesting, problem, names, stock_, plan);
    return plan;
  }

  bool nothing_is_wanted() const {
    return std::all_of(problem_.demands.begin(), problem_.demands.end(),
                       [](int count) { return count == 0; });
  }

  void add_size(const BlankOrder& line) {
    const BlankSize wanted{line.width, line.height, !line.grain};
    std::size_t i = 0;
    while (i < problem_.blanks.size() && (problem_.blanks[i].width != wanted.width ||
                                          problem_.blanks[i].height != wanted.height ||
                                          problem_.blanks[i].may_turn != wanted.may_turn)) {
      ++i;
    }
    if (i == problem_.blanks.size()) {
      problem_.blanks.push_back(wanted);
      problem_.demands.push_back(0);
    }
    problem_.demands[i] += line.quantity;
    names_.size_of_line.push_back(static_cast<int>(i));
  }

  // Those that could hold a blank, as stock that costs what it would count for when it is kept.
  void add_fallouts(const KeepRule& keep, NestingProblem& problem, BoardNesting& names) const {
    std::map<std::pair<Length, Length>, int> counts;
    for (const BlankOrder& line : plan_.lines) {
      for (const Fallout& fallout : line.fallouts) {
        if (holds_a_blank(fallout)) counts[{fallout.width, fallout.height}] += line.quantity;
      }
    }
    for (const auto& [size, count] : counts) {
      const std::int64_t value = offcut_value(stock_, plan_.board, size.first, size.second, keep);
      problem.stock.push_back({size.first, size.second, value, count});
      names.stock_of_kind.push_back(-1);
      names.fallout_of_kind.push_back({size.first, size.second, 0});
    }
  }

  bool holds_a_blank(const Fallout& fallout) const {
    return std::any_of(problem_.blanks.begin(), problem_.blanks.end(), [&](const BlankSize& blank) {
      return (blank.width <= fallout.width && blank.height <= fallout.height) ||
             (blank.may_turn && blank.height <= fallout.width && blank.width <= fallout.height);
    });
  }

  Problem no_such_board() const {
    std::vector<std::string_view> names;
    for (const StockPiece& piece : stock_.pieces) names.push_back(piece.board.name);
    std::string message = "order " + plan_.lines.front().order + ", " + plan_.lines.front().layer +
                          ": found no sheet of " + describe(plan_.board, scale_) + " in the stock";
    std::vector<Board> others;
    for (const StockPiece& piece : stock_.pieces) {
      if (piece.board.name != plan_.board.name || piece.board == plan_.board) continue;
      if (std::find(others.begin(), others.end(), piece.board) == others.end()) {
        others.push_back(piece.board);
      }
    }
    for (const Board& board : others) {
      message += (board == others.front() ? "; it lists " : ", and ") + describe(board, scale_);
    }
    if (!others.empty()) return problem("sheets-no-such-board", message);
    const std::string_view near = near_name(plan_.board.name, names);
    if (!near.empty()) message += "; did you mean \"" + std::string(near) + "\"?";
    return problem("sheets-no-such-board", message);
  }

  const Stock& stock_;
  const SheetCutter& cutter_;
  const Scale& scale_;
  NestingProblem problem_;
  std::vector<StockKind> listed_;  // those of which none is on hand among them
  BoardNesting names_;
  BoardPlan plan_;
};

}  // namespace

std::int64_t SheetPlan::cost() const {
  std::int64_t sum = 0;
  for (const BoardPlan& board : boards) sum += board.cost;
  return sum;
}

std::int64_t SheetPlan::bound() const {
  std::int64_t sum = 0;
  for (const BoardPlan& board : boards) sum += board.bound;
  return sum;
}

bool SheetPlan::is_complete() const {
  return std::all_of(boards.begin(), boards.end(),
                     [](const BoardPlan& board) { return board.missing.empty(); });
}

Result<SheetPlan> plan_sheets(const std::vector<BlankOrder>& orders, const Stock& stock,
                              const SheetCutter& cutter, const Scale& scale,
                              const SheetPlanOptions& options) {
  std::map<Board, std::vector<BlankOrder>> by_board;
  for (const BlankOrder& order : orders) {
    by_board[listed_board(order.board, stock).value_or(order.board)].push_back(order);
  }

  SheetPlan plan;
  plan.currency = stock.currency;
  plan.scale = scale;
  plan.limits = cutter.limits;
  std::vector<BoardPlanner> planners;
  Problems problems;
  for (auto& [board, lines] : by_board) {
    planners.emplace_back(board, std::move(lines), stock, cutter, scale);
    const Problems notes = planners.back().add_stock();
    plan.notes.insert(plan.notes.end(), notes.begin(), notes.end());
    const Problems found = planners.back().impossible();
    problems.insert(problems.end(), found.begin(), found.end());
  }
  if (!problems.empty()) return tl::unexpected(problems);

  for (BoardPlanner& planner : planners) {
    SheetPlanProgress progress;
    progress.board = planner.board().name;
    progress.board_number = plan.boards.size() + 1;
    progress.boards = planners.size();
    plan.boards.push_back(planner.plan(options, progress, plan.notes));
  }
  if (put_in_stages(plan)) return plan;
  SheetPlanOptions without_fallouts = options;
  without_fallouts.reuse_fallouts = false;
  return plan_sheets(orders, stock, cutter, scale, without_fallouts);
}

}  // namespace mullion
