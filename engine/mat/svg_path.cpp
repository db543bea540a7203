#include "engine/mat/svg_path.h"

#include <algorithm>
#include <charconv>
#include <cstring>

#include "engine/mat/svg_arc.h"
#include "engine/mat/svg_transform.h"

namespace mullion {
namespace {

bool is_blank(char c) {
  return c == ' ' || c == '\t' || c == '\n' || c == '\r' || c == '\f';
}

class Parser {
 public:
  explicit Parser(std::string_view data) : data_(data) {}

  tl::expected<FreePath, PathError> parse() {
    skip_blanks();
    while (!failed_ && at_ < data_.size()) {
      command_at_ = at_;
      command_ = data_[at_];
      if (std::strchr("MmLlHhVvCcSsQqTtAaZz", command_) == nullptr || command_ == '\0') {
        fail("found " + found() + "; expected a path command (M L H V C S Q T A or Z)");
        break;
      }
      ++at_;
      run_command();
      skip_blanks();
    }
    if (!failed_) finish();
    if (failed_) return tl::unexpected(std::move(error_));
    return std::move(path_);
  }

 private:
  void run_command() {
    const bool is_move = command_ == 'M' || command_ == 'm';
    if (!started_ && !is_move) return fail_command("a path begins with M");
    if (started_ && is_move) return fail_command("found a second outline; expected one");
    if (closed_) return fail_command("found more after the outline was closed; expected one");
    if (command_ == 'Z' || command_ == 'z') return close();
    do {
      run_once();
      if (path_.size() > most_path_parts) {
        fail("found more than " + std::to_string(most_path_parts) + " parts; that is the limit");
      }
    } while (!failed_ && number_follows());
  }

  // One set of a command's arguments. After M, further pairs are lines.
  void run_once() {
    const char kind = static_cast<char>(command_ & ~0x20);
    const bool relative = command_ >= 'a';
    base_ = relative ? here_ : Vector{};
    switch (kind) {
      case 'M':
        if (started_) return line_to(pair());
        started_ = true;
        here_ = start_ = pair();
        return;
      case 'L':
        return line_to(pair());
      case 'H':
        return line_to({base_.x + number(), here_.y});
      case 'V':
        return line_to({here_.x, base_.y + number()});
      case 'C': {
        const Vector control1 = pair(), control2 = pair();
        return curve_to(control1, control2, pair());
      }
      case 'S': {
        const Vector control1 = last_ == 'C' ? here_ * 2 - last_control_ : here_;
        const Vector control2 = pair();
        return curve_to(control1, control2, pair());
      }
      case 'Q': {
        const Vector control = pair();
        return quadratic_to(control, pair());
      }
      case 'T':
        return quadratic_to(last_ == 'Q' ? here_ * 2 - last_control_ : here_, pair());
      default:
        return arc_to();
    }
  }

  void line_to(Vector to) {
    if (failed_) return;
    if (norm(to - here_) > 0) path_.push_back({false, line_curve(here_, to)});
    here_ = to;
    last_ = 'L';
  }

  void curve_to(Vector control1, Vector control2, Vector to) {
    if (failed_) return;
    path_.push_back({true, {here_, control1, control2, to}});
    here_ = to;
    last_control_ = control2;
    last_ = 'C';
  }

  void quadratic_to(Vector control, Vector to) {
    if (failed_) return;
    path_.push_back(
        {true,
         {here_, here_ + (control - here_) * (2.0 / 3), to + (control - to) * (2.0 / 3), to}});
    here_ = to;
    last_control_ = control;
    last_ = 'Q';
  }

  void arc_to() {
    EllipticArc arc;
    arc.radius_x = number();
    arc.radius_y = number();
    arc.rotation_degrees = number();
    arc.large = flag();
    arc.sweep = flag();
    arc.from = here_;
    arc.to = pair();
    if (failed_) return;
    if (norm(arc.to - here_) == 0) return;
    if (arc.radius_x == 0 || arc.radius_y == 0) return line_to(arc.to);
    for (const Cubic& piece : curves_of(arc)) path_.push_back({true, piece});
    here_ = arc.to;
    last_ = 'A';
  }

  void close() {
    line_to(start_);
    closed_ = true;
  }

  // A path whose end lies on its start needs no Z.
  void finish() {
    if (!started_) return fail("found no outline; expected path data such as M 0 0 H 4 V 3 Z");
    const double gap = norm(here_ - start_);
    double reach = 0;
    for (const PathCurve& part : path_) reach = std::max(reach, norm(part.curve.end - start_));
    if (!closed_ && gap > reach * 1e-6) {
      return fail("the path ends away from its start; expected a closed one (Z at its end)");
    }
    if (path_.empty()) return fail("the outline is a single point");
    if (!closed_) path_.back().curve.end = start_;
  }

