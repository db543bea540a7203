#include "printed_plan.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
#include <regex>
#include <set>
#include <stdexcept>

#include "printed_words.h"

namespace printed {

using mullion::Length;
using nlohmann::json;

namespace {

json setting(const std::string& shows) {
  return {{"shows", shows}, {"rounded_by", "0 mm"}};
}

constexpr const char* lays[] = {"as it lies", "quarter turn to the right", "half turn",
                                "quarter turn to the left"};

// What the scales show, as it was last told.
struct Shown {
  std::optional<std::string> guide, near_stop, far_stop, block, arm_block;
  bool outside = false;  // the block at the guide
  bool operator==(const Shown&) const = default;
};

class PlanReader {
 public:
  PlanReader(const std::vector<Part>& parts, const Bench& bench) : parts_(parts), bench_(bench) {}

  Told read() {
    plan() = {{"cutter", json::object()}, {"blanks", json::array()}, {"stages", json::array()}};
    for (const Part& part : parts_) {
      switch (part.kind) {
        case Kind::bar:
          read_bar(part.text);
          break;
        case Kind::text:
          read_text(part.text);
          break;
        case Kind::item:
          read_item(part.text);
          break;
        case Kind::settings:
          read_settings(part.text, false);
          begin_set_up();
          break;
        case Kind::placement:
          read_placement(part);
          break;
      }
    }
    finish_stage();
    if (!direction_told_) fault("it is not told which way to cut");
    return std::move(told_);
  }

 private:
  json& plan() { return told_.plan; }
  json& stage() {
    if (!in_stage()) throw std::runtime_error("something is to be done to no board");
    return told_.plan["stages"].back();
  }
  bool in_stage() const { return !told_.plan["stages"].empty(); }
  void fault(const std::string& what) { told_.faults.push_back(what); }
  bool alike(Length a, Length b) const { return a - b <= bench_.slack && b - a <= bench_.slack; }
  bool alike(const std::string& a, Length b) const { return alike(length_of(a), b); }

  // ---- the head, the blanks ----

  void read_text(const std::string& text) {
    static const std::regex lies("Red: cut now, (pulled toward you|pushed away from you)\\.");
    if (const auto m = found(text, lies)) {
      direction_told_ = true;
      if (((*m)[1] == "pulled toward you") != bench_.cutter.pulled) {
        fault("the sheet is for a head that cuts the other way");
      }
    }
    if (in_stage()) read_stage_text(text);
  }

  void read_blank(const std::string& text) {
    static const std::regex sides = pattern(
        "^(arm stop |pencil line at )~: a strip; then (arm stop |pencil line at )~: the blank off "
        "it, for layers? #");
    const auto m = found(text, sides);
    if (!m) return;
    const std::vector<int> layers = numbers_of((*m)[5]);
    const auto side = [&](bool by_stop, const std::string& size) {
      return json{
          {"layers", layers}, {"size", size}, {"arm_stop", by_stop ? setting(size) : json()}};
    };
    plan()["blanks"].push_back(side((*m)[1] == "arm stop ", (*m)[2]));
    plan()["blanks"].push_back(side((*m)[3] == "arm stop ", (*m)[4]));
  }

  void read_gauges(const std::string& text) {
    if (!text.starts_with("Spacers from scrap")) return;
    static const std::regex width = pattern("~");
    each(text, width, [&](const std::smatch& m) {
      gauges_.insert(length_of(m.str()) - bench_.cutter.arm_zero -
                     mullion::half_rounded_down(bench_.cutter.kerf));
    });
  }

  // ---- a stage ----

  void read_bar(const std::string& text) {
    static const std::regex layer = pattern("^(?:Layer ([0-9]+): .*|V-grooves), blank ~ x ~$");
    const auto m = found(text, layer);
    if (!m) return;
    finish_stage();
    const bool groove = !(*m)[1].matched;
    const int number = groove ? 1 : std::stoi((*m)[1]);
    const mullion::MatLayer& board = bench_.mat->layers.at(static_cast<std::size_t>(number) - 1);
    plan()["stages"].push_back({{"kind", groove ? "groove" : "layer"},
                                {"layer", number},
                                {"bevel_run", text_of(board.run)},
                                {"taped_behind", false},
                                {"blank", {{"width", (*m)[2].str()}, {"height", (*m)[3].str()}}},
                                {"pencil_lines", json::array()},
                                {"marking", json::array()},
                                {"set_ups", json::array()},
                                {"freehand", json::array()},
                                {"curves", json::array()},
                                {"strips", json::array()},
                                {"squares", json::array()},
                                {"checks", json::array()}});
    if (number == 1) outer_ = {length_of((*m)[2]), length_of((*m)[3])};
    past_.reset();
    amount_.reset();
    last_cut_ = 0;
    board_ = &board;
    stage_shown_.clear();
  }

