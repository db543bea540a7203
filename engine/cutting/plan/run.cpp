#include "engine/cutting/plan/run.h"

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
    if (to.guide && (now_.guide != to.guide || now_.block != to.block)) {
      seconds += times_->guide_move;
    }
    if (to.near_stop && now_.near_stop != to.near_stop) seconds += times_->stop_move;
    if (to.far_stop && now_.far_stop != to.far_stop) seconds += times_->stop_move;
    return seconds;
  }
  std::int64_t set(const Settings& to) {
    const std::int64_t seconds = cost(to);
    if (to.guide) {
      now_.guide = to.guide;
      now_.block = to.block;
    }
    if (to.near_stop) now_.near_stop = to.near_stop;
    if (to.far_stop) now_.far_stop = to.far_stop;
    return seconds;
  }

 private:
  const HandlingTimes* times_;
  Settings now_;
};

class Run {
 public:
  Run(std::vector<CuttingPlan> plans, const CutterProfile& cutter)
      : plans_(std::move(plans)), times_(cutter.times) {
    for (std::size_t k = 0; k < plans_.size(); ++k) chains_.push_back(chain(static_cast<int>(k)));
  }

  CuttingRun plan() {
    const std::vector<RunStep> after = kind_after_kind();
    const std::vector<RunStep> mixed = mix();
    const std::int64_t after_cost = moves(after), mixed_cost = moves(mixed);
    CuttingRun out;
    out.mixed = mixed_cost < after_cost;
    out.steps = out.mixed ? mixed : after;
    std::int64_t handling = 0;
    for (std::size_t k = 0; k < plans_.size(); ++k) {
      out.alone += plans_[k].seconds;
      handling += plans_[k].seconds - moves(chains_[k]);
    }
    out.seconds = handling + std::min(after_cost, mixed_cost);
    // Every kind's own order is what its plan says; only the moves have a floor.
    out.bound = handling + least_moves();
    out.plans = std::move(plans_);
    return out;
  }

 private:
  std::vector<RunStep> chain(int kind) const {
    std::vector<RunStep> out;
    const auto& stages = plans_[static_cast<std::size_t>(kind)].stages;
    for (std::size_t s = 0; s < stages.size(); ++s) {
      for (std::size_t u = 0; u < stages[s].set_ups.size(); ++u) {
        out.push_back({kind, static_cast<int>(s), static_cast<int>(u)});
      }
    }
    return out;
  }

  const Settings& settings(const RunStep& step) const {
    return plans_[static_cast<std::size_t>(step.kind)]
        .stages[static_cast<std::size_t>(step.stage)]
        .set_ups[static_cast<std::size_t>(step.set_up)]
        .settings;
  }

  std::int64_t play(Scales& scales, const std::vector<RunStep>& steps) const {
    std::int64_t seconds = 0;
    for (const RunStep& step : steps) seconds += scales.set(settings(step));
    return seconds;
  }
  std::int64_t moves(const std::vector<RunStep>& steps) const {
    Scales scales(times_);
    return play(scales, steps);
  }

  std::vector<RunStep> kind_after_kind() const {
    std::vector<RunStep> out;
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

  std::vector<RunStep> mix() const {
    std::vector<std::size_t> at(chains_.size(), 0);
    Scales scales(times_);
    std::vector<RunStep> out;
    for (;;) {
      const RunStep* best = nullptr;
      for (std::size_t k = 0; k < chains_.size(); ++k) {
        if (at[k] == chains_[k].size()) continue;
        const RunStep& step = chains_[k][at[k]];
        if (best == nullptr || comes_before(step, *best, scales)) best = &step;
      }
      if (best == nullptr) return out;
      scales.set(settings(*best));
      ++at[static_cast<std::size_t>(best->kind)];
      out.push_back(*best);
    }
  }

  // Less to move; then the guide farther out, since it only comes in.
  bool comes_before(const RunStep& a, const RunStep& b, const Scales& scales) const {
    const std::int64_t cost_a = scales.cost(settings(a)), cost_b = scales.cost(settings(b));
    if (cost_a != cost_b) return cost_a < cost_b;
    return settings(a).guide.value_or(Length()) > settings(b).guide.value_or(Length());
  }

  std::int64_t least_moves() const {
    std::set<std::pair<Length, Length>> guides;
    std::set<Length> near_stops, far_stops;
    for (const auto& steps : chains_) {
      for (const RunStep& step : steps) {
        const Settings& s = settings(step);
        if (s.guide) guides.insert({*s.guide, s.block ? s.block->width : Length()});
        if (s.near_stop) near_stops.insert(*s.near_stop);
        if (s.far_stop) far_stops.insert(*s.far_stop);
      }
    }
    const auto count = [](const auto& set) { return static_cast<std::int64_t>(set.size()); };
    return count(guides) * times_.guide_move +
           (count(near_stops) + count(far_stops)) * times_.stop_move;
  }

  std::vector<CuttingPlan> plans_;
  const HandlingTimes& times_;
  std::vector<std::vector<RunStep>> chains_;
};

}  // namespace

Result<CuttingRun> plan_run(const std::vector<RunKind>& kinds, const CutterProfile& cutter,
                            const PlanOptions& options) {
  std::vector<CuttingPlan> plans;
  Problems problems;
  for (const RunKind& kind : kinds) {
    PlanOptions own = options;
    own.quantity = kind.quantity;
    Result<CuttingPlan> plan = plan_cutting(kind.mat, cutter, own);
    if (plan) {
      plan->title = kind.name;
      plans.push_back(std::move(*plan));
      continue;
    }
    for (Problem& problem : plan.error()) {
      problem.message = kind.name + ": " + problem.message;
      problems.push_back(std::move(problem));
    }
  }
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  if (plans.empty()) return CuttingRun{};
  return Run(std::move(plans), cutter).plan();
}

std::int64_t minutes(const CuttingRun& run) {
  return (run.seconds + 59) / 60;
}

}  // namespace mullion
