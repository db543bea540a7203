#include "engine/measures/dimensions.h"

#include <algorithm>
#include <optional>

#include "engine/edit/edit.h"
#include "engine/job/parts.h"

namespace mullion {
namespace {

bool is_stated_by_rule(const Job& job, const std::string& name) {
  return std::any_of(job.rules.begin(), job.rules.end(), [&](const Rule& rule) {
    return rule.kind == Rule::Kind::fixed && rule.strength == Strength::required &&
           rule.of.front() == name;
  });
}

Length middle(Length from, Length to) {
  return half_rounded_down(from + to);
}

class Lister {
 public:
  Lister(const Job& job, const Layout& layout, const Mat& mat)
      : job_(job), layout_(layout), mat_(mat), names_(edit::names_of(job)) {}

  std::vector<Dimension> list() {
    list_outer();
    list_borders();
    list_gaps(job_.arrangement);
    next_opening_ = 0;
    list_openings(job_.arrangement);
    for (const MatLayer& layer : mat_.layers) list_reveals(layer);
    return std::move(out_);
  }

 private:
  void add(std::string name, bool stated, Direction along, Length from, Length to, Length at) {
    const bool by_rule = !stated && is_stated_by_rule(job_, name);
    out_.push_back({std::move(name), to - from, stated || by_rule, along, from, to, at});
  }

  void list_outer() {
    add("outer.width", job_.outer_width.has_value(), Direction::across, Length(), layout_.width,
        layout_.height);
    add("outer.height", job_.outer_height.has_value(), Direction::down, Length(), layout_.height,
        layout_.width);
  }

  // Of the first opening that lies on that side of all.
  const Rect& outermost(Length Rect::*side, Length edge) const {
    const auto found =
        std::find_if(layout_.openings.begin(), layout_.openings.end(),
                     [&](const PlacedOpening& opening) { return opening.rect.*side == edge; });
    return found == layout_.openings.end() ? layout_.openings.front().rect : found->rect;
  }

  void list_borders() {
    const Borders& stated = job_.borders;
    const Length right = layout_.width - layout_.borders.right;
    const Length bottom = layout_.height - layout_.borders.bottom;
    const auto across = [&](const char* name, bool is_stated, Length from, Length to,
                            const Rect& beside) {
      add(name, is_stated, Direction::across, from, to, middle(beside.top, beside.bottom));
    };
    const auto down = [&](const char* name, bool is_stated, Length from, Length to,
                          const Rect& beside) {
      add(name, is_stated, Direction::down, from, to, middle(beside.left, beside.right));
    };
    across("border.left", stated.left.has_value(), Length(), layout_.borders.left,
           outermost(&Rect::left, layout_.borders.left));
    down("border.top", stated.top.has_value(), Length(), layout_.borders.top,
         outermost(&Rect::top, layout_.borders.top));
    across("border.right", stated.right.has_value(), right, layout_.width,
           outermost(&Rect::right, right));
    down("border.bottom", stated.bottom_size.has_value(), bottom, layout_.height,
         outermost(&Rect::bottom, bottom));
  }

  Rect list_gaps(const Node& node) {
    if (std::holds_alternative<Opening>(node.what)) return layout_.openings[next_opening_++].rect;
    const Group& group = std::get<Group>(node.what);
    const std::size_t own = next_group_++;
    list_places(group, own);
    std::optional<Rect> last;
    std::vector<Dimension> inside;
    for (std::size_t i = 0; i < group.children.size(); ++i) {
      const std::size_t before = out_.size();
      const Rect rect = list_gaps(group.children[i]);
      inside.insert(inside.end(), out_.begin() + static_cast<std::ptrdiff_t>(before), out_.end());
      out_.resize(before);
      if (last && is_line(group)) add_gap(group, own, i, *last, rect);
      last = rect;
    }
    out_.insert(out_.end(), inside.begin(), inside.end());
    return layout_.groups[own].rect;
  }

  static bool is_line(const Group& group) {
    return group.along == Along::row || group.along == Along::column;
  }

  // Of a ring its width, and an oval's height, through its centre; of places on the mat those that
  // are stated.
  void list_places(const Group& group, std::size_t number) {
    const std::string& name = names_.groups[number];
    if (const auto& ring = layout_.groups[number].ring) {
      const Length x = ring->centre - half_rounded_down(ring->across);
      const Length y = ring->middle - half_rounded_down(ring->down);
      add(name + ".across", group.ring.across.has_value(), Direction::across, x, x + ring->across,
          ring->middle);
      if (group.ring.down) {
        add(name + ".down", true, Direction::down, y, y + ring->down, ring->centre);
      }
    }
    if (group.along != Along::places) return;
    std::size_t opening = next_opening_, inner = next_group_;
    for (const Node& child : group.children) {
      const bool is_opening = std::holds_alternative<Opening>(child.what);
      const std::string& part = is_opening ? names_.openings[opening] : names_.groups[inner];
      const Rect& rect = is_opening ? layout_.openings[opening].rect : layout_.groups[inner].rect;
      list_spot(child.spot, part, rect);
      count(child, opening, inner);
    }
  }

  void list_spot(const OnMat& spot, const std::string& part, const Rect& rect) {
    const Length x = middle(rect.left, rect.right), y = middle(rect.top, rect.bottom);
    if (spot.left) add(part + ".left", true, Direction::across, Length(), rect.left, y);
    if (spot.top) add(part + ".top", true, Direction::down, Length(), rect.top, x);
    if (spot.right) add(part + ".right", true, Direction::across, rect.right, layout_.width, y);
    if (spot.bottom) add(part + ".bottom", true, Direction::down, rect.bottom, layout_.height, x);
  }

