#pragma once

// What is told is told in every language.

#include <functional>
#include <string>

#include "engine/locale/locale.h"
#include "engine/xml/problem.h"

namespace test {

// In each language the problems are as many as in English, and say nothing in English.
void check_languages(const std::function<mullion::Problems(const mullion::Locale&)>& told);

}  // namespace test
