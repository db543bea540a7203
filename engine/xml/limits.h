#pragma once

// What every XML file of ours is held to; what is larger is refused.

#include <cstddef>

#include "engine/length/length.h"

namespace mullion {

inline constexpr std::size_t largest_job_file = 4u << 20;  // bytes
inline constexpr int deepest_job_xml = 32;                 // elements within elements
inline constexpr std::size_t most_listed = 4000;           // names in one attribute
inline constexpr std::size_t longest_id = 64;              // characters
inline constexpr std::size_t longest_line = 200;           // a name, a title, a reference
inline constexpr std::size_t longest_path = 1000;          // of an image or outline file
inline constexpr Length longest_side = millimetres(10'000);
inline constexpr std::size_t most_problems = 20;  // listed in one run

}  // namespace mullion
