#include "simulator.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <nlohmann/json.hpp>
#include <stdexcept>
#include <tuple>

#include "by_hand.h"

namespace simulator {

using mullion::Length;
using nlohmann::json;

namespace {

Length setting_of(const json& setting) {
  return length_of(setting.at("shows")) + length_of(setting.at("remainder"));
}

std::vector<int> openings_of(const json& cut) {
  return cut.at("openings").get<std::vector<int>>();
}

// A board on the table: face down, turned clockwise so many times from "top edge away".
class Board {
 public:
  Board(Length width, Length height) : width_(width), height_(height) {}

  void turn_clockwise(int quarters) { turns_ = (turns_ + quarters + 400) % 4; }

  // Twice the place of a point of the board, about the board's middle, on the table.
  Point on_table(Point front) const {
    Point p{width_ - front.x * 2, height_ - front.y * 2};
    for (int i = 0; i < turns_; ++i) p = {p.y, -p.x};
    return p;
  }
  Point on_front(Point p) const {
    for (int i = 0; i < turns_; ++i) p = {-p.y, p.x};
    return {half(width_ - p.x), half(height_ - p.y)};
  }
  Length width() const { return width_; }
  Length height() const { return height_; }
  Length across() const { return turns_ % 2 == 0 ? width_ : height_; }
  Length along() const { return turns_ % 2 == 0 ? height_ : width_; }

  // The letter of the edge at one side of the table: 0 far, then clockwise.
  char letter_at(int side) const { return "ABCD"[(side - turns_ + 8) % 4]; }

 private:
  static Length half(Length a) {
    if (a.ticks() % 2 != 0) throw std::logic_error("a place between two ticks");
    return mullion::half_rounded_down(a);
  }
  Length width_, height_;
  int turns_ = 0;
};

struct StraightSlit {
  std::vector<int> openings;
  Point a, b;            // on the back
  Point face_a, face_b;  // where it comes out
};

struct Piece {
  Point a, b;
  bool level() const { return a.y == b.y; }
};

// What closes in a set of cuts, whatever sticks out at the corners.
class Openings {
 public:
  explicit Openings(std::vector<Piece> pieces) : pieces_(std::move(pieces)) {
    for (std::size_t i = 0; i < pieces_.size(); ++i) {
      for (std::size_t j = 0; j < pieces_.size(); ++j) {
        if (pieces_[i].level() && !pieces_[j].level()) cross(i, j);
      }
    }
    for (auto& [piece, nodes] : nodes_) link(piece, nodes);
  }

  std::vector<Polygon> polygons() {
    std::vector<Polygon> out;
    while (!links_.empty()) {
      Polygon polygon = walk(links_.begin()->first);
      if (polygon.size() >= 4) out.push_back(polygon);
    }
    std::sort(out.begin(), out.end());
    return out;
  }
  // Of a cut that goes on past a corner into the board.
  Length longest_overrun() const {
    Length longest;
    for (const Piece& overhang : overhangs_) {
      if (!in_waste(overhang)) longest = std::max(longest, gap(overhang.a, overhang.b));
    }
    return longest;
  }
  bool whole() const { return whole_; }

 private:
  void cross(std::size_t level, std::size_t upright) {
    const Piece& h = pieces_[level];
    const Piece& v = pieces_[upright];
    const auto within = [](Length a, Length p, Length b) {
      return p >= std::min(a, b) && p <= std::max(a, b);
    };
    if (!within(h.a.x, v.a.x, h.b.x) || !within(v.a.y, h.a.y, v.b.y)) return;
    nodes_[level].push_back({v.a.x, h.a.y});
    nodes_[upright].push_back({v.a.x, h.a.y});
  }

  void link(std::size_t index, std::vector<Point>& nodes) {
    std::sort(nodes.begin(), nodes.end());
    if (nodes.size() != 2) {
      whole_ = false;
      return;
    }
    links_[nodes[0]].push_back(nodes[1]);
    links_[nodes[1]].push_back(nodes[0]);
    Point a = pieces_[index].a, b = pieces_[index].b;
    if (b < a) std::swap(a, b);
    edges_.push_back({nodes[0], nodes[1]});
    overhangs_.push_back({a, nodes[0]});
    overhangs_.push_back({nodes[1], b});
  }

  // Whether the middle of an overhang falls out with a window: an odd number of edges to its right.
  bool in_waste(const Piece& overhang) const {
    const Length x = overhang.a.x + overhang.b.x, y = overhang.a.y + overhang.b.y;
    bool inside = false;
    for (const Piece& edge : edges_) {
      const bool crossed = (edge.a.y * 2 > y) != (edge.b.y * 2 > y);
      if (crossed && edge.a.x * 2 > x) inside = !inside;
    }
    return inside;
  }

