#include "engine/cuts/run/sequence.h"

#include <algorithm>
#include <limits>
#include <set>

namespace mullion {
namespace {

constexpr std::size_t most_kinds_searched = 10;

// What the scales show at a moment of the run.
class Scales {
 public:
  explicit Scales(const HandlingTimes& times) : times_(&times) {}

  // Seconds to bring them to the settings.
  std::int64_t cost(const Settings& to) const {
    std::int64_t seconds = 0;
    if (to.guide && now_.guide != to.guide) seconds += times_->guide_move;
    if (to.guide && now_.block != to.block) seconds += times_->gauge_change;
    if (now_.arm_block != to.arm_block) seconds += times_->gauge_change;
    if (to.near_stop && now_.near_stop != to.near_stop) seconds += times_->stop_move;
    if (to.far_stop && now_.far_stop != to.far_stop) seconds += times_->stop_move;
    return seconds;
  }
  std::int64_t set(const Settings& to) {
    const std::int64_t seconds = cost(to);
    now_ = to;
    return seconds;
  }

 private:
  const HandlingTimes* times_;
  Settings now_;
};

class Sequencer {
 public:
  Sequencer(const std::vector<CuttingPlan>& plans, const HandlingTimes& times)
      : plans_(plans), times_(times) {
    for (std::size_t k = 0; k < plans_.size(); ++k) chains_.push_back(chain(static_cast<int>(k)));
  }

  Sequence find() {
    const std::vector<RunWork> after = kind_after_kind();
    const std::vector<RunWork> mixed = mix();
    const std::int64_t after_cost = moves(after), mixed_cost = moves(mixed);
    Sequence out;
    out.mixed = mixed_cost < after_cost;
    out.work = out.mixed ? mixed : after;
    out.moves = std::min(after_cost, mixed_cost);
    for (const auto& own : chains_) out.own_moves += moves(own);
    out.least_moves = least_moves();
    return out;
  }

 private:
  std::vector<RunWork> chain(int kind) const {
    std::vector<RunWork> out;
    const auto& stages = plans_[static_cast<std::size_t>(kind)].stages;
    for (std::size_t s = 0; s < stages.size(); ++s) {
      const int count = static_cast<int>(stages[s].set_ups.size());
      if (count == 0) out.push_back({kind, static_cast<int>(s), -1});
      for (int u = 0; u < count; ++u) out.push_back({kind, static_cast<int>(s), u});
    }
    return out;
  }

  const Settings& settings(const RunWork& work) const {
    return settings_of(plans_[static_cast<std::size_t>(work.kind)], work);
  }

  // Curves alone leave the scales as they are.
  std::int64_t make(Scales& scales, const RunWork& work) const {
    return work.set_up < 0 ? 0 : scales.set(settings(work));
  }
  std::int64_t play(Scales& scales, const std::vector<RunWork>& all) const {
    std::int64_t seconds = 0;
    for (const RunWork& work : all) seconds += make(scales, work);
    return seconds;
  }
  std::int64_t moves(const std::vector<RunWork>& all) const {
    Scales scales(times_);
    return play(scales, all);
  }

  std::vector<RunWork> kind_after_kind() const {
    std::vector<RunWork> out;
    for (const std::size_t kind : sequence()) {
      out.insert(out.end(), chains_[kind].begin(), chains_[kind].end());
    }
    return out;
  }

  // cost[i][j]: the moves of kind j straight after kind i.
  std::vector<std::vector<std::int64_t>> costs() const {
    std::vector<std::vector<std::int64_t>> cost(chains_.size());
    for (std::size_t i = 0; i < chains_.size(); ++i) {
      Scales after(times_);
      play(after, chains_[i]);
      for (const auto& next : chains_) {
        Scales scales = after;
        cost[i].push_back(play(scales, next));
      }
    }
    return cost;
  }

  std::vector<std::size_t> sequence() const {
    const auto cost = costs();
    return chains_.size() <= most_kinds_searched ? best_sequence(cost) : nearest_next(cost);
  }

