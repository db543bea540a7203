#pragma once

// Words that more than one form of the proof uses.

#include <string>

#include "engine/job/job.h"

namespace mullion::proof::words {

inline constexpr const char* sizes = "Sizes";
inline constexpr const char* materials = "Materials";
inline constexpr const char* estimate = "Estimate";
inline constexpr const char* please_check = "Before you sign, please check";
inline constexpr const char* what_to_check =
    "The spelling of every name and title. The crop of every picture. Sizes, borders and the "
    "boards chosen. Colours on a screen or in print differ from the board and the moulding "
    "themselves: ask to see the samples.";
inline constexpr const char* signature = "Signature";
inline constexpr const char* date = "Date";

inline std::string title_of(const Job& job) {
  return job.title.empty() ? job.reference : job.title;
}

// "revision 1 (35391bd2)"
inline std::string version(const Job& job, const std::string& mark) {
  return "revision " + std::to_string(job.revision) + " (" + mark + ")";
}

inline std::string approval(const Job& job, const std::string& mark) {
  return "I approve " + version(job, mark) + " as shown.";
}
inline constexpr const char* approval_of_choice = "I approve the one ticked, as shown:";

}  // namespace mullion::proof::words

namespace mullion::proof {

std::string upper_case(const std::string& text);  // of valid UTF-8

}  // namespace mullion::proof
