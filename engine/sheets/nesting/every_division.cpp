#include "engine/sheets/nesting/every_division.h"

#include <algorithm>
#include <numeric>
#include <utility>

#include "engine/sheets/nesting/tidy.h"

namespace mullion {
namespace {

using Kind = Pattern::Kind;

constexpr std::size_t most_groups = std::size_t{1} << 16;
constexpr std::size_t most_boxes = 400'000;

// The least rectangle of a group of blanks, in ticks and grown by the kerf.
struct Box {
  std::int64_t width = 0, height = 0;
  int blank = -1;  // or two boxes, joined
  bool turned = false;
  bool columns = false;
  std::uint32_t first_group = 0, first_box = 0, second_group = 0, second_box = 0;
};

// A group is a number: how many of each size, in mixed radix.
class Divisions {
 public:
  Divisions(const NestingProblem& problem, const std::vector<int>& wanted,
            const std::vector<int>& sheets, double least_area, std::int64_t most_effort)
      : problem_(problem), sheets_(sheets), least_area_(least_area), most_effort_(most_effort) {
    kerf_ = problem.limits.kerf.ticks();
    std::size_t groups = 1;
    for (std::size_t i = 0; i < wanted.size() && groups <= most_groups; ++i) {
      if (wanted[i] <= 0) continue;
      sizes_.push_back(static_cast<int>(i));
      counts_.push_back(wanted[i]);
      places_.push_back(groups);
      groups *= static_cast<std::size_t>(wanted[i]) + 1;
    }
    groups_ = groups;
    double room = 0;
    for (const int kind : sheets) {
      room += area(kind);
      widest_ = std::max(widest_, stock(kind).width.ticks() + kerf_);
      tallest_ = std::max(tallest_, stock(kind).height.ticks() + kerf_);
    }
    const bool all = least_area >= area_of(problem.blanks, wanted) - 0.5;
    double least = all ? 0 : least_area;
    for (std::size_t s = 0; all && s < sizes_.size(); ++s) least += counts_[s] * blank_area(s);
    slack_ = room - least;
  }

  Division search(std::vector<CutSheet>& found) {
    if (slack_ < -0.5) return Division::impossible;
    if (groups_ > most_groups) return Division::open;
    if (!make_boxes()) return Division::open;
    return divide(found);
  }

  std::int64_t effort() const { return effort_; }

 private:
  const StockKind& stock(int kind) const { return problem_.stock[static_cast<std::size_t>(kind)]; }
  double area(int kind) const {
    return static_cast<double>(stock(kind).width.ticks() + kerf_) *
           static_cast<double>(stock(kind).height.ticks() + kerf_);
  }
  const BlankSize& blank(std::size_t size) const {
    return problem_.blanks[static_cast<std::size_t>(sizes_[size])];
  }
  double blank_area(std::size_t size) const {
    return static_cast<double>(blank(size).width.ticks() + kerf_) *
           static_cast<double>(blank(size).height.ticks() + kerf_);
  }
  double bare_area(std::size_t group) const {  // without kerfs
    std::vector<int> counts(problem_.blanks.size(), 0);
    const std::vector<int> digits = digits_of(group);
    for (std::size_t s = 0; s < sizes_.size(); ++s) {
      counts[static_cast<std::size_t>(sizes_[s])] = digits[s];
    }
    return area_of(problem_.blanks, counts);
  }
  std::vector<int> digits_of(std::size_t group) const {
    std::vector<int> digits(sizes_.size());
    for (std::size_t s = 0; s < sizes_.size(); ++s) {
      digits[s] = static_cast<int>(group / places_[s] % (static_cast<std::size_t>(counts_[s]) + 1));
    }
    return digits;
  }