  void read_stage_text(const std::string& text) {
    static const std::regex tape = pattern("centred: ~ of the top mat shows all around"),
                            past = pattern(
                                "bring the head's mark (onto the line|~ (past|short "
                                "of) the line)"),
                            amount = pattern(
                                "guide (opened|closed) by ~(?:, near stop ~ (away "
                                "from|toward) the arm, far stop ~ (away from|toward) it)?"),
                            skew = pattern("Freehand, each line under the rail: mark (.*)$"),
                            rail = pattern(
                                "bring its line (under the blade's point|along "
                                "the rail's edge|~ from the rail's edge, (away from|"
                                "toward) the guide's side)");
    if (text.starts_with("A spacer is not seen")) stage()["kind"] = "spacer";
    if (const auto m = found(text, tape)) {
      stage()["taped_behind"] = true;
      const Length shows = length_of((*m)[1]);
      const Length off = shows * 2 - (outer_.first - length_of(stage()["blank"]["width"]));
      if (!near(off, {})) {
        fault("the blank is not as much smaller as is said to show around it");
      }
    }
    if (const auto m = found(text, past)) past_ = past_of(*m, 1);
    if (const auto m = found(text, rail)) {
      const Length line = (*m)[2].matched ? length_of((*m)[2]) : Length();
      if (!has(text, "blade's point")) {
        json& told = plan()["cutter"]["line_from_rail"];
        const std::string now = text_of((*m)[3].matched && (*m)[3] == "toward" ? -line : line);
        if (!told.is_null() && told != now) fault("lines are brought to two different marks");
        told = now;
        by_rail_ = true;
      }
      lining_up_told_ = true;
    }
    if (const auto m = found(text, amount)) {
      amount_ = {length_of((*m)[2]) * ((*m)[1] == "opened" ? 1 : -1), {}};
      if (!(*m)[3].matched && has(text, " stop ")) fault("the stops' amount is not told for both");
      if ((*m)[3].matched) {
        amount_->second = length_of((*m)[3]) * ((*m)[4] == "away from" ? 1 : -1);
        if ((*m)[5] != (*m)[3] || ((*m)[4] == "away from") != ((*m)[6] == "toward")) {
          fault("the two stops are set off by two amounts");
        }
      }
    }
    if (const auto m = found(text, skew)) skew_marks_ = (*m)[1];
    static const std::regex
        size = pattern("= check: (?:the window of )?openings? # (?:is|are each) ~ x ~ on the back"),
        blocks_at = pattern("guide at ~: ((?:~ for ~(?:, )?)+)"), block_for = pattern("~ for ~");
    each(text, size, [&](const std::smatch& m) { check_size(numbers_of(m[1]), m[2], m[3]); });
    each(text, blocks_at, [&](const std::smatch& m) {
      const std::string blocks = m[2];
      each(blocks, block_for, [&](const std::smatch& b) {
        const Length reach = length_of(m[1]) - bench_.cutter.guide_zero + length_of(b[1]);
        if (!alike(b[2], reach)) fault("a block outside the guide does not make up the distance");
      });
    });
  }

  // Of each window that serves one of the openings, on the back.
  void check_size(const std::vector<int>& openings, const std::string& width,
                  const std::string& height) {
    for (const int opening : openings) {
      const mullion::Window* window = window_of(opening);
      // Outlines that are not made of lengths are rounded where they are measured.
      const bool free = window != nullptr && window->shape.kind == mullion::ShapeKind::outline;
      const auto right = [&](const std::string& told, Length is) {
        return free ? near(length_of(told), is) : alike(told, is);
      };
      if (window == nullptr || !right(width, window->back.width()) ||
          !right(height, window->back.height())) {
        fault("an opening is not as large as a check has it");
      }
    }
  }

  const mullion::Window* window_of(int opening) const {
    for (const mullion::Window& window : board_->windows) {
      if (mullion::serves(window, opening)) return &window;
    }
    return nullptr;
  }

  // "onto the line", "1/16 in past the line", "1/16 in short of the line".
  static Length past_of(const std::smatch& m, std::size_t group) {
    if (m[group].str().starts_with("onto")) return {};
    const Length past = length_of(m[group + 1]);
    return m[group + 2].str().starts_with("short") ? -past : past;
  }

  void read_item(const std::string& text) {
    if (!in_stage()) {
      read_blank(text);
      read_gauges(text);
      return;
    }
    static const std::regex
        guide_lines = pattern(
            "^guide ~(?:, block ~ wide (outside the guide|between guide and board))?: "
            "(pencil along the rail's edge|draw with the blade's point).*edges? "
            "([A-D](?:, [A-D])*) at the guide.*: lines? #"),
        strip = pattern("^strip ~ wide, ~ long, straight, along edge ([A-D])"),
        square = pattern(
            "^openings? #: cut square through .*, ~ from edge A, ~ from B, ~ from C, "
            "~ from D"),
        skew = pattern("^([0-9]+)  ?openings? #: ~ from A, ~ from B to ~ from A, ~ from B"),
        oval = pattern(
            "^openings? #: oval cutter, axes ~ x ~ on the back and ~ x ~ on the face \\(half-axes "
            "~ "
            "and ~ on the back\\).*centre ~ from edge A( of the top mat)? and ~ from edge B"),
        oval_again = pattern(
            "^openings? #: oval cutter set as for openings? #; centre ~ from edge "
            "A(?: of the top mat)? and ~ from edge B"),
        curve = pattern("^openings? #: the curves by hand along the full-scale template"),
        reveal = pattern("^on scrap first: a reveal of ~ at the (top|left|bottom|right)");
    using Match = const std::smatch&;
    if (text.starts_with("Tape the printed template")) return take_template();
    if (has(text, "From edge ")) return read_drawn(text);
    if (text.starts_with("Set-up ") || continues_list(text)) return read_listed(text);
    taken(text, guide_lines, [&](Match m) { read_guide_lines(m); }) ||
        taken(text, strip,
              [&](Match m) {
                stage()["strips"].push_back(
                    {{"edge", m[3].str()}, {"width", m[1].str()}, {"length", m[2].str()}});
              }) ||
        taken(text, square,
              [&](Match m) {
                stage()["squares"].push_back({{"openings", numbers_of(m[1])},
                                              {"from_A", m[2].str()},
                                              {"from_B", m[3].str()},
                                              {"from_C", m[4].str()},
                                              {"from_D", m[5].str()}});
              }) ||
        taken(text, skew, [&](Match m) { read_skew(m); }) ||
        taken(text, oval,
              [&](Match m) {
                check_axes(m);
                ovals_[numbers_of(m[1])] = {m[6], m[7]};
                add_oval(numbers_of(m[1]), {m[6], m[7]}, m[8], m[10]);
              }) ||
        taken(text, oval_again,
              [&](Match m) { add_oval(numbers_of(m[1]), ovals_[numbers_of(m[2])], m[3], m[4]); }) ||
        taken(text, curve, [&](Match m) { take_curve(numbers_of(m[1])); }) ||
        taken(text, reveal, [&](Match m) { read_reveal(length_of(m[1]), m[2]); });
  }

