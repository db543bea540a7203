#include "tests/oracle/drawn_page.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <pugixml.hpp>
#include <sstream>
#include <stdexcept>

#include "tests/oracle/program.h"

namespace oracle {
namespace {

struct Bounds {
  double left, top, right, bottom;
};

using Matrix = std::array<double, 6>;

std::vector<double> numbers_of(const char* text) {
  std::istringstream in(text);
  std::vector<double> out;
  for (double value = 0; in >> value;) out.push_back(value);
  return out;
}

Matrix matrix_of(const pugi::xml_node& node) {
  const std::vector<double> n = numbers_of(node.attribute("transform").value());
  if (n.size() != 6) throw std::runtime_error("a path without a transform");
  return {n[0], n[1], n[2], n[3], n[4], n[5]};
}

Spot apply(const Matrix& m, Spot s) {
  return {m[0] * s.x + m[2] * s.y + m[4], m[1] * s.x + m[3] * s.y + m[5]};
}

Spot spot_of(const pugi::xml_node& node, const char* x, const char* y) {
  return {node.attribute(x).as_double(), node.attribute(y).as_double()};
}

void add_chords(std::vector<Spot>& line, Spot control1, Spot control2, Spot to) {
  const Spot from = line.back();
  const double reach = std::hypot(control1.x - from.x, control1.y - from.y) +
                       std::hypot(control2.x - control1.x, control2.y - control1.y) +
                       std::hypot(to.x - control2.x, to.y - control2.y);
  // A chord of the n-th part of a curve strays by less than reach / n^2.
  const int count = std::max(1, static_cast<int>(std::ceil(std::sqrt(reach / 0.003))));
  for (int i = 1; i <= count; ++i) {
    const double t = static_cast<double>(i) / count, u = 1 - t;
    const double a = u * u * u, b = 3 * u * u * t, c = 3 * u * t * t, d = t * t * t;
    line.push_back({a * from.x + b * control1.x + c * control2.x + d * to.x,
                    a * from.y + b * control1.y + c * control2.y + d * to.y});
  }
}

std::vector<std::vector<Spot>> lines_of(const pugi::xml_node& path) {
  const Matrix matrix = matrix_of(path);
  std::vector<std::vector<Spot>> lines;
  for (const pugi::xml_node& step : path.children()) {
    const std::string name = step.name();
    const auto spot = [&](const char* x, const char* y) {
      return apply(matrix, spot_of(step, x, y));
    };
    if (name == "moveto") {
      lines.push_back({spot("x", "y")});
    } else if (name == "lineto") {
      lines.back().push_back(spot("x", "y"));
    } else if (name == "curveto") {
      add_chords(lines.back(), spot("x1", "y1"), spot("x2", "y2"), spot("x3", "y3"));
    } else if (name == "closepath") {
      lines.back().push_back(lines.back().front());
    } else {
      throw std::runtime_error("a path with an unknown step: " + name);
    }
  }
  return lines;
}

Bounds bounds_of(const std::vector<std::vector<Spot>>& lines) {
  Bounds box{1e9, 1e9, -1e9, -1e9};
  for (const auto& line : lines) {
    for (const Spot& s : line) {
      box = {std::min(box.left, s.x), std::min(box.top, s.y), std::max(box.right, s.x),
             std::max(box.bottom, s.y)};
    }
  }
  return box;
}

Bounds common(const Bounds& a, const Bounds& b) {
  return {std::max(a.left, b.left), std::max(a.top, b.top), std::min(a.right, b.right),
          std::min(a.bottom, b.bottom)};
}

std::string colour_of(const pugi::xml_node& node) {
  std::vector<double> parts = numbers_of(node.attribute("color").value());
  if (parts.size() == 1) parts = {parts[0], parts[0], parts[0]};
  if (parts.size() != 3) return {};
  std::array<char, 8> text{};
  std::snprintf(text.data(), text.size(), "#%02x%02x%02x",
                static_cast<unsigned>(std::lround(parts[0] * 255) & 255),
                static_cast<unsigned>(std::lround(parts[1] * 255) & 255),
                static_cast<unsigned>(std::lround(parts[2] * 255) & 255));
  return text.data();
}

// Letters of one line may come from several fonts, each in a text of its own.
bool runs_on(const Label& before, Spot at, double size, double turn) {
  const double angle = before.turn / 180 * std::numbers::pi;
  const Spot end{before.at.x + before.length * std::cos(angle),
                 before.at.y + before.length * std::sin(angle)};
  return before.size == size && before.turn == turn &&
         std::hypot(end.x - at.x, end.y - at.y) < 0.01 * size;
}

class PageReader {
 public:
  explicit PageReader(const pugi::xml_node& page) {
    const std::vector<double> box = numbers_of(page.attribute("mediabox").value());
    if (box.size() != 4) throw std::runtime_error("a page without a media box");
    page_.width = box[2] - box[0];
    page_.height = box[3] - box[1];
    clips_.push_back({0, 0, page_.width, page_.height});
    read(page);
  }

