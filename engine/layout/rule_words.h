#pragma once

// A rule of the job as part of a sentence: "a.left at 3 in", "the same size of a and b".

#include <string>

#include "engine/job/job.h"
#include "engine/locale/locale.h"

namespace mullion {

std::string words_of(const Rule& rule, const Scale& scale, const Locale& locale = {});

// With another length in place of the rule's own.
std::string words_of(const Rule& rule, const std::string& value, const Locale& locale = {});

}  // namespace mullion
