#include <stdexcept>

#include "engine/layout/model.h"

namespace mullion::layout {
namespace {

using solver::Constraint;
using solver::Linear;

FoundMeasure part_of(const Box& box, std::string_view part) {
  const Span& x = box.span[across];
  const Span& y = box.span[down];
  const auto middle = [](const Span& span) { return (span.start + span.end) / 2; };
  if (part == "left") return {x.start, true};
  if (part == "right") return {x.end, true};
  if (part == "top") return {y.start, true};
  if (part == "bottom") return {y.end, true};
  if (part == "centre") return {middle(x), true};
  if (part == "middle") return {middle(y), true};
  if (part == "width") return {x.size(), true};
  if (part == "height") return {y.size(), true};
  return {};
}

int level_of(Strength strength) {
  switch (strength) {
    case Strength::required:
      return level::required;
    case Strength::strong:
      return level::strong_rule;
    case Strength::medium:
      return level::medium_rule;
    case Strength::weak:
      return level::weak_rule;
  }
  return level::required;
}

class RuleAdder {
 public:
  RuleAdder(Model& model, const Rule& rule, std::size_t index) : model_(model), rule_(rule) {
    Statement statement;
    statement.kind = Statement::Kind::rule;
    statement.place = rule.place;
    statement.value = rule.value;
    statement.rule = index;
    statement.adjustable = rule.kind == Rule::Kind::fixed || rule.kind == Rule::Kind::at_least ||
                           rule.kind == Rule::Kind::at_most;
    model_.statements.push_back(statement);
    tag_ = static_cast<int>(model_.statements.size()) - 1;
  }

  void add() {
    const Linear value(rule_.value.ticks());
    switch (rule_.kind) {
      case Rule::Kind::same_size:
        same_size();
        return;
      case Rule::Kind::align:
        all_equal(measures_of("." + rule_.edge));
        return;
      case Rule::Kind::equal:
        all_equal(measures_of(""));
        return;
      case Rule::Kind::multiple: {
        const solver::Rational factor(rule_.factor_numerator, rule_.factor_denominator);
        put(measure(rule_.of.at(0)) == measure(rule_.of.at(1)) * factor);
        return;
      }
      case Rule::Kind::fixed:
        put(measure(rule_.of.at(0)) == value);
        return;
      case Rule::Kind::at_least:
        put(measure(rule_.of.at(0)) >= value);
        return;
      case Rule::Kind::at_most:
        put(measure(rule_.of.at(0)) <= value);
        return;
      case Rule::Kind::centred:
        centred();
        return;
    }
  }

 private:
  void put(Constraint constraint) {
    constraint.level = level_of(rule_.strength);
    model_.system.add(tagged(std::move(constraint), tag_));
  }

  Linear measure(const std::string& name) const {
    const FoundMeasure found = find_measure(model_, name);
    if (!found.found) throw std::invalid_argument("no measure is called " + name);
    return found.form;
  }

  const Box& box(const std::string& id) const {
    const NamedBox* found = find_box(model_, id);
    if (found == nullptr) throw std::invalid_argument("nothing is called " + id);
    return found->box;
  }

  std::vector<Linear> measures_of(const std::string& part) const {
    std::vector<Linear> forms;
    for (const std::string& name : rule_.of) forms.push_back(measure(name + part));
    return forms;
  }

  // Each equals one common value; so as a preference every one counts alike.
  void all_equal(const std::vector<Linear>& forms) {
    if (forms.size() == 2) return put(forms[0] == forms[1]);
    const Linear common(model_.system.add_variable());
    for (const Linear& form : forms) put(form == common);
  }

  void same_size() {
    if (rule_.dimension != "height") all_equal(measures_of(".width"));
    if (rule_.dimension != "width") all_equal(measures_of(".height"));
  }

  void centred() {
    for (Axis axis : {across, down}) {
      if (rule_.dimension == (axis == across ? "down" : "across")) continue;
      const Span on =
          rule_.on == "mat" ? Span{Linear(0), model_.outer[axis]} : box(rule_.on).span[axis];
      for (const std::string& id : rule_.of) {
        const Span& span = box(id).span[axis];
        put(span.start + span.end == on.start + on.end);
      }
    }
  }

  Model& model_;
  const Rule& rule_;
  int tag_ = 0;
};

}  // namespace

const NamedBox* find_box(const Model& model, std::string_view id) {
  for (const NamedBox& opening : model.openings) {
    if (opening.id == id) return &opening;
  }
  for (const NamedBox& group : model.groups) {
    if (!group.id.empty() && group.id == id) return &group;
  }
  return nullptr;
}

FoundMeasure find_measure(const Model& model, std::string_view name) {
  if (const auto gap = model.gaps.find(name); gap != model.gaps.end()) return {gap->second, true};
  const std::size_t dot = name.rfind('.');
  if (dot == std::string_view::npos) return {};
  const std::string_view owner = name.substr(0, dot), part = name.substr(dot + 1);
  if (owner == "outer") {
    if (part == "width") return {model.outer[across], true};
    if (part == "height") return {model.outer[down], true};
  }
  if (owner == "border") {
    if (part == "left") return {model.border[across].start, true};
    if (part == "right") return {model.border[across].end, true};
    if (part == "top") return {model.border[down].start, true};
    if (part == "bottom") return {model.border[down].end, true};
  }
  const NamedBox* box = find_box(model, owner);
  return box == nullptr ? FoundMeasure{} : part_of(box->box, part);
}

void add_rules(Model& model, const Job& job) {
  for (std::size_t i = 0; i < job.rules.size(); ++i) RuleAdder(model, job.rules[i], i).add();
}

}  // namespace mullion::layout
