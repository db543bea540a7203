#include "as_shown.h"

#include <algorithm>
#include <cmath>
#include <regex>

#include "by_hand.h"

namespace bench_test {

using mullion::Length;
using nlohmann::json;
using simulator::length_of;

namespace {

// Half of what a steady hand sets, 1/64 in or 0.1 mm, and what a finer scale rounds besides.
constexpr std::int64_t half_inch_step = 318, half_mm_step = 81;

const std::regex& length_pattern() {
  static const std::regex pattern("(\\d+ \\d+/\\d+|\\d+/\\d+|\\d+\\.\\d+|\\d+) (in|mm|cm)\\b");
  return pattern;
}

std::vector<std::string> lengths_in(const std::string& text) {
  std::vector<std::string> out;
  for (std::sregex_iterator at(text.begin(), text.end(), length_pattern()), end; at != end; ++at) {
    out.push_back(at->str());
  }
  return out;
}

bool is_shown_as(const std::string& shown, const json& exact) {
  const std::int64_t off = (length_of(shown) - length_of(exact)).ticks();
  return std::abs(off) <= (shown.ends_with("in") ? half_inch_step : half_mm_step);
}

// What stands for a length in the plan that is played.
json taken(const std::string& shown, const json& exact) {
  return is_shown_as(shown, exact) ? exact : json(shown);
}

std::vector<int> numbers_after(const std::string& text, const std::string& word) {
  std::vector<int> out;
  std::size_t at = text.find(word);
  if (at == std::string::npos) return out;
  at += word.size();
  if (text[at] == 's') ++at;
  while (at < text.size() && (text[at] == ' ' || text[at] == ',')) {
    const std::size_t digits = text.find_first_not_of(' ', at + (text[at] == ',' ? 1 : 0));
    if (digits == std::string::npos || !std::isdigit(static_cast<unsigned char>(text[digits]))) {
      break;
    }
    out.push_back(std::stoi(text.substr(digits)));
    at = text.find_first_not_of("0123456789", digits);
  }
  return out;
}

int number_in(const std::string& heading, const std::string& word) {
  return heading.starts_with(word) ? std::atoi(heading.c_str() + word.size()) : 0;
}

class Reader {
 public:
  explicit Reader(const json& plan) : plan_(plan), out_{plan, {}} {}

  AsShown read(const std::vector<ShownStep>& steps) {
    read_blanks(steps);
    out_.plan["stages"] = json::array();
    for (const ShownStep& step : steps) read_step(step);
    finish_stage();
    if (out_.plan["stages"].size() != plan_.at("stages").size()) fault("a stage is not shown");
    return std::move(out_);
  }

 private:
  void fault(const std::string& what) { out_.faults.push_back(what); }

  void read_blanks(const std::vector<ShownStep>& steps) {
    std::size_t i = 0;
    for (const ShownStep& step : steps) {
      if (!step.heading.starts_with("Blank cut")) continue;
      if (i == out_.plan["blanks"].size()) return;  // of a run
      json& blank = out_.plan["blanks"][i++];
      if (blank.at("arm_stop").is_null()) {
        blank["size"] = taken(step.dials.front().shows, blank.at("size"));
      } else {
        blank["arm_stop"]["shows"] = step.dials.front().shows;
      }
    }
  }

  // ---- Stages

  void read_step(const ShownStep& step) {
    if (step.text("board") != nullptr) return begin_stage(step);
    if (stage_.is_null()) return;
    if (step.heading == "All is cut.") return;
    if (step.kind == "check") return read_check(step);
    if (step.heading.starts_with("Pencil line ")) return read_stroke(step);
    if (step.heading == "Pencil lines") return read_lines(step);
    if (step.text("skew") != nullptr) return read_skew(step);
    if (step.text("curve") != nullptr) return read_curve(step);
    if (step.text("spacer") != nullptr) return read_spacer(step);
    if (step.heading.starts_with("Cut ")) return read_cut(step);
    if (step.text("trim") == nullptr) fault("a step that is none: " + step.heading);
  }

