#include "engine/starting/said_sizes.h"

#include <algorithm>
#include <cctype>
#include <charconv>
#include <optional>

namespace mullion::starting {
namespace {

using Sentence = std::string;

bool is_digit(char c) {
  return std::isdigit(static_cast<unsigned char>(c)) != 0;
}

std::string_view trimmed(std::string_view text) {
  constexpr const char* blanks = " \t\r";
  const std::size_t first = text.find_first_not_of(blanks);
  if (first == text.npos) return {};
  return text.substr(first, text.find_last_not_of(blanks) - first + 1);
}

// "29,7" as people write it who have a decimal comma.
std::string with_points(std::string_view text) {
  std::string out(text);
  for (std::size_t i = 1; i + 1 < out.size(); ++i) {
    if (out[i] == ',' && is_digit(out[i - 1]) && is_digit(out[i + 1])) out[i] = '.';
  }
  return out;
}

struct Parting {
  std::string_view before, after;
};

std::optional<Parting> parted(std::string_view line) {
  for (const std::string_view sign :
       {std::string_view(" by "), std::string_view("\xC3\x97"), std::string_view("x"),
        std::string_view("X"), std::string_view("*")}) {
    const std::size_t at = line.find(sign);
    // An x in a name is none between sizes: before it stand figures alone.
    if (at != line.npos && at > 0) {
      return Parting{trimmed(line.substr(0, at)), trimmed(line.substr(at + sign.size()))};
    }
  }
  return std::nullopt;
}

// What stands behind the figures of a length: "cm" of "29.7 cm".
std::string_view unit_behind(std::string_view text) {
  const std::size_t last = text.find_last_of("0123456789");
  return last == text.npos ? std::string_view() : trimmed(text.substr(last + 1));
}

// The longest beginning, word by word, that is a length; the rest is left in `text`.
std::optional<std::string> taken_length(std::string_view& text, Unit unit) {
  for (std::size_t end = text.size(); end > 0;) {
    const std::string_view beginning = trimmed(text.substr(0, end));
    if (parse_length(beginning, unit)) {
      text = trimmed(text.substr(end));
      return std::string(beginning);
    }
    const std::size_t blank = text.substr(0, end).find_last_of(" \t");
    if (blank == text.npos) return std::nullopt;
    end = blank;
  }
  return std::nullopt;
}

// "3" of "3 Boat"; the rest is left.
std::optional<int> taken_count(std::string_view& text) {
  int count = 0;
  const auto end = std::from_chars(text.data(), text.data() + text.size(), count);
  if (end.ec != std::errc() || count < 1 || count > most_said) return std::nullopt;
  text = trimmed(text.substr(static_cast<std::size_t>(end.ptr - text.data())));
  return count;
}

tl::expected<SaidSize, Sentence> parse_line(std::string_view line, Unit unit) {
  const auto found = [&](const char* expected) {
    return tl::unexpected("found \"" + std::string(line) + "\"; expected " + expected);
  };
  const auto parts = parted(line);
  if (!parts) return found("width x height, such as 8 x 10");
  SaidSize out;
  std::string_view rest = parts->after;
  if (const std::size_t star = rest.rfind('*'); star != rest.npos) {
    std::string_view behind = trimmed(rest.substr(star + 1));
    const auto count = taken_count(behind);
    if (!count) return found("a number from 1 to 500 behind the *");
    out.count = *count;
    out.name = behind;
    rest = trimmed(rest.substr(0, star));
  }
  const auto height = taken_length(rest, unit);
  if (!height) return found("width x height, such as 8 x 10");
  if (!rest.empty()) out.name = rest;
  std::string width(parts->before);
  if (unit_behind(width).empty()) width += " " + std::string(unit_behind(*height));
  const auto wide = parse_length(trimmed(width), unit);
  const auto high = unit_behind(*height).empty() && !unit_behind(width).empty()
                        ? parse_length(*height + " " + std::string(unit_behind(width)), unit)
                        : parse_length(*height, unit);
  if (!wide) return tl::unexpected(wide.error());
  if (!high) return tl::unexpected(high.error());
  if (std::min(*wide, *high) <= Length()) return found("sizes above zero");
  out.size = {*wide, *high};
  return out;
}

}  // namespace

tl::expected<Size, std::string> parse_size(std::string_view text, Unit unit) {
  const auto said = parse_line(with_points(trimmed(text)), unit);
  if (!said) return tl::unexpected(said.error());
  if (said->count == 1 && said->name.empty()) return said->size;
  return tl::unexpected("found \"" + std::string(text) +
                        "\"; expected width x height alone, such as 8 x 10");
}

Result<std::vector<SaidSize>> parse_said_sizes(std::string_view text, Unit unit) {
  std::vector<SaidSize> out;
  Problems problems;
  int line_number = 1, pictures = 0;
  const auto problem = [&](const std::string& why) {
    problems.push_back({Severity::error, "said-size", why, {line_number, 1}, ""});
  };
  while (!text.empty()) {
    const std::size_t end = std::min(text.find_first_of("\n;"), text.size());
    const std::string line = with_points(trimmed(text.substr(0, end)));
    if (!line.empty()) {
      if (auto said = parse_line(line, unit)) {
        pictures += said->count;
        out.push_back(std::move(*said));
      } else {
        problem(said.error());
      }
    }
    if (end < text.size() && text[end] == '\n') ++line_number;
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  if (pictures > most_said) problem("found more than 500 pictures; that is the limit");
  if (out.empty() && problems.empty()) problem("found no size; expected one such as 8 x 10");
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  return out;
}

void keep_proportion(Size& size, int pixels_wide, int pixels_high, bool width_is_given,
                     Length step) {
  const std::int64_t given = width_is_given ? pixels_wide : pixels_high;
  const std::int64_t other = width_is_given ? pixels_high : pixels_wide;
  const Length side = width_is_given ? size.width : size.height;
  const Length exact = Length::from_ticks((side * other).ticks() / given);
  const Length kept = std::max(step, round_to_multiple(exact, step));
  (width_is_given ? size.height : size.width) = kept;
}

}  // namespace mullion::starting