  // ---- lines on the back ----

  struct Line {
    int number;
    char edge;
    Length distance;
    std::vector<int> openings;
  };

  bool upright(char edge) const { return edge == 'B' || edge == 'D'; }
  // From edge A or B, on the board that is measured.
  Length place(char edge, Length distance) const {
    const Length width = measured().first, height = measured().second;
    return edge == 'C' ? height - distance : edge == 'D' ? width - distance : distance;
  }
  std::pair<Length, Length> measured() const {
    const json& stage = told_.plan["stages"].back();
    if (stage["taped_behind"].get<bool>()) return outer_;
    return {length_of(stage["blank"]["width"]), length_of(stage["blank"]["height"])};
  }

  void add_line(const char* by, char edge, Length distance, const std::vector<int>& openings) {
    const int number = static_cast<int>(stage()["pencil_lines"].size()) + 1;
    lines_.push_back({number, edge, distance, openings});
    stage()["pencil_lines"].push_back({{"number", number},
                                       {"drawn_by", by},
                                       {"edge", std::string(1, edge)},
                                       {"distance", text_of(distance)}});
  }

  // "From edge A: 2 7/8 in at openings 1, 3; 9 7/8 in at opening 4".
  void read_drawn(const std::string& text) {
    static const std::regex edge("From edge ([A-D])( of the top mat)?: "),
        line = pattern("~(?: at openings? #)?(?:;|$)");
    const auto from = found(text, edge);
    if (!from) return;
    if ((*from)[2].matched != stage()["taped_behind"].get<bool>()) {
      fault("a line is measured from the wrong board's edge");
    }
    const std::string rest = from->suffix();
    each(rest, line, [&](const std::smatch& m) {
      const char letter = (*from)[1].str()[0];
      add_line("rule", letter, length_of(m[1]), numbers_of(m[2]));
      for (const int opening : numbers_of(m[2])) check_line(letter, length_of(m[1]), opening);
    });
  }

  // A side of the opening's window lies there. Places of a blank that is cut by itself count from
  // its own edges, which are the mat's.
  void check_line(char edge, Length distance, int opening) {
    const mullion::Window* window = window_of(opening);
    if (window == nullptr) return fault("a line is drawn for an opening that is not there");
    const Length at = place(edge, distance);
    const auto& b = window->back;
    const bool there = upright(edge) ? alike(at, b.left) || alike(at, b.right)
                                     : alike(at, b.top) || alike(at, b.bottom);
    if (!there && window->shape.kind == mullion::ShapeKind::rectangle) {
      fault("a line is drawn for another opening");
    }
  }

  void read_guide_lines(const std::smatch& m) {
    json set_up = {
        {"guide", setting(m[1])},
        {"block", json()},
        {"by", m[4].str() == "draw with the blade's point" ? "blade's point" : m[4].str()},
        {"lines", json::array()}};
    Length distance = length_of(m[1]) - bench_.cutter.guide_zero;
    if (m[2].matched) {
      const bool outside = m[3] == "outside the guide";
      set_up["block"] = block(m[2], outside);
      distance += outside ? length_of(m[2]) : -length_of(m[2]);
    }
    if (m[4] == "pencil along the rail's edge") distance -= bench_.cutter.line_from_rail;
    const std::vector<int> numbers = numbers_of(m[6]);
    std::size_t i = 0;
    static const std::regex an_edge("[A-D]");
    const std::string edges = m[5];
    each(edges, an_edge, [&](const std::smatch& edge) {
      const char letter = edge.str()[0];
      // All are numbered in the order in which they are drawn, or the framer is lost.
      add_line("guide", letter, distance, {});
      if (i >= numbers.size()) return fault("a line along the rail has no number");
      json line = lie_at_guide(letter);
      line["number"] = lines_.back().number;
      set_up["lines"].push_back(line);
      ++i;
    });
    stage()["marking"].push_back(set_up);
  }