  static Length gap(Point a, Point b) { return (b.x - a.x) + (b.y - a.y); }

  Polygon walk(Point at) {
    Polygon polygon;
    for (;;) {
      const auto found = links_.find(at);
      if (found == links_.end()) break;
      polygon.push_back(at);
      std::vector<Point> next = found->second;
      links_.erase(found);
      bool moved = false;
      for (const Point& p : next) {
        if (links_.count(p) == 0) continue;
        at = p;
        moved = true;
        break;
      }
      if (next.size() != 2) return {};
      if (!moved) break;
    }
    std::sort(polygon.begin(), polygon.end());
    return polygon;
  }

  std::vector<Piece> pieces_;
  std::map<std::size_t, std::vector<Point>> nodes_;
  std::map<Point, std::vector<Point>> links_;
  std::vector<Piece> edges_, overhangs_;
  bool whole_ = true;
};

class Bench {
 public:
  Bench(const json& plan, const Cutter& cutter) : plan_(plan), cutter_(cutter) {}

  Outcome work() {
    for (const json& stage : plan_.at("stages")) {
      const auto [width, height] = blank_of(stage);
      if (stage.at("kind") == "layer" && stage.at("layer") == 1) {
        top_width_ = width;
        top_height_ = height;
      }
      if (stage.at("kind") == "groove") std::tie(top_width_, top_height_) = std::tie(width, height);
      cut_stage(stage, width, height);
    }
    return std::move(out_);
  }

 private:
  void fault(const std::string& what) { out_.faults.push_back(what); }

  // As the straight cuts make it; a side by a pencil line is what the plan says.
  std::pair<Length, Length> blank_of(const json& stage) {
    std::vector<Length> sides;
    for (const json& side : plan_.at("blanks")) {
      const auto& layers = side.at("layers");
      if (std::find(layers.begin(), layers.end(), stage.at("layer")) == layers.end()) continue;
      sides.push_back(side.at("arm_stop").is_null()
                          ? length_of(side.at("size"))
                          : setting_of(side.at("arm_stop")) - cutter_.arm_zero -
                                mullion::half_rounded_down(cutter_.kerf));
    }
    const Length width = length_of(stage.at("blank").at("width"));
    const Length height = length_of(stage.at("blank").at("height"));
    if (sides.size() != 2 || sides[0] != std::max(width, height) ||
        sides[1] != std::min(width, height)) {
      fault("the straight cuts do not give the blank");
    }
    return {width, height};
  }

  void cut_stage(const json& stage, Length width, Length height) {
    stage_ = &stage;
    run_ = length_of(stage.at("bevel_run"));
    slits_.clear();
    const bool taped = stage.at("taped_behind").get<bool>();
    board_ = taped ? Board(top_width_, top_height_) : Board(width, height);
    board_.turn_clockwise(cutter_.guide_on_left ? 3 : 1);  // A to the guide
    for (const json& set_up : stage.at("set_ups")) work_set_up(set_up);
    CutLayer layer;
    layer.kind = stage.at("kind");
    layer.layer = stage.at("layer");
    layer.blank_width = width;
    layer.blank_height = height;
    for (const json& cut : stage.at("freehand")) {
      layer.tracks[openings_of(cut)].push_back(along_rail(cut, cutter_, run_));
    }
    for (const json& curve : stage.at("curves")) {
      std::vector<Track>& tracks = layer.tracks[openings_of(curve)];
      for (Track& track : along_curve(curve, run_)) tracks.push_back(std::move(track));
    }
    std::vector<Piece> back, face;
    for (const auto& [number, slit] : slits_) {
      const auto tracks = layer.tracks.find(slit.openings);
      if (tracks != layer.tracks.end()) {
        tracks->second.push_back(in_ticks(slit));
        continue;
      }
      back.push_back({slit.a, slit.b});
      face.push_back({slit.face_a, slit.face_b});
    }
    Openings seen_from_behind(back), seen_from_front(face);
    layer.back = seen_from_behind.polygons();
    layer.face = seen_from_front.polygons();
    layer.longest_overrun = seen_from_front.longest_overrun();
    if (!seen_from_front.whole() || !seen_from_behind.whole()) fault("a cut does not close");
    out_.layers.push_back(std::move(layer));
  }

  static Track in_ticks(const StraightSlit& slit) {
    const auto spot = [](Point p) {
      return Spot{static_cast<double>(p.x.ticks()), static_cast<double>(p.y.ticks())};
    };
    return {{spot(slit.a), spot(slit.b)}, {spot(slit.face_a), spot(slit.face_b)}};
  }

