#include "engine/suggest/composition.h"

#include <algorithm>
#include <set>

#include "engine/locale/locale.h"

namespace mullion::suggest {
namespace {

using Kind = Block::Kind;

constexpr double much_larger = 1.35;  // in area than the next picture

bool is_line_of_pictures(const Block& block) {
  return std::all_of(block.parts.begin(), block.parts.end(),
                     [](const Block& part) { return part.kind == Kind::picture; });
}

bool is_of_lines(const Block& block) {
  return std::all_of(block.parts.begin(), block.parts.end(), is_line_of_pictures);
}

// Openings of one size, in as many rows and columns as hold them all.
bool is_grid(const std::vector<Rect>& rects) {
  std::set<Length> lefts, tops;
  for (const Rect& r : rects) {
    if (r.width() != rects.front().width() || r.height() != rects.front().height()) return false;
    lefts.insert(r.left);
    tops.insert(r.top);
  }
  return lefts.size() > 1 && tops.size() > 1 && lefts.size() * tops.size() == rects.size();
}

bool lines_are_flush(const Block& block) {
  const bool rows = block.kind == Kind::column;
  const Length whole = rows ? block.width : block.height;
  return std::all_of(block.parts.begin(), block.parts.end(), [&](const Block& line) {
    const Length own = rows ? line.width : line.height;
    return number(whole - own) <= flush_enough * number(whole);
  });
}

double area(const Rect& rect) {
  return number(rect.width()) * number(rect.height());
}

struct Around {
  bool left = false, right = false, above = false, below = false;
  int sides() const { return int{left} + int{right} + int{above} + int{below}; }
};

// On which sides of the largest picture others stand, where it is much larger than they are.
Around around_largest(const std::vector<Rect>& rects) {
  Around out;
  if (rects.size() < 4) return out;
  std::vector<Rect> sorted = rects;
  std::stable_sort(sorted.begin(), sorted.end(),
                   [](const Rect& a, const Rect& b) { return area(a) > area(b); });
  const Rect& large = sorted[0];
  if (area(large) < much_larger * area(sorted[1])) return out;
  for (std::size_t i = 1; i < sorted.size(); ++i) {
    const Rect& r = sorted[i];
    const bool beside = r.top < large.bottom && large.top < r.bottom;
    const bool across = r.left < large.right && large.left < r.right;
    out.left |= beside && r.right <= large.left;
    out.right |= beside && r.left >= large.right;
    out.above |= across && r.bottom <= large.top;
    out.below |= across && r.top >= large.bottom;
  }
  return out;
}

bool outer_edges_are_flush(const std::vector<Rect>& rects, const Block& block) {
  const auto is_flush = [&](const Rect& r) {
    bool left = true, right = true, above = true, below = true;
    for (const Rect& other : rects) {
      const bool beside = other.top < r.bottom && r.top < other.bottom;
      const bool across = other.left < r.right && r.left < other.right;
      left &= !(beside && other.right <= r.left);
      right &= !(beside && other.left >= r.right);
      above &= !(across && other.bottom <= r.top);
      below &= !(across && other.top >= r.bottom);
    }
    const double slack_across = flush_enough * number(block.width);
    const double slack_down = flush_enough * number(block.height);
    return (!left || number(r.left) <= slack_across) &&
           (!right || number(block.width - r.right) <= slack_across) &&
           (!above || number(r.top) <= slack_down) &&
           (!below || number(block.height - r.bottom) <= slack_down);
  };
  return std::all_of(rects.begin(), rects.end(), is_flush);
}

bool is_like_a_title(const Block& block) {
  constexpr double low = 2.5;
  return block.kind == Kind::picture && number(block.width) >= low * number(block.height);
}

std::size_t titles_in(const Block& block) {
  std::size_t count = is_like_a_title(block) ? 1 : 0;
  for (const Block& part : block.parts) count += titles_in(part);
  return count;
}

// The only low one among at least three.
bool has_title_below(const Block& block) {
  return is_like_a_title(block.parts.back()) && titles_in(block) == 1 &&
         (block.parts.size() > 2 || block.parts.front().kind != Kind::picture);
}

bool is_moved(const Block& block) {
  return std::any_of(block.parts.begin(), block.parts.end(),
                     [](const Block& part) { return part.moved != Length(); });
}

std::vector<const Block*> pictures_in(const Block& line) {
  if (line.kind == Kind::picture) return {&line};
  std::vector<const Block*> out;
  for (const Block& picture : line.parts) out.push_back(&picture);
  return out;
}

// Lines that have one picture less in turn, all of one size and one gap apart, so that each line's
// pictures lie beside the gaps of the next.
bool is_staggered(const Block& block) {
  if (block.parts.size() < 3 || !is_of_lines(block)) return false;
  const auto count = [&](std::size_t line) { return pictures_in(block.parts[line]).size(); };
  const std::size_t longer = std::max(count(0), count(1)), shorter = std::min(count(0), count(1));
  if (longer != shorter + 1) return false;
  const Block& first = *pictures_in(block.parts[0]).front();
  std::set<Length> gaps;
  for (std::size_t i = 0; i < block.parts.size(); ++i) {
    if (count(i) != count(i % 2) || block.parts[i].align != Align::centre) return false;
    gaps.insert(block.parts[i].gaps.begin(), block.parts[i].gaps.end());
    for (const Block* picture : pictures_in(block.parts[i])) {
      if (picture->width != first.width || picture->height != first.height) return false;
    }
  }
  return gaps.size() <= 1;
}

// Pictures of different heights in each row, but for rows of one, all on the row's lower edge.
bool is_on_baselines(const Block& block) {
  const auto stands = [](const Block& row) {
    if (row.kind == Kind::picture) return true;
    return row.kind == Kind::row && row.align == Align::end && is_line_of_pictures(row);
  };
  const auto differs = [](const Block& row) {
    return row.kind == Kind::row &&
           std::any_of(row.parts.begin(), row.parts.end(), [&](const Block& picture) {
             return number(row.height - picture.height) > flush_enough * number(row.height);
           });
  };
  if (block.kind == Kind::row) return stands(block) && differs(block);
  return block.kind == Kind::column &&
         std::all_of(block.parts.begin(), block.parts.end(), stands) &&
         std::any_of(block.parts.begin(), block.parts.end(), differs);
}

}  // namespace

Composition composition_of(const Block& block, Length gap, std::size_t items) {
  if (block.kind == Kind::picture) return Composition::single;
  if (block.kind == Kind::ring) {
    return block.ring.across == block.ring.down ? Composition::ring : Composition::oval;
  }
  if (block.kind == Kind::pinwheel) return Composition::pinwheel;
  const bool column = block.kind == Kind::column;
  if (is_moved(block) || is_staggered(block)) {
    return column ? Composition::staggered_rows : Composition::staggered_columns;
  }
  if (is_on_baselines(block)) return Composition::baseline_rows;
  if (is_line_of_pictures(block)) return column ? Composition::column : Composition::row;
  if (column && has_title_below(block)) return Composition::title_below;
  const std::vector<Rect> rects = places(block, gap, items);
  if (is_grid(rects)) return Composition::grid;
  const Around around = around_largest(rects);
  if (around.sides() == 4) return Composition::centre_piece;
  if (is_of_lines(block)) {
    const bool flush = lines_are_flush(block);
    if (column) return flush ? Composition::flush_rows : Composition::rows;
    return flush ? Composition::flush_columns : Composition::columns;
  }
  if (around.sides() == 1) return Composition::side_piece;
  return outer_edges_are_flush(rects, block) ? Composition::flush_block : Composition::collage;
}

const char* name_of(Composition composition) {
  switch (composition) {
    case Composition::single:
      return mark("one picture");
    case Composition::row:
      return mark("one row");
    case Composition::column:
      return mark("one column");
    case Composition::grid:
      return mark("grid");
    case Composition::flush_rows:
      return mark("flush rows");
    case Composition::rows:
      return mark("rows");
    case Composition::flush_columns:
      return mark("flush columns");
    case Composition::columns:
      return mark("columns");
    case Composition::centre_piece:
      return mark("centre-piece");
    case Composition::side_piece:
      return mark("large picture at one side");
    case Composition::flush_block:
      return mark("flush block");
    case Composition::baseline_rows:
      return mark("rows on baselines");
    case Composition::title_below:
      return mark("title below");
    case Composition::ring:
      return mark("ring");
    case Composition::oval:
      return mark("oval");
    case Composition::pinwheel:
      return mark("pinwheel");
    case Composition::staggered_columns:
      return mark("staggered columns");
    case Composition::staggered_rows:
      return mark("staggered rows");
    case Composition::collage:
      return mark("collage");
  }
  return "";
}

}  // namespace mullion::suggest
