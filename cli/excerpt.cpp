#include "cli/excerpt.h"

#include <algorithm>
#include <vector>

#include "engine/xml/source_text.h"

namespace mullion::cli {
namespace {

// One character of a line as it is printed, and what stands below it.
struct Cell {
  std::string text, blank;
  char32_t value = 0;
};

std::string_view line_of(std::string_view source, int number) {
  constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
  if (source.starts_with(byte_order_mark)) source.remove_prefix(byte_order_mark.size());
  for (int line = 1; line < number; ++line) {
    const std::size_t end = source.find('\n');
    if (end == std::string_view::npos) return {};
    source.remove_prefix(end + 1);
  }
  std::string_view line = source.substr(0, source.find('\n'));
  if (line.ends_with('\r')) line.remove_suffix(1);
  return line;
}

// The part of a line that is printed. A line may be as long as a file.
struct Window {
  std::vector<Cell> cells;
  std::size_t first = 0, at = 0;  // number of the line's first cell that is kept; place in `cells`
  bool is_cut = false;            // the line goes on
};

Window window_of(std::string_view line, std::size_t at) {
  constexpr std::size_t most = 100, most_before = 60;
  Window out;
  out.first = at > most_before ? at - most_before : 0;
  out.at = at - out.first;
  for (std::size_t i = 0; !line.empty() && i < out.first + most; ++i) {
    const auto c = first_code_point(line);
    const std::size_t bytes = c ? c->bytes : 1;
    if (i >= out.first) {
      const char32_t value = c ? c->value : 0;
      const int columns = value == 0 ? 1 : columns_of(value);
      out.cells.push_back(
          {printable(line.substr(0, bytes)),
           value == '\t' ? "\t" : std::string(static_cast<std::size_t>(columns), ' '), value});
    }
    line.remove_prefix(bytes);
  }
  out.is_cut = !line.empty();
  return out;
}

bool is_in_name(char32_t c) {
  return c > 0x7F || (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') ||
         c == '-' || c == '_' || c == '.' || c == ':';
}

// The end of what stands at `at`: a tag's name, or an attribute with its value; else one character.
std::size_t end_of_thing(const std::vector<Cell>& cells, std::size_t at) {
  std::size_t end = at;
  if (end < cells.size() && cells[end].value == '<') ++end;
  while (end < cells.size() && is_in_name(cells[end].value)) ++end;
  const bool has_value = end + 1 < cells.size() && end > at && cells[end].value == '=' &&
                         (cells[end + 1].value == '"' || cells[end + 1].value == '\'');
  if (has_value) {
    const char32_t quote = cells[end + 1].value;
    std::size_t close = end + 2;
    while (close < cells.size() && cells[close].value != quote) ++close;
    if (close < cells.size()) end = close + 1;
  }
  return std::max(end, at + 1);
}

std::string text_of(const std::vector<Cell>& cells, std::size_t from, std::size_t to,
                    std::string Cell::*part) {
  std::string out;
  for (std::size_t i = from; i < std::min(to, cells.size()); ++i) out += cells[i].*part;
  return out;
}

}  // namespace

std::string excerpt(std::string_view source, Place place, const Paint& paint, Ink ink) {
  if (place.line < 1 || place.column < 1) return {};
  const Window window =
      window_of(line_of(source, place.line), static_cast<std::size_t>(place.column) - 1);
  const std::vector<Cell>& cells = window.cells;
  if (cells.empty() || window.at > cells.size()) return {};

  std::string number = std::to_string(place.line);
  if (number.size() < 5) number.insert(0, 5 - number.size(), ' ');
  std::string head = " | ", margin = std::string(number.size(), ' ') + " | ";
  if (window.first > 0) {
    head += "... ";
    margin += "    ";
  }
  const std::size_t end = end_of_thing(cells, window.at);
  std::string caret = "^";
  const std::string under = text_of(cells, window.at, end, &Cell::blank);
  if (under.size() > 1) caret.append(under.size() - 1, '~');
  return number + head + text_of(cells, 0, cells.size(), &Cell::text) +
         (window.is_cut ? " ..." : "") + "\n" + margin +
         text_of(cells, 0, window.at, &Cell::blank) + paint(ink, caret) + "\n";
}

}  // namespace mullion::cli
