#include "engine/edit/frame.h"
#include "engine/job/job_words.h"
#include "engine/report/json.h"
#include "engine/xml/words.h"

namespace mullion {

using report::document;
using report::Json;
using report::of;

namespace {

Json box_of(const Rect& rect, Unit unit) {
  return {{"left", of(rect.left, unit)},
          {"top", of(rect.top, unit)},
          {"width", of(rect.width(), unit)},
          {"height", of(rect.height(), unit)}};
}

Json windows_of(const MatLayer& layer, Unit unit) {
  Json out = Json::array();
  for (const Window& window : layer.windows) {
    out.push_back({{"openings", window.openings},
                   {"seen", window.seen},
                   {"shape", std::string(word_for(window.shape.kind))},
                   {"back", box_of(window.back, unit)},
                   {"face", box_of(window.face, unit)}});
  }
  return out;
}

}  // namespace

std::string check_json(const Job& job, const Layout& layout, const Mat& mat,
                       const Outcome& outcome) {
  const Unit unit = job.scale.unit;
  Json out = document("check", outcome);
  out["job"] = {{"file", job.file},
                {"reference", job.reference},
                {"title", job.title},
                {"unit", word_for(unit)},
                {"increment", of(job.scale.increment, unit)}};
  constexpr const char* on_increment[] = {"as it was", "nearest", "near"};
  out["on_increment"] = on_increment[static_cast<std::size_t>(layout.on_increment)];
  out["width"] = of(layout.width, unit);
  out["height"] = of(layout.height, unit);
  out["borders"] = of(layout.borders, unit);
  out["openings"] = Json::array();
  for (const PlacedOpening& opening : layout.openings) {
    out["openings"].push_back({{"number", opening.number},
                               {"id", opening.id},
                               {"left", of(opening.rect.left, unit)},
                               {"top", of(opening.rect.top, unit)},
                               {"width", of(opening.rect.width(), unit)},
                               {"height", of(opening.rect.height(), unit)}});
  }
  out["layers"] = Json::array();
  for (const Layer& layer : job.layers) {
    out["layers"].push_back({{"number", out["layers"].size() + 1},
                             {"name", layer.name},
                             {"board", layer.board},
                             {"thickness", of(layer.thickness, unit)},
                             {"windows", windows_of(mat.layers[out["layers"].size()], unit)}});
  }
  out["pictures"] = Json::array();
  for (const MatPicture& picture : mat.pictures) {
    out["pictures"].push_back({{"id", picture.picture.id},
                               {"opening", picture.opening},
                               {"place", box_of(picture.rect, unit)},
                               {"seen", box_of(picture.sight, unit)}});
  }
  return report::text_of(out);
}

std::string frames_json(const std::vector<FrameFit>& fits, const Sides& least, const Job& job) {
  const Unit unit = job.scale.unit;
  Json out = document("frames");
  out["least_borders"] = of(least, unit);
  out["frames"] = Json::array();
  for (const FrameFit& fit : fits) {
    const edit::Rabbet rabbet = edit::rabbet_of(fit, job);
    out["frames"].push_back({{"width", of(fit.width, unit)},
                             {"height", of(fit.height, unit)},
                             {"rabbet_width", of(rabbet.width, unit)},
                             {"rabbet_height", of(rabbet.height, unit)},
                             {"borders", of(fit.borders, unit)}});
  }
  return report::text_of(out);
}

std::string suggestions_json(const suggest::Suggestions& found, Unit unit, const Outcome& outcome) {
  Json out = document("suggest", outcome);
  out["arrangements_looked_at"] = found.looked_at;
  out["every_one"] = found.every_one;
  out["suggestions"] = Json::array();
  for (const suggest::Suggestion& suggestion : found.best) {
    const suggest::Ranked& ranked = suggestion.ranked;
    Json criteria = Json::object();
    for (const suggest::Criterion& one : suggest::criteria_table()) {
      criteria[one.name] = ranked.criteria.*one.figure;
    }
    out["suggestions"].push_back({{"number", out["suggestions"].size() + 1},
                                  {"width", of(ranked.board.width, unit)},
                                  {"height", of(ranked.board.height, unit)},
                                  {"composition", suggest::name_of(suggestion.composition)},
                                  {"least_gap", of(suggestion.least_gap, unit)},
                                  {"widest_gap", of(suggestion.widest_gap, unit)},
                                  {"score", ranked.score},
                                  {"criteria", std::move(criteria)}});
  }
  return report::text_of(out);
}

std::string explanations_json(const std::vector<Explanation>& entries) {
  Json out = document("explain");
  out["codes"] = Json::array();
  for (const Explanation& entry : entries) {
    out["codes"].push_back({{"code", entry.code},
                            {"severity", word_for(entry.severity)},
                            {"summary", entry.summary},
                            {"reason", entry.reason},
                            {"advice", entry.advice}});
  }
  return report::text_of(out);
}

std::string watch_json(const WatchState& state) {
  Json out = {{"version", state.version},
              {"job", state.job},
              {"problems", state.problems},
              {"failed", state.failed},
              {"outputs", Json::array()}};
  for (const WatchState::Output& output : state.outputs) {
    out["outputs"].push_back({{"label", output.label}, {"name", output.name}});
  }
  return out.dump(-1, ' ', false, Json::error_handler_t::replace);
}

std::string changed_lines_json(const std::vector<edit::ChangedLines>& changes) {
  Json out = document("set");
  out["changes"] = Json::array();
  for (const edit::ChangedLines& change : changes) {
    out["changes"].push_back(
        {{"line", change.line}, {"before", change.before}, {"after", change.after}});
  }
  return report::text_of(out);
}

std::string changes_json(const std::vector<std::string>& sentences) {
  Json out = document("diff");
  out["changes"] = sentences;
  return report::text_of(out);
}

}  // namespace mullion
