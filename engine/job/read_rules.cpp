#include <algorithm>
#include <set>

#include "engine/job/parts.h"
#include "engine/job/read.h"
#include "engine/xml/document.h"

namespace mullion {
namespace {

using Kind = Rule::Kind;

const std::vector<std::string_view> box_parts{"left",   "top",    "right", "bottom",
                                              "centre", "middle", "width", "height"};

const std::vector<Word<Kind>> rule_kinds{
    {"same-size", Kind::same_size}, {"align", Kind::align},    {"equal", Kind::equal},
    {"multiple", Kind::multiple},   {"fixed", Kind::fixed},    {"at-least", Kind::at_least},
    {"at-most", Kind::at_most},     {"centred", Kind::centred}};

class RuleReader {
 public:
  RuleReader(Reading& reading, const Names& names)
      : reading_(reading),
        gaps_(names.gaps.begin(), names.gaps.end()),
        boxes_(names.openings.begin(), names.openings.end()) {
    boxes_.insert(boxes_.end(), names.groups.begin(), names.groups.end());
    known_gaps_.insert(gaps_.begin(), gaps_.end());
    known_boxes_.insert(boxes_.begin(), boxes_.end());
  }

  Rule read(const pugi::xml_node& node) {
    Element element(reading_, node);
    element.children({});
    Rule rule;
    rule.place = element.place();
    for (const Word<Kind>& word : rule_kinds) {
      if (word.text == element.name()) rule.kind = word.value;
    }
    read_body(element, rule);
    rule.strength = element.word<Strength>("strength",
                                           {{"required", Strength::required},
                                            {"strong", Strength::strong},
                                            {"medium", Strength::medium},
                                            {"weak", Strength::weak}},
                                           Strength::required);
    return rule;
  }

 private:
  void read_body(Element& element, Rule& rule) {
    switch (rule.kind) {
      case Kind::same_size:
        rule.of = boxes(element, "of", 2);
        rule.dimension = word(element, "dimension", {"both", "width", "height"});
        return;
      case Kind::align:
        rule.of = boxes(element, "of", 2);
        element.required("edge", alternatives(edges));
        rule.edge = word(element, "edge", edges);
        return;
      case Kind::equal:
        rule.of = measures(element);
        return;
      case Kind::multiple:
        rule.of = {measure(element, "measure"), measure(element, "of")};
        read_factor(element, rule);
        return;
      case Kind::fixed:
      case Kind::at_least:
      case Kind::at_most:
        rule.of = {measure(element, "measure")};
        rule.value = element.required_length("length", Least::zero);
        return;
      case Kind::centred:
        rule.of = boxes(element, "what", 1);
        rule.on = element.value("on").value_or("mat");
        if (rule.on != "mat") check_box(element, "on", rule.on, {"mat"});
        rule.dimension = word(element, "direction", {"both", "across", "down"});
        return;
    }
  }

  // One of the words, the first where nothing is stated.
  static std::string word(Element& element, std::string_view attribute,
                          const std::vector<std::string_view>& words) {
    std::vector<Word<std::string_view>> known;
    known.reserve(words.size());
    for (const std::string_view text : words) known.push_back({text, text});
    return std::string(element.word<std::string_view>(attribute, known, words.front()));
  }

  static void read_factor(Element& element, Rule& rule) {
    element.required("times", "a number such as 2 or 3/2");
    const Fraction factor = element.fraction("times");
    rule.factor_numerator = factor.numerator;
    rule.factor_denominator = factor.denominator;
  }

  std::vector<std::string> listed(Element& element, std::string_view attribute, std::size_t least) {
    std::vector<std::string> ids = element.list(attribute);
    if (!element.has(attribute)) {
      element.required(attribute, least > 1 ? "names with blanks between them" : "a name");
    } else if (ids.size() < least) {
      element.unexpected(
          attribute, "job-too-few",
          least > 1 ? "at least two names with blanks between them" : "at least one name");
    }
    std::vector<std::string> sorted = ids;
    std::sort(sorted.begin(), sorted.end());
    const auto twice = std::adjacent_find(sorted.begin(), sorted.end());
    if (twice != sorted.end()) {
      element.problem_at(attribute, "job-repeated-name",
                         "found " + quoted(*twice) + " twice in one rule; expected it once");
    }
    return ids;
  }