  static void count(const Node& node, std::size_t& openings, std::size_t& groups) {
    const auto* group = std::get_if<Group>(&node.what);
    if (group == nullptr) {
      ++openings;
      return;
    }
    ++groups;
    for (const Node& child : group->children) count(child, openings, groups);
  }

  void add_gap(const Group& group, std::size_t number, std::size_t i, const Rect& a,
               const Rect& b) {
    const std::string name = names_.groups[number] + ".gap." + std::to_string(i);
    const Gap gap = i <= group.gaps.size() ? group.gaps[i - 1] : Gap{{}, group.gap, {}};
    // A moved part leaves another gap than the one that is stated.
    const auto& parts = group.children;
    if (!parts[i - 1].shift.is_none() || !parts[i].shift.is_none()) return;
    const bool stated =
        gap.size.has_value() || (!gap.id.empty() && is_stated_by_rule(job_, gap.id));
    if (group.along == Along::row) {
      add(name, stated, Direction::across, a.right, b.left,
          middle(std::max(a.top, b.top), std::min(a.bottom, b.bottom)));
    } else {
      add(name, stated, Direction::down, a.bottom, b.top,
          middle(std::max(a.left, b.left), std::min(a.right, b.right)));
    }
  }

  void list_openings(const Node& node) {
    if (const auto* group = std::get_if<Group>(&node.what)) {
      for (const Node& child : group->children) list_openings(child);
      return;
    }
    constexpr std::int64_t parts = 10;  // a size stands within the opening, by its edge
    const Opening& opening = std::get<Opening>(node.what);
    const std::string& name = names_.openings[next_opening_];
    const Rect& sight = mat_.sights[next_opening_++];
    const auto part = [](Length length) { return Length::from_ticks(length.ticks() / parts); };
    add(name + ".width", opening.width.has_value(), Direction::across, sight.left, sight.right,
        sight.bottom - part(sight.height()));
    add(name + ".height", opening.height.has_value(), Direction::down, sight.top, sight.bottom,
        sight.left + part(sight.width()));
  }

  struct Strip {
    Rect outside, inside;
  };

  // Between the edge above and the layer's own, where both are windows of the same openings.
  std::optional<Strip> strip_of(const MatLayer& layer, const Window& window) const {
    for (auto above = static_cast<std::size_t>(layer.number - 1); above-- > 0;) {
      const MatLayer& over = mat_.layers[above];
      if (over.board.spacer) continue;
      for (const Window& upper : over.windows) {
        if (!upper.seen || !serves(upper, window.openings.front())) continue;
        if (upper.openings != window.openings) return std::nullopt;
        const bool seen = job_.reveal_reading == RevealReading::seen;
        return Strip{upper.back, seen ? window.face : window.back};
      }
    }
    return std::nullopt;
  }

  void list_reveals(const MatLayer& layer) {
    if (layer.number < 2 || layer.board.spacer) return;
    bool layer_is_told = false;
    for (const Window& window : layer.windows) {
      if (!window.seen) continue;
      const auto strip = strip_of(layer, window);
      if (!strip) continue;
      const auto number = static_cast<std::size_t>(window.openings.front() - 1);
      const bool own =
          window.openings.size() == 1 && openings()[number]->reveals.contains(layer.number);
      if (!own && layer_is_told) continue;
      layer_is_told = layer_is_told || !own;
      const std::string count = std::to_string(layer.number);
      add_reveal(own ? names_.openings[number] + ".reveal." + count : "layer." + count + ".reveal",
                 own, *strip);
    }
  }

  void add_reveal(const std::string& name, bool own, const Strip& strip) {
    const auto& [out, in] = strip;
    const Length left = in.left - out.left, top = in.top - out.top, right = out.right - in.right,
                 bottom = out.bottom - in.bottom;
    const Length usual = usual_for(job_.scale.unit).reveal;
    const Length x = middle(in.left, in.right), y = middle(in.top, in.bottom);
    const bool alike = left == top && left == right && left == bottom;
    // The usual one counts as found: to free it changes nothing.
    const auto side = [&](const char* word, Direction along, Length from, Length to, Length at) {
      const std::string dot = own ? "." : "-";
      add(alike ? own ? name + ".all" : name : name + dot + word, own || to - from != usual, along,
          from, to, at);
    };
    side("left", Direction::across, out.left, in.left, y);
    if (alike) return;
    side("top", Direction::down, out.top, in.top, x);
    side("right", Direction::across, in.right, out.right, y);
    side("bottom", Direction::down, in.bottom, out.bottom, x);
  }

  static void collect(const Node& node, std::vector<const Opening*>& out) {
    if (const auto* opening = std::get_if<Opening>(&node.what)) {
      out.push_back(opening);
      return;
    }
    for (const Node& child : std::get<Group>(node.what).children) collect(child, out);
  }
  const std::vector<const Opening*>& openings() {
    if (openings_.empty()) collect(job_.arrangement, openings_);
    return openings_;
  }

  const Job& job_;
  const Layout& layout_;
  const Mat& mat_;
  edit::PartNames names_;
  std::vector<const Opening*> openings_;
  std::vector<Dimension> out_;
  std::size_t next_opening_ = 0, next_group_ = 0;
};

}  // namespace

std::vector<Dimension> dimensions_of(const Job& job, const Layout& layout, const Mat& mat) {
  return Lister(job, layout, mat).list();
}

}  // namespace mullion
