#pragma once

// Colours as a job file writes them: #rrggbb, hexadecimal, in either case.

#include <string>
#include <string_view>
#include <tl/expected.hpp>

#include "engine/job/job.h"

namespace mullion {

// The error is one sentence, without a place.
tl::expected<Colour, std::string> parse_colour(std::string_view text);

// "#rrggbb" in lower case.
std::string format_colour(const Colour& colour);

}  // namespace mullion