  std::vector<std::size_t> nearest_next(const std::vector<std::vector<std::int64_t>>& cost) const {
    std::vector<std::size_t> out = {0}, left;
    for (std::size_t i = 1; i < chains_.size(); ++i) left.push_back(i);
    while (!left.empty()) {
      const auto next = std::min_element(left.begin(), left.end(), [&](auto a, auto b) {
        return cost[out.back()][a] < cost[out.back()][b];
      });
      out.push_back(*next);
      left.erase(next);
    }
    return out;
  }

  // Dynamic programming over the kinds that are done and the last of them.
  std::vector<std::size_t> best_sequence(const std::vector<std::vector<std::int64_t>>& cost) const {
    constexpr std::int64_t never = std::numeric_limits<std::int64_t>::max() / 2;
    const std::size_t n = chains_.size(), all = std::size_t{1} << n;
    std::vector<std::vector<std::int64_t>> best(all, std::vector<std::int64_t>(n, never));
    std::vector<std::vector<std::size_t>> from(all, std::vector<std::size_t>(n, n));
    for (std::size_t k = 0; k < n; ++k) best[std::size_t{1} << k][k] = moves(chains_[k]);
    for (std::size_t done = 1; done < all; ++done) {
      for (std::size_t last = 0; last < n; ++last) {
        if (best[done][last] == never) continue;
        for (std::size_t next = 0; next < n; ++next) {
          const std::size_t with = done | std::size_t{1} << next;
          const std::int64_t total = best[done][last] + cost[last][next];
          if (with == done || total >= best[with][next]) continue;
          best[with][next] = total;
          from[with][next] = last;
        }
      }
    }
    std::size_t done = all - 1;
    auto last = static_cast<std::size_t>(std::min_element(best[done].begin(), best[done].end()) -
                                         best[done].begin());
    std::vector<std::size_t> out;
    while (last < n) {
      out.push_back(last);
      const std::size_t before = from[done][last];
      done &= ~(std::size_t{1} << last);
      last = before;
    }
    std::reverse(out.begin(), out.end());
    return out;
  }

  std::vector<RunWork> mix() const {
    std::vector<std::size_t> at(chains_.size(), 0);
    Scales scales(times_);
    std::vector<RunWork> out;
    for (;;) {
      const RunWork* best = nullptr;
      for (std::size_t k = 0; k < chains_.size(); ++k) {
        if (at[k] == chains_[k].size()) continue;
        const RunWork& next = chains_[k][at[k]];
        if (best == nullptr || comes_before(next, *best, scales)) best = &next;
      }
      if (best == nullptr) return out;
      make(scales, *best);
      ++at[static_cast<std::size_t>(best->kind)];
      out.push_back(*best);
    }
  }

  // Less to move; then the guide farther out, since it only comes in.
  bool comes_before(const RunWork& a, const RunWork& b, const Scales& scales) const {
    const std::int64_t cost_a = scales.cost(settings(a)), cost_b = scales.cost(settings(b));
    if (cost_a != cost_b) return cost_a < cost_b;
    return settings(a).guide.value_or(Length()) > settings(b).guide.value_or(Length());
  }

  std::int64_t least_moves() const {
    std::set<Length> guides;
    std::set<Length> near_stops, far_stops;
    for (const auto& all : chains_) {
      for (const RunWork& work : all) {
        const Settings& s = settings(work);
        if (s.guide) guides.insert(*s.guide);
        if (s.near_stop) near_stops.insert(*s.near_stop);
        if (s.far_stop) far_stops.insert(*s.far_stop);
      }
    }
    const auto count = [](const auto& set) { return static_cast<std::int64_t>(set.size()); };
    return count(guides) * times_.guide_move +
           (count(near_stops) + count(far_stops)) * times_.stop_move;
  }

  const std::vector<CuttingPlan>& plans_;
  const HandlingTimes& times_;
  std::vector<std::vector<RunWork>> chains_;
};

}  // namespace

const Settings& settings_of(const CuttingPlan& plan, const RunWork& work) {
  static const Settings none;
  if (work.set_up < 0) return none;
  return plan.stages[static_cast<std::size_t>(work.stage)]
      .set_ups[static_cast<std::size_t>(work.set_up)]
      .settings;
}

Sequence sequence_of(const std::vector<CuttingPlan>& plans, const HandlingTimes& times) {
  return Sequencer(plans, times).find();
}

}  // namespace mullion
