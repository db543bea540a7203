#include "engine/mat/svg_transform.h"

#include <charconv>
#include <numbers>
#include <vector>

namespace mullion {
namespace {

constexpr std::size_t most_transforms = 100;

void skip(std::string_view& text, std::string_view what) {
  text.remove_prefix(std::min(text.find_first_not_of(what), text.size()));
}

std::optional<std::vector<double>> read_numbers(std::string_view text) {
  std::vector<double> out;
  skip(text, " \t\r\n,");
  while (!text.empty()) {
    if (text.front() == '+') text.remove_prefix(1);
    double value = 0;
    const auto read = std::from_chars(text.data(), text.data() + text.size(), value);
    if (read.ec != std::errc() || !(std::abs(value) <= largest_svg_number)) return std::nullopt;
    out.push_back(value);
    text.remove_prefix(static_cast<std::size_t>(read.ptr - text.data()));
    skip(text, " \t\r\n,");
    if (out.size() > 6) return std::nullopt;
  }
  return out;
}

Transform rotation(double degrees) {
  const double turn = degrees * std::numbers::pi / 180;
  return {std::cos(turn), std::sin(turn), -std::sin(turn), std::cos(turn), 0, 0};
}

std::optional<Transform> one_transform(std::string_view name, const std::vector<double>& n) {
  const auto tangent = [&n] { return std::tan(n[0] * std::numbers::pi / 180); };
  const std::size_t count = n.size();
  if (name == "matrix" && count == 6) return Transform{n[0], n[1], n[2], n[3], n[4], n[5]};
  if (name == "translate" && count == 1) return Transform{1, 0, 0, 1, n[0], 0};
  if (name == "translate" && count == 2) return Transform{1, 0, 0, 1, n[0], n[1]};
  if (name == "scale" && count == 1) return Transform{n[0], 0, 0, n[0], 0, 0};
  if (name == "scale" && count == 2) return Transform{n[0], 0, 0, n[1], 0, 0};
  if (name == "rotate" && count == 1) return rotation(n[0]);
  if (name == "rotate" && count == 3) {
    return Transform{1, 0, 0, 1, n[1], n[2]} * rotation(n[0]) * Transform{1, 0, 0, 1, -n[1], -n[2]};
  }
  if (name == "skewX" && count == 1) return Transform{1, 0, tangent(), 1, 0, 0};
  if (name == "skewY" && count == 1) return Transform{1, tangent(), 0, 1, 0, 0};
  return std::nullopt;
}

}  // namespace

Transform operator*(const Transform& o, const Transform& i) {
  return {o.a * i.a + o.c * i.b, o.b * i.a + o.d * i.b,       o.a * i.c + o.c * i.d,
          o.b * i.c + o.d * i.d, o.a * i.e + o.c * i.f + o.e, o.b * i.e + o.d * i.f + o.f};
}

std::optional<Transform> parse_transform(std::string_view text) {
  Transform out;
  std::size_t count = 0;
  skip(text, " \t\r\n,");
  while (!text.empty()) {
    const std::size_t open = text.find('('), close = text.find(')');
    if (open == std::string_view::npos || close == std::string_view::npos || close < open ||
        ++count > most_transforms) {
      return std::nullopt;
    }
    std::string_view name = text.substr(0, open);
    name = name.substr(0, name.find_last_not_of(" \t\r\n") + 1);
    const auto numbers = read_numbers(text.substr(open + 1, close - open - 1));
    const auto next = numbers ? one_transform(name, *numbers) : std::nullopt;
    if (!next) return std::nullopt;
    out = out * *next;
    text.remove_prefix(close + 1);
    skip(text, " \t\r\n,");
  }
  return out;
}

}  // namespace mullion