  // Calls use(part) for every part of the group but none and, where use gives false, ends.
  template <class Use>
  bool for_each_part(const std::vector<int>& digits, Use use) {
    std::vector<int> part(digits.size(), 0);
    std::size_t number = 0;
    for (;;) {
      std::size_t s = 0;
      while (s < digits.size() && part[s] == digits[s]) {
        number -= static_cast<std::size_t>(part[s]) * places_[s];
        part[s++] = 0;
      }
      if (s == digits.size()) return true;
      ++part[s];
      number += places_[s];
      ++effort_;
      if (!use(number)) return false;
    }
  }

  bool make_boxes() {
    boxes_.resize(groups_);
    areas_.assign(groups_, 0.0);
    for (std::size_t group = 1; group < groups_; ++group) {
      const std::vector<int> digits = digits_of(group);
      for (std::size_t s = 0; s < sizes_.size(); ++s) areas_[group] += digits[s] * blank_area(s);
      if (std::accumulate(digits.begin(), digits.end(), 0) == 1) {
        add_blank(
            static_cast<std::size_t>(std::find(digits.begin(), digits.end(), 1) - digits.begin()),
            group);
      } else {
        for_each_part(digits, [&](std::size_t part) {
          const std::size_t rest = group - part;
          if (part < rest || rest == 0) return true;
          join(part, rest, group);
          return true;
        });
      }
      box_count_ += boxes_[group].size();
      if (box_count_ > most_boxes || effort_ > most_effort_) return false;
    }
    return true;
  }

  void add_blank(std::size_t size, std::size_t group) {
    Box box;
    box.width = blank(size).width.ticks() + kerf_;
    box.height = blank(size).height.ticks() + kerf_;
    box.blank = sizes_[size];
    keep(box, group);
    if (!blank(size).may_turn) return;
    std::swap(box.width, box.height);
    box.turned = true;
    keep(box, group);
  }

  void join(std::size_t first, std::size_t second, std::size_t group) {
    Box box;
    box.first_group = static_cast<std::uint32_t>(first);
    box.second_group = static_cast<std::uint32_t>(second);
    const std::vector<Box>&a = boxes_[first], &b = boxes_[second];
    effort_ += static_cast<std::int64_t>(2 * a.size() * b.size());
    for (std::uint32_t i = 0; i < a.size(); ++i) {
      for (std::uint32_t j = 0; j < b.size(); ++j) {
        box.first_box = i;
        box.second_box = j;
        box.columns = true;
        box.width = a[i].width + b[j].width;
        box.height = std::max(a[i].height, b[j].height);
        keep(box, group);
        box.columns = false;
        box.width = std::max(a[i].width, b[j].width);
        box.height = a[i].height + b[j].height;
        keep(box, group);
      }
    }
  }

  void keep(const Box& box, std::size_t group) {
    if (box.width > widest_ || box.height > tallest_) return;
    const double waste =
        static_cast<double>(box.width) * static_cast<double>(box.height) - areas_[group];
    if (waste > slack_ + 0.5) return;
    std::vector<Box>& known = boxes_[group];
    for (const Box& other : known) {
      if (other.width <= box.width && other.height <= box.height) return;
    }
    std::erase_if(known, [&box](const Box& other) {
      return box.width <= other.width && box.height <= other.height;
    });
    known.push_back(box);
  }

  // The first box of the group that the sheet holds; -1: none.
  int box_in(std::size_t group, int kind) const {
    const std::vector<Box>& boxes = boxes_[group];
    for (std::size_t b = 0; b < boxes.size(); ++b) {
      if (boxes[b].width <= stock(kind).width.ticks() + kerf_ &&
          boxes[b].height <= stock(kind).height.ticks() + kerf_) {
        return static_cast<int>(b);
      }
    }
    return -1;
  }

