#pragma once

// Small pieces of sentences.

#include <string>
#include <vector>

#include "engine/length/format.h"
#include "engine/solver/rational.h"

namespace mullion::layout {

// "a, b and c"
std::string joined(const std::vector<std::string>& items, const std::string& last = " and ");

// "a gap", "two gaps", "14 gaps"
std::string counted(int count, const std::string& singular, const std::string& plural);

// A length with its unit: exact, but for one between steps that neither a fraction of up to 1/64 in
// nor a decimal says; that is "about" its nearest step.
std::string length_text(Length length, const Scale& scale);

// The same without the unit.
std::string number_text(Length length, const Scale& scale);

// With its unit, to the finest mark of any rule, whatever the job's step is: 1/64 in or 0.01 mm.
std::string fine_text(Length length, Unit unit);

// A number of ticks, which need not be whole, as a length with its unit.
std::string ticks_text(const solver::Rational& ticks, const Scale& scale);

}  // namespace mullion::layout