  // Laid with that edge at the guide, whatever lay there before.
  json lie_at_guide(char edge) const {
    const int away = edge - 'A' + (bench_.cutter.guide_on_left ? 1 : 3);
    return {{"edge_at_guide", std::string(1, edge)},
            {"laid_anew", true},
            {"edge_away", std::string(1, "ABCD"[away % 4])}};
  }

  const json& of_templates() const {
    for (const json& other : bench_.templates.at("stages")) {
      const json& stage = told_.plan["stages"].back();
      if ((other.at("kind") == "groove") == (stage["kind"] == "groove") &&
          other.at("layer") == stage["layer"]) {
        return other;
      }
    }
    throw std::logic_error("no such stage");
  }

  void take_template() {
    for (const json& line : of_templates().at("pencil_lines")) {
      add_line("template", line.at("edge").get<std::string>()[0], length_of(line.at("distance")),
               line.at("openings"));
    }
  }

  void take_curve(const std::vector<int>& openings) {
    for (const json& curve : of_templates().at("curves")) {
      if (curve.at("openings") == openings) return stage()["curves"].push_back(curve);
    }
    fault("there is no template for a curve");
  }

  // ---- what is cut by hand ----

  void add_oval(const std::vector<int>& openings, const std::pair<std::string, std::string>& halves,
                const std::string& down, const std::string& across) {
    stage()["curves"].push_back(
        {{"kind", "oval cutter"},
         {"openings", openings},
         {"centre", {{"from_A", down}, {"from_B", across}}},
         {"back", {{"half_width", halves.first}, {"half_height", halves.second}}}});
  }

  // Axes are twice the half-axes, and the face's are larger by the bevel on both sides.
  void check_axes(const std::smatch& m) {
    const Length run = board_->run;
    const bool right = near(length_of(m[2]), length_of(m[6]) * 2) &&
                       near(length_of(m[3]), length_of(m[7]) * 2) &&
                       near(length_of(m[4]), length_of(m[2]) + run * 2) &&
                       near(length_of(m[5]), length_of(m[3]) + run * 2);
    if (!right) fault("the axes of an oval contradict each other");
  }
  static bool near(Length a, Length b) { return std::abs(mullion::to_inches(a - b)) < 1.0 / 20; }

  void read_skew(const std::smatch& m) {
    static const std::regex both = pattern("^(onto|~ (past|short of)) both points"),
                            each_end = pattern(
                                "^(onto the line|~ (past|short of) the line) at the "
                                "start, (onto the line|~ (past|short of) the line) "
                                "at the end");
    std::string marks = skew_marks_;
    const std::string more = m.suffix();
    static const std::regex own_marks("mark (.*)$");
    if (const auto own = found(more, own_marks)) marks = (*own)[1];
    Length from, to;
    if (const auto two = found(marks, each_end)) {
      from = past_of(*two, 1);
      to = past_of(*two, 4);
    } else if (const auto one = found(marks, both)) {
      from = to = past_of(*one, 1);
    } else {
      fault("a slanting cut has no mark to go to");
    }
    if (!lining_up_told_) fault("it is not told to which mark a line is brought");
    check_angle(m);
    stage()["freehand"].push_back({{"number", std::stoi(m[1])},
                                   {"openings", numbers_of(m[2])},
                                   {"from", {{"from_A", m[3].str()}, {"from_B", m[4].str()}}},
                                   {"to", {{"from_A", m[5].str()}, {"from_B", m[6].str()}}},
                                   {"mark_past_line", {text_of(from), text_of(to)}}});
  }

  // Edge A to the rail: across by down.
  void check_angle(const std::smatch& m) {
    static const std::regex degrees("edge A at ([0-9.]+) degrees to the rail");
    const std::string more = m.suffix();
    const auto told = found(more, degrees);
    const auto run = [&](std::size_t from, std::size_t to) {
      return std::abs(mullion::to_inches(length_of(m[to]) - length_of(m[from])));
    };
    const double angle = std::atan2(run(3, 5), run(4, 6)) * 180 / std::numbers::pi;
    // Ends are rounded, so that a short line is told less well.
    const double length = std::hypot(run(3, 5), run(4, 6));
    const double loose =
        0.3 + 2 * mullion::to_inches(bench_.slack) / length * 180 / std::numbers::pi;
    if (!told || std::abs(std::stod((*told)[1]) - angle) > loose) {
      fault("an angle is not that of its line");
    }
  }

  void read_reveal(Length reveal, const std::string& side) {
    const mullion::Sides& meant = board_->board.reveal;
    const Length at = side == "top"      ? meant.top
                      : side == "left"   ? meant.left
                      : side == "bottom" ? meant.bottom
                                         : meant.right;
    stage()["checks"].push_back({{"kind", "reveal"}});
    if (std::abs(mullion::to_inches(reveal - at)) > 1.0 / 64) {
      fault("a reveal is not as wide as it is to be");
    }
  }

  // ---- settings ----

  json block(const std::string& width, bool outside) {
    check_gauge(width);
    return {{"width", width}, {"place", outside ? "outside the guide" : "inside the guide"}};
  }
  // Where spacers are cut from scrap, each one that is used must be among them.
  void check_gauge(const std::string& width) {
    if (gauges_.empty()) return;
    const bool known = std::any_of(gauges_.begin(), gauges_.end(), [&](Length gauge) {
      return std::abs(mullion::to_inches(gauge - length_of(width))) < 1.0 / 32;
    });
    if (!known) fault("a spacer is used that was not cut");
  }

