#include <algorithm>
#include <set>

#include "engine/job/parts.h"
#include "engine/job/read.h"
#include "engine/xml/document.h"

namespace mullion {
namespace {

const std::vector<std::string_view> box_parts{"left",   "top",    "right", "bottom",
                                              "centre", "middle", "width", "height"};

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
    for (const Word<Rule::Kind>& word : rule_words()) {
      if (word.text == element.name()) rule.kind = word.value;
    }
    Attributes attributes{*this, element};
    rule_attributes(attributes, rule);
    rule.strength = element.word("strength", all_words<Strength>(), Strength::required);
    return rule;
  }

 private:
  // Reads what rule_attributes lists.
  struct Attributes {
    RuleReader& reader;
    Element& element;

    void boxes(std::string_view name, std::size_t least, std::vector<std::string>& ids) {
      ids = reader.boxes(element, name, least);
    }
    void measures(std::string_view name, std::vector<std::string>& names) {
      names = reader.measures(element, name);
    }
    void measure(std::string_view name, std::size_t, std::vector<std::string>& names) {
      names.push_back(reader.measure(element, name));
    }
    void word(std::string_view name, const std::vector<std::string_view>& words,
              std::string& word) {
      std::vector<Word<std::string_view>> known;
      known.reserve(words.size());
      for (const std::string_view text : words) known.push_back({text, text});
      word = element.word<std::string_view>(name, known, words.front());
    }
    void needed_word(std::string_view name, const std::vector<std::string_view>& words,
                     std::string& found) {
      element.required(name, alternatives(words));
      word(name, words, found);
    }
    void box_or_mat(std::string_view name, std::string& id) {
      id = element.value(name).value_or("mat");
      if (id != "mat") reader.check_box(element, name, id, {"mat"});
    }
    void length(std::string_view name, Length& value) {
      value = element.required_length(name, Least::zero);
    }
    void factor(std::string_view name, Rule& rule) {
      element.required(name, "a number such as 2 or 3/2");
      const Fraction factor = element.fraction(name);
      rule.factor_numerator = factor.numerator;
      rule.factor_denominator = factor.denominator;
    }
  };

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

  std::vector<std::string> measures(Element& element, std::string_view attribute) {
    std::vector<std::string> names = listed(element, attribute, 2);
    for (const std::string& name : names) check_measure(element, attribute, name);
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

  Reading& reading_;
  std::vector<std::string_view> gaps_, boxes_;  // in the order of the file
  std::set<std::string_view> known_gaps_, known_boxes_;
};

}  // namespace

std::vector<Rule> read_rules(Element& element, const Names& names) {
  std::vector<Rule> rules;
  RuleReader reader(element.reading(), names);
  std::vector<std::string_view> kinds;
  for (const Word<Rule::Kind>& word : rule_words()) kinds.push_back(word.text);
  for (const pugi::xml_node& node : element.children(kinds)) {
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
