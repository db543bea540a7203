#include "engine/layout/rule_words.h"

#include "engine/xml/words.h"

namespace mullion {
namespace {

std::string line_words(const std::string& edge, const std::string& list, const Locale& locale) {
  if (edge == "left") return locale.say("the left of %1 in one line", list);
  if (edge == "top") return locale.say("the top of %1 in one line", list);
  if (edge == "right") return locale.say("the right of %1 in one line", list);
  if (edge == "bottom") return locale.say("the bottom of %1 in one line", list);
  if (edge == "centre") return locale.say("the centre of %1 in one line", list);
  return locale.say("the middle of %1 in one line", list);
}

}  // namespace

std::string words_of(const Rule& rule, const std::string& value, const Locale& locale) {
  const std::string list = locale.all_of(rule.of);
  switch (rule.kind) {
    case Rule::Kind::same_size:
      return locale.say("the same size of %1", list);
    case Rule::Kind::align:
      return line_words(rule.edge, list, locale);
    case Rule::Kind::equal:
      return locale.say("equal %1", list);
    case Rule::Kind::multiple:
      return locale.say("%1 %2 times %3", rule.of.at(0),
                        format_fraction({rule.factor_numerator, rule.factor_denominator}),
                        rule.of.at(1));
    case Rule::Kind::fixed:
      return locale.say_in("rule", "%1 at %2", rule.of.at(0), value);
    case Rule::Kind::at_least:
      return locale.say("%1 at least %2", rule.of.at(0), value);
    case Rule::Kind::at_most:
      return locale.say("%1 at most %2", rule.of.at(0), value);
    case Rule::Kind::centred:
      return locale.say("%1 centred on %2", list, rule.on);
  }
  return {};
}

std::string words_of(const Rule& rule, const Scale& scale, const Locale& locale) {
  return words_of(rule, locale.described(rule.value, scale), locale);
}

}  // namespace mullion
