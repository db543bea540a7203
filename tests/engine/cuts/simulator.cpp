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
  return length_of(setting.at("shows")) - length_of(setting.at("rounded_by"));
}

std::vector<int> openings_of(const json& cut) {
  return cut.at("openings").get<std::vector<int>>();
}

// A board on the table: face down, turned clockwise so many times from "top edge away".
class Board {
 public:
  Board(Length width, Length height) : width_(width), height_(height) {}

  void turn_clockwise(int quarters) { turns_ = (turns_ + quarters + 400) % 4; }
  void lay_with_edge_away(char letter) {
    while (letter_at(0) != letter) turn_clockwise(1);
  }

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
  Bench(const json& plan, const Cutter& cutter, unsigned lie, Length slack)
      : plan_(plan), cutter_(cutter), lie_(lie), slack_(slack) {}

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
  bool alike(Length a, Length b) const { return a - b <= slack_ && b - a <= slack_; }

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
    // The strip is as wide as the shorter side.
    if (sides.size() != 2 || !alike(sides[0], std::min(width, height)) ||
        !alike(sides[1], std::max(width, height))) {
      fault("the straight cuts do not give the blank");
    }
    return {width, height};
  }

  void cut_stage(const json& stage, Length width, Length height) {
    stage_ = &stage;
    run_ = length_of(stage.at("bevel_run"));
    slits_.clear();
    drawn_.clear();
    const bool taped = stage.at("taped_behind").get<bool>();
    board_ = taped ? Board(top_width_, top_height_) : Board(width, height);
    board_.turn_clockwise(static_cast<int>(lie_ & 3));
    lie_ >>= 2;
    for (const json& set_up : stage.at("marking")) mark(set_up);
    for (const json& set_up : stage.at("set_ups")) work_set_up(set_up);
    for (const json& check : stage.at("checks")) compare(check);
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
    if (layer.kind == "spacer") {
      layer.back = spacer_windows(stage, width, height);
      out_.layers.push_back(std::move(layer));
      return;
    }
    std::vector<Piece> back, face;
    for (const auto& [number, slit] : slits_) {
      layer.straight.push_back(slit);
      const auto tracks = layer.tracks.find(slit.openings);
      if (tracks != layer.tracks.end()) {
        tracks->second.push_back(in_ticks(slit));
        continue;
      }
      back.push_back({slit.a, slit.b});
      face.push_back({slit.face_a, slit.face_b});
    }
    if (slack_ > Length()) {
      out_.layers.push_back(std::move(layer));
      return;
    }
    Openings seen_from_behind(back), seen_from_front(face);
    layer.back = seen_from_behind.polygons();
    layer.face = seen_from_front.polygons();
    layer.longest_overrun = seen_from_front.longest_overrun();
    if (!seen_from_front.whole() || !seen_from_behind.whole()) fault("a cut does not close");
    out_.layers.push_back(std::move(layer));
  }

  static Track in_ticks(const NamedCut& slit) {
    const auto spot = [](Point p) {
      return Spot{static_cast<double>(p.x.ticks()), static_cast<double>(p.y.ticks())};
    };
    return {{spot(slit.a), spot(slit.b)}, {spot(slit.face_a), spot(slit.face_b)}};
  }

  // What is left free by strips along the edges, or cut out square.
  std::vector<Polygon> spacer_windows(const json& stage, Length width, Length height) {
    std::vector<Polygon> out;
    const auto add = [&](Length left, Length top, Length right, Length bottom) {
      Polygon polygon{{left, top}, {right, top}, {right, bottom}, {left, bottom}};
      std::sort(polygon.begin(), polygon.end());
      out.push_back(polygon);
    };
    for (const json& window : stage.at("squares")) {
      const auto from = [&](const char* edge) { return length_of(window.at(edge)); };
      add(from("from_B"), from("from_A"), width - from("from_D"), height - from("from_C"));
    }
    std::map<std::string, std::pair<Length, Length>> strips;
    for (const json& strip : stage.at("strips")) {
      strips[strip.at("edge")] = {length_of(strip.at("width")), length_of(strip.at("length"))};
    }
    if (!strips.empty()) {
      const Length left = strips["B"].first, right = width - strips["D"].first;
      if (!alike(strips["B"].second, height) || !alike(strips["D"].second, height) ||
          !alike(strips["A"].second, right - left) || !alike(strips["C"].second, right - left)) {
        fault("the strips of a spacer do not meet");
      }
      add(left, strips["A"].first, right, height - strips["C"].first);
    }
    std::sort(out.begin(), out.end());
    return out;
  }

  void lay(const json& placement) {
    if (placement.at("laid_anew").get<bool>()) {
      board_.lay_with_edge_away(placement.at("edge_away").get<std::string>()[0]);
    } else {
      board_.turn_clockwise(placement.at("quarter_turns_clockwise").get<int>());
    }
    // A place that is not told cannot be wrong.
    const auto is_at = [&](const char* what, int side) {
      return !placement.contains(what) ||
             placement.at(what) == std::string(1, board_.letter_at(side));
    };
    if (!is_at("edge_at_guide", cutter_.guide_on_left ? 3 : 1)) {
      fault("the turns do not bring the stated edge to the guide");
    }
    if (!is_at("edge_at_arm", 2)) {
      fault("the turns do not bring the stated edge to the squaring arm");
    }
    if (!is_at("edge_away", 0)) fault("the turns do not bring the stated edge away");
  }

  // From the edge at the guide to the blade's line.
  Length guided(const json& set_up) {
    const Length shown = setting_of(set_up.at("guide"));
    if (shown < Length()) fault("the guide is to show less than nothing");
    Length distance = shown - cutter_.guide_zero;
    if (!set_up.at("block").is_null()) {
      const Length width = length_of(set_up.at("block").at("width"));
      distance += set_up.at("block").at("place") == "inside the guide" ? -width : width;
    }
    return distance;
  }

  // Lines along the rail: where they come to lie, as distances from the edge at the guide.
  void mark(const json& set_up) {
    const bool along_rail = set_up.at("by") == "pencil along the rail's edge";
    for (const json& line : set_up.at("lines")) {
      lay(line);
      const Length distance = guided(set_up) - (along_rail ? cutter_.line_from_rail : Length());
      drawn_[line.at("number").get<int>()] = {line.at("edge_at_guide").get<std::string>()[0],
                                              distance};
    }
  }

  // What a rule shows against what the plan says it must.
  void compare(const json& check) {
    const std::string kind = check.at("kind");
    if (kind == "reveal") return;
    if (kind == "line") {
      const auto found_slit = slits_.find(check.at("after_cut").get<int>());
      if (found_slit == slits_.end()) return fault("a line is to be checked that is not cut");
      const NamedCut& slit = found_slit->second;
      const char edge = check.at("edge").get<std::string>()[0];
      const Length found = edge == 'A'   ? slit.a.y
                           : edge == 'B' ? slit.a.x
                           : edge == 'C' ? board_.height() - slit.a.y
                                         : board_.width() - slit.a.x;
      if (!alike(found, length_of(check.at("distance"))))
        fault("a line is not where a check has it");
      return;
    }
    const std::vector<int> wanted = openings_of(check);
    std::vector<Length> xs, ys;
    for (const auto& [number, slit] : slits_) {
      const bool of_it =
          std::find(wanted.begin(), wanted.end(), slit.openings.front()) != wanted.end();
      if (!of_it || slit.openings.front() != wanted.front()) continue;
      if (slit.a.x == slit.b.x) xs.push_back(slit.a.x);
      if (slit.a.y == slit.b.y) ys.push_back(slit.a.y);
      if (kind == "fallout" && number > check.at("after_cut").get<int>()) {
        fault("a fallout is to be measured before it is cut free");
      }
    }
    if (xs.size() != 2 || ys.size() != 2) return;
    const auto between = [](std::vector<Length>& both) {
      return std::max(both[0], both[1]) - std::min(both[0], both[1]);
    };
    if (!alike(between(xs), length_of(check.at("width"))) ||
        !alike(between(ys), length_of(check.at("height")))) {
      fault("an opening is not as large as a check has it");
    }
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
      lay(placement);
      for (const json& cut : placement.at("cuts")) work_cut(set_up, cut);
    }
  }

  // Where the board's left edge lies on the table.
  Length left_edge(const json& set_up, const json& cut) {
    if (!cut.at("on_pencil_line").is_null()) {
      const Point line = place_of_pencil(cut.at("on_pencil_line").get<int>());
      Length off;
      if (cut.at("line_up_by") == "rail's edge") {
        off = length_of(plan_.at("cutter").at("line_from_rail")) - cutter_.line_from_rail;
      }
      return (cutter_.guide_on_left ? off : -off) -
             mullion::half_rounded_down(line.x + board_.across());
    }
    const Length distance = guided(set_up);
    return cutter_.guide_on_left ? -distance : distance - board_.across();
  }

  // Twice the place, about the board's middle, of some point on a pencil line.
  Point place_of_pencil(int number) {
    for (const json& line : stage_->at("pencil_lines")) {
      if (line.at("number") != number) continue;
      Length d = length_of(line.at("distance"));
      char edge = line.at("edge").get<std::string>()[0];
      if (line.at("drawn_by") == "guide") {
        if (drawn_.count(number) == 0) {
          fault("a line is not drawn that the guide was to draw");
        } else {
          std::tie(edge, d) = drawn_.at(number);
        }
      }
      const Length w = board_.width(), h = board_.height();
      const Point p = edge == 'A'   ? Point{Length(), d}
                      : edge == 'B' ? Point{d, Length()}
                      : edge == 'C' ? Point{Length(), h - d}
                                    : Point{w - d, Length()};
      return board_.on_table(p);
    }
    throw std::logic_error("no such pencil line");
  }

  // Where the blade is at an end of the cut, which is its start or not.
  Length blade_at(const json& set_up, const json& end, bool starts) {
    const bool far = starts == cutter_.pulled;
    const int sign = far ? 1 : -1;
    const Length lead = starts ? cutter_.start_lead : cutter_.mark_lead;
    if (end.at("by") == "stop") {
      const char* stop = far ? "far_stop" : "near_stop";
      if (set_up.at(stop).is_null()) {
        fault("a cut ends at a stop that is not set");
        return Length();
      }
      const Length shown = setting_of(set_up.at(stop));
      if (shown < Length()) fault("a stop is to show less than nothing");
      return shown - (far ? cutter_.far_zero : cutter_.near_zero) + sign * lead;
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
    return near_edge(set_up) + line + sign * (length_of(end.at("mark_past_line")) + lead);
  }

  // Where the board's near edge lies on the table.
  static Length near_edge(const json& set_up) {
    return set_up.at("arm_block").is_null() ? Length() : length_of(set_up.at("arm_block"));
  }

  Point from_table(Length x, Length y, Length left, Length near) const {
    return board_.on_front({(x - left) * 2 - board_.across(), (y - near) * 2 - board_.along()});
  }

  void work_cut(const json& set_up, const json& cut) {
    if (set_up.at("guide").is_null() == cut.at("on_pencil_line").is_null()) {
      fault("a cut is neither at the guide nor on a line, or both");
      return;
    }
    const Length left = left_edge(set_up, cut);
    const Length near = near_edge(set_up);
    const Length start = blade_at(set_up, cut.at("start"), true);
    const Length end = blade_at(set_up, cut.at("end"), false);
    if (start == end || (start > end) != cutter_.pulled) {
      fault("a cut starts below its end");
      return;
    }
    if (cutter_.reach && std::max(start, end) > *cutter_.reach) fault("a cut is off the rail");
    if (!set_up.at("near_stop").is_null() && !set_up.at("far_stop").is_null() &&
        setting_of(set_up.at("near_stop")) - cutter_.near_zero >=
            setting_of(set_up.at("far_stop")) - cutter_.far_zero) {
      fault("the stops cross");
    }
    const bool tip_left = cutter_.guide_on_left == cutter_.tip_to_guide;
    const Length out = tip_left ? -run_ : run_;
    const int number = cut.at("number").get<int>();
    const NamedCut slit{number,
                        openings_of(cut),
                        cut.value("side", ""),
                        from_table(Length(), start, left, near),
                        from_table(Length(), end, left, near),
                        from_table(out, start, left, near),
                        from_table(out, end, left, near)};
    if (!slit.side.empty() && run_ > Length() && slit.side != kept_side(slit))
      fault("a cut is on another side");
    if (!slits_.emplace(number, slit).second) fault("two cuts have one number");
  }

  // The blade's tip points to it.
  static std::string kept_side(const NamedCut& slit) {
    if (slit.face_a.x != slit.a.x) return slit.face_a.x < slit.a.x ? "left" : "right";
    return slit.face_a.y < slit.a.y ? "top" : "bottom";
  }

  const json& plan_;
  Cutter cutter_;
  unsigned lie_;
  Length slack_;
  Outcome out_;
  const json* stage_ = nullptr;
  Board board_{Length(), Length()};
  Length top_width_, top_height_, run_;
  std::map<int, NamedCut> slits_;
  std::map<int, std::pair<char, Length>> drawn_;  // with the guide
  json guide_, near_, far_;
};

}  // namespace

Outcome play(const std::string& plan_json, const Cutter& cutter, unsigned lie, Length slack) {
  const json plan = json::parse(plan_json);
  return Bench(plan, cutter, lie, slack).work();
}

}  // namespace simulator
