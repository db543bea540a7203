#pragma once

// Lengths, money and problems as JSON, and the head of a document (engine/report/report.h).

#include <nlohmann/json.hpp>
#include <optional>

#include "engine/report/report.h"

namespace mullion::report {

using Json = nlohmann::ordered_json;

inline Json of(Length length, Unit unit) {
  return {{"text", format_exact(length, unit)}, {"ticks", length.ticks()}};
}

inline Json of(const std::optional<Length>& length, Unit unit) {
  return length ? of(*length, unit) : Json();
}

inline Json of(const Sides& sides, Unit unit) {
  return {{"left", of(sides.left, unit)},
          {"top", of(sides.top, unit)},
          {"right", of(sides.right, unit)},
          {"bottom", of(sides.bottom, unit)}};
}

// "format", "status" and "problems".
Json document(std::string_view verb, const Outcome& outcome = {});

std::string text_of(const Json& json);

}  // namespace mullion::report
