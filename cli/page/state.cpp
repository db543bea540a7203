#include "cli/page/state.h"

#include <algorithm>

#include "engine/edit/edit_json.h"
#include "engine/job/job_words.h"
#include "engine/job/parts.h"
#include "engine/job/read.h"
#include "engine/layout/rule_words.h"
#include "engine/measures/concern.h"
#include "engine/measures/dimensions.h"
#include "render/proof/front.h"

namespace mullion::cli::page {
namespace {

Json of(const std::optional<Length>& length, Unit unit) {
  return length ? page::of(*length, unit) : Json();
}

Json of(const Sides& sides, Unit unit) {
  return {{"left", page::of(sides.left, unit)},
          {"top", page::of(sides.top, unit)},
          {"right", page::of(sides.right, unit)},
          {"bottom", page::of(sides.bottom, unit)}};
}

Json of(const Rect& rect, Unit unit) {
  return {{"left", page::of(rect.left, unit)},
          {"top", page::of(rect.top, unit)},
          {"width", page::of(rect.width(), unit)},
          {"height", page::of(rect.height(), unit)}};
}

Json box_of(const Rect& rect) {
  return {{"x", to_millimetres(rect.left)},
          {"y", to_millimetres(rect.top)},
          {"width", to_millimetres(rect.width())},
          {"height", to_millimetres(rect.height())}};
}

template <class T>
std::string word_for(const std::vector<Word<T>>& words, T value) {
  for (const Word<T>& word : words) {
    if (word.value == value) return std::string(word.text);
  }
  return {};
}

std::string word_of(Along along) {
  return std::string(word_for(along));
}

const char* word_of(Turn turn) {
  switch (turn) {
    case Turn::right:
      return "right";
    case Turn::over:
      return "over";
    case Turn::left:
      return "left";
    case Turn::none:
      break;
  }
  return "";
}

std::string bottom_word(const Borders& borders, Unit unit) {
  switch (borders.bottom) {
    case Borders::Bottom::equal:
      return "equal";
    case Borders::Bottom::extra:
      return "extra " + format_exact(borders.extra, unit);
    case Borders::Bottom::ratio:
      return "ratio " + std::to_string(borders.ratio_numerator) + "/" +
             std::to_string(borders.ratio_denominator);
    case Borders::Bottom::optical:
      return "optical";
    case Borders::Bottom::given:
      return "given";
  }
  return {};
}

Json size_of(const Layout& layout, Unit unit) {
  return {{"width", page::of(layout.width, unit)}, {"height", page::of(layout.height, unit)}};
}

Json extent_of(const Laid& laid) {
  const proof::Millimetres extent = proof::front_extent(*laid.job, *laid.mat);
  return {{"left", extent.left},
          {"top", extent.top},
          {"width", extent.width},
          {"height", extent.height}};
}

Json measures_of(const Laid& laid) {
  const Scale& scale = laid.job->scale;
  Json out = Json::array();
  for (const Dimension& measure : dimensions_of(*laid.job, *laid.layout, *laid.mat)) {
    out.push_back({{"name", measure.name},
                   {"text", exact_number(measure.value, scale.unit)},
                   {"ticks", measure.value.ticks()},
                   {"exact", format_number(measure.value, scale).exact},
                   {"stated", measure.stated},
                   {"along", measure.along == Direction::across ? "x" : "y"},
                   {"from", to_millimetres(measure.from)},
                   {"to", to_millimetres(measure.to)},
                   {"at", to_millimetres(measure.at)},
                   {"step", scale.increment.ticks()}});
  }
  return out;
}

// A rule's attributes as the job file has them (rule_attributes).
struct RuleAttributes {
  Unit unit;
  Json out = Json::object();

  void list(const char* name, const std::vector<std::string>& words) {
    std::string all;
    for (const std::string& word : words) all += (all.empty() ? "" : " ") + word;
    out[name] = all;
  }
  void boxes(const char* name, std::size_t, const std::vector<std::string>& ids) {
    list(name, ids);
  }
  void measures(const char* name, const std::vector<std::string>& names) { list(name, names); }
  void measure(const char* name, std::size_t index, const std::vector<std::string>& names) {
    out[name] = names.at(index);
  }
  using Words = std::initializer_list<std::string_view>;
  void word(const char* name, Words, const std::string& word) { out[name] = word; }
  void needed_word(const char* name, Words, const std::string& word) { out[name] = word; }
  void box_or_mat(const char* name, const std::string& id) { out[name] = id; }
  void length(const char* name, Length value) { out[name] = exact_number(value, unit); }
  void factor(const char* name, const Rule& rule) {
    out[name] = format_fraction({rule.factor_numerator, rule.factor_denominator});
  }
};

Json attributes_of(const Rule& rule, Unit unit) {
  RuleAttributes attributes{unit};
  rule_attributes(attributes, rule);
  attributes.out["strength"] = word_for(rule.strength);
  return std::move(attributes.out);
}

class StateWriter {
 public:
  StateWriter(const Laid& laid, const StateOptions& options)
      : laid_(laid), options_(options), unit_(laid.job ? laid.job->scale.unit : Unit::inch) {}