  Vector pair() {
    const double x = number();
    const double y = number();
    return base_ + Vector{x, y};
  }

  void skip_blanks() {
    while (at_ < data_.size() && is_blank(data_[at_])) ++at_;
  }

  // Looks past blanks and a comma; a comma promises a number.
  bool number_follows() {
    skip_blanks();
    if (at_ >= data_.size()) return false;
    const char c = data_[at_];
    return c == ',' || c == '.' || c == '-' || c == '+' || (c >= '0' && c <= '9');
  }

  // Blanks, and a comma where it parts this argument from one before it.
  void before_argument() {
    const bool is_first = at_ == command_at_ + 1;
    skip_blanks();
    if (is_first || at_ >= data_.size() || data_[at_] != ',') return;
    ++at_;
    skip_blanks();
  }

  double number() {
    if (failed_) return 0;
    before_argument();
    std::size_t from = at_;
    if (from < data_.size() && data_[from] == '+') ++from;
    const char* const begin = data_.data() + from;
    const char* const end = data_.data() + data_.size();
    const bool sign_twice = from > at_ && begin < end && *begin == '-';
    const bool word = begin < end && !std::strchr("-.0123456789", *begin);
    double value = 0;
    const auto read = std::from_chars(begin, end, value);
    if (sign_twice || word || read.ec == std::errc::invalid_argument) {
      fail("found " + found() + "; expected a number");
      return 0;
    }
    if (read.ec != std::errc() || !std::isfinite(value) || std::abs(value) > largest_svg_number) {
      fail("found a number that is too large or too small");
      return 0;
    }
    at_ = static_cast<std::size_t>(read.ptr - data_.data());
    return value;
  }

  bool flag() {
    if (failed_) return false;
    before_argument();
    if (at_ < data_.size() && (data_[at_] == '0' || data_[at_] == '1')) return data_[at_++] == '1';
    fail("found " + found() + "; expected a flag of 0 or 1");
    return false;
  }

  std::string found() const {
    if (at_ >= data_.size()) return "the end of the path";
    const char c = data_[at_];
    if (c > ' ' && c < 0x7f) return std::string("\"") + c + "\"";
    return "a character that is not of a path";
  }

  void fail_command(std::string message) {
    at_ = command_at_;
    fail(std::move(message));
  }
  void fail(std::string message) {
    if (failed_) return;
    failed_ = true;
    error_ = {std::move(message), at_};
  }

  std::string_view data_;
  std::size_t at_ = 0, command_at_ = 0;
  char command_ = 0, last_ = 0;
  bool started_ = false, closed_ = false, failed_ = false;
  Vector base_, here_, start_, last_control_;
  FreePath path_;
  PathError error_;
};

}  // namespace

tl::expected<FreePath, PathError> parse_path(std::string_view data) {
  return Parser(data).parse();
}

tl::expected<Outline, std::string> fill(const FreePath& path, const Rect& rect) {
  if (path.empty()) return tl::unexpected(std::string("the outline is empty"));
  Vector least = path.front().curve.start, most = least;
  for (const PathCurve& part : path) {
    std::vector<double> parameters = extremes(part.curve);
    parameters.push_back(1);
    for (double t : parameters) {
      const Vector v = place(part.curve, t);
      least = {std::min(least.x, v.x), std::min(least.y, v.y)};
      most = {std::max(most.x, v.x), std::max(most.y, v.y)};
    }
  }
  const Vector size = most - least;
  if (!(size.x > 0 && size.y > 0)) return tl::unexpected(std::string("the outline has no area"));
  const Vector corner = vector_of({rect.left, rect.top}),
               target = vector_of({rect.width(), rect.height()});
  const auto map = [&](Vector v) {
    const Vector part = v - least;
    return Vector{corner.x + part.x / size.x * target.x, corner.y + part.y / size.y * target.y};
  };
  Outline out;
  out.start = nearest_point(map(path.front().curve.start));
  for (const PathCurve& part : path) {
    const Cubic c{map(part.curve.start), map(part.curve.control1), map(part.curve.control2),
                  map(part.curve.end)};
    if (part.curved) {
      add_curve(out, c);
    } else {
      add_line(out, nearest_point(c.end));
    }
  }
  add_line(out, out.start);
  if (out.segments.empty()) return tl::unexpected(std::string("the outline has no area"));
  return signed_area(out) < 0 ? reversed(out) : out;
}

}  // namespace mullion