  // `changes_only`: what is not told stays.
  void read_settings(const std::string& text, bool changes_only) {
    const Shown before = shown_;
    if (!changes_only) shown_ = {};
    static const std::regex guide = pattern("\\bguide (stays )?~|\\bguide:? (freehand)"),
                            near = pattern("near stop(?::)? (stays )?~|near stop:? (by eye)"),
                            far = pattern("far stop(?::)? (stays )?~|far stop:? (by eye)"),
                            at_guide = pattern(
                                "block ~ (wide between guide and board|wide outside "
                                "the guide|at the guide|outside the guide)"),
                            at_arm = pattern("block ~ (?:wide between arm and board|at the arm)");
    const auto dial = [&](const std::regex& what, std::optional<std::string> Shown::*which) {
      const auto m = found(text, what);
      if (!m) return;
      if ((*m)[3].matched) {
        shown_.*which = std::nullopt;
        return;
      }
      shown_.*which = (*m)[2].str();
      if ((*m)[1].matched && before.*which != shown_.*which) {
        // A scale that was not used for a while shows what it showed then.
        if (last_shown_[which == &Shown::guide       ? 0
                        : which == &Shown::near_stop ? 1
                                                     : 2] != *(shown_.*which)) {
          fault("a scale is said to stay where it was not");
        }
      }
    };
    stops_told_ = stops_told_ || has(text, " stop ");
    dial(guide, &Shown::guide);
    dial(near, &Shown::near_stop);
    dial(far, &Shown::far_stop);
    if (shown_.guide) last_shown_[0] = *shown_.guide;
    if (shown_.near_stop) last_shown_[1] = *shown_.near_stop;
    if (shown_.far_stop) last_shown_[2] = *shown_.far_stop;
    if (has(text, "no block at the guide")) shown_.block.reset();
    if (has(text, "no block at the arm")) shown_.arm_block.reset();
    if (const auto m = found(text, at_guide)) {
      shown_.block = (*m)[1].str();
      shown_.outside = has((*m)[2], "outside");
    }
    if (const auto m = found(text, at_arm)) shown_.arm_block = (*m)[1].str();
    if (shown_.arm_block) check_gauge(*shown_.arm_block);
  }

  void begin_set_up() {
    stage_shown_.push_back(shown_);
    const auto shows = [](const std::optional<std::string>& what) {
      return what ? setting(*what) : json();
    };
    stage()["set_ups"].push_back(
        {{"guide", shows(shown_.guide)},
         {"block", shown_.block ? block(*shown_.block, shown_.outside) : json()},
         {"near_stop", shows(shown_.near_stop)},
         {"far_stop", shows(shown_.far_stop)},
         {"arm_block", shown_.arm_block ? json(*shown_.arm_block) : json()},
         {"placements", json::array()}});
  }

  // ---- how the board lies, and the cuts ----

  void begin_placement(const std::string& heading, const std::string& turn) {
    static const std::regex at_guide("Edge ([A-D])( at the guide|, freehand)"),
        laid("lay edge ([A-D]) away from you");
    const auto edge = found(heading, at_guide);
    json lies = {{"edge_at_guide", (*edge)[1].str()}, {"cuts", json::array()}};
    freehand_ = (*edge)[2] == ", freehand";
    if (const auto away = found(turn, laid)) {
      lies["laid_anew"] = true;
      lies["edge_away"] = (*away)[1].str();
    } else {
      const auto at = std::find_if(std::begin(lays), std::end(lays),
                                   [&](const char* words) { return has(turn, words); });
      if (at == std::end(lays)) fault("how a board is turned is not told");
      lies["laid_anew"] = false;
      lies["quarter_turns_clockwise"] = at - std::begin(lays);
    }
    if (stage()["set_ups"].empty()) fault("a board is laid before anything is set");
    set_up()["placements"].push_back(lies);
  }
  json& set_up() { return stage()["set_ups"].back(); }
  json& placement() { return set_up()["placements"].back(); }

  void read_placement(const Part& part) {
    begin_placement(part.text, part.turn);
    if (!part.picture.letters.empty()) look_at_picture(part);
    for (const std::string& entry : part.entries) read_cut(entry, &part);
  }

  // The letters stand around the board as its edges lie.
  void look_at_picture(const Part& part) {
    const Picture& p = part.picture;
    const char edge = placement()["edge_at_guide"].get<std::string>()[0];
    char near = 0, far = 0, left = 0, right = 0;
    for (const auto& [letter, at] : p.letters) {
      if (at.y > p.lower_right.y) near = letter;
      if (at.y < p.upper_left.y) far = letter;
      if (at.x < p.upper_left.x) left = letter;
      if (at.x > p.lower_right.x) right = letter;
    }
    placement()["edge_at_arm"] = std::string(1, near);
    if (placement()["laid_anew"].get<bool>()) {
      if (placement()["edge_away"] != std::string(1, far))
        fault("a picture shows another edge away");
    } else {
      placement()["edge_away"] = std::string(1, far);
    }
    if ((bench_.cutter.guide_on_left ? left : right) != edge) {
      fault("a picture shows another edge at the guide");
    }
    if (p.arrows.size() != part.entries.size()) {
      fault("a picture has not an arrow for each cut");
    }
  }