  void begin_stage(const ShownStep&) {
    finish_stage();
    const std::size_t next = out_.plan["stages"].size();
    if (next == plan_.at("stages").size()) return fault("a stage too many");
    wanted_ = plan_.at("stages")[next];
    stage_ = wanted_;
    for (const char* part : {"set_ups", "marking", "checks", "freehand", "curves", "strips",
                             "squares", "pencil_lines"}) {
      stage_[part] = json::array();
    }
    for (const json& line : wanted_.at("pencil_lines")) {
      if (line.at("drawn_by") != "rule") stage_["pencil_lines"].push_back(line);
    }
    last_cut_ = 0;
    cuts_.clear();
    for (const json& set_up : wanted_.at("set_ups")) {
      for (const json& placement : set_up.at("placements")) {
        for (const json& cut : placement.at("cuts")) {
          cuts_[cut.at("number")] = {set_up, placement, cut};
        }
      }
    }
  }

  void finish_stage() {
    if (stage_.is_null()) return;
    for (const char* part : {"checks", "freehand", "curves", "strips", "squares"}) {
      if (stage_[part].size() != wanted_.at(part).size()) {
        fault(std::string("not as many ") + part + " as planned");
      }
    }
    out_.plan["stages"].push_back(stage_);
    stage_ = json();
  }

  // ---- How the board lies

  // The letters around the picture: far, right, near, left.
  std::array<std::string, 4> letters_of(const ShownStep& step) {
    std::array<std::string, 4> out;
    const ShownPath* board = step.path("board");
    if (board == nullptr || board->numbers.size() != 5) {
      fault("no board in the picture");
      return out;
    }
    const double left = board->numbers[0], top = board->numbers[1], right = board->numbers[2],
                 bottom = board->numbers[3];
    for (const ShownLetter& letter : step.letters) {
      if (letter.name != "edge") continue;
      const int side = letter.y < top      ? 0
                       : letter.x > right  ? 1
                       : letter.y > bottom ? 2
                       : letter.x < left   ? 3
                                           : -1;
      if (side < 0) {
        fault("an edge's letter lies on the board");
      } else {
        out[static_cast<std::size_t>(side)] = letter.text;
      }
    }
    return out;
  }

  json lying(const ShownStep& step) {
    json out;
    const auto letters = letters_of(step);
    const ShownText* lie = step.text("lie");
    const ShownText* turn = step.text("turn");
    if (lie == nullptr || turn == nullptr) {
      fault("how the board lies is not said");
      return out;
    }
    const bool left = plan_.at("cutter").at("guide_side") == "left";
    out["edge_at_guide"] = lie->text.substr(5, 1);  // "Edge B at the guide"
    if (letters[left ? 3 : 1] != out["edge_at_guide"]) {
      fault("the picture has another edge at the guide than the words");
    }
    out["edge_at_arm"] = letters[2];
    out["edge_away"] = letters[0];
    static const std::regex laid("lay edge ([A-D]) away from you");
    std::smatch found;
    out["laid_anew"] = std::regex_match(turn->text, found, laid);
    out["quarter_turns_clockwise"] = json();
    if (!found.empty()) {
      out["edge_away"] = found[1].str();
    } else {
      const std::array<std::string, 4> turns = {"as it lies", "quarter turn to the right",
                                                "half turn", "quarter turn to the left"};
      const auto at = std::find(turns.begin(), turns.end(), turn->text);
      if (at == turns.end()) fault("no turn: " + turn->text);
      out["quarter_turns_clockwise"] = static_cast<int>(at - turns.begin());
    }
    return out;
  }

  // ---- What is set

  json setting(const ShownStep& step, const char* name, const json& planned) {
    const ShownDial* dial = step.dial(name);
    if (dial == nullptr || !dial->set) return {};
    const json rounded = planned.is_null() ? json("0 mm") : planned.at("rounded_by");
    return {{"shows", dial->shows}, {"rounded_by", rounded}};
  }

  json block(const ShownStep& step, const json& planned) {
    for (const auto& [name, place] : {std::pair("block at the guide", "inside the guide"),
                                      {"block outside the guide", "outside the guide"}}) {
      const ShownDial* dial = step.dial(name);
      if (dial == nullptr || !dial->set) continue;
      const json exact = planned.is_null() ? json(dial->shows) : planned.at("width");
      return {{"width", taken(dial->shows, exact)}, {"place", place}};
    }
    return {};
  }