  Json write() {
    Json out = {{"name", options_.name},         {"fingerprint", laid_.fingerprint},
                {"preview", options_.preview},   {"text_bytes", laid_.text.size()},
                {"can_undo", options_.can_undo}, {"can_redo", options_.can_redo}};
    if (laid_.job) add_job(out, *laid_.job);
    add_mat(out);
    add_stale(out);
    add_problems(out);
    return out;
  }

 private:
  Json length(Length value) const { return page::of(value, unit_); }

  void add_job(Json& out, const Job& job) {
    if (is_arranged(job)) {
      names_ = edit::names_of(job);
      out["arrange"] = node(job.arrangement, "arrange.1");
    } else {
      out["arrange"] = nullptr;
    }
    out["unit"] = page::word_of(unit_);
    out["increment"] = length(job.scale.increment);
    out["job"] = {{"reference", job.reference},
                  {"revision", job.revision},
                  {"title", job.title},
                  {"note", job.note},
                  {"date", job.date},
                  {"quantity", job.quantity},
                  {"customer", {{"name", job.customer}, {"email", job.email}}},
                  {"wall", format_colour(job.wall)}};
    add_pictures(out, job);
    out["openings"] = std::move(openings_);
    add_layers(out, job);
    out["bevel"] = job.bevel_millidegrees / 1000.0;
    out["outer"] = {{"width", of(job.outer_width, unit_)}, {"height", of(job.outer_height, unit_)}};
    add_frame(out, job);
    const Borders& borders = job.borders;
    out["borders"] = {{"left", of(borders.left, unit_)},
                      {"top", of(borders.top, unit_)},
                      {"right", of(borders.right, unit_)},
                      {"bottom", of(borders.bottom_size, unit_)},
                      {"bottom_word", bottom_word(borders, unit_)},
                      {"least", of(borders.least, unit_)}};
    out["least_bar"] = of(job.least_bar, unit_);
    add_rules(out, job);
    out["grooves"] = grooves(job.grooves);
  }

  static Json grooves_of(const std::vector<Groove>& grooves, Unit unit) {
    Json out = Json::array();
    for (const Groove& groove : grooves) {
      out.push_back(
          {{"distance", page::of(groove.distance, unit)}, {"width", page::of(groove.width, unit)}});
    }
    return out;
  }
  Json grooves(const std::vector<Groove>& grooves) const { return grooves_of(grooves, unit_); }

  Json node(const Node& what, const std::string& address) {
    if (const auto* opening = std::get_if<Opening>(&what.what)) return leaf(*opening, address);
    const mullion::Group& group = std::get<mullion::Group>(what.what);
    const std::size_t number = next_group_++;
    Json out = {{"kind", word_of(group.along)},
                {"address", address},
                {"name", names_.groups[number]},
                {"id", group.id},
                {"align", word_for(align_words(group.along), group.align)},
                {"gap", of(group.gap, unit_)},
                {"window", group.joined_layer},
                {"grooves", grooves(group.grooves)}};
    if (group.along == Along::ring) {
      out["across"] = of(group.ring.across, unit_);
      out["down"] = of(group.ring.down, unit_);
    }
    if (laid_.layout) out["box"] = box_of(laid_.layout->groups[number].rect);
    Json children = Json::array();
    std::size_t part = 0;
    for (const Node& child : group.children) {
      children.push_back(node(child, address + "." + std::to_string(++part)));
    }
    out["children"] = std::move(children);
    return out;
  }

  Json leaf(const Opening& opening, const std::string& address) {
    const std::size_t index = openings_.size();
    const int number = static_cast<int>(index) + 1;
    if (!opening.picture.empty()) shown_in_[opening.picture].push_back(number);
    Json reveals = Json::object();
    for (const auto& [layer, sides] : opening.reveals) {
      reveals[std::to_string(layer)] = of(sides, unit_);
    }
    Json out = {
        {"number", number},
        {"id", opening.id},
        {"name", names_.openings[index]},
        {"address", address},
        {"picture", opening.picture},
        {"shape", shape(opening.shape)},
        {"stated", {{"width", of(opening.width, unit_)}, {"height", of(opening.height, unit_)}}},
        {"grooves", grooves(opening.grooves)},
        {"reveals", std::move(reveals)}};
    if (laid_.layout) {
      const Rect& rect = laid_.layout->openings[index].rect;
      out["rect"] = of(rect, unit_);
      out["box"] = box_of(rect);
    }
    if (laid_.mat) out["sight"] = box_of(laid_.mat->sights[index]);
    openings_.push_back(std::move(out));
    Json short_form = {{"kind", "opening"},
                       {"address", address},
                       {"name", names_.openings[index]},
                       {"id", opening.id},
                       {"number", number}};
    return short_form;
  }