  void read_cut(const std::string& entry, const Part* part) {
    static const std::regex name = pattern(
                                "^([0-9]+)  ?(?:openings? #, |all openings, )?(top|left|"
                                "bottom|right)\\b"),
                            on_line = pattern("^,? ?~ from ([A-D])"),
                            line = pattern("check: ~ from ([A-D])"),
                            fallout = pattern("check: fallout ~ x ~ on its back");
    const auto m = found(entry, name);
    if (!m) return fault("a cut has no name: " + entry);
    last_cut_ = std::stoi((*m)[1]);
    const std::vector<int> openings =
        (*m)[2].matched ? numbers_of((*m)[2]) : board_->windows.front().openings;
    const std::string rest = m->suffix();
    json cut = {{"number", last_cut_},
                {"openings", openings},
                {"side", (*m)[3].str()},
                {"on_pencil_line", json()},
                {"line_up_by", json()}};
    if (freehand_) {
      const auto at = found(rest, on_line);
      if (!at) return fault("a freehand cut has no line");
      cut["on_pencil_line"] = line_at((*at)[2].str()[0], length_of((*at)[1]));
      cut["line_up_by"] = by_rail_ ? "rail's edge" : "blade's point";
      if (!lining_up_told_) fault("it is not told to which mark a line is brought");
    }
    cut["start"] = end_of(rest, 0, openings, part);
    cut["end"] = end_of(rest, 1, openings, part);
    for (const char* end : {"start", "end"}) ends_.push_back(cut[end].value("number", 0));
    if (part != nullptr && !part->picture.letters.empty()) compare_with_arrow(cut, *part);
    placement()["cuts"].push_back(cut);
    if (const auto check = found(entry, line)) {
      stage()["checks"].push_back({{"kind", "line"},
                                   {"after_cut", last_cut_},
                                   {"edge", (*check)[2].str()},
                                   {"distance", (*check)[1].str()}});
    }
    if (const auto check = found(entry, fallout)) {
      stage()["checks"].push_back({{"kind", "fallout"},
                                   {"after_cut", last_cut_},
                                   {"openings", openings},
                                   {"width", (*check)[1].str()},
                                   {"height", (*check)[2].str()}});
      check_size(openings, (*check)[1], (*check)[2]);
    }
  }

  int line_at(char edge, Length distance) {
    const Length wanted = place(edge, distance);
    std::optional<std::pair<Length, int>> best;
    for (const Line& line : lines_) {
      if (upright(line.edge) != upright(edge)) continue;
      const Length off = place(line.edge, line.distance) - wanted;
      const std::pair<Length, int> here{off < Length() ? -off : off, line.number};
      if (!best || here < *best) best = here;
    }
    if (!best || mullion::to_inches(best->first) > 1.0 / 20) fault("a cut is on a line not drawn");
    return best ? best->second : 0;
  }

  json end_of(const std::string& rest, int which, const std::vector<int>& openings,
              const Part* part) {
    static const std::string mark = "(?:, mark (onto the line|~ (past|short of) the line))?";
    static const std::regex cuts[] = {pattern("start at cut ([0-9]+)" + mark),
                                      pattern("end at cut ([0-9]+)" + mark)},
                            drawn[] = {pattern("start at the line ~ from ([A-D])" + mark),
                                       pattern("end at the line ~ from ([A-D])" + mark)};
    const bool start = which == 0;
    const auto at_cut = found(rest, cuts[which]), at_line = found(rest, drawn[which]);
    const auto by_eye = [&](const char* by, int number, Length past) {
      return json{{"by", by}, {"number", number}, {"mark_past_line", text_of(past)}};
    };
    const auto past = [&](const std::smatch& m, std::size_t group) {
      if (m[group].matched) return past_of(m, group);
      if (!past_) fault("it is not told where the mark stands");
      return past_.value_or(Length());
    };
    if (at_cut) return by_eye("cut", std::stoi((*at_cut)[1]), past(*at_cut, 2));
    if (at_line) {
      return by_eye("pencil line", line_at((*at_line)[2].str()[0], length_of((*at_line)[1])),
                    past(*at_line, 3));
    }
    const bool far = start == bench_.cutter.pulled;
    const bool other_named = found(rest, cuts[1 - which]) || found(rest, drawn[1 - which]);
    if (!set_up()[far ? "far_stop" : "near_stop"].is_null()) return {{"by", "stop"}};
    if (stops_told_ || other_named)
      fault("it is not told where cut " + std::to_string(last_cut_) + " ends");
    if (!past_) fault("it is not told where the mark stands");
    return by_eye("pencil line", pictured_line(start, openings, part), past_.value_or(Length()));
  }

  // Cuts run along drawn lines from corner to corner: the arrow shows between which.
  int pictured_line(bool start, const std::vector<int>& openings, const Part* part) {
    const Arrow* arrow = part == nullptr ? nullptr : arrow_of(*part);
    if (const int own = line_of_opening(start, openings); own > 0) return own;
    if (arrow == nullptr) return line_as_above(start);
    const Picture& p = part->picture;
    const double y = start ? arrow->from.y : arrow->to.y;
    const char near = placement()["edge_at_arm"].get<std::string>()[0];
    const double tall = p.lower_right.y - p.upper_left.y;
    const Length along = upright(near) ? measured().first : measured().second;
    const double from_near = (p.lower_right.y - y) / tall * static_cast<double>(along.ticks());
    return line_at(near, Length::from_ticks(std::llround(from_near)));
  }