  DrawnPage page() const { return page_; }

 private:
  void read(const pugi::xml_node& parent) {
    for (const pugi::xml_node& node : parent.children()) {
      const std::string name = node.name();
      if (name == "stroke_path") {
        add_strokes(node);
      } else if (name == "fill_path") {
        for (const auto& line : lines_of(node)) {
          page_.fills.push_back(line);
          page_.fill_colours.push_back(colour_of(node));
        }
      } else if (name == "clip_path") {
        clips_.push_back(common(clips_.back(), bounds_of(lines_of(node))));
      } else if (name.starts_with("clip_")) {
        clips_.push_back(clips_.back());
      } else if (name == "pop_clip") {
        clips_.pop_back();
      } else if (name == "fill_text") {
        add_labels(node);
      } else {
        read(node);
      }
    }
  }

  void add_strokes(const pugi::xml_node& node) {
    const Matrix m = matrix_of(node);
    Stroke stroke;
    stroke.width =
        node.attribute("linewidth").as_double() * std::sqrt(std::abs(m[0] * m[3] - m[1] * m[2]));
    stroke.dashed = !node.attribute("dash").empty();
    stroke.colour = colour_of(node);
    for (const auto& line : lines_of(node)) {
      for (std::size_t i = 1; i < line.size(); ++i) {
        stroke.from = line[i - 1];
        stroke.to = line[i];
        if (clip_to_box(stroke, {clips_.back().left, clips_.back().top},
                        {clips_.back().right, clips_.back().bottom}))
          page_.strokes.push_back(stroke);
      }
    }
  }

  // Letters that follow one another are one label, though a span may hold several.
  void add_labels(const pugi::xml_node& node) {
    const Matrix outer = matrix_of(node);
    Spot next;
    bool goes_on = false;
    for (const pugi::xml_node& span : node.children("span")) {
      const std::vector<double> trm = numbers_of(span.attribute("trm").value());
      if (trm.size() != 4) continue;
      const Spot along{outer[0] * trm[0] + outer[2] * trm[1],
                       outer[1] * trm[0] + outer[3] * trm[1]};
      const double size = std::hypot(along.x, along.y);
      const double turn = std::atan2(along.y, along.x) * 180 / std::numbers::pi;
      for (const pugi::xml_node& glyph : span.children("g")) {
        const Spot at = apply(outer, spot_of(glyph, "x", "y"));
        const double advance = glyph.attribute("adv").as_double();
        goes_on = goes_on ? std::hypot(at.x - next.x, at.y - next.y) < 0.25 * size
                          : !page_.labels.empty() && runs_on(page_.labels.back(), at, size, turn);
        if (!goes_on) page_.labels.push_back({{}, at, 0, size, turn, colour_of(node)});
        Label& label = page_.labels.back();
        label.length = std::hypot(at.x - label.at.x, at.y - label.at.y) + advance * size;
        label.text += glyph.attribute("unicode").value();
        next = {at.x + advance * along.x, at.y + advance * along.y};
        goes_on = true;
      }
    }
  }

