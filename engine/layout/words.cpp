#include "engine/layout/words.h"

#include <algorithm>

#include "engine/layout/rule_words.h"
#include "engine/xml/words.h"

namespace mullion::layout {
namespace {

using Kind = Statement::Kind;

constexpr std::size_t most_named = 6;

std::string border_text(const Statement& border, const Locale& locale) {
  if (border.axis == across) {
    return border.far ? locale.say("the right border") : locale.say("the left border");
  }
  return border.far ? locale.say("the bottom border") : locale.say("the top border");
}

std::string border_remedy(const Statement& border, const std::string& size, const Locale& locale) {
  if (border.axis == across) {
    return border.far ? locale.say("a right border of %1", size)
                      : locale.say("a left border of %1", size);
  }
  return border.far ? locale.say("a bottom border of %1", size)
                    : locale.say("a top border of %1", size);
}

std::string side_text(const Statement& border, const Locale& locale) {
  if (border.axis == across) {
    return border.far ? locale.say_in("border", "right") : locale.say_in("border", "left");
  }
  return border.far ? locale.say_in("border", "bottom") : locale.say_in("border", "top");
}

std::string limits_text(const Statement& limit, const std::string& value, const Locale& locale) {
  if (limit.kind == Kind::least_opening) return locale.say("openings of at least %1", value);
  if (limit.kind == Kind::least_bar) return locale.say("bars of at least %1", value);
  if (limit.kind == Kind::held_bar) {
    return locale.say("holding bars of at least %1", value);
  }
  if (limit.kind == Kind::held_border) {
    return locale.say("holding borders of at least %1", value);
  }
  return locale.say("borders of at least %1", value);
}

std::string part_text(const Statement::Part& part, const Locale& locale) {
  if (!part.along) return locale.say("opening \"%1\"", part.id);
  if (!part.id.empty()) return locale.say("group \"%1\"", part.id);
  switch (*part.along) {
    case Along::row:
      return locale.say("a row");
    case Along::column:
      return locale.say("a column");
    case Along::ring:
      return locale.say("a ring");
    case Along::places:
      return locale.say("parts at places of their own");
  }
  return {};
}

std::string place_text(const Statement& place, const std::string& value, const Locale& locale) {
  const std::string part = part_text(place.part, locale);
  if (place.axis == across) {
    return place.far ? locale.say("%1 %2 from the mat's right edge", part, value)
                     : locale.say("%1 %2 from the mat's left edge", part, value);
  }
  return place.far ? locale.say("%1 %2 from the mat's bottom edge", part, value)
                   : locale.say("%1 %2 from the mat's top edge", part, value);
}

struct NoteWords {
  const Job& job;
  const Locale& locale;

  std::string operator()(const OffBy& note) const {
    return locale.say("%1: off by %2, since the sizes do not divide into whole steps of %3",
                      text_of(note.what, job, locale), fine(note.amount),
                      locale.exact_length(job.scale.increment, job.scale.unit));
  }
  std::string operator()(const GaveWay& note) const {
    std::vector<std::string> to;
    for (const Statement& one : note.to) {
      std::string text = text_of(one, job, locale);
      if (one.kind == Kind::border || is_outer(one)) {
        text = locale.say_in("sum", "%1 of %2", text, locale.described(one.value, job.scale));
      }
      if (std::find(to.begin(), to.end(), text) == to.end()) to.push_back(std::move(text));
    }
    const std::string what = text_of(note.what, job, locale);
    if (to.empty() || to.size() > most_named) {
      return locale.say("the wish \"%1\" is not met by %2: others do not leave it room", what,
                        fine(note.amount));
    }
    return locale.say("the wish \"%1\" is not met by %2; it gives way to %3", what,
                      fine(note.amount), locale.all_of(to));
  }
  std::string operator()(const OutOfLine& note) const {
    return locale.say("in their rows and columns %1 more parts are out of line, by %2 at most",
                      note.parts, fine(note.most));
  }
  std::string operator()(const OffStep& note) const {
    return locale.say("%1 is %2, between two steps of the rule", text_of(note.what, job, locale),
                      fine(note.size));
  }
  std::string operator()(const EdgesOffStep& note) const {
    const bool left = note.axis == across;
    if (note.openings.size() == 1) {
      const std::string& id = note.openings.front();
      return left ? locale.say("the left edge of opening \"%1\" lies between two steps of the rule",
                               id)
                  : locale.say("the top edge of opening \"%1\" lies between two steps of the rule",
                               id);
    }
    const std::string openings = named(note.openings);
    return left ? locale.say("the left edges of %1 lie between two steps of the rule", openings)
                : locale.say("the top edges of %1 lie between two steps of the rule", openings);
  }

