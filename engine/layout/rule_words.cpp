#include "engine/layout/rule_words.h"

#include "engine/layout/words.h"
#include "engine/xml/words.h"

namespace mullion {

std::string words_of(const Rule& rule, const std::string& value) {
  const std::string list = layout::joined(rule.of);
  switch (rule.kind) {
    case Rule::Kind::same_size:
      return "the same size of " + list;
    case Rule::Kind::align:
      return "the " + rule.edge + " of " + list + " in one line";
    case Rule::Kind::equal:
      return "equal " + list;
    case Rule::Kind::multiple:
      return rule.of.at(0) + " " +
             format_fraction({rule.factor_numerator, rule.factor_denominator}) + " times " +
             rule.of.at(1);
    case Rule::Kind::fixed:
      return rule.of.at(0) + " at " + value;
    case Rule::Kind::at_least:
      return rule.of.at(0) + " at least " + value;
    case Rule::Kind::at_most:
      return rule.of.at(0) + " at most " + value;
    case Rule::Kind::centred:
      return list + " centred on " + rule.on;
  }
  return {};
}

std::string words_of(const Rule& rule, const Scale& scale) {
  return words_of(rule, describe(rule.value, scale));
}

}  // namespace mullion
