#pragma once

// What a layout says, put into a framer's words: statements, notes and remedies. Lengths are in the
// job's unit.

#include <string>
#include <vector>

#include "engine/layout/remedy.h"
#include "engine/layout/statement.h"
#include "engine/locale/locale.h"
#include "engine/solver/rational.h"

namespace mullion::layout {

// "the left border", "opening \"dune\" 10 in wide": as part of a sentence.
std::string text_of(const Statement& statement, const Job& job, const Locale& locale = {});

// "two borders of at least 2 in": a limit that counts so many times.
std::string counted_limit(int count, const Statement& limit, const Scale& scale,
                          const Locale& locale = {});

// "a gap of 1/2 in", "two openings of 9": so many of a size.
std::string counted_gaps(int count, const std::string& size, const Locale& locale = {});
std::string counted_openings(int count, const std::string& size, const Locale& locale = {});

// "an outer width of 26 in", "gaps of 1/2 in", "leaving out \"...\"".
std::string text_of(const Remedy& remedy, const Model& model, const Job& job,
                    const Locale& locale = {});

// A whole sentence without a full stop.
std::string sentence_of(const LayoutNote& note, const Job& job, const Locale& locale = {});

// A number of ticks, which need not be whole, as a length with its unit.
std::string ticks_text(const solver::Rational& ticks, const Scale& scale,
                       const Locale& locale = {});

}  // namespace mullion::layout