  Json shape(const ShapeSpec& shape) const {
    Json out = {{"kind", word_for(shape_words(), shape.kind)}};
    if (shape.corner > Length()) out["corner"] = length(shape.corner);
    if (shape.rise > Length()) out["rise"] = length(shape.rise);
    if (!shape.file.empty()) out["file"] = shape.file;
    if (!shape.path_id.empty()) out["path"] = shape.path_id;
    return out;
  }

  void add_pictures(Json& out, const Job& job) {
    Json pictures = Json::array();
    for (const Picture& picture : job.pictures) {
      pictures.push_back({{"id", picture.id},
                          {"name", "picture." + picture.id},
                          {"width", length(picture.width)},
                          {"height", length(picture.height)},
                          {"image", picture.image},
                          {"overlap", of(picture.overlap, unit_)},
                          {"float", of(picture.float_gap, unit_)},
                          {"may_turn", picture.may_turn},
                          {"turned", word_of(picture.turned)},
                          {"zoom", picture.zoom},
                          {"pan_x", picture.pan_x},
                          {"pan_y", picture.pan_y},
                          {"group", picture.group},
                          {"order", picture.order},
                          {"openings", shown_in_[picture.id]}});
    }
    out["pictures"] = std::move(pictures);
  }

  void add_layers(Json& out, const Job& job) {
    const std::set<int> unknown = unknown_boards(job, options_.stock);
    Json layers = Json::array();
    int number = 0;
    for (const Layer& layer : job.layers) {
      ++number;
      const Sides& reveal = layer.reveal;
      const bool alike =
          reveal.left == reveal.top && reveal.left == reveal.right && reveal.left == reveal.bottom;
      Json shown;
      if (number > 1 && !layer.spacer) {
        shown = of(reveal, unit_);
        shown["all"] = alike ? length(reveal.left) : Json();
      }
      layers.push_back({{"number", number},
                        {"name", layer.name},
                        {"board", layer.board},
                        {"colour", format_colour(layer.colour)},
                        {"core", format_colour(layer.core)},
                        {"ply", layer.ply},
                        {"thickness", length(layer.thickness)},
                        {"reveal", std::move(shown)},
                        {"spacer", layer.spacer},
                        {"grain", layer.grain},
                        {"only", layer.only},
                        {"known", !unknown.contains(number)}});
    }
    out["layers"] = std::move(layers);
  }

  void add_frame(Json& out, const Job& job) {
    if (!job.frame) {
      out["frame"] = nullptr;
      return;
    }
    const Frame& frame = *job.frame;
    out["frame"] = {{"rabbet_width", length(frame.rabbet_width)},
                    {"rabbet_height", length(frame.rabbet_height)},
                    {"allowance", length(frame.allowance)},
                    {"lip", length(frame.lip)},
                    {"face", length(frame.face_width)},
                    {"moulding", frame.moulding},
                    {"colour", format_colour(frame.colour)}};
  }

  void add_rules(Json& out, const Job& job) {
    Json rules = Json::array();
    std::size_t number = 0;
    for (const Rule& rule : job.rules) {
      ++number;
      rules.push_back({{"index", number},
                       {"name", "rule." + std::to_string(number)},
                       {"kind", word_for(rule.kind)},
                       {"attributes", attributes_of(rule, unit_)},
                       {"sentence", words_of(rule, job.scale, options_.locale)}});
    }
    out["rules"] = std::move(rules);
  }

  void add_mat(Json& out) {
    out["mat"] = nullptr;
    out["extent"] = nullptr;
    out["measures"] = Json::array();
    if (laid_.layout) out["mat"] = size_of(*laid_.layout, unit_);
    if (!laid_.mat) return;
    out["extent"] = extent_of(laid_);
    out["measures"] = measures_of(laid_);
  }

