#include <algorithm>

#include "engine/job/parts.h"
#include "engine/job/read.h"
#include "engine/xml/document.h"

namespace mullion {
namespace {

class ArrangementReader {
 public:
  ArrangementReader(Reading& reading, Names& names, const std::vector<Layer>& layers)
      : reading_(reading), names_(names), layers_(layers) {}

  // `around`: the group that it is a part of, if any.
  Node read(const pugi::xml_node& node, const Group* around) {
    Element element(reading_, node);
    Node out;
    if (element.name() == "opening") {
      out.what = read_opening(element);
    } else {
      out.what = read_group(element);
    }
    if (around != nullptr) read_place(element, *around, out);
    return out;
  }

 private:
  Opening read_opening(Element& element);
  void refuse_turned(Element& element);
  void refuse_nested(Element& element, const std::vector<pugi::xml_node>& within);
  void read_reveals(const std::vector<pugi::xml_node>& nodes, Opening& opening);
  Group read_group(Element& element);
  void read_children(Element& element, Group& group);
  Gap read_gap(const pugi::xml_node& node, const Group& group);
  int read_window(Element& element);
  static void read_place(Element& element, const Group& around, Node& part);
  void read_ring(Element& element, Group& group);
  void check_ring(Element& element, const Group& group);
  int read_layer_number(Element& element, const char* attribute, int least);
  void take_picture(Element& element, const std::string& id);
  bool take_id(Element& element, const std::string& id);
  bool may_take_opening(const pugi::xml_node& node);
  void report_stray_gap(std::size_t offset);

  // Between two neighbours with no <gap> of their own.
  static Gap usual_gap(const Group& group) { return {{}, group.gap, group.place}; }