  // The outermost of the lines across that are drawn for the opening. None is where lines are drawn
  // along the guide, which names no openings.
  int line_of_opening(bool start, const std::vector<int>& openings) {
    const char across = placement()["edge_at_guide"].get<std::string>()[0];
    const char at_arm = "ABCD"[(across - 'A' + (bench_.cutter.guide_on_left ? 3 : 1)) % 4];
    const bool far = start == bench_.cutter.pulled;
    std::optional<std::pair<Length, int>> best;
    for (const Line& line : lines_) {
      if (upright(line.edge) != upright(at_arm)) continue;
      const bool serves = line.openings.empty()
                              ? board_->windows.size() == 1 && lines_.size() == 4
                              : std::find(line.openings.begin(), line.openings.end(),
                                          openings.front()) != line.openings.end();
      if (!serves) continue;
      const Length along = place(line.edge, line.distance);
      const bool counts_from_arm = at_arm == 'A' || at_arm == 'B';
      const Length out = far == counts_from_arm ? along : -along;
      if (!best || out > best->first) best = {out, line.number};
    }
    return best ? best->second : 0;
  }

  // A layer without pictures is cut in the same order as the one above, whose lines are drawn and
  // numbered alike.
  int line_as_above(bool start) {
    const std::size_t cut = ends_.size() / 2;
    if (amount_ && cut * 2 + 1 < ends_above_.size()) return ends_above_[cut * 2 + (start ? 0 : 1)];
    fault("neither words nor a picture show where cut " + std::to_string(last_cut_) + " ends");
    return 0;
  }

  // A number belongs to the arrow that it stands nearest to.
  const Arrow* arrow_of(const Part& part) {
    const Picture& p = part.picture;
    if (p.arrows.empty()) return nullptr;
    if (p.arrows.size() == 1) return &p.arrows.front();
    std::vector<const Arrow*> nameless;
    for (const Arrow& arrow : p.arrows) nameless.push_back(&arrow);
    for (const auto& [number, at] : p.numbers) {
      const oracle::Spot spot = at;
      const auto distance = [&](oracle::Spot from, const Arrow& to) {
        // Above the board, at the end of the line to cut.
        if (from.y < p.upper_left.y && std::abs(from.x - to.from.x) < 0.5) return 0.0;
        return PlanReader::distance(from, to);
      };
      const Arrow* nearest = &*std::min_element(
          p.arrows.begin(), p.arrows.end(),
          [&](const Arrow& a, const Arrow& b) { return distance(spot, a) < distance(spot, b); });
      if (number == last_cut_) return nearest;
      nameless.erase(std::remove(nameless.begin(), nameless.end(), nearest), nameless.end());
    }
    // The one that no number is left for, or that lies on the line.
    return nameless.size() == 1 ? nameless.front() : arrow_on_line(p);
  }

  // The arrow shows the same line between the same ends, as exactly as an eye can tell.
  void compare_with_arrow(const json& cut, const Part& part) {
    const Arrow* arrow = arrow_of(part);
    if (arrow == nullptr) return;
    const Picture& p = part.picture;
    const char near = placement()["edge_at_arm"].get<std::string>()[0];
    const Length along = upright(near) ? measured().first : measured().second;
    const double scale = mullion::to_inches(along) / (p.lower_right.y - p.upper_left.y);
    for (const char* end : {"start", "end"}) {
      const bool start = end[0] == 's';
      const std::optional<double> told = from_arm(cut.at(end), start == bench_.cutter.pulled, near);
      const double y = start ? arrow->from.y : arrow->to.y;
      if (told && std::abs((p.lower_right.y - y) * scale - *told) > 0.35) {
        fault("an arrow does not show where cut " + std::to_string(last_cut_) + " goes");
      }
    }
  }

  // Where an end is told to be, in inches from the edge at the arm; over-cuts are not shown.
  std::optional<double> from_arm(const json& end, bool far, char near) const {
    if (end.at("by") == "cut") return std::nullopt;
    if (end.at("by") == "stop") {
      const json& set_up = told_.plan["stages"].back()["set_ups"].back();
      Length place = length_of(set_up[far ? "far_stop" : "near_stop"]["shows"]) -
                     (far ? bench_.cutter.far_zero : bench_.cutter.near_zero);
      if (!set_up["arm_block"].is_null()) place -= length_of(set_up["arm_block"]);
      return mullion::to_inches(place);
    }
    for (const Line& line : lines_) {
      if (line.number != end.at("number").get<int>()) continue;
      const Length at = place(line.edge, line.distance);
      const Length along = upright(near) ? measured().first : measured().second;
      return mullion::to_inches(near == 'A' || near == 'B' ? at : along - at);
    }
    return std::nullopt;
  }

