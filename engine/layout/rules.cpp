#include <stdexcept>

#include "engine/layout/model.h"

namespace mullion::layout {
namespace {

using solver::Constraint;
using solver::Linear;

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
  RuleAdder(Model& model, const Job& job, const Rule& rule)
      : model_(model), job_(job), rule_(rule) {
    model_.statements.push_back({Statement::Kind::rule, words(), rule.place, rule.value,
                                 rule.kind == Rule::Kind::fixed ||
                                     rule.kind == Rule::Kind::at_least ||
                                     rule.kind == Rule::Kind::at_most});
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
  std::string list() const {
    std::string out;
    for (std::size_t i = 0; i < rule_.of.size(); ++i) {
      out += i == 0 ? "" : i + 1 == rule_.of.size() ? " and " : ", ";
      out += rule_.of[i];
    }
    return out;
  }

  std::string words() const {
    const std::string value = describe(rule_.value, job_.scale);
    switch (rule_.kind) {
      case Rule::Kind::same_size:
        return "the same size of " + list();
      case Rule::Kind::align:
        return "the " + rule_.edge + " of " + list() + " in one line";
      case Rule::Kind::equal:
        return "equal " + list();
      case Rule::Kind::multiple:
        return rule_.of.at(0) + " " +
               solver::Rational(rule_.factor_numerator, rule_.factor_denominator).to_string() +
               " times " + rule_.of.at(1);
      case Rule::Kind::fixed:
        return rule_.of.at(0) + " at " + value;
      case Rule::Kind::at_least:
        return rule_.of.at(0) + " at least " + value;
      case Rule::Kind::at_most:
        return rule_.of.at(0) + " at most " + value;
      case Rule::Kind::centred:
        return list() + " centred on " + rule_.on;
    }
    return {};
  }

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
  const Job& job_;
  const Rule& rule_;
  int tag_ = 0;
};

}  // namespace

void add_rules(Model& model, const Job& job) {
  for (const Rule& rule : job.rules) RuleAdder(model, job, rule).add();
}

}  // namespace mullion::layout
