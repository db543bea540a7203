#include "engine/layout/words.h"

#include <array>

#include "engine/layout/rule_words.h"
#include "engine/xml/words.h"

namespace mullion::layout {
namespace {

using Kind = Statement::Kind;

constexpr std::size_t most_named = 6;

const char* size_word(Axis axis) {
  return axis == across ? "width" : "height";
}

const char* side_word(const Statement& border) {
  if (border.axis == across) return border.far ? "right" : "left";
  return border.far ? "bottom" : "top";
}

// "openings of at least", for one or for several.
std::string limit_text(const Statement& limit, bool several, const std::string& value) {
  const std::string what = limit.kind == Kind::least_opening ? "opening"
                           : limit.kind == Kind::least_bar   ? "bar"
                                                             : "border";
  return what + (several ? "s" : "") + " of at least " + value;
}

std::string part_text(const Statement::Part& part) {
  if (!part.along) return "opening \"" + part.id + "\"";
  if (!part.id.empty()) return "group \"" + part.id + "\"";
  return *part.along == Along::row ? "a row" : "a column";
}

struct NoteWords {
  const Job& job;

  std::string operator()(const OffBy& note) const {
    return text_of(note.what, job) + ": off by " + describe_fine(note.amount, job.scale.unit) +
           ", since the sizes do not divide into whole steps of " +
           format_exact(job.scale.increment, job.scale.unit);
  }
  std::string operator()(const OutOfLine& note) const {
    return "in their rows and columns " + std::to_string(note.parts) +
           " more parts are out of line, by " + describe_fine(note.most, job.scale.unit) +
           " at most";
  }
  std::string operator()(const OffStep& note) const {
    return text_of(note.what, job) + " is " + describe_fine(note.size, job.scale.unit) +
           ", between two steps of the rule";
  }
  std::string operator()(const EdgesOffStep& note) const {
    std::vector<std::string> names;
    for (const std::string& id : note.openings) names.push_back('"' + id + '"');
    const std::string edge = note.axis == across ? "the left edge" : "the top edge";
    if (names.size() == 1) {
      return edge + " of opening " + names.front() + " lies between two steps of the rule";
    }
    const std::string openings = names.size() > most_named
                                     ? std::to_string(names.size()) + " openings"
                                     : "openings " + joined(names);
    return edge + "s of " + openings + " lie between two steps of the rule";
  }
};

}  // namespace

std::string text_of(const Statement& s, const Job& job) {
  const std::string value = describe(s.value, job.scale);
  switch (s.kind) {
    case Kind::structure:
      return {};
    case Kind::equal_gaps:
      return "equal gaps";
    case Kind::alignments:
      return "an alignment within a row or column";
    case Kind::side_borders:
      return "the left and the right border";
    case Kind::end_borders:
      return "the top and the bottom border";
    case Kind::optical_border:
      return "the bottom border and that of the optical centre";
    case Kind::alignment:
      return "the two sides of " + part_text(s.part) + " in its " +
             (s.axis == across ? "row" : "column");
    case Kind::outer:
      return std::string("the outer ") + size_word(s.axis);
    case Kind::frame:
      return std::string("the outer ") + size_word(s.axis) + " (the frame's rabbet of " +
             describe(s.value + job.frame->allowance, job.scale) + " less " +
             describe(job.frame->allowance, job.scale) + ")";
    case Kind::border:
      return std::string("the ") + side_word(s) + " border";
    case Kind::opening:
      return part_text(s.part) + " " + value + (s.axis == across ? " wide" : " high");
    case Kind::gap:
      return "gap of " + value;
    case Kind::least_opening:
    case Kind::least_bar:
    case Kind::least_border:
      return limit_text(s, true, value);
    case Kind::wider_bottom:
      return "the bottom border " + value + " wider than the top one";
    case Kind::bottom_times:
      return "the bottom border " +
             format_fraction({job.borders.ratio_numerator, job.borders.ratio_denominator}) +
             " times the top one";
    case Kind::rule:
      return words_of(job.rules[s.rule], value);
  }
  return {};
}

std::string counted_limit(int count, const Statement& limit, const Scale& scale) {
  const std::string value = describe(limit.value, scale);
  return counted(count, limit_text(limit, false, value), limit_text(limit, true, value));
}

std::string text_of(const Remedy& remedy, const Model& model, const Job& job) {
  const auto stated = [&](int tag) -> const Statement& {
    return model.statements[static_cast<std::size_t>(tag)];
  };
  const Statement& s = stated(remedy.tags.front());
  if (!remedy.number) return "leaving out \"" + text_of(s, job) + "\"";
  const std::string size = format_exact(*remedy.number, job.scale.unit);
  switch (s.kind) {
    case Kind::outer:
      return std::string("an outer ") + size_word(s.axis) + " of " + size;
    case Kind::frame:
      return std::string("a rabbet ") + size_word(s.axis) + " of " +
             format_exact(*remedy.number + job.frame->allowance, job.scale.unit);
    case Kind::border: {
      if (remedy.tags.size() == 1) return std::string("a ") + side_word(s) + " border of " + size;
      std::vector<std::string> sides;
      for (const int tag : remedy.tags) sides.emplace_back(side_word(stated(tag)));
      return joined(sides) + " borders of " + size;
    }
    case Kind::gap:
      return (remedy.tags.size() > 1 ? "gaps of " : "a gap of ") + size +
             (remedy.others_stay ? " in place of " + describe_exact(s.value, job.scale) : "");
    case Kind::least_opening:
    case Kind::least_bar:
    case Kind::least_border:
      return limit_text(s, true, size);
    case Kind::rule:
      return words_of(job.rules[s.rule], size);
    case Kind::structure:
    case Kind::equal_gaps:
    case Kind::alignments:
    case Kind::side_borders:
    case Kind::end_borders:
    case Kind::optical_border:
    case Kind::alignment:
    case Kind::opening:
    case Kind::wider_bottom:
    case Kind::bottom_times:
      return {};  // no number that could be another one
  }
  return {};
}

std::string sentence_of(const LayoutNote& note, const Job& job) {
  return std::visit(NoteWords{job}, note);
}

std::string joined(const std::vector<std::string>& items, const std::string& last) {
  std::string out;
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (i > 0) out += i + 1 == items.size() ? last : ", ";
    out += items[i];
  }
  return out;
}

std::string counted(int count, const std::string& singular, const std::string& plural) {
  constexpr std::array<const char*, 13> words{"no",   "a",      "two",   "three", "four",
                                              "five", "six",    "seven", "eight", "nine",
                                              "ten",  "eleven", "twelve"};
  if (count == 1) {
    const bool vowel = std::string("aeiou").find(singular.front()) != std::string::npos;
    return (vowel ? "an " : "a ") + singular;
  }
  const std::string number = count >= 0 && count < static_cast<int>(words.size())
                                 ? words[static_cast<std::size_t>(count)]
                                 : std::to_string(count);
  return number + " " + plural;
}

std::string ticks_text(const solver::Rational& ticks, const Scale& scale) {
  const bool whole = ticks.is_integer();
  const std::string text = describe_exact(Length::from_ticks(ticks.floor().to_int64()), scale);
  return whole || text.starts_with("about") ? text : "about " + text;
}

}  // namespace mullion::layout