  // Where no number has room: the one arrow on the line that the guide is set to.
  const Arrow* arrow_on_line(const Picture& p) {
    if (set_up()["guide"].is_null()) return nullptr;
    Length distance = length_of(set_up()["guide"]["shows"]) - bench_.cutter.guide_zero;
    if (!set_up()["block"].is_null()) {
      const Length width = length_of(set_up()["block"]["width"]);
      distance += set_up()["block"]["place"] == "inside the guide" ? -width : width;
    }
    const char edge = placement()["edge_at_guide"].get<std::string>()[0];
    const Length across = upright(edge) ? measured().first : measured().second;
    const double share = mullion::to_inches(distance) / mullion::to_inches(across);
    const double wide = p.lower_right.x - p.upper_left.x;
    const double x = bench_.cutter.guide_on_left ? p.upper_left.x + wide * share
                                                 : p.lower_right.x - wide * share;
    const Arrow* only = nullptr;
    for (const Arrow& arrow : p.arrows) {
      if (std::abs(arrow.from.x - x) > 0.3) continue;
      if (only != nullptr) return nullptr;
      only = &arrow;
    }
    return only;
  }

  static double distance(oracle::Spot spot, const Arrow& arrow) {
    const double dx = arrow.to.x - arrow.from.x, dy = arrow.to.y - arrow.from.y;
    const double square = std::max(1e-9, dx * dx + dy * dy);
    const double t = std::clamp(
        ((spot.x - arrow.from.x) * dx + (spot.y - arrow.from.y) * dy) / square, 0.0, 1.0);
    return std::hypot(arrow.from.x + t * dx - spot.x, arrow.from.y + t * dy - spot.y);
  }

  // ---- layers that are told in words ----

  // "Set-up 5: guide 3 in, no block at the arm; Edge C at the guide, lay ...; 5  bottom; check:
  // ..."
  bool continues_list(const std::string& text) const {
    static const std::regex by_hand("^[0-9]+  openings? [0-9, ]+:");
    return listed_ && (text.starts_with("Edge ") || std::isdigit(text[0]) != 0) &&
           !std::regex_search(text, by_hand);
  }

  void read_listed(const std::string& text) {
    listed_ = true;
    std::string rest = text;
    const auto part = [&] {
      const std::size_t at = rest.find("; ");
      std::string out = rest.substr(0, at);
      rest = at == std::string::npos ? "" : rest.substr(at + 2);
      return out;
    };
    if (rest.starts_with("Set-up ")) {
      read_settings(part(), true);
      pending_ = true;
    }
    if (rest.starts_with("Edge ")) {
      const std::string lies = part();
      if (has(lies, "freehand")) shown_.guide.reset();
      if (pending_) begin_set_up();
      pending_ = false;
      begin_placement(lies, lies);
    }
    read_cut(rest, nullptr);
  }

  void finish_stage() {
    if (in_stage() && amount_) check_amount();
    // A spacer has no settings: layers are set off from the one above it.
    if (in_stage() && stage()["kind"] != "spacer") {
      above_ = stage_shown_;
      ends_above_ = ends_;
    }
    ends_.clear();
    lines_.clear();
    listed_ = false;
  }

  // One amount sets every scale off from the layer above.
  void check_amount() {
    if (above_.size() != stage_shown_.size())
      return fault("layers of one amount differ in set-ups");
    const Length slack = mullion::sixty_fourths(3);
    for (std::size_t i = 0; i < above_.size(); ++i) {
      const auto check = [&](const auto& place, Length by) {
        const std::optional<Length> before = place(above_[i]), now = place(stage_shown_[i]);
        if (!before || !now) return;
        const Length off = *now - *before - by;
        if (off > slack || -off > slack) fault("a setting is not off by the one amount");
      };
      check(guided_to, amount_->first);
      if (!amount_->second) continue;
      check([](const Shown& s) { return stopped_at(s.near_stop, s); }, *amount_->second);
      check([](const Shown& s) { return stopped_at(s.far_stop, s); }, -*amount_->second);
    }
  }

  // With what spacers add or take away.
  static std::optional<Length> guided_to(const Shown& s) {
    if (!s.guide) return std::nullopt;
    const Length block = s.block ? length_of(*s.block) : Length();
    return length_of(*s.guide) + (s.outside ? block : -block);
  }
  static std::optional<Length> stopped_at(const std::optional<std::string>& stop, const Shown& s) {
    if (!stop) return std::nullopt;
    return length_of(*stop) - (s.arm_block ? length_of(*s.arm_block) : Length());
  }

  const std::vector<Part>& parts_;
  const Bench& bench_;
  Told told_;
  bool direction_told_ = false, lining_up_told_ = false, by_rail_ = false, freehand_ = false;
  bool listed_ = false, pending_ = false, stops_told_ = false;
  std::pair<Length, Length> outer_;
  const mullion::MatLayer* board_ = nullptr;
  std::optional<Length> past_;
  std::optional<std::pair<Length, std::optional<Length>>> amount_;
  std::string skew_marks_;
  std::vector<Line> lines_;
  std::map<std::vector<int>, std::pair<std::string, std::string>> ovals_;
  std::set<Length> gauges_;
  Shown shown_;
  std::string last_shown_[3];
  std::vector<Shown> stage_shown_, above_;
  std::vector<int> ends_, ends_above_;  // by lines or cuts of those numbers
  int last_cut_ = 0;
};

}  // namespace

Told plan_of(const std::vector<Part>& parts, const Bench& bench) {
  return PlanReader(parts, bench).read();
}

}  // namespace printed
