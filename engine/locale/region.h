#pragma once

// What is customary in a territory (ISO 3166-1 alpha-2): units, paper, the decimal mark.
//
// Source: the Unicode Common Locale Data Repository, version 41: measurementSystem and paperSize of
// its supplemental data, the decimal symbols of its locales. Its system "UK", and Canada, which it
// counts as metric, are read here as "both units": framers there measure in either (common
// practice, no source).

#include <string>
#include <string_view>

#include "engine/length/format.h"

namespace mullion {

enum class Measure { unstated, metric, inches };

// Which unit a customer there reads first; unstated where both are usual, or without a territory.
Measure measure_in(std::string_view territory);

// inches or metric
Measure measure_of(Unit unit);

// What is read off a rule there: 1/16 in, else 1 mm in centimetres (our own figures).
Scale usual_scale(Measure measure);

// Letter paper is usual there (ANSI/ASME Y14.1, size A); elsewhere A4 (ISO 216).
bool uses_letter_paper(std::string_view territory);

// The territory writes another decimal mark than the homeland of its language: a point in
// Switzerland's German and in the Spanish of Mexico and others of the Americas.
bool writes_decimal_point(std::string_view language, std::string_view territory);

}  // namespace mullion