  json settings(const ShownStep& step, const json& planned) {
    json out;
    out["guide"] = setting(step, "guide", planned.at("guide"));
    out["block"] = block(step, planned.at("block"));
    out["near_stop"] = setting(step, "near stop", planned.value("near_stop", json()));
    out["far_stop"] = setting(step, "far stop", planned.value("far_stop", json()));
    const ShownDial* arm = step.dial("block at the arm");
    const json exact = planned.value("arm_block", json());
    out["arm_block"] = arm == nullptr || !arm->set ? json()
                       : exact.is_null()           ? json(arm->shows)
                                                   : taken(arm->shows, exact);
    return out;
  }

  // ---- Lines that are drawn

  void read_lines(const ShownStep& step) {
    static const std::regex pattern("(.*) from ([A-D])");
    for (const ShownDial& dial : step.dials) {
      std::smatch found;
      bool known = false;
      if (std::regex_match(dial.shows, found, pattern)) {
        for (const json& line : wanted_.at("pencil_lines")) {
          if (line.at("drawn_by") != "rule" || line.at("edge") != found[2].str() ||
              !is_shown_as(found[1], line.at("distance"))) {
            continue;
          }
          stage_["pencil_lines"].push_back(line);
          known = true;
        }
      }
      if (!known) fault("a line to draw that is not planned: " + dial.shows);
    }
  }

  void read_stroke(const ShownStep& step) {
    if (last_cut_ > 0) fault("a line is drawn after a cut");
    const int number = number_in(step.heading, "Pencil line ");
    for (const json& planned : wanted_.at("marking")) {
      for (const json& line : planned.at("lines")) {
        if (line.at("number") != number) continue;
        json out;
        out["guide"] = setting(step, "guide", planned.at("guide"));
        out["block"] = block(step, planned.at("block"));
        out["by"] = step.text("draw")->text.starts_with("Pencil along the rail")
                        ? "pencil along the rail's edge"
                        : "blade's point";
        json lies = lying(step);
        lies["number"] = number;
        out["lines"] = json::array({lies});
        stage_["marking"].push_back(out);
        return;
      }
    }
    fault("a stroke that is not planned");
  }

  // Of lines that are shown alike, one that is drawn for the cut's opening comes first: 0 for none.
  template <class Find>
  static int own_line_first(const ShownStep& step, const Find& find) {
    const std::vector<int> openings = numbers_after(step.text("cut")->text, "opening");
    const int own = find([&](const json& line) {
      const auto of = line.at("openings").get<std::vector<int>>();
      return std::find_first_of(of.begin(), of.end(), openings.begin(), openings.end()) != of.end();
    });
    return own > 0 ? own : find([](const json&) { return true; });
  }

  int line_named(const ShownStep& step, const std::string& edge, const std::string& distance) {
    return own_line_first(step, [&](const auto& takes) {
      for (const json& line : wanted_.at("pencil_lines")) {
        if (line.at("edge") != edge || !is_shown_as(distance, line.at("distance"))) continue;
        if (takes(line)) return line.at("number").template get<int>();
      }
      return 0;
    });
  }

  int line_in_picture(const ShownStep& step, const std::string& near, double away) {
    return own_line_first(
        step, [&](const auto& takes) { return line_in_picture(step, near, away, takes); });
  }

  // The nearest line of the plan that is parallel to the edge and lies so far from it in the
  // picture, within a pixel and what is rounded.
  template <class Takes>
  int line_in_picture(const ShownStep& step, const std::string& near, double away,
                      const Takes& takes) {
    const ShownPath* board = step.path("board");
    const double along = board->numbers[3] - board->numbers[1];
    const bool level = near == "A" || near == "C";
    const Length size = length_of(plan_.at(level ? "height" : "width"));
    const double ticks = static_cast<double>(size.ticks());
    double least = 1.6 * ticks / along;
    int out = 0;
    for (const json& line : wanted_.at("pencil_lines")) {
      const std::string edge = line.at("edge");
      if ((edge == "A" || edge == "C") != level || !takes(line)) continue;
      const Length distance = length_of(line.at("distance"));
      const double from_near =
          static_cast<double>((edge == near ? distance : size - distance).ticks());
      const double off = std::abs(from_near - away / along * ticks);
      if (off >= least) continue;
      least = off;
      out = line.at("number");
    }
    return out;
  }

  // ---- Cuts