  Reading& reading_;
  Names& names_;
  const std::vector<Layer>& layers_;
  std::map<std::string, std::size_t, std::less<>> shown_;  // pictures: offset of the opening
  std::vector<int> joined_;  // windows of the groups around the place that is being read
  std::size_t openings_ = 0;
};

bool ArrangementReader::take_id(Element& element, const std::string& id) {
  const auto [earlier, is_new] = names_.taken.emplace(id, element.offset());
  if (is_new) return true;
  element.problem_at("id", "job-repeated-id",
                     "found a second opening, group or gap called " + quoted(id) +
                         "; the first is on line " +
                         std::to_string(reading_.source.place(earlier->second).line) +
                         "; expected an id of its own");
  return false;
}

void ArrangementReader::take_picture(Element& element, const std::string& id) {
  if (!names_.pictures.contains(id)) {
    std::vector<std::string_view> known;
    for (const auto& [name, picture] : names_.pictures) known.push_back(name);
    element.problem_at("picture", "job-unknown-id",
                       "found no picture " + quoted(id) + reading_.hint(id, known));
    return;
  }
  const auto [earlier, is_new] = shown_.emplace(id, element.offset());
  if (is_new) return;
  element.problem_at("picture", "job-picture-twice",
                     "found picture " + quoted(id) +
                         " in a second opening; it is already in that of line " +
                         std::to_string(reading_.source.place(earlier->second).line));
}

// True offsets of a turned window would be lines that no stop of a straight-line cutter sets.
void ArrangementReader::refuse_turned(Element& element) {
  for (const char* word : {"angle", "rotate", "rotation", "tilt"}) {
    // To ask for it would list it among the words that are known.
    if (element.offset_of_attribute(word) == element.offset()) continue;
    element.has(word);
    element.unexpected(word, "job-turned-opening",
                       "none, since openings stand upright; draw the turned window as a path in an "
                       "SVG file and use shape=\"outline\"");
  }
}

void ArrangementReader::refuse_nested(Element& element, const std::vector<pugi::xml_node>& within) {
  for (const pugi::xml_node& node : within) {
    reading_.problem(offset_of(node), "job-nested-opening",
                     "found <" + std::string(node.name()) + "> in <" + std::string(element.name()) +
                         ">; expected it beside, since what an opening leaves inside falls out of "
                         "the board; state the inner mat in a job file of its own, and mount it on "
                         "the backing");
  }
}

Opening ArrangementReader::read_opening(Element& element) {
  ++openings_;
  Opening opening;
  opening.place = element.place();
  opening.picture = element.value("picture").value_or("");
  const bool shown_before = shown_.contains(opening.picture);
  if (element.has("picture")) take_picture(element, opening.picture);
  opening.id = element.id();
  const bool has_id = element.has("id");
  if (!has_id) opening.id = usual_opening_id(opening.picture, openings_);
  if ((has_id || !shown_before) && take_id(element, opening.id)) {
    names_.openings.push_back(opening.id);
  }
  opening.width = element.length_or_free("width");
  opening.height = element.length_or_free("height");
  opening.shape = read_shape(element, opening, names_);

  refuse_turned(element);

  std::vector<pugi::xml_node> grooves, reveals, nested;
  for (const pugi::xml_node& child :
       element.children({"groove", "reveal", "opening", "row", "column", "ring", "places"})) {
    const std::string_view name = child.name();
    (name == "groove" ? grooves : name == "reveal" ? reveals : nested).push_back(child);
  }
  refuse_nested(element, nested);
  opening.grooves = read_grooves(reading_, grooves);
  read_reveals(reveals, opening);
  return opening;
}

void ArrangementReader::read_reveals(const std::vector<pugi::xml_node>& nodes, Opening& opening) {
  for (const pugi::xml_node& node : nodes) {
    Element element(reading_, node);
    element.children({});
    element.required("layer", "the number of a layer below the top one");
    const int layer = read_layer_number(element, "layer", 2);
    const Sides usual = layer == 0 ? Sides{} : layers_[static_cast<std::size_t>(layer - 1)].reveal;
    const Sides sides = read_sides(element, "all", side_names, usual);
    if (layer == 0) continue;
    if (!opening.reveals.emplace(layer, sides).second) {
      element.problem_at("layer", "job-reveal-twice",
                         "found a second reveal of layer " + std::to_string(layer) +
                             " in one opening; expected one");
    }
  }
}

// Zero when the attribute is not stated or not right.
int ArrangementReader::read_layer_number(Element& element, const char* attribute, int least) {
  const int layers = static_cast<int>(layers_.size());
  if (layers >= least) return element.integer(attribute, least, layers, 0);
  if (element.has(attribute)) {
    element.unexpected(attribute, "job-bad-number",
                       "at least " + std::to_string(least) + " layers in <layers>");
  }
  return 0;
}

Group ArrangementReader::read_group(Element& element) {
  Group group;
  group.place = element.place();
  for (const Word<Along>& word : all_words<Along>()) {
    if (word.text == element.name()) group.along = word.value;
  }
  group.id = element.id();
  refuse_turned(element);
  if (element.has("id") && take_id(element, group.id)) names_.groups.push_back(group.id);
  const bool is_line = group.along == Along::row || group.along == Along::column;
  if (is_line) {
    group.gap = element.length_or_free("gap");
    group.align = element.word<Align>("align", align_words(group.along), Align::centre);
    group.joined_layer = read_window(element);
  }
  if (group.along == Along::ring) read_ring(element, group);
  if (group.joined_layer > 0) joined_.push_back(group.joined_layer);
  read_children(element, group);
  if (group.joined_layer > 0) joined_.pop_back();
  if (group.children.empty()) {
    element.problem("job-missing-element", "found nothing to arrange in <" +
                                               std::string(element.name()) +
                                               ">; expected an opening, a row or a column");
  } else if (group.along == Along::ring) {
    check_ring(element, group);
  }
  return group;
}

void ArrangementReader::read_ring(Element& element, Group& group) {
  enum class First { top, beside };
  static const std::vector<Word<First>> firsts{{"top", First::top}, {"beside", First::beside}};
  group.ring.across = element.length_or_free("across");
  group.ring.down = element.length("down", Least::above_zero);
  group.ring.first_on_top = element.word<First>("first", firsts, First::top) == First::top;
  group.gap = element.length("gap", Least::above_zero);
  if (joined_.empty()) return;
  element.problem("job-ring-in-window",
                  "found a <ring> within a row or column that has one window in a layer; expected "
                  "rows and columns alone");
}

// One part at most in its middle, and one at least around it.
void ArrangementReader::check_ring(Element& element, const Group& group) {
  const auto centres = std::count_if(group.children.begin(), group.children.end(),
                                     [](const Node& child) { return child.is_centre; });
  if (centres > 1) {
    element.problem("job-ring-centre",
                    "found " + std::to_string(centres) +
                        " parts with centre=\"yes\" in one <ring>; expected one at most");
  } else if (centres == static_cast<std::ptrdiff_t>(group.children.size())) {
    element.problem("job-missing-element",
                    "found nothing around the centre of <ring>; expected an opening, a row or a "
                    "column");
  }
}

void ArrangementReader::read_place(Element& element, const Group& around, Node& part) {
  if (around.along == Along::places) {
    part.spot = {element.length("left", Least::zero), element.length("top", Least::zero),
                 element.length("right", Least::zero), element.length("bottom", Least::zero)};
    return;
  }
  const auto by = [&](const char* forth, const char* back) {
    const auto one = element.length(forth, Least::zero), other = element.length(back, Least::zero);
    if (one && other) {
      element.problem_at(
          back, "job-moved-twice",
          "found " + std::string(forth) + " and " + back + " on one part; expected one of them");
    }
    return one.value_or(Length()) - other.value_or(Length());
  };
  part.shift.right = by("move-right", "move-left");
  part.shift.down = by("move-down", "move-up");
  if (around.along == Along::ring) part.is_centre = element.yes("centre");
}

int ArrangementReader::read_window(Element& element) {
  const int layer = read_layer_number(element, "window", 1);
  if (std::find(joined_.begin(), joined_.end(), layer) == joined_.end()) return layer;
  element.problem_at("window", "job-window-twice",
                     "found a window of layer " + std::to_string(layer) +
                         " within a group that has one window of that layer; expected one of them");
  return 0;
}

void ArrangementReader::read_children(Element& element, Group& group) {
  std::vector<pugi::xml_node> grooves;
  using Words = std::vector<std::string_view>;
  const bool is_line = group.along == Along::row || group.along == Along::column;
  std::optional<Gap> stated;  // since the last child
  std::size_t stated_at = 0;
  for (const pugi::xml_node& node :
       element.children(is_line ? Words{"opening", "row", "column", "ring", "gap", "groove"}
                                : Words{"opening", "row", "column", "ring", "groove"})) {
    if (reading_.full()) break;
    const std::string_view name = node.name();
    if (name == "groove") {
      grooves.push_back(node);
    } else if (name == "gap") {
      if (stated || group.children.empty()) report_stray_gap(offset_of(node));
      stated = read_gap(node, group);
      stated_at = offset_of(node);
    } else if (name != "opening" || may_take_opening(node)) {
      if (is_line && !group.children.empty()) {
        group.gaps.push_back(stated.value_or(usual_gap(group)));
      }
      stated.reset();
      group.children.push_back(read(node, &group));
    }
  }
  if (stated && !group.children.empty()) report_stray_gap(stated_at);
  group.grooves = read_grooves(reading_, grooves);
}

void ArrangementReader::report_stray_gap(std::size_t offset) {
  reading_.problem(offset, "job-stray-gap",
                   "found a <gap> that is not between two neighbours; expected one opening, row or "
                   "column before it and one after it");
}

bool ArrangementReader::may_take_opening(const pugi::xml_node& node) {
  if (openings_ < most_openings) return true;
  if (openings_ == most_openings) {
    ++openings_;
    reading_.problem(
        offset_of(node), "job-too-many",
        "found more than " + std::to_string(most_openings) + " openings; that is the limit");
  }
  return false;
}

Gap ArrangementReader::read_gap(const pugi::xml_node& node, const Group& group) {
  Element element(reading_, node);
  element.children({});
  Gap gap = usual_gap(group);
  gap.place = element.place();
  gap.id = element.id();
  if (element.has("id") && take_id(element, gap.id)) names_.gaps.push_back(gap.id);
  if (element.has("size")) gap.size = element.length_or_free("size");
  return gap;
}

}  // namespace

std::string usual_opening_id(std::string_view picture, std::size_t number) {
  return picture.empty() ? "opening-" + std::to_string(number) : std::string(picture);
}

void read_arrangement(Element& element, Names& names, Job& job) {
  job.least_bar = element.length("least-bar", Least::above_zero);
  std::vector<pugi::xml_node> grooves, parts;
  for (const pugi::xml_node& node :
       element.children({"opening", "row", "column", "ring", "places", "groove"})) {
    (std::string_view(node.name()) == "groove" ? grooves : parts).push_back(node);
  }
  job.grooves = read_grooves(element.reading(), grooves);
  if (parts.size() != 1) {
    element.reading().problem(
        parts.empty() ? element.offset() : offset_of(parts[1]), "job-arrange-one",
        std::string("found ") + (parts.empty() ? "nothing" : "a second part") +
            " in <arrange>; expected one opening, row or column (several go into a row or a "
            "column)");
  }
  ArrangementReader reader(element.reading(), names, job.layers);
  if (!parts.empty()) job.arrangement = reader.read(parts.front(), nullptr);
}

}  // namespace mullion