  // Which groups the first sheets hold, sheet by sheet, and what the last of them holds then.
  Division divide(std::vector<CutSheet>& found) {
    constexpr std::uint32_t never = ~std::uint32_t{0};
    std::vector<std::vector<std::uint32_t>> held;
    std::vector<std::size_t> reached{0};
    for (const int kind : sheets_) {
      std::vector<std::size_t> fitting;
      for (std::size_t group = 1; group < groups_; ++group) {
        if (areas_[group] >= area(kind) - slack_ - 0.5 && box_in(group, kind) >= 0) {
          fitting.push_back(group);
        }
      }
      std::vector<std::uint32_t> now(groups_, never);
      for (const std::size_t before : reached) now[before] = 0;
      for (const std::size_t before : reached) {
        for (const std::size_t group : fitting) {
          if (++effort_ > most_effort_) return Division::open;
          if (!apart(before, group) || now[before + group] != never) continue;
          now[before + group] = static_cast<std::uint32_t>(group);
        }
      }
      reached.clear();
      for (std::size_t group = 0; group < groups_; ++group) {
        if (now[group] != never) reached.push_back(group);
      }
      held.push_back(std::move(now));
    }
    std::size_t left = 0;
    double most = 0;
    for (const std::size_t group : reached) {
      const double held_area = bare_area(group);
      if (held_area <= most || held_area < least_area_ - 0.5) continue;
      most = held_area;
      left = group;
    }
    if (left == 0) return Division::impossible;
    for (std::size_t s = sheets_.size(); s-- > 0;) {
      const std::size_t group = held[s][left];
      left -= group;
      if (group == 0) continue;
      const int kind = sheets_[s];
      const auto box = static_cast<std::size_t>(box_in(group, kind));
      CutSheet sheet{kind, pushed_together(pattern_of(boxes_[group][box]), stock(kind).width,
                                           stock(kind).height, problem_.limits)};
      if (!can_be_cut(sheet.pattern, problem_.limits)) return Division::open;
      found.push_back(std::move(sheet));
    }
    return Division::found;
  }

  bool apart(std::size_t a, std::size_t b) const {
    for (std::size_t s = 0; s < sizes_.size(); ++s) {
      const std::size_t radix = static_cast<std::size_t>(counts_[s]) + 1;
      if (a / places_[s] % radix + b / places_[s] % radix >= radix) return false;
    }
    return true;
  }

  Pattern pattern_of(const Box& box) const {
    Pattern pattern;
    if (box.blank >= 0) {
      pattern.kind = Kind::blank;
      pattern.blank = box.blank;
      pattern.turned = box.turned;
      pattern.width = Length::from_ticks(box.width - kerf_);
      pattern.height = Length::from_ticks(box.height - kerf_);
      return pattern;
    }
    pattern.kind = box.columns ? Kind::columns : Kind::rows;
    pattern.parts.push_back(pattern_of(boxes_[box.first_group][box.first_box]));
    pattern.parts.push_back(pattern_of(boxes_[box.second_group][box.second_box]));
    return pattern;
  }

  const NestingProblem& problem_;
  const std::vector<int>& sheets_;
  double least_area_;
  std::int64_t most_effort_;
  std::int64_t kerf_ = 0;
  std::vector<int> sizes_, counts_;
  std::vector<std::size_t> places_;
  std::size_t groups_ = 0, box_count_ = 0;
  std::vector<std::vector<Box>> boxes_;
  std::vector<double> areas_;
  std::int64_t widest_ = 0, tallest_ = 0;
  double slack_ = 0;
  std::int64_t effort_ = 0;
};

}  // namespace

Division divided(const NestingProblem& problem, const std::vector<int>& wanted,
                 const std::vector<int>& sheets, double least_area, std::int64_t most_effort,
                 std::int64_t& effort, std::vector<CutSheet>& found) {
  Divisions divisions(problem, wanted, sheets, least_area, most_effort);
  const Division result = divisions.search(found);
  if (result != Division::found) found.clear();
  effort += divisions.effort();
  return result;
}

double area_of(const std::vector<BlankSize>& blanks, const std::vector<int>& counts) {
  double sum = 0;
  for (std::size_t i = 0; i < counts.size(); ++i) {
    sum += counts[i] * (static_cast<double>(blanks[i].width.ticks()) *
                        static_cast<double>(blanks[i].height.ticks()));
  }
  return sum;
}

}  // namespace mullion
