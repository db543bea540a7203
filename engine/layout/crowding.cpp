#include "engine/layout/crowding.h"

#include <algorithm>

#include "engine/job/standing.h"
#include "engine/layout/holding.h"
#include "engine/layout/ring.h"

namespace mullion::layout {
namespace {

constexpr std::size_t most_crowded = 8;

// From one opening to one past another, by index.
struct Stretch {
  std::size_t begin = 0, end = 0;
};

bool is_placed_freely(const Node& node) {
  const auto* group = std::get_if<Group>(&node.what);
  if (group == nullptr) return false;
  if (group->along == Along::ring || group->along == Along::places) return true;
  return std::any_of(group->children.begin(), group->children.end(), [](const Node& child) {
    return !child.shift.is_none() || is_placed_freely(child);
  });
}

class Looking {
 public:
  Looking(const Job& job, const Layout& layout)
      : job_(job), layout_(layout), openings_(standings_of(job.arrangement)) {}

  std::vector<Crowded> run() {
    look_at(job_.arrangement);
    std::stable_sort(out_.begin(), out_.end(), [](const Crowded& a, const Crowded& b) {
      return std::pair(a.first, a.second) < std::pair(b.first, b.second);
    });
    return std::move(out_);
  }

 private:
  Stretch look_at(const Node& node) {
    const std::size_t begin = next_;
    const auto* group = std::get_if<Group>(&node.what);
    if (group == nullptr) return {begin, ++next_};
    std::vector<Stretch> parts;
    for (const Node& child : group->children) parts.push_back(look_at(child));
    const bool in_line = group->along == Along::row || group->along == Along::column;
    for (std::size_t i = 0; i < parts.size(); ++i) {
      for (std::size_t j = 0; j < i; ++j) {
        const bool is_moved =
            !group->children[i].shift.is_none() || !group->children[j].shift.is_none();
        if (in_line && !is_moved) continue;
        look_between(parts[j], parts[i]);
      }
    }
    if (group->along == Along::ring) advise(*group, parts);
    return {begin, next_};
  }

  void look_between(const Stretch& a, const Stretch& b) {
    for (std::size_t i = a.begin; i < a.end; ++i) {
      for (std::size_t j = b.begin; j < b.end; ++j) look_at_pair(i, j);
    }
  }

  // The least circle with bars that hold, for the pairs within this ring.
  void advise(const Group& group, const std::vector<Stretch>& parts) {
    const bool is_moved = std::any_of(group.children.begin(), group.children.end(),
                                      [](const Node& child) { return !child.shift.is_none(); });
    if (!group.ring.across || group.ring.down || is_moved) return;
    const int first = static_cast<int>(parts.front().begin), last = static_cast<int>(next_);
    std::vector<PartSize> sizes;
    for (const Stretch& part : parts) {
      Rect all = layout_.openings[part.begin].rect;
      for (std::size_t i = part.begin; i < part.end; ++i) {
        const Rect& r = layout_.openings[i].rect;
        all = {std::min(all.left, r.left), std::min(all.top, r.top), std::max(all.right, r.right),
               std::max(all.bottom, r.bottom)};
      }
      sizes.push_back({all.width(), all.height()});
    }
    Group free = group;
    free.ring.across.reset();
    for (Crowded& pair : out_) {
      if (pair.first <= first || pair.second > last || pair.ring) continue;
      pair.ring = ring_places(free, sizes, job_.scale.increment, pair.least).across;
    }
  }

  void look_at_pair(std::size_t i, std::size_t j) {
    if (out_.size() == most_crowded) return;
    const Opening &one = *openings_[i].opening, &other = *openings_[j].opening;
    if (one.shape.kind != ShapeKind::rectangle || other.shape.kind != ShapeKind::rectangle) return;
    const Rect &a = layout_.openings[i].rect, &b = layout_.openings[j].rect;
    const Length beside = std::max(b.left - a.right, a.left - b.right);
    const Length above = std::max(b.top - a.bottom, a.top - b.bottom);
    const Reach first = reach_of(job_, one), second = reach_of(job_, other);
    const auto least = [&](Length reach) {
      return job_.least_bar ? *job_.least_bar : least_held_bar(job_, reach);
    };
    const Length across_least = least(first.across + second.across);
    const Length down_least = least(first.down + second.down);
    if (beside >= across_least || above >= down_least) return;
    const bool is_beside = beside >= above;
    out_.push_back({static_cast<int>(i) + 1, static_cast<int>(j) + 1, std::max(beside, above),
                    is_beside ? across_least : down_least, std::nullopt});
  }

  const Job& job_;
  const Layout& layout_;
  std::vector<Standing> openings_;
  std::vector<Crowded> out_;
  std::size_t next_ = 0;
};

}  // namespace

std::vector<Crowded> crowded(const Job& job, const Layout& layout) {
  if (!is_placed_freely(job.arrangement)) return {};
  return Looking(job, layout).run();
}

Problems told_crowding(const std::vector<Crowded>& near, const Job& job, const Layout& layout,
                       const Locale& locale) {
  const std::vector<Standing> openings = standings_of(job.arrangement);
  Problems out;
  for (const Crowded& pair : near) {
    const auto at = [&](int number) { return static_cast<std::size_t>(number) - 1; };
    const std::string &one = layout.openings[at(pair.first)].id,
                      &other = layout.openings[at(pair.second)].id;
    const auto text = [&](Length length) { return locale.described(length, job.scale); };
    const bool overlap = pair.bar < Length();
    std::string message =
        overlap ? locale.say(
                      "openings \"%1\" and \"%2\" overlap by %3; expected at least %4 "
                      "between them",
                      one, other, text(-pair.bar), text(pair.least))
                : locale.say(
                      "the bar between openings \"%1\" and \"%2\" is %3; at least %4 can "
                      "be cut and holds",
                      one, other, text(pair.bar), text(pair.least));
    if (pair.ring)
      message = locale.say("%1; a ring %2 across would fit", message, text(*pair.ring));
    out.push_back({Severity::error, overlap ? "layout-overlap" : "layout-too-near",
                   std::move(message), openings[at(pair.second)].opening->place, job.file});
  }
  return out;
}

}  // namespace mullion::layout
