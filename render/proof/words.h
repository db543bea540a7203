#pragma once

// Words that more than one form of the proof uses.

#include <string>

#include "engine/job/job.h"
#include "engine/locale/locale.h"

namespace mullion::proof::words {

inline constexpr const char* sizes = mark("Sizes");
inline constexpr const char* materials = mark("Materials");
inline constexpr const char* estimate = mark("Estimate");
inline constexpr const char* please_check = mark("Before you sign, please check");
inline constexpr const char* what_to_check = mark(
    "The spelling of every name and title. The crop of every picture. Sizes, borders and the "
    "boards chosen. Colours on a screen or in print differ from the board and the moulding "
    "themselves: ask to see the samples.");
inline constexpr const char* signature = mark("Signature");
inline constexpr const char* date = mark("Date");
inline constexpr const char* for_customer = mark("for %1");
inline constexpr const char* proof_of = mark("%1, proof");

inline std::string title_of(const Job& job) {
  return job.title.empty() ? job.reference : job.title;
}

inline std::string version(const Job& job, const std::string& mark, const Locale& locale) {
  return locale.say("revision %1 (%2)", job.revision, mark);
}

inline std::string approval(const Job& job, const std::string& mark, const Locale& locale) {
  return locale.say("I approve revision %1 (%2) as shown.", job.revision, mark);
}
inline constexpr const char* approval_of_choice = mark("I approve the one ticked, as shown:");

}  // namespace mullion::proof::words

namespace mullion::proof {

std::string upper_case(const std::string& text);  // of valid UTF-8

}  // namespace mullion::proof
