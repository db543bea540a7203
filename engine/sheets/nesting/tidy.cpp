#include "engine/sheets/nesting/tidy.h"

#include <algorithm>
#include <map>
#include <numeric>

#include "engine/sheets/nesting/fill.h"

namespace mullion {
namespace {

using Kind = Pattern::Kind;
using Counts = std::vector<int>;

constexpr std::size_t most_parts_ordered = 5;
constexpr int most_ties_tried = 300;

Kind other(Kind kind) {
  return kind == Kind::columns ? Kind::rows : Kind::columns;
}

Length along(const Pattern& pattern, Kind kind) {
  return kind == Kind::columns ? pattern.width : pattern.height;
}

double square_inches(Length width, Length height) {
  return to_inches(width) * to_inches(height);
}

double offcut_of(Length width, Length height) {
  const bool keep = std::min(width, height) >= shorter_side_of_offcut &&
                    std::max(width, height) >= longer_side_of_offcut;
  return keep ? square_inches(width, height) : 0;
}

bool is_empty(const Counts& counts) {
  return std::all_of(counts.begin(), counts.end(), [](int n) { return n == 0; });
}

// Calls use(part, rest) for every part of the counts that is not empty.
template <class Use>
void for_each_part(const Counts& counts, Use use) {
  Counts part(counts.size(), 0);
  for (;;) {
    std::size_t i = 0;
    while (i < counts.size() && part[i] == counts[i]) part[i++] = 0;
    if (i == counts.size()) return;
    ++part[i];
    Counts rest(counts.size());
    std::transform(counts.begin(), counts.end(), part.begin(), rest.begin(), std::minus<>());
    use(part, rest);
  }
}

// Two patterns side by side or one above the other, in the least rectangle that holds both.
Pattern joined(const Pattern& a, const Pattern& b, Kind kind, Length kerf) {
  Pattern out;
  out.kind = kind;
  const Length sum = along(a, kind) + kerf + along(b, kind);
  const Length across = std::max(along(a, other(kind)), along(b, other(kind)));
  out.width = kind == Kind::columns ? sum : across;
  out.height = kind == Kind::columns ? across : sum;
  out.parts = {a, b};
  return out;
}

class LayAnew {
 public:
  LayAnew(const Pattern& pattern, const std::vector<BlankSize>& blanks, const CutLimits& limits)
      : blanks_(blanks), limits_(limits), width_(pattern.width), height_(pattern.height) {
    best_ = with_fewest_settings(pattern);
    best_offcut_ = usefulness_of(best_);
    best_settings_ = stop_settings(best_);
  }

  Pattern search(const Counts& counts) {
    take_off(width_, height_, counts);
    return std::move(best_);
  }

 private:
  struct Strip {
    Kind kind;
    Length size;  // across the cut that takes it off
    const Pattern* blanks;
  };

  static double usefulness_of(const Pattern& pattern) {
    return usefulness_of_offcuts({{0, pattern}});
  }

  // The least rectangles that hold these blanks; none is wider and higher than another.
  const std::vector<Pattern>& shapes(const Counts& counts) {
    if (const auto known = shapes_.find(counts); known != shapes_.end()) return known->second;
    std::vector<Pattern> found;
    if (std::accumulate(counts.begin(), counts.end(), 0) == 1) {
      add_blank(static_cast<int>(std::find(counts.begin(), counts.end(), 1) - counts.begin()),
                found);
    } else {
      for_each_part(counts, [&](const Counts& part, const Counts& rest) {
        if (is_empty(rest) || part < rest) return;
        for (const Pattern& a : shapes(part)) {
          for (const Pattern& b : shapes(rest)) {
            keep_least(joined(a, b, Kind::columns, limits_.kerf), found);
            keep_least(joined(a, b, Kind::rows, limits_.kerf), found);
          }
        }
      });
    }
    return shapes_[counts] = std::move(found);
  }

  void add_blank(int index, std::vector<Pattern>& found) const {
    const BlankSize& size = blanks_[static_cast<std::size_t>(index)];
    Pattern blank;
    blank.kind = Kind::blank;
    blank.blank = index;
    blank.width = size.width;
    blank.height = size.height;
    keep_least(blank, found);
    if (!size.may_turn) return;
    std::swap(blank.width, blank.height);
    blank.turned = true;
    keep_least(blank, found);
  }

  void keep_least(Pattern shape, std::vector<Pattern>& found) const {
    if (shape.width > width_ || shape.height > height_) return;
    const auto holds = [](const Pattern& a, const Pattern& b) {
      return a.width >= b.width && a.height >= b.height;
    };
    for (const Pattern& known : found) {
      if (holds(shape, known)) return;
    }
    found.erase(std::remove_if(found.begin(), found.end(),
                               [&](const Pattern& known) { return holds(known, shape); }),
                found.end());
    found.push_back(std::move(shape));
  }

  double area_of(const Counts& counts) const {
    double area = 0;
    for (std::size_t i = 0; i < counts.size(); ++i) {
      area += counts[i] * square_inches(blanks_[i].width, blanks_[i].height);
    }
    return area;
  }

  // Strips with blanks come off one after the other; the rectangle that remains is the off-cut.
  void take_off(Length width, Length height, const Counts& counts) {
    if (is_empty(counts)) return judge(width, height);
    const double most = square_inches(width, height) - area_of(counts);
    if (most < 0 || most / 1000 * most / 1000 < best_offcut_ - 1e-9) return;
    for_each_part(counts, [&](const Counts& part, const Counts& rest) {
      for (const Kind kind : {Kind::columns, Kind::rows}) {
        take_strip(width, height, kind, part, rest);
      }
    });
  }

