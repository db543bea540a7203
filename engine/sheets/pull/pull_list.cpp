#include "engine/sheets/pull/pull_list.h"

#include <algorithm>
#include <iterator>
#include <map>
#include <numeric>

namespace mullion {
namespace {

std::vector<int> sheets_by_piece(const SheetPlan* plan, const Stock& stock) {
  std::vector<int> counts(stock.pieces.size());
  if (plan == nullptr) return counts;
  for (const BoardPlan& board : plan->boards) {
    for (const PlannedSheet& sheet : board.sheets) {
      if (sheet.stock >= 0) ++counts[static_cast<std::size_t>(sheet.stock)];
    }
  }
  return counts;
}

// Shares a price by weights, each a whole number: what is left over goes to the largest remainders.
std::vector<std::int64_t> shared(std::int64_t price, const std::vector<double>& weights) {
  const double sum = std::accumulate(weights.begin(), weights.end(), 0.0);
  std::vector<std::int64_t> shares;
  std::vector<std::pair<double, std::size_t>> remainders;
  std::int64_t left = price;
  for (std::size_t i = 0; i < weights.size(); ++i) {
    const double exact = static_cast<double>(price) * weights[i] / sum;
    shares.push_back(static_cast<std::int64_t>(exact));
    left -= shares.back();
    remainders.emplace_back(static_cast<double>(shares.back()) - exact, i);
  }
  std::sort(remainders.begin(), remainders.end());
  for (std::size_t i = 0; left > 0; i = (i + 1) % remainders.size(), --left) {
    ++shares[remainders[i].second];
  }
  return shares;
}

}  // namespace

bool PullList::buys() const {
  return std::any_of(lines.begin(), lines.end(), [](const PullLine& line) { return line.buy > 0; });
}

std::vector<PullLine> PullList::purchases() const {
  std::vector<PullLine> found;
  std::copy_if(lines.begin(), lines.end(), std::back_inserter(found),
               [](const PullLine& line) { return line.buy > 0; });
  std::stable_sort(found.begin(), found.end(), [](const PullLine& a, const PullLine& b) {
    const std::string &one = a.piece->supplier, &other = b.piece->supplier;
    return std::pair(one.empty(), one) < std::pair(other.empty(), other);
  });
  return found;
}

PullList pull_list(const SheetPlan& plan, const Stock& stock, const SheetPlan* rest) {
  const std::vector<int> used = sheets_by_piece(&plan, stock);
  const std::vector<int> more = sheets_by_piece(rest, stock);
  PullList list;
  for (std::size_t i = 0; i < stock.pieces.size(); ++i) {
    const StockPiece& piece = stock.pieces[i];
    PullLine line;
    line.piece = &piece;
    line.needed = used[i] + more[i];
    if (line.needed == 0) continue;
    line.pull = piece.on_hand ? used[i] : 0;
    line.buy = std::max(line.needed - piece.on_hand.value_or(0), 0);
    line.packs = (line.buy + piece.pack - 1) / piece.pack;
    list.lines.push_back(line);
  }
  list.orders = costs_of_orders(plan);
  return list;
}

std::vector<OrderShare> costs_of_orders(const SheetPlan& plan) {
  std::vector<OrderShare> costs;
  std::map<std::string, std::size_t> places;
  for (const BoardPlan& board : plan.boards) {
    for (const BlankOrder& line : board.lines) {
      if (places.try_emplace(line.order, costs.size()).second) costs.push_back({line.order, 0});
    }
    for (const PlannedSheet& sheet : board.sheets) {
      std::vector<double> areas;
      for (const BlankCopy& copy : sheet.blanks) {
        const BlankOrder& line = board.lines[static_cast<std::size_t>(copy.line)];
        areas.push_back(to_inches(line.width) * to_inches(line.height));
      }
      const std::vector<std::int64_t> shares = shared(sheet.price, areas);
      for (std::size_t i = 0; i < shares.size(); ++i) {
        const BlankOrder& line = board.lines[static_cast<std::size_t>(sheet.blanks[i].line)];
        costs[places.at(line.order)].cost += shares[i];
      }
    }
  }
  return costs;
}

std::optional<SheetPlan> plan_missing(const SheetPlan& plan, const Stock& stock,
                                      const SheetCutter& cutter, const SheetPlanOptions& options) {
  std::vector<BlankOrder> orders;
  for (const BoardPlan& board : plan.boards) {
    std::map<int, int> counts;
    for (const BlankCopy& copy : board.missing) ++counts[copy.line];
    for (const auto& [line, count] : counts) {
      orders.push_back(board.lines[static_cast<std::size_t>(line)]);
      orders.back().board = board.board;
      orders.back().quantity = count;
    }
  }
  if (orders.empty()) return std::nullopt;
  Stock endless = stock;
  for (StockPiece& piece : endless.pieces) {
    if (piece.offcut) {
      piece.on_hand = 0;
    } else {
      piece.on_hand.reset();
    }
  }
  Result<SheetPlan> rest = plan_sheets(orders, endless, cutter, plan.scale, options);
  return rest && rest->is_complete() ? std::optional(std::move(*rest)) : std::nullopt;
}

}  // namespace mullion
