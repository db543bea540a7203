#include "engine/report/json.h"

namespace mullion {
namespace report {
namespace {

Json of(const Problem& problem) {
  const bool placed = problem.place.line > 0;
  return {{"severity", word_for(problem.severity)},
          {"code", problem.code},
          {"message", problem.message},
          {"file", problem.file.empty() ? Json() : Json(problem.file)},
          {"line", placed ? Json(problem.place.line) : Json()},
          {"column", placed ? Json(problem.place.column) : Json()}};
}

}  // namespace

Json document(std::string_view verb, const Outcome& outcome) {
  Json out = {{"format", "mullion " + std::string(verb) + " 1"},
              {"status", outcome.status},
              {"problems", Json::array()}};
  for (const Problem& problem : outcome.problems) out["problems"].push_back(of(problem));
  return out;
}

std::string text_of(const Json& json) {
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace report

std::string outcome_json(std::string_view verb, const Outcome& outcome) {
  return report::text_of(report::document(verb, outcome));
}

}  // namespace mullion