 private:
  std::string fine(Length length) const { return locale.described_fine(length, job.scale.unit); }

  std::string named(const std::vector<std::string>& ids) const {
    if (ids.size() > most_named) return locale.plural(ids.size(), "%1 opening", "%1 openings");
    std::vector<std::string> names;
    for (const std::string& id : ids) names.push_back('"' + id + '"');
    return locale.say("openings %1", locale.all_of(names));
  }
};

}  // namespace

std::string text_of(const Statement& s, const Job& job, const Locale& locale) {
  const auto described = [&](Length length) { return locale.described(length, job.scale); };
  const std::string value = described(s.value);
  switch (s.kind) {
    case Kind::structure:
      return {};
    case Kind::equal_gaps:
      return locale.say("equal gaps");
    case Kind::equal_sizes:
      return s.axis == across ? locale.say("equal widths of the free openings")
                              : locale.say("equal heights of the free openings");
    case Kind::alignments:
      return locale.say("an alignment within a row or column");
    case Kind::side_borders:
      return locale.say("the left and the right border");
    case Kind::end_borders:
      return locale.say("the top and the bottom border");
    case Kind::optical_border:
      return locale.say("the bottom border and that of the optical centre");
    case Kind::alignment: {
      const std::string part = part_text(s.part, locale);
      return s.axis == across ? locale.say("the two sides of %1 in its row", part)
                              : locale.say("the two sides of %1 in its column", part);
    }
    case Kind::outer:
      return s.axis == across ? locale.say("the outer width") : locale.say("the outer height");
    case Kind::frame: {
      const std::string rabbet = described(s.value + job.frame->allowance);
      const std::string less = described(job.frame->allowance);
      return s.axis == across
                 ? locale.say("the outer width (the frame's rabbet of %1 less %2)", rabbet, less)
                 : locale.say("the outer height (the frame's rabbet of %1 less %2)", rabbet, less);
    }
    case Kind::border:
      return border_text(s, locale);
    case Kind::opening: {
      const std::string part = part_text(s.part, locale);
      return s.axis == across ? locale.say("%1 %2 wide", part, value)
                              : locale.say("%1 %2 high", part, value);
    }
    case Kind::gap:
      return locale.say("gap of %1", value);
    case Kind::ring:
      return s.axis == across ? locale.say("the places of a ring %1 across", value)
                              : locale.say("the places of a ring %1 high", value);
    case Kind::place:
      return place_text(s, value, locale);
    case Kind::least_opening:
    case Kind::least_bar:
    case Kind::least_border:
    case Kind::held_bar:
    case Kind::held_border:
      return limits_text(s, value, locale);
    case Kind::wider_bottom:
      return locale.say("the bottom border %1 wider than the top one", value);
    case Kind::bottom_times:
      return locale.say(
          "the bottom border %1 times the top one",
          format_fraction({job.borders.ratio_numerator, job.borders.ratio_denominator}));
    case Kind::rule:
      return words_of(job.rules[s.rule], value, locale);
  }
  return {};
}

std::string counted_limit(int count, const Statement& limit, const Scale& scale,
                          const Locale& locale) {
  const std::string value = locale.described(limit.value, scale);
  if (limit.kind == Kind::least_opening) {
    return locale.plural_in_words(count, "an opening of at least %2", "%1 openings of at least %2",
                                  value);
  }
  if (limit.kind == Kind::least_bar) {
    return locale.plural_in_words(count, "a bar of at least %2", "%1 bars of at least %2", value);
  }
  if (limit.kind == Kind::held_bar) {
    return locale.plural_in_words(count, "a holding bar of at least %2",
                                  "%1 holding bars of at least %2", value);
  }
  if (limit.kind == Kind::held_border) {
    return locale.plural_in_words(count, "a holding border of at least %2",
                                  "%1 holding borders of at least %2", value);
  }
  return locale.plural_in_words(count, "a border of at least %2", "%1 borders of at least %2",
                                value);
}

std::string counted_gaps(int count, const std::string& size, const Locale& locale) {
  return locale.plural_in_words(count, "a gap of %2", "%1 gaps of %2", size);
}

std::string counted_openings(int count, const std::string& size, const Locale& locale) {
  return locale.plural_in_words(count, "an opening of %2", "%1 openings of %2", size);
}

std::string text_of(const Remedy& remedy, const Model& model, const Job& job,
                    const Locale& locale) {
  const auto stated = [&](int tag) -> const Statement& {
    return model.statements[static_cast<std::size_t>(tag)];
  };
  const Statement& s = stated(remedy.tags.front());
  const bool several = remedy.tags.size() > 1;
  if (!remedy.number) return locale.say("leaving out \"%1\"", text_of(s, job, locale));
  const auto exact = [&](Length length) { return locale.exact_length(length, job.scale.unit); };
  const std::string size = exact(*remedy.number);
  switch (s.kind) {
    case Kind::outer:
      return s.axis == across ? locale.say("an outer width of %1", size)
                              : locale.say("an outer height of %1", size);
    case Kind::frame: {
      const std::string rabbet = exact(*remedy.number + job.frame->allowance);
      return s.axis == across ? locale.say("a rabbet width of %1", rabbet)
                              : locale.say("a rabbet height of %1", rabbet);
    }
    case Kind::border: {
      if (!several) return border_remedy(s, size, locale);
      std::vector<std::string> sides;
      for (const int tag : remedy.tags) sides.push_back(side_text(stated(tag), locale));
      return locale.say("%1 borders of %2", locale.all_of(sides), size);
    }
    case Kind::gap: {
      const std::string old = locale.described(s.value, job.scale);
      if (!remedy.others_stay) {
        return several ? locale.say("gaps of %1", size) : locale.say("a gap of %1", size);
      }
      return several ? locale.say("gaps of %1 in place of %2", size, old)
                     : locale.say("a gap of %1 in place of %2", size, old);
    }
    case Kind::least_opening:
    case Kind::least_bar:
    case Kind::least_border:
      return limits_text(s, size, locale);
    case Kind::rule:
      return words_of(job.rules[s.rule], size, locale);
    case Kind::structure:
    case Kind::equal_gaps:
    case Kind::equal_sizes:
    case Kind::alignments:
    case Kind::side_borders:
    case Kind::end_borders:
    case Kind::optical_border:
    case Kind::alignment:
    case Kind::opening:
    case Kind::ring:
    case Kind::place:
    case Kind::held_bar:
    case Kind::held_border:
    case Kind::wider_bottom:
    case Kind::bottom_times:
      return {};  // no number that could be another one
  }
  return {};
}

std::string sentence_of(const LayoutNote& note, const Job& job, const Locale& locale) {
  return std::visit(NoteWords{job, locale}, note);
}

std::string ticks_text(const solver::Rational& ticks, const Scale& scale, const Locale& locale) {
  const Length floor = Length::from_ticks(ticks.floor().to_int64());
  const std::string text = locale.described(floor, scale);
  const std::string plain = locale.exact_length(floor, scale.unit);
  return ticks.is_integer() || text != plain ? text : locale.say("about %1", text);
}

}  // namespace mullion::layout