  void take_strip(Length width, Length height, Kind kind, const Counts& part, const Counts& rest) {
    const Length whole = kind == Kind::columns ? width : height;
    const Length across = kind == Kind::columns ? height : width;
    const Pattern* least = nullptr;
    for (const Pattern& shape : shapes(part)) {
      if (along(shape, other(kind)) > across || along(shape, kind) > whole) continue;
      if (least == nullptr || along(shape, kind) < along(*least, kind)) least = &shape;
    }
    if (least == nullptr) return;
    const Length size = along(*least, kind);
    const Length left = std::max(whole - size - limits_.kerf, Length());
    if (left == Length() && !is_empty(rest)) return;
    strips_.push_back({kind, size, least});
    take_off(kind == Kind::columns ? left : width, kind == Kind::columns ? height : left, rest);
    strips_.pop_back();
  }

  void judge(Length width, Length height) {
    const double offcut = offcut_of(width, height) / 1000;
    if (offcut * offcut < best_offcut_ - 1e-9) return;
    const bool better = offcut * offcut > best_offcut_ + 1e-9;
    if (!better && ++ties_ > most_ties_tried) return;
    Pattern pattern = with_fewest_settings(built(0, width_, height_));
    if (!can_be_cut(pattern, limits_)) return;
    const double usefulness = usefulness_of(pattern);
    const int settings = stop_settings(pattern);
    if (std::pair(-usefulness, settings) >= std::pair(-best_offcut_, best_settings_)) return;
    best_ = std::move(pattern);
    best_offcut_ = usefulness;
    best_settings_ = settings;
  }

  // The pattern of the strips from `first` on in a board of that size.
  Pattern built(std::size_t first, Length width, Length height) const {
    Pattern waste;
    waste.width = width;
    waste.height = height;
    if (first == strips_.size()) return waste;
    const Strip& strip = strips_[first];
    const bool columns = strip.kind == Kind::columns;
    Pattern laid = pushed_together(*strip.blanks, columns ? strip.size : width,
                                   columns ? height : strip.size, limits_);
    const Length whole = columns ? width : height;
    if (strip.size == whole) return laid;
    const Length left = std::max(whole - strip.size - limits_.kerf, Length());
    Pattern rest = built(first + 1, columns ? left : width, columns ? height : left);
    Pattern out;
    out.kind = strip.kind;
    out.width = width;
    out.height = height;
    for (Pattern* part : {&laid, &rest}) {
      if (part->kind != out.kind) {
        out.parts.push_back(std::move(*part));
      } else {
        for (Pattern& inner : part->parts) out.parts.push_back(std::move(inner));
      }
    }
    return out;
  }

  const std::vector<BlankSize>& blanks_;
  const CutLimits& limits_;
  Length width_, height_;
  Pattern best_;
  double best_offcut_ = 0;
  int best_settings_ = 0;
  int ties_ = 0;
  std::vector<Strip> strips_;
  std::map<Counts, std::vector<Pattern>> shapes_;
};

// A part without extent stands for a cut along the edge, and stays the last.
bool may_be_ordered(const Pattern& pattern) {
  const std::size_t parts = pattern.parts.size();
  return parts > 1 && parts <= most_parts_ordered &&
         std::all_of(pattern.parts.begin(), pattern.parts.end(),
                     [&](const Pattern& part) { return along(part, pattern.kind) > Length(); });
}

// Tries every order of the node's parts, and then of the nodes within each, judging the whole.
bool order_parts(const Pattern& root, Pattern& node, int& settings) {
  bool improved = false;
  if (may_be_ordered(node)) {
    const std::vector<Pattern> parts = node.parts;
    std::vector<std::size_t> order(parts.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::vector<Pattern> best = parts;
    while (std::next_permutation(order.begin(), order.end())) {
      for (std::size_t i = 0; i < order.size(); ++i) node.parts[i] = parts[order[i]];
      const int found = stop_settings(root);
      if (found >= settings) continue;
      settings = found;
      best = node.parts;
      improved = true;
    }
    node.parts = std::move(best);
  }
  for (Pattern& part : node.parts) improved = order_parts(root, part, settings) || improved;
  return improved;
}

}  // namespace

bool can_be_cut(const Pattern& pattern, const CutLimits& limits) {
  if (pattern.kind == Kind::columns && !limits.allow(pattern.height, pattern.width)) return false;
  if (pattern.kind == Kind::rows && !limits.allow(pattern.width, pattern.height)) return false;
  return std::all_of(pattern.parts.begin(), pattern.parts.end(),
                     [&](const Pattern& part) { return can_be_cut(part, limits); });
}

Pattern with_fewest_settings(Pattern pattern) {
  int settings = stop_settings(pattern);
  while (settings > 1 && order_parts(pattern, pattern, settings)) {
  }
  return pattern;
}

Pattern laid_anew(const Pattern& pattern, const std::vector<BlankSize>& blanks,
                  const CutLimits& limits) {
  const Counts counts = counts_of(pattern, blanks.size());
  if (std::accumulate(counts.begin(), counts.end(), 0) > most_blanks_laid_anew) {
    return with_fewest_settings(pattern);
  }
  return LayAnew(pattern, blanks, limits).search(counts);
}

}  // namespace mullion
