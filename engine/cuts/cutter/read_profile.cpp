#include <algorithm>

#include "engine/cuts/cutter/profile_file.h"
#include "engine/file/input.h"
#include "engine/xml/document.h"
#include "engine/xml/element.h"

namespace mullion {
namespace {

constexpr std::size_t most_over_cuts = 100;
constexpr int longest_time = 36'000;
const std::vector<Word<Unit>> units = {
    {"in", Unit::inch}, {"mm", Unit::millimetre}, {"cm", Unit::centimetre}};

// A length of either sign.
std::optional<Length> signed_if_any(Element& element, const char* name) {
  const auto text = element.value(name);
  if (!text) return std::nullopt;
  const auto length = parse_length(*text, element.reading().scale.unit);
  if (length) return *length;
  element.problem_at(name, "cutter-bad-length", length.error());
  return std::nullopt;
}

Length signed_length(Element& element, const char* name) {
  return signed_if_any(element, name).value_or(Length());
}

std::optional<Length> length_if_any(Element& element, const char* name) {
  if (!element.has(name)) return std::nullopt;
  return element.length_or(name, Least::above_zero, Length());
}

struct Range {
  Length least, most;
};

Range read_range(Element& element) {
  const Range range{element.required_length("least", Least::zero),
                    element.required_length("most", Least::above_zero)};
  if (element.has("most") && element.has("least") && range.most <= range.least) {
    element.unexpected("most", "cutter-empty-range", "more than \"least\"");
  }
  return range;
}

void read_rail(Element& element, CutterProfile& out) {
  element.children({});
  out.longest_cut = element.required_length("longest-cut", Least::above_zero);
  out.widest_board = element.required_length("widest-board", Least::above_zero);
  out.reach = length_if_any(element, "reach");
  out.thickest_board = length_if_any(element, "thickest-board");
}

void read_blade(Element& element, CutterProfile& out) {
  element.children({});
  out.side = element.word<GuideSide>(
      "guide-side", {{"left", GuideSide::left}, {"right", GuideSide::right}}, GuideSide::left);
  out.lean = element.word<BladeLean>(
      "tip", {{"to-guide", BladeLean::to_guide}, {"from-guide", BladeLean::from_guide}},
      BladeLean::to_guide);
  out.stroke = element.word<Stroke>("stroke", {{"pull", Stroke::pull}, {"push", Stroke::push}},
                                    Stroke::pull);
  out.mark_lead = signed_length(element, "mark-lead");
  out.own_start_lead = signed_if_any(element, "start-lead");
  out.start_extra = signed_length(element, "start-extra");
  out.line_from_rail = signed_if_any(element, "line-from-rail");
  out.deepest_cut = length_if_any(element, "deepest-cut");
  out.deepest_in_two = length_if_any(element, "deepest-in-two");
  if (out.deepest_in_two && (!out.deepest_cut || *out.deepest_in_two < *out.deepest_cut)) {
    element.unexpected("deepest-in-two", "cutter-passes", "at least \"deepest-cut\"");
  }
  out.kerf = element.length_or("straight-kerf", Least::zero, Length());
}

void read_guide(Element& element, CutterProfile& out) {
  element.children({});
  const Range range = read_range(element);
  out.guide = GuideScale{range.least, range.most, signed_length(element, "zero"),
                         element.yes("board-over-bar")};
}

void read_arm(Element& element, CutterProfile& out) {
  element.children({});
  out.arm_length = element.required_length("length", Least::above_zero);
  out.arm_zero = signed_length(element, "zero");
}

void read_stop(Element& element, CutterProfile& out) {
  element.children({});
  element.required("end", "\"near\" or \"far\"");
  const bool far = element.word<bool>("end", {{"near", false}, {"far", true}}, false);
  const Range range = read_range(element);
  std::optional<StopScale>& stop = far ? out.far_stop : out.near_stop;
  if (stop) {
    element.problem("cutter-repeated-stop", std::string("found a second ") +
                                                (far ? "far" : "near") +
                                                " stop; expected one for each end of the cut");
  }
  stop = StopScale{range.least, range.most, signed_length(element, "zero")};
}

Length required_thickness(Element& element) {
  if (!element.has("thickness")) element.required("thickness", "a length");
  return element.measured_or("thickness", inches(1));
}

void read_over_cut(Element& element, CutterProfile& out) {
  element.children({});
  const OverCut entry{required_thickness(element),
                      element.required_length("distance", Least::zero)};
  if (!out.over_cuts.empty() && entry.thickness <= out.over_cuts.back().thickness) {
    element.unexpected("thickness", "cutter-over-cut-order",
                       "a thicker board than in the <over-cut> before");
  }
  if (out.over_cuts.size() == most_over_cuts) {
    element.problem("cutter-too-many",
                    "found more than 100 <over-cut> elements; that is the limit");
  } else {
    out.over_cuts.push_back(entry);
  }
}

void read_times(Element& element, CutterProfile& out) {
  element.children({});
  HandlingTimes& t = out.times;
  const auto read = [&](const char* name, int& time) {
    time = element.integer(name, 0, longest_time, time);
  };
  read("guide-move", t.guide_move);
  read("stop-move", t.stop_move);
  read("quarter-turn", t.quarter_turn);
  read("rechuck", t.rechuck);
  read("pencil-line", t.pencil_line);
  read("by-eye", t.by_eye);
  read("freehand-line", t.freehand_line);
  read("bevel-cut", t.bevel_cut);
  read("straight-cut", t.straight_cut);
  read("curve", t.curve);
  read("tape-layer", t.tape_layer);
  read("arm-stop-move", t.arm_stop_move);
  read("guide-stroke", t.guide_stroke);
  read("gauge-piece", t.gauge_piece);
  read("gauge-change", t.gauge_change);
  read("tape-template", t.tape_template);
}

void read_precision(Element& element, CutterProfile& out) {
  element.children({});
  LikelyErrors& e = out.errors;
  const auto read = [&](const char* name, Length& error) {
    error = element.length_or(name, Least::zero, error);
  };
  read("guide", e.guide);
  read("stop", e.stop);
  read("gauge", e.gauge);
  read("rule-line", e.rule_line);
  read("guide-line", e.guide_line);
  read("printed-line", e.printed_line);
  read("by-eye", e.by_eye);
  read("under-rail", e.under_rail);
  out.error_price = element.integer("seconds-per-mm", 0, longest_time, out.error_price);
}

void read_order(Element& element, CutterProfile& out) {
  element.children({});
  if (element.has("prefers")) {
    std::vector<Word<Way>> words;
    for (const Way way : all_ways) words.push_back({word_of(way), way});
    out.prefers = element.word<Way>("prefers", words, Way::two_stops);
  }
  out.farther_first = element.word<bool>("farther-first", {{"yes", true}, {"no", false}}, true);
}

struct Part {
  std::string_view name;
  void (*read)(Element&, CutterProfile&);
  bool repeats;
  bool required;
};

constexpr Part parts[] = {
    {"rail", read_rail, false, true},    {"blade", read_blade, false, true},
    {"guide", read_guide, false, false}, {"arm", read_arm, false, true},
    {"stop", read_stop, true, false},    {"over-cut", read_over_cut, true, true},
    {"times", read_times, false, false}, {"precision", read_precision, false, false},
    {"order", read_order, false, false},
};

void read_head(Element& root, CutterProfile& out) {
  root.has("xmlns:xsi");
  root.has("xsi:noNamespaceSchemaLocation");
  const auto version = root.required("version", "\"1\"");
  if (version && *version != "1") {
    root.unexpected("version", "cutter-version", "\"1\", the only version that this program reads");
  }
  root.required("id", "a name");
  out.id = root.id();
  out.name = root.line("name", out.id);
  root.required("unit", "\"in\", \"mm\" or \"cm\"");
  out.scale.unit = root.word<Unit>("unit", units, Unit::inch);
  root.reading().scale.unit = out.scale.unit;
  out.scale.increment = root.required_length("division", Least::above_zero);
}

void read_parts(Element& root, CutterProfile& out) {
  std::vector<std::string_view> seen;
  const auto was_seen = [&](std::string_view name) {
    return std::find(seen.begin(), seen.end(), name) != seen.end();
  };
  for (const pugi::xml_node& node : root.children(
           {"rail", "blade", "guide", "arm", "stop", "over-cut", "times", "precision", "order"})) {
    Element element(root.reading(), node);
    for (const Part& part : parts) {
      if (part.name != element.name()) continue;
      if (!part.repeats && was_seen(part.name)) {
        element.problem("cutter-repeated-element", "found <" + std::string(part.name) +
                                                       "> twice in <cutter>; expected it once");
      }
      part.read(element, out);
      seen.push_back(part.name);
    }
  }
  for (const Part& part : parts) {
    if (!part.required || was_seen(part.name)) continue;
    root.problem("cutter-missing-element",
                 "found no <" + std::string(part.name) + "> in <cutter>; expected one");
  }
}

}  // namespace

Result<CutterProfile> parse_cutter(std::string_view xml, const std::string& file) {
  Reading reading(xml, file, "cutter");
  pugi::xml_document document;
  CutterProfile out;
  if (const pugi::xml_node node = load_document(reading, document)) {
    Element root(reading, node);
    read_head(root, out);
    read_parts(root, out);
  }
  if (!reading.good()) return tl::unexpected(reading.problems());
  return out;
}

Result<CutterProfile> read_cutter(const std::string& path) {
  const auto bytes = read_input(path, largest_cutter_file);
  if (!bytes) return tl::unexpected(bytes.error());
  return parse_cutter(*bytes, path);
}

Result<CutterProfile> find_cutter(const std::string& name_or_path) {
  if (const CutterProfile* generic = generic_cutter(name_or_path)) return *generic;
  const bool is_path = name_or_path.find_first_of("./") != std::string::npos;
  if (is_path) return read_cutter(name_or_path);
  std::vector<std::string_view> names;
  for (const CutterProfile& cutter : generic_cutters()) names.push_back(cutter.id);
  const std::string_view near = near_name(name_or_path, names);
  return tl::unexpected(Problems{
      {Severity::error,
       "cutter-unknown",
       "found the cutter " + quoted(name_or_path) +
           (near.empty() ? "; expected " + alternatives(names) + " or the path of a cutter file"
                         : "; did you mean " + quoted(near) + "?"),
       {},
       {}}});
}

}  // namespace mullion