  void work_set_up(const json& set_up) {
    ++out_.set_ups;
    const auto moved = [&](const char* what, json& now) {
      if (set_up.at(what).is_null() || set_up.at(what) == now) return 0;
      now = set_up.at(what);
      return 1;
    };
    out_.guide_moves += moved("guide", guide_);
    out_.stop_moves += moved("near_stop", near_) + moved("far_stop", far_);
    for (const json& placement : set_up.at("placements")) {
      board_.turn_clockwise(placement.at("quarter_turns_clockwise").get<int>());
      const char at_guide = board_.letter_at(cutter_.guide_on_left ? 3 : 1);
      if (placement.at("edge_at_guide") != std::string(1, at_guide)) {
        fault("the turns do not bring the stated edge to the guide");
      }
      if (placement.at("edge_at_arm") != std::string(1, board_.letter_at(2))) {
        fault("the turns do not bring the stated edge to the squaring arm");
      }
      for (const json& cut : placement.at("cuts")) work_cut(set_up, cut);
    }
  }

  // Where the board's left edge lies on the table.
  Length left_edge(const json& set_up, const json& cut) {
    if (!cut.at("on_pencil_line").is_null()) {
      const Point line = place_of_pencil(cut.at("on_pencil_line").get<int>());
      return -mullion::half_rounded_down(line.x + board_.across());
    }
    Length distance = setting_of(set_up.at("guide")) - cutter_.guide_zero;
    if (!set_up.at("block").is_null()) {
      const Length width = length_of(set_up.at("block").at("width"));
      distance += set_up.at("block").at("place") == "inside the guide" ? -width : width;
    }
    return cutter_.guide_on_left ? -distance : distance - board_.across();
  }

  // Twice the place, about the board's middle, of some point on a pencil line.
  Point place_of_pencil(int number) {
    for (const json& line : stage_->at("pencil_lines")) {
      if (line.at("number") != number) continue;
      const Length d = length_of(line.at("distance"));
      const char edge = line.at("edge").get<std::string>()[0];
      const Length w = board_.width(), h = board_.height();
      const Point p = edge == 'A'   ? Point{Length(), d}
                      : edge == 'B' ? Point{d, Length()}
                      : edge == 'C' ? Point{Length(), h - d}
                                    : Point{w - d, Length()};
      return board_.on_table(p);
    }
    throw std::logic_error("no such pencil line");
  }

  // Where the blade is at an end of the cut: `sign` +1 at the start, -1 at the end.
  Length blade_at(const json& set_up, const json& end, const char* stop, Length zero, int sign) {
    if (end.at("by") == "stop") {
      if (set_up.at(stop).is_null()) {
        fault("a cut ends at a stop that is not set");
        return Length();
      }
      return setting_of(set_up.at(stop)) - zero + sign * cutter_.mark_lead;
    }
    const int number = end.at("number").get<int>();
    Length twice;
    if (end.at("by") == "cut") {
      if (slits_.count(number) == 0) {
        fault("a cut is to end at one that is not there yet");
        return Length();
      }
      twice = board_.on_table(slits_.at(number).a).y;
    } else {
      twice = place_of_pencil(number).y;
    }
    const Length line = mullion::half_rounded_down(twice + board_.along());
    return line + sign * (length_of(end.at("mark_past_line")) + cutter_.mark_lead);
  }

  Point from_table(Length x, Length y, Length left) const {
    return board_.on_front({(x - left) * 2 - board_.across(), y * 2 - board_.along()});
  }

  void work_cut(const json& set_up, const json& cut) {
    if (set_up.at("guide").is_null() == cut.at("on_pencil_line").is_null()) {
      fault("a cut is neither at the guide nor on a line, or both");
      return;
    }
    const Length left = left_edge(set_up, cut);
    const Length start = blade_at(set_up, cut.at("start"), "far_stop", cutter_.far_zero, 1);
    const Length end = blade_at(set_up, cut.at("end"), "near_stop", cutter_.near_zero, -1);
    if (start <= end) {
      fault("a cut starts below its end");
      return;
    }
    const bool tip_left = cutter_.guide_on_left == cutter_.tip_to_guide;
    const Length out = tip_left ? -run_ : run_;
    slits_[cut.at("number").get<int>()] = {
        openings_of(cut), from_table(Length(), start, left), from_table(Length(), end, left),
        from_table(out, start, left), from_table(out, end, left)};
  }

  const json& plan_;
  Cutter cutter_;
  Outcome out_;
  const json* stage_ = nullptr;
  Board board_{Length(), Length()};
  Length top_width_, top_height_, run_;
  std::map<int, StraightSlit> slits_;
  json guide_, near_, far_;
};

}  // namespace

Outcome play(const std::string& plan_json, const Cutter& cutter) {
  const json plan = json::parse(plan_json);
  return Bench(plan, cutter).work();
}

}  // namespace simulator