  std::vector<std::string> boxes(Element& element, std::string_view attribute, std::size_t least) {
    std::vector<std::string> ids = listed(element, attribute, least);
    for (const std::string& id : ids) check_box(element, attribute, id, {});
    return ids;
  }

  std::vector<std::string> measures(Element& element) {
    std::vector<std::string> names = listed(element, "of", 2);
    for (const std::string& name : names) check_measure(element, "of", name);
    return names;
  }

  std::string measure(Element& element, std::string_view attribute) {
    const auto name = element.required(attribute, "a measure such as g1 or border.left");
    if (name) check_measure(element, attribute, *name);
    return name.value_or("");
  }

  bool is_box(std::string_view id) const { return known_boxes_.contains(id); }

  void check_box(Element& element, std::string_view attribute, std::string_view id,
                 std::vector<std::string_view> others) {
    if (is_box(id)) return;
    others.insert(others.end(), boxes_.begin(), boxes_.end());
    element.problem_at(attribute, "job-unknown-id",
                       "found no opening, row or column " + quoted(id) + reading_.hint(id, others));
  }

  // A gap's id, or OWNER.PART.
  void check_measure(Element& element, std::string_view attribute, std::string_view name) {
    if (known_gaps_.contains(name)) return;
    const std::size_t dot = name.rfind('.');
    if (dot == std::string_view::npos) {
      report_bare_name(element, attribute, name);
      return;
    }
    const std::string_view owner = name.substr(0, dot), part = name.substr(dot + 1);
    if (owner != "outer" && owner != "border" && !is_box(owner)) {
      std::vector<std::string_view> owners{"outer", "border"};
      owners.insert(owners.end(), boxes_.begin(), boxes_.end());
      element.problem_at(attribute, "job-unknown-id",
                         "found nothing called " + quoted(owner) + ", of which " + quoted(name) +
                             " would be a measure" + reading_.hint(owner, owners));
      return;
    }
    const std::vector<std::string_view> parts =
        owner == "outer"    ? std::vector<std::string_view>{"width", "height"}
        : owner == "border" ? std::vector<std::string_view>{"left", "top", "right", "bottom"}
                            : box_parts;
    if (std::find(parts.begin(), parts.end(), part) != parts.end()) return;
    element.problem_at(attribute, "job-unknown-measure",
                       "found no measure " + quoted(name) + reading_.hint(part, parts));
  }

  void report_bare_name(Element& element, std::string_view attribute, std::string_view name) {
    const bool lacks_part = is_box(name) || name == "outer" || name == "border";
    const std::string example = std::string(name) + (name == "border" ? ".left" : ".width");
    element.problem_at(attribute, "job-unknown-measure",
                       lacks_part
                           ? "found " + quoted(name) +
                                 ", which is no measure; expected one such as " + quoted(example)
                           : "found no gap " + quoted(name) + reading_.hint(name, gaps_));
  }

  static inline const std::vector<std::string_view> edges{"left",   "top",    "right",
                                                          "bottom", "centre", "middle"};

  Reading& reading_;
  std::vector<std::string_view> gaps_, boxes_;  // in the order of the file
  std::set<std::string_view> known_gaps_, known_boxes_;
};

}  // namespace

std::vector<Rule> read_rules(Element& element, const Names& names) {
  std::vector<Rule> rules;
  RuleReader reader(element.reading(), names);
  for (const pugi::xml_node& node : element.children({"same-size", "align", "equal", "multiple",
                                                      "fixed", "at-least", "at-most", "centred"})) {
    if (rules.size() == most_rules) {
      element.reading().problem(
          offset_of(node), "job-too-many",
          "found more than " + std::to_string(most_rules) + " rules; that is the limit");
      break;
    }
    rules.push_back(reader.read(node));
  }
  return rules;
}

}  // namespace mullion
