#include "engine/suggest/lines.h"

#include <algorithm>
#include <numeric>

#include "engine/suggest/growing.h"

namespace mullion::suggest {
namespace {

using Kind = Block::Kind;
using Line = std::vector<Block>;

constexpr int most_lines_beside = 3;

Length across(const Block& block, Kind kind) {
  return along(block, other_way(kind));
}

Length length_of(const Line& line, Kind kind, Length gap) {
  Length out = gap * (static_cast<std::int64_t>(line.size()) - 1);
  for (const Block& block : line) out += along(block, kind);
  return out;
}

// The largest in the middle, the others on its two sides in turn.
template <class T, class SizeOf>
std::vector<T> largest_inside(std::vector<T> list, const SizeOf& size_of) {
  std::stable_sort(list.begin(), list.end(),
                   [&](const T& a, const T& b) { return size_of(a) > size_of(b); });
  std::vector<T> out;
  for (std::size_t i = 0; i < list.size(); ++i) {
    out.insert(i % 2 == 0 ? out.end() : out.begin(), list[i]);
  }
  return out;
}

Block of_lines(const std::vector<Line>& lines, Kind kind, Length gap) {
  Line made;
  for (const Line& line : lines) {
    made.push_back(chain(kind, largest_inside(line, [&](const Block& b) { return area(b); }), gap));
  }
  const Kind down = other_way(kind);
  return chain(down, largest_inside(made, [&](const Block& b) { return across(b, kind); }), gap);
}

// Consecutive blocks in so many lines, so that the squares of the lines' lengths have the least
// sum.
std::vector<Line> parted(const Line& blocks, Kind kind, Length gap, std::size_t lines) {
  const std::size_t n = blocks.size();
  constexpr double never = 1e300;
  std::vector<std::vector<double>> least(lines + 1, std::vector<double>(n + 1, never));
  std::vector<std::vector<std::size_t>> from(lines + 1, std::vector<std::size_t>(n + 1, 0));
  least[0][0] = 0;
  for (std::size_t line = 1; line <= lines; ++line) {
    for (std::size_t end = line; end <= n; ++end) {
      double length = -number(gap);
      for (std::size_t begin = end; begin-- > line - 1;) {
        length += number(along(blocks[begin], kind)) + number(gap);
        const double sum = least[line - 1][begin] + length * length;
        if (sum >= least[line][end]) continue;
        least[line][end] = sum;
        from[line][end] = begin;
      }
    }
  }
  std::vector<Line> out(lines);
  std::size_t end = n;
  for (std::size_t line = lines; line > 0; --line) {
    const std::size_t begin = from[line][end];
    out[line - 1].assign(blocks.begin() + static_cast<std::ptrdiff_t>(begin),
                         blocks.begin() + static_cast<std::ptrdiff_t>(end));
    end = begin;
  }
  return out;
}

// The longest first, each to the line that is shortest so far.
std::vector<Line> balanced(Line blocks, Kind kind, Length gap, std::size_t lines) {
  std::stable_sort(blocks.begin(), blocks.end(),
                   [&](const Block& a, const Block& b) { return along(a, kind) > along(b, kind); });
  std::vector<Line> out(lines);
  for (const Block& block : blocks) {
    const auto shortest =
        std::min_element(out.begin(), out.end(), [&](const Line& a, const Line& b) {
          return length_of(a, kind, gap) < length_of(b, kind, gap);
        });
    shortest->push_back(block);
  }
  return out;
}

// Every second block, and the rest.
std::pair<Line, Line> dealt(const Line& blocks) {
  std::pair<Line, Line> out;
  for (std::size_t i = 0; i < blocks.size(); ++i) {
    (i % 2 == 0 ? out.first : out.second).push_back(blocks[i]);
  }
  return out;
}

// The largest amid all others: `beside` of them left and right, the others above and below.
void surround(const Block& large, const Line& others, std::size_t beside, int lines_beside,
              int lines_above, Kind kind, Length gap, std::vector<Block>& out) {
  const auto part = others.begin() + static_cast<std::ptrdiff_t>(beside);
  const auto [left, right] = dealt(Line(others.begin(), part));
  const auto [above, below] = dealt(Line(part, others.end()));
  const Kind down = other_way(kind);
  const auto fits = [](const Line& line, int lines) {
    return line.size() >= static_cast<std::size_t>(lines);
  };
  if (!fits(left, lines_beside) || !fits(right, lines_beside)) return;
  if (!above.empty() && (!fits(above, lines_above) || !fits(below, lines_above))) return;
  Line row{large};
  if (!left.empty()) {
    row.insert(row.begin(), in_lines(left, gap, kind, lines_beside));
    row.push_back(in_lines(right, gap, kind, lines_beside));
  }
  Line column{chain(kind, row, gap)};
  if (!above.empty()) {
    column.insert(column.begin(), in_lines(above, gap, down, lines_above));
    column.push_back(in_lines(below, gap, down, lines_above));
  }
  out.push_back(chain(down, column, gap));
}

}  // namespace

std::vector<Block> even_lines(const std::vector<Block>& pictures, Length gap) {
  std::vector<Block> out;
  for (const Kind kind : {Kind::row, Kind::column}) {
    Line sorted = pictures;
    std::stable_sort(sorted.begin(), sorted.end(), [&](const Block& a, const Block& b) {
      return across(a, kind) > across(b, kind);
    });
    for (std::size_t lines = 2; lines <= pictures.size() / 2; ++lines) {
      out.push_back(of_lines(parted(sorted, kind, gap, lines), kind, gap));
      out.push_back(of_lines(balanced(pictures, kind, gap, lines), kind, gap));
    }
  }
  return out;
}

std::vector<Block> around_the_largest(const std::vector<Block>& pictures, Length gap) {
  std::vector<Block> out;
  if (pictures.size() < 3) return out;
  Line others = pictures;
  std::stable_sort(others.begin(), others.end(),
                   [](const Block& a, const Block& b) { return area(a) > area(b); });
  const Block large = others.front();
  others.erase(others.begin());
  for (const Kind kind : {Kind::row, Kind::column}) {
    const Kind down = other_way(kind);
    for (int lines = 1; lines <= most_lines_beside; ++lines) {
      if (others.size() < static_cast<std::size_t>(lines)) continue;
      out.push_back(joined(kind, large, in_lines(others, gap, kind, lines), gap));
      out.push_back(joined(kind, large, in_lines(others, gap, down, lines), gap));
    }
    for (std::size_t beside = 2; beside <= others.size(); beside += 2) {
      for (int lines_beside = 1; lines_beside <= most_lines_beside; ++lines_beside) {
        for (int lines_above = 1; lines_above <= most_lines_beside; ++lines_above) {
          surround(large, others, beside, lines_beside, lines_above, kind, gap, out);
        }
      }
    }
  }
  return out;
}

}  // namespace mullion::suggest