  struct Planned {
    json set_up, placement, cut;
  };

  void read_cut(const ShownStep& step) {
    const int number = number_in(step.heading, "Cut ");
    const auto at = cuts_.find(number);
    if (at == cuts_.end()) return fault("a cut that is not planned: " + step.heading);
    const Planned& planned = at->second;
    json set_up = settings(step, planned.set_up);
    set_up["number"] = planned.set_up.at("number");
    json lies = lying(step);
    json cut = planned.cut;
    compare_line(step, planned, lies);
    cut["on_pencil_line"] = freehand_line(step);
    cut["line_up_by"] = line_up(step);
    cut["start"] = end(step, planned.cut.at("start"), true, lies.value("edge_at_arm", ""));
    cut["end"] = end(step, planned.cut.at("end"), false, lies.value("edge_at_arm", ""));
    lies["cuts"] = json::array({cut});
    set_up["placements"] = json::array({lies});
    stage_["set_ups"].push_back(set_up);
    last_cut_ = number;
  }

  // Which opening, and which of its lines as seen from the front.
  void compare_line(const ShownStep& step, const Planned& planned, const json& lies) {
    const std::string& text = step.text("cut")->text;
    if (numbers_after(text, "opening") != planned.cut.at("openings")) {
      fault("a cut of another opening than planned");
    }
    const std::string sides[] = {"top", "left", "bottom", "right"};
    auto kept = static_cast<std::size_t>(lies.value("edge_at_guide", "A")[0] - 'A');
    if (plan_.at("cutter").at("blade_tip") != "to guide") kept = (kept + 2) % 4;
    if (text.find(", " + sides[kept % 4] + ", as seen from the front") == std::string::npos) {
      fault("a cut on another side of its opening");
    }
  }

  json freehand_line(const ShownStep& step) {
    const ShownDial* dial = step.dial("pencil line");
    if (dial == nullptr) return {};
    static const std::regex pattern("(.*) from ([A-D])");
    std::smatch found;
    if (std::regex_match(dial->shows, found, pattern)) {
      const int number = line_named(step, found[2], found[1]);
      if (number > 0) return number;
    }
    fault("a line under the rail that is not drawn: " + dial->shows);
    return {};
  }

  json line_up(const ShownStep& step) {
    const ShownText* rail = step.text("rail");
    if (rail == nullptr) return {};
    if (rail->text.find("blade's point") != std::string::npos) return "blade's point";
    const std::vector<std::string> by = lengths_in(rail->text);
    Length shown = by.empty() ? Length() : length_of(by.front());
    if (rail->text.find("toward the guide") != std::string::npos) shown = -shown;
    const Length exact = length_of(plan_.at("cutter").at("line_from_rail"));
    if (std::abs((shown - exact).ticks()) > half_inch_step) {
      fault("a line is brought to another place beside the rail than planned");
    }
    return "rail's edge";
  }

  // "mark 1/16 in past the line", where it is the planned one.
  void compare_mark(const std::string& said, const json& planned) {
    const std::vector<std::string> by = lengths_in(said);
    Length shown = by.empty() ? Length() : length_of(by.back());
    if (said.find("short of") != std::string::npos) shown = -shown;
    if (std::abs((shown - length_of(planned)).ticks()) > half_inch_step) {
      fault("the head's mark is brought to another place than planned");
    }
  }

  json end(const ShownStep& step, const json& planned, bool starts, const std::string& near) {
    json out = planned;
    for (const char* part : {"by", "number", "mark_past_line"}) out.erase(part);
    const ShownText* ends = step.text("ends");
    const std::string part = ends == nullptr ? "" : part_of(ends->text, starts);
    const bool far = starts == (plan_.at("cutter").at("stroke") == "pull");
    const ShownDial* stop = step.dial(far ? "far stop" : "near stop");
    if (part.empty() && stop != nullptr && stop->set) {
      out["by"] = "stop";
      return out;
    }
    static const std::regex at_line("(?:start|end) at the line (.*?) from ([A-D]).*");
    std::smatch found;
    if (const int cut = number_in(part, starts ? "start at cut " : "end at cut "); cut > 0) {
      out["by"] = "cut";
      out["number"] = cut;
    } else if (std::regex_match(part, found, at_line)) {
      out["by"] = "pencil line";
      out["number"] = line_named(step, found[2], found[1]);
    } else {
      out["by"] = "pencil line";
      out["number"] = line_in_picture(step, near, end_in_picture(step, starts));
    }
    if (out["number"] == 0) fault("a cut ends at a line that is not drawn");
    const ShownText* eye = step.text("eye");
    const std::size_t said = part.find(", mark ");
    out["mark_past_line"] = planned.value("mark_past_line", json("0 in"));
    if (said != std::string::npos) {
      compare_mark(part.substr(said), out["mark_past_line"]);
    } else if (eye != nullptr) {
      compare_mark(eye->text, out["mark_past_line"]);
    } else {
      fault("where the mark stands is not said");
    }
    return out;
  }