  DrawnPage page_;
  std::vector<Bounds> clips_;
};

std::string checked(const std::vector<std::string>& words) {
  Run result = run(words);
  if (result.status != 0) throw std::runtime_error(words[0] + ": " + result.err);
  return std::move(result.out);
}

}  // namespace

std::vector<DrawnPage> drawn_pages(const std::string& path, Reader reader) {
  if (reader == Reader::poppler) {
    const std::string copy = path + ".poppler.pdf";
    checked({"pdftocairo", "-pdf", "-noshrink", "-nocenter", "-origpagesizes", path, copy});
    return drawn_pages(copy);
  }
  const std::string trace = checked({"mutool", "trace", path});
  pugi::xml_document document;
  if (!document.load_buffer(trace.data(), trace.size())) {
    throw std::runtime_error("mutool's trace is not XML");
  }
  std::vector<DrawnPage> pages;
  for (const pugi::xml_node& page : document.child("document").children("page")) {
    pages.push_back(PageReader(page).page());
  }
  return pages;
}

DrawnPage drawn_svg(const std::string& path) {
  const std::string copy = path + ".librsvg.pdf";
  checked({"rsvg-convert", "-f", "pdf", "-o", copy, path});
  return drawn_pages(copy).at(0);
}

// Liang and Barsky's parametric clipping.
bool clip_to_box(Stroke& stroke, Spot upper_left, Spot lower_right) {
  const double dx = stroke.to.x - stroke.from.x, dy = stroke.to.y - stroke.from.y;
  double enter = 0, leave = 1;
  const auto side = [&](double direction, double room) {
    if (direction == 0) return room >= 0;
    const double t = room / direction;
    direction < 0 ? enter = std::max(enter, t) : leave = std::min(leave, t);
    return true;
  };
  const Spot from = stroke.from;
  if (!side(-dx, from.x - upper_left.x) || !side(dx, lower_right.x - from.x) ||
      !side(-dy, from.y - upper_left.y) || !side(dy, lower_right.y - from.y) || enter > leave) {
    return false;
  }
  stroke.from = {from.x + enter * dx, from.y + enter * dy};
  stroke.to = {from.x + leave * dx, from.y + leave * dy};
  return true;
}

std::string text_of(const DrawnPage& page) {
  std::string text;
  for (const Label& label : page.labels) text += label.text + "\n";
  return text;
}

bool shows_line(const DrawnPage& page, Spot from, Spot to, double tolerance) {
  const double length = std::hypot(to.x - from.x, to.y - from.y);
  const Spot along{(to.x - from.x) / length, (to.y - from.y) / length};
  std::vector<std::pair<double, double>> covered;
  for (const Stroke& stroke : page.strokes) {
    double start = 0, end = 0;
    const auto on_line = [&](Spot s, double& place) {
      const double x = s.x - from.x, y = s.y - from.y;
      place = x * along.x + y * along.y;
      return std::abs(y * along.x - x * along.y) <= tolerance;
    };
    if (stroke.dashed || !on_line(stroke.from, start) || !on_line(stroke.to, end)) continue;
    covered.push_back(std::minmax(start, end));
  }
  std::sort(covered.begin(), covered.end());
  double reached = 0;
  for (const auto& [start, end] : covered) {
    if (start > reached + tolerance) break;
    reached = std::max(reached, end);
  }
  return reached >= length - tolerance;
}

std::optional<Spot> find_rectangle(const DrawnPage& page, double width, double height,
                                   double tolerance) {
  for (const Stroke& stroke : page.strokes) {
    if (std::abs(stroke.from.y - stroke.to.y) > tolerance) continue;
    const double left = std::min(stroke.from.x, stroke.to.x), top = stroke.from.y;
    const Spot right_top{left + width, top}, left_bottom{left, top + height},
        right_bottom{left + width, top + height};
    if (shows_line(page, {left, top}, right_top, tolerance) &&
        shows_line(page, right_top, right_bottom, tolerance) &&
        shows_line(page, {left, top}, left_bottom, tolerance) &&
        shows_line(page, left_bottom, right_bottom, tolerance)) {
      return Spot{left, top};
    }
  }
  return std::nullopt;
}

namespace {

int square_of(double place) {
  return static_cast<int>(std::floor(place / NearestInk::far));
}

double distance_between(const Stroke& stroke, Spot spot) {
  const double dx = stroke.to.x - stroke.from.x, dy = stroke.to.y - stroke.from.y;
  const double square = dx * dx + dy * dy;
  const double along = (spot.x - stroke.from.x) * dx + (spot.y - stroke.from.y) * dy;
  const double t = square == 0 ? 0 : std::clamp(along / square, 0.0, 1.0);
  return std::hypot(stroke.from.x + t * dx - spot.x, stroke.from.y + t * dy - spot.y);
}

}  // namespace

// A stroke lies in the squares that its piece within each column of squares reaches.
NearestInk::NearestInk(const DrawnPage& page, bool dashed) {
  for (const Stroke& stroke : page.strokes) {
    if (stroke.dashed != dashed) continue;
    const auto [left, right] = std::minmax(stroke.from.x, stroke.to.x);
    for (int column = square_of(left); column <= square_of(right); ++column) {
      Stroke piece = stroke;
      if (!clip_to_box(piece, {column * far, -1e9}, {(column + 1) * far, 1e9})) continue;
      const auto [top, bottom] = std::minmax(piece.from.y, piece.to.y);
      for (int row = square_of(top); row <= square_of(bottom); ++row) {
        squares_[{column, row}].push_back(stroke);
      }
    }
  }
}

double NearestInk::distance(Spot spot) const {
  double least = far;
  for (int column = square_of(spot.x) - 1; column <= square_of(spot.x) + 1; ++column) {
    for (int row = square_of(spot.y) - 1; row <= square_of(spot.y) + 1; ++row) {
      const auto found = squares_.find({column, row});
      if (found == squares_.end()) continue;
      for (const Stroke& stroke : found->second) {
        least = std::min(least, distance_between(stroke, spot));
      }
    }
  }
  return least;
}

}  // namespace oracle