  // What the drawing that is shown in place of one shows.
  void add_stale(Json& out) const {
    out["stale"] = nullptr;
    if (laid_.mat || options_.closed == nullptr) return;
    const Laid& closed = *options_.closed;
    const edit::PartNames names = edit::names_of(*closed.job);
    const Unit unit = closed.job->scale.unit;
    Json openings = Json::array(), groups = Json::array();
    for (std::size_t i = 0; i < names.openings.size(); ++i) {
      const PlacedOpening& placed = closed.layout->openings[i];
      openings.push_back({{"number", placed.number},
                          {"name", names.openings[i]},
                          {"rect", of(placed.rect, unit)},
                          {"box", box_of(placed.rect)},
                          {"sight", box_of(closed.mat->sights[i])}});
    }
    for (std::size_t i = 0; i < names.groups.size(); ++i) {
      groups.push_back({{"name", names.groups[i]}, {"box", box_of(closed.layout->groups[i].rect)}});
    }
    out["stale"] = {{"fingerprint", closed.fingerprint}, {"mat", size_of(*closed.layout, unit)},
                    {"extent", extent_of(closed)},       {"measures", measures_of(closed)},
                    {"openings", std::move(openings)},   {"groups", std::move(groups)}};
  }

  void add_problems(Json& out) {
    Json problems = page::of(laid_.problems);
    std::size_t conflict = 0;
    for (std::size_t i = 0; i < problems.size(); ++i) {
      Json& problem = problems[i];
      problem["openings"] = Json::array();
      problem["measures"] = Json::array();
      problem["box"] = nullptr;
      problem["remedies"] = Json::array();
      if (!laid_.job) continue;
      const bool is_conflict =
          laid_.problems[i].severity == Severity::error && conflict < laid_.concerns.size();
      const Concern concern = is_conflict ? laid_.concerns[conflict++]
                                          : concern_of(*laid_.job, laid_.problems[i].place);
      problem["openings"] = concern.openings;
      problem["measures"] = concern.measures;
      problem["box"] = box_around(concern.openings);
    }
    if (!problems.empty()) problems[0]["remedies"] = remedies();
    out["problems"] = std::move(problems);
  }

  Json remedies() const {
    Json out = Json::array();
    for (const Remedy& remedy : laid_.remedies) {
      const Json edit = Json::parse(edit::edit_to_json(remedy.edit));
      out.push_back({{"words", remedy.words}, {"edits", Json::array({edit})}});
    }
    return out;
  }

  // On the drawing that is shown.
  std::optional<Rect> rect_of(int number) const {
    const auto index = static_cast<std::size_t>(number - 1);
    if (laid_.layout) return laid_.layout->openings[index].rect;
    if (options_.closed == nullptr) return std::nullopt;
    const std::vector<std::string> there = edit::names_of(*options_.closed->job).openings;
    const auto same = std::find(there.begin(), there.end(), names_.openings[index]);
    if (same == there.end()) return std::nullopt;
    return options_.closed->layout->openings[static_cast<std::size_t>(same - there.begin())].rect;
  }

  Json box_around(const std::vector<int>& openings) const {
    std::optional<Rect> all;
    for (const int number : openings) {
      const auto one = rect_of(number);
      if (!one) continue;
      if (!all) all = one;
      all = {std::min(all->left, one->left), std::min(all->top, one->top),
             std::max(all->right, one->right), std::max(all->bottom, one->bottom)};
    }
    return all ? box_of(*all) : Json();
  }

  const Laid& laid_;
  const StateOptions& options_;
  Unit unit_;
  edit::PartNames names_;
  std::size_t next_group_ = 0;
  Json openings_ = Json::array();
  std::map<std::string, std::vector<int>> shown_in_;
};

}  // namespace

std::string dumped(const Json& json) {
  return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

const char* word_of(Unit unit) {
  return unit == Unit::inch ? "in" : unit == Unit::millimetre ? "mm" : "cm";
}

Json of(Length length, Unit unit) {
  return {{"text", exact_number(length, unit)}, {"ticks", length.ticks()}};
}

Json of(const Problems& problems) {
  Json out = Json::array();
  for (const Problem& problem : problems) {
    const std::size_t slash = problem.file.rfind('/');
    out.push_back(
        {{"severity", word_for(problem.severity)},
         {"code", problem.code},
         {"message", problem.message},
         {"file", slash == std::string::npos ? problem.file : problem.file.substr(slash + 1)},
         {"line", problem.place.line},
         {"column", problem.place.column}});
  }
  return out;
}

std::set<int> unknown_boards(const Job& job, const Stock* stock) {
  std::set<int> out;
  if (stock == nullptr) return out;
  int number = 0;
  for (const Layer& layer : job.layers) {
    ++number;
    const bool known =
        std::any_of(stock->pieces.begin(), stock->pieces.end(),
                    [&](const StockPiece& piece) { return piece.board.name == layer.board; });
    if (!known) out.insert(number);
  }
  return out;
}

Json state_of(const Laid& laid, const StateOptions& options) {
  return StateWriter(laid, options).write();
}

}  // namespace mullion::cli::page