  // What is said of a cut's start or of its end.
  static std::string part_of(const std::string& ends, bool starts) {
    const std::size_t end = ends.find("end at ");
    if (!starts) return end == std::string::npos ? "" : ends.substr(end);
    if (!ends.starts_with("start at ")) return "";
    return end == std::string::npos ? ends : ends.substr(0, end - 2);
  }

  // How far from the near edge of the board.
  static double end_in_picture(const ShownStep& step, bool starts) {
    const ShownPath* board = step.path("board");
    const ShownPath* path = step.path(starts ? "start" : "tip");
    return path == nullptr || board == nullptr ? -1 : board->numbers[3] - path->numbers[1];
  }

  // ---- Checks, and what is cut by hand

  void read_check(const ShownStep& step) {
    const std::string& text = step.text("measure")->text;
    const std::size_t next = stage_["checks"].size();
    if (next >= wanted_.at("checks").size()) return fault("a check too many");
    json check = wanted_.at("checks")[next];
    const std::vector<std::string> lengths = lengths_in(text);
    const bool of_size = check.at("kind") == "fallout" || check.at("kind") == "opening";
    if (lengths.size() != (of_size ? 2U : 1U)) return fault("no measure: " + text);
    static const std::regex line("check: .* from ([A-D])( of the top mat)?");
    static const std::regex reveal("on scrap first: a reveal of .* at the (top|left|bottom|right)");
    std::smatch found;
    if (of_size) {
      const bool fallout = text.starts_with("check: fallout ");
      if (fallout != (check.at("kind") == "fallout")) fault("another check than planned");
      if (!fallout && numbers_after(text, "opening") != check.at("openings")) {
        fault("a check of another opening");
      }
      check["width"] = taken(lengths[0], check.at("width"));
      check["height"] = taken(lengths[1], check.at("height"));
      if (fallout && last_cut_ != check.at("after_cut")) fault("a fallout too soon or too late");
    } else if (check.at("kind") == "line" && std::regex_match(text, found, line)) {
      check["edge"] = found[1].str();
      check["distance"] = taken(lengths[0], check.at("distance"));
      check["after_cut"] = last_cut_;
    } else if (check.at("kind") == "reveal" && std::regex_match(text, found, reveal)) {
      const std::string sides[] = {"top", "left", "bottom", "right"};
      const auto side = std::find(std::begin(sides), std::end(sides), found[1].str());
      if (check.at("edge") != std::string(1, "ABCD"[side - std::begin(sides)]) ||
          !is_shown_as(lengths[0], check.at("distance"))) {
        fault("another reveal than planned");
      }
    } else {
      fault("another check than planned: " + text);
    }
    stage_["checks"].push_back(check);
  }

  void read_skew(const ShownStep& step) {
    const int number = number_in(step.heading, "Cut ");
    const std::string& text = step.text("skew")->text;
    for (json cut : wanted_.at("freehand")) {
      if (cut.at("number") != number) continue;
      const std::vector<std::string> lengths = lengths_in(text);
      if (lengths.size() < 4 || std::atoi(text.c_str()) != number) break;
      compare_marks(step, cut.at("mark_past_line"));
      const bool by_point = plan_.at("cutter").at("line_from_rail").is_null();
      if (line_up(step) != (by_point ? "blade's point" : "rail's edge")) {
        fault("to which mark a slanting line is brought is not said");
      }
      cut["from"] = {{"from_A", taken(lengths[0], cut.at("from").at("from_A"))},
                     {"from_B", taken(lengths[1], cut.at("from").at("from_B"))}};
      cut["to"] = {{"from_A", taken(lengths[2], cut.at("to").at("from_A"))},
                   {"from_B", taken(lengths[3], cut.at("to").at("from_B"))}};
      cut["openings"] = numbers_after(text, "opening");
      stage_["freehand"].push_back(cut);
      return;
    }
    fault("a slanting cut that is not planned: " + text);
  }

  // "mark 1/16 in past both points", or "mark onto the line at the start, ... at the end", with the
  // cut or with them all.
  void compare_marks(const ShownStep& step, const json& planned) {
    std::string said = step.text("skew")->text;
    std::size_t at = said.find(", mark ");
    if (const ShownText* marks = step.text("marks"); marks != nullptr) {
      said = marks->text;
      at = 0;
    }
    if (at == std::string::npos) return fault("where the mark stands is not said");
    said.erase(0, at);
    const std::size_t start = said.find(" at the start, ");
    if (start == std::string::npos) {
      compare_mark(said, planned[0]);
      compare_mark(said, planned[1]);
      return;
    }
    compare_mark(said.substr(0, start), planned[0]);
    compare_mark(said.substr(start), planned[1]);
  }

  void read_curve(const ShownStep& step) {
    const std::size_t next = stage_["curves"].size();
    if (next >= wanted_.at("curves").size()) return fault("a curve too many");
    json curve = wanted_.at("curves")[next];
    const std::string& text = step.text("curve")->text;
    curve["openings"] = numbers_after(text, "opening");
    if (curve.at("kind") == "oval cutter") {
      const std::vector<std::string> lengths = lengths_in(text);
      std::vector<json*> places = {&curve["centre"]["from_A"], &curve["centre"]["from_B"]};
      if (text.find("set as for") == std::string::npos) {
        std::vector<json*> axes;
        for (const char* side : {"back", "face"}) {
          axes.push_back(&curve[side]["width"]);
          axes.push_back(&curve[side]["height"]);
        }
        axes.push_back(&curve["back"]["half_width"]);
        axes.push_back(&curve["back"]["half_height"]);
        // How far the ellipse lies off is said after the axes where it is worth it.
        if (lengths.size() > 8) axes.push_back(nullptr);
        places.insert(places.begin(), axes.begin(), axes.end());
      }
      if (lengths.size() != places.size()) return fault("an oval's measures: " + text);
      for (std::size_t i = 0; i < places.size(); ++i) {
        if (places[i] != nullptr && !is_shown_as(lengths[i], *places[i])) {
          fault("an oval is set otherwise than planned");
        }
      }
    }
    stage_["curves"].push_back(curve);
  }

  void read_spacer(const ShownStep& step) {
    const std::string& text = step.text("spacer")->text;
    const std::vector<std::string> lengths = lengths_in(text);
    const bool strip = text.starts_with("strip ");
    const char* part = strip ? "strips" : "squares";
    const std::size_t next = stage_[part].size();
    if (next >= wanted_.at(part).size() || lengths.size() != (strip ? 2U : 4U)) {
      return fault("a spacer's cut that is not planned: " + text);
    }
    json cut = wanted_.at(part)[next];
    if (strip) {
      cut["width"] = taken(lengths[0], cut.at("width"));
      cut["length"] = taken(lengths[1], cut.at("length"));
      cut["edge"] = text.substr(text.size() - 1);
    } else {
      const char* sides[] = {"from_A", "from_B", "from_C", "from_D"};
      for (std::size_t i = 0; i < 4; ++i) cut[sides[i]] = taken(lengths[i], cut.at(sides[i]));
    }
    stage_[part].push_back(cut);
  }

  const json& plan_;
  AsShown out_;
  json stage_, wanted_;  // as it is shown so far, and as it is planned
  std::map<int, Planned> cuts_;
  int last_cut_ = 0;
};

}  // namespace

AsShown as_shown(const std::string& html, const json& plan, int kind) {
  std::vector<ShownStep> steps = shown_steps(html);
  if (kind > 0) {
    const std::string name = "Kind " + std::to_string(kind) + ":";
    std::erase_if(steps, [&](const ShownStep& step) {
      return step.where.empty() || !step.where.front().starts_with(name);
    });
  }
  return Reader(plan).read(steps);
}

}  // namespace bench_test
