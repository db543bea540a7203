#include "cli/page/site.h"

#include <algorithm>
#include <charconv>
#include <filesystem>

#include "cli/known_words.h"
#include "cli/page/page_files.h"
#include "cli/page/words.h"
#include "engine/explain/explain.h"
#include "engine/sheets/inventory/inventory.h"
#include "engine/xml/colour.h"
#include "render/paper/sheet_size.h"
#include "render/proof/front.h"
#include "render/proof/sheet.h"
#include "render/template/back.h"

namespace mullion::cli::page {
namespace {

namespace fs = std::filesystem;

constexpr int usual_longest = 1200, least_longest = 64, most_longest = 2400;  // pixels

int number_of(const std::string& text, int usual) {
  int number = usual;
  const auto end = std::from_chars(text.data(), text.data() + text.size(), number);
  return end.ec == std::errc() ? number : usual;
}

Reply svg(std::string text) {
  return {200, "image/svg+xml", std::move(text)};
}

}  // namespace

struct Site::Route {
  Method method;
  std::vector<std::string_view> path;  // "*": any part; "**": all that follow, with slashes
  Answer (Site::*answer)(const Asked&);
};

const std::vector<Site::Route>& Site::routes() {
  static const std::vector<Route> all = {
      {Method::get, {}, &Site::page},
      {Method::get, {"page", "**"}, &Site::page_file},
      {Method::get, {"api", "about"}, &Site::about},
      {Method::get, {"api", "jobs"}, &Site::jobs},
      {Method::post, {"api", "jobs"}, &Site::new_job},
      {Method::post, {"api", "sizes"}, &Site::sizes},
      {Method::get, {"api", "boards"}, &Site::boards},
      {Method::get, {"api", "finishes"}, &Site::finishes},
      {Method::post, {"api", "finishes"}, &Site::keep_finish},
      {Method::get, {"api", "explain", "*"}, &Site::explain},
      {Method::get, {"api", "choices"}, &Site::choices},
      {Method::get, {"api", "jobs", "*"}, &Site::job},
      {Method::get, {"api", "jobs", "*", "thumbnail.svg"}, &Site::thumbnail},
      {Method::get, {"api", "jobs", "*", "front.svg"}, &Site::front},
      {Method::get, {"api", "jobs", "*", "back.svg"}, &Site::back},
      {Method::get, {"api", "jobs", "*", "images", "**"}, &Site::image},
      {Method::post, {"api", "jobs", "*", "images"}, &Site::new_image},
      {Method::get, {"api", "jobs", "*", "outlines"}, &Site::outlines},
      {Method::post, {"api", "jobs", "*", "outlines"}, &Site::new_outline},
      {Method::post, {"api", "jobs", "*", "edits"}, &Site::edits},
      {Method::post, {"api", "jobs", "*", "previews"}, &Site::previews},
      {Method::post, {"api", "jobs", "*", "undo"}, &Site::undo},
      {Method::post, {"api", "jobs", "*", "redo"}, &Site::redo},
      {Method::get, {"api", "jobs", "*", "suggestions"}, &Site::ideas},
      {Method::post, {"api", "jobs", "*", "suggestions"}, &Site::find_ideas},
      {Method::remove, {"api", "jobs", "*", "suggestions"}, &Site::stop_ideas},
      {Method::get, {"api", "jobs", "*", "frames"}, &Site::frames},
      {Method::get, {"api", "jobs", "*", "papers", "*"}, &Site::paper},
      {Method::post, {"api", "jobs", "*", "papers"}, &Site::save_papers},
      {Method::get, {"api", "jobs", "*", "events"}, &Site::events},
  };
  return all;
}

Reply json(const Json& value, int status) {
  return {status, "application/json", dumped(value)};
}

Reply refusal(int status, const char* code, std::string message) {
  return json({{"problems", of(Problems{{Severity::error, code, std::move(message), {}, ""}})}},
              status);
}

Reply no_job(const std::string& name) {
  return refusal(404, "page-no-job", "there is no job file " + name + ".xml");
}

Site::Site(SiteOptions options)
    : options_(std::move(options)),
      files_(options_.folder),
      desk_(files_, std::nullopt, options_.locale),
      images_(files_),
      listing_(files_, options_.locale) {}

Site::~Site() = default;

void Site::listens_by(std::function<bool(const std::string&)> has_listeners, Tell tell) {
  has_listeners_ = std::move(has_listeners);
  tell_ = std::move(tell);
}

void Site::look() {
  std::erase_if(listened_, [this](const auto& job) { return !has_listeners_(job.first); });
  for (auto& [job, told] : listened_) {
    const Desk::Change change = desk_.look(job);
    if (change == Desk::Change::gone) tell_(job, "gone", Json::object());
    if (change == Desk::Change::named_files) told.clear();
    if (change != Desk::Change::text && change != Desk::Change::named_files) continue;
    if (const LaidPtr laid = desk_.now(job)) tell_changed(job, *laid);
  }
  for (const Ideas::News& news : ideas_.news()) {
    tell_(news.name, "suggestions", {{"running", news.running}, {"looked_at", news.looked_at}});
  }
}

void Site::tell_changed(const std::string& name, const Laid& laid) {
  const auto listened = listened_.find(name);
  if (listened == listened_.end() || listened->second == laid.fingerprint) return;
  listened->second = laid.fingerprint;
  tell_(name, "changed", {{"fingerprint", laid.fingerprint}});
}

Answer Site::answer(const Request& request) {
  if (auto stopped = gate_.stops(request)) return std::move(*stopped);
  bool known = false;
  for (const Route& route : routes()) {
    Asked asked{request, {}};
    std::size_t i = 0;
    bool fits = true, rest = false;
    for (const std::string_view part : route.path) {
      if (part == "**") {
        rest = i < request.path.size();
        std::string all;
        for (; i < request.path.size(); ++i) all += (all.empty() ? "" : "/") + request.path[i];
        asked.parts.push_back(std::move(all));
        fits = rest;
        break;
      }
      if (i >= request.path.size() || (part != "*" && part != request.path[i])) {
        fits = false;
        break;
      }
      if (part == "*") asked.parts.push_back(request.path[i]);
      ++i;
    }
    if (!fits || i != request.path.size()) continue;
    known = true;
    const bool same_method =
        route.method == request.method || (route.method == Method::get && request.reads());
    if (same_method) return (this->*route.answer)(asked);
  }
  if (known) return refusal(405, "page-method", "this address is not asked in that way");
  return refusal(404, "page-address", "there is no such address");
}

// --- the page itself -----------------------------------------------------------------------------

Answer Site::page(const Asked&) {
  return Reply{200, type_of("index.html"), std::string(page::page_file("index.html"))};
}

Answer Site::page_file(const Asked& asked) {
  const std::string& name = asked.name();
  if (name == "words.json") {
    const std::string& wanted = asked.request.asked("language");
    const Locale locale =
        wanted.empty() ? options_.locale : Locale::find(wanted).value_or(Locale());
    Json words = Json::object();
    for (const char* word : page_words()) words[word] = locale.say(word);
    return json(words);
  }
  const std::string_view text = page::page_file(name);
  if (text.empty()) return refusal(404, "page-address", "there is no such address");
  return Reply{200, type_of(name), std::string(text)};
}

Answer Site::about(const Asked&) {
  Json languages = Json::array();
  for (const std::string_view language : Locale::languages()) languages.push_back(language);
  Json papers_known = Json::array();
  for (const paper::SheetSize& size : paper::sheet_sizes()) papers_known.push_back(size.name);
  Json out = {{"version", MULLION_VERSION},
              {"folder", fs::path(options_.folder).filename().string()},
              {"languages", std::move(languages)},
              {"language", options_.locale.tag()},
              {"single", options_.single.empty() ? Json() : Json(options_.single)},
              {"unit", options_.locale.measure() == Measure::metric ? "mm" : "in"},
              {"papers", std::move(papers_known)},
              {"cutters", cutter_names()},
              {"printers", Json::array()},
              {"shop", !options_.wishes.shop.empty()},
              {"prices", !options_.wishes.prices.empty()},
              {"stock", !options_.wishes.stock.empty()},
              {"finishes", true}};
  return Later{[this, out = std::move(out)](Halt&) mutable {
    for (const std::string& file : listing_.files_of("cutter")) out["cutters"].push_back(file);
    for (const std::string& file : listing_.files_of("printer")) out["printers"].push_back(file);
    return json(out);
  }};
}

Answer Site::explain(const Asked& asked) {
  const Explanation* entry = explanation_of(asked.name());
  if (entry == nullptr) return refusal(404, "page-code", "there is no such code");
  const auto said = [this](std::string_view text) {
    return options_.locale.say(std::string(text).c_str());
  };
  return json({{"code", asked.name()},
               {"severity", word_for(entry->severity)},
               {"summary", said(entry->summary)},
               {"reason", said(entry->reason)},
               {"advice", said(entry->advice)}});
}

const Stock* Site::stock() {
  const std::string& path = options_.wishes.stock;
  if (path.empty()) return nullptr;
  const Stamp stamp = stamp_of_path(path);
  if (stamp != stock_stamp_) {
    auto read = read_stock(path);
    if (read) {
      stock_ = std::move(*read);
    } else {
      stock_.reset();
    }
    stock_stamp_ = stamp;
  }
  return stock_ ? &*stock_ : nullptr;
}

Answer Site::boards(const Asked&) {
  Json boards = Json::array();
  const Stock* known = stock();
  std::vector<Board> seen;
  for (std::size_t i = 0; known != nullptr && i < known->pieces.size(); ++i) {
    const Board& board = known->pieces[i].board;
    if (std::find(seen.begin(), seen.end(), board) == seen.end()) seen.push_back(board);
  }
  std::sort(seen.begin(), seen.end());
  for (const Board& board : seen) {
    boards.push_back({{"name", board.name},
                      {"colour", format_colour(board.colour)},
                      {"core", nullptr},
                      {"thickness", of(board.thickness, known->unit)},
                      {"unit", word_of(known->unit)},
                      {"supplier", ""}});
  }
  return json(
      {{"boards", std::move(boards)},
       {"from",
        known == nullptr ? Json() : Json(fs::path(options_.wishes.stock).filename().string())}});
}

// --- jobs ----------------------------------------------------------------------------------------

Answer Site::jobs(const Asked&) {
  return Later{[this](Halt&) { return json(listing_.jobs()); }};
}

Answer Site::thumbnail(const Asked& asked) {
  return Later{[this, name = asked.name()](Halt&) {
    std::string drawing = listing_.thumbnail(name);
    if (drawing.empty()) return refusal(404, "page-no-drawing", "there is no drawing of the job");
    return svg(std::move(drawing));
  }};
}

LaidPtr Site::found(const Asked& asked, std::string_view fingerprint) {
  if (!fingerprint.empty()) {
    if (LaidPtr laid = desk_.lately(asked.name(), std::string(fingerprint))) return laid;
  }
  LaidPtr laid = desk_.now(asked.name());
  if (!laid || fingerprint.empty() || laid->fingerprint == fingerprint) return laid;
  return nullptr;
}

Answer Site::job(const Asked& asked) {
  const LaidPtr laid = desk_.now(asked.name());
  if (!laid) return no_job(asked.name());
  return json(state(asked.name(), *laid, false, asked.request.asked("draw"),
                    number_of(asked.request.asked("layer"), 1)));
}

Json Site::state(const std::string& name, const Laid& laid, bool preview, std::string_view side,
                 int layer) {
  StateOptions options{name, preview, false, false, stock(), options_.locale};
  LaidPtr closed;
  if (const edit::EditedFile* file = edited(name)) {
    options.can_undo = file->history().can_undo();
    options.can_redo = file->history().can_redo();
    if (!laid.mat) closed = desk_.last_closed(name, file->history());
    options.closed = closed.get();
  }
  Json out = state_of(laid, options);
  if (side.empty()) return out;
  out["drawing"] = nullptr;
  if (laid.mat) out["drawing"] = drawing(name, laid, side, layer);
  if (!laid.mat && closed) {
    out["drawing"] = drawing(name, *closed, side, layer);
    out["drawing"]["stale"] = true;
  }
  return out;
}

Json Site::drawing(const std::string& name, const Laid& laid, std::string_view side, int layer) {
  if (side != "back") {
    return {{"stale", false}, {"side", "front"}, {"layer", nullptr}, {"svg", front_of(name, laid)}};
  }
  layer = std::clamp(layer, 1, static_cast<int>(laid.mat->layers.size()));
  return {{"stale", false}, {"side", "back"}, {"layer", layer}, {"svg", back_of(laid, layer)}};
}

std::string Site::back_of(const Laid& laid, int layer) const {
  return back_svg(*laid.job, *laid.cuts, layer, options_.locale);
}

std::string Site::front_of(const std::string& name, const Laid& laid) {
  proof::FrontStyle style;
  style.unknown_boards = unknown_boards(*laid.job, stock());
  style.picture = [&](const Picture& picture) -> proof::FrontPicture {
    const auto file = image_file(name, picture.image);
    if (!file) return {};
    const auto header = images_.header(*file);
    if (!header) return {};
    return {"/api/jobs/" + percent_encoded(name) + "/images/" + percent_encoded(picture.image) +
                "?v=" + text_of(files_.stamp(*file)),
            *header};
  };
  return proof::front_svg(*laid.job, *laid.mat, style);
}

Answer Site::front(const Asked& asked) {
  const LaidPtr laid = found(asked, asked.request.asked("fp"));
  if (!laid) return refusal(404, "page-no-job", "there is no such job, or no longer this state");
  if (!laid->mat) return refusal(404, "page-no-drawing", "the job cannot be laid out");
  return svg(front_of(asked.name(), *laid));
}

Answer Site::back(const Asked& asked) {
  const LaidPtr laid = found(asked, asked.request.asked("fp"));
  if (!laid) return refusal(404, "page-no-job", "there is no such job, or no longer this state");
  if (!laid->mat) return refusal(404, "page-no-drawing", "the job cannot be laid out");
  const int layer = number_of(asked.request.asked("layer"), 1);
  if (layer < 1 || layer > static_cast<int>(laid->mat->layers.size())) {
    return refusal(404, "page-no-drawing", "the job has no such layer");
  }
  return svg(back_of(*laid, layer));
}

// Below the opened folder; nothing where the job names none.
std::optional<std::string> Site::image_file(const std::string& job,
                                            const std::string& image) const {
  if (image.empty()) return std::nullopt;
  return (fs::path(job).parent_path() / image).string();
}

// Only what the job names is shown.
Answer Site::image(const Asked& asked) {
  const LaidPtr laid = desk_.now(asked.name());
  const std::string& image = asked.parts[1];
  const bool named = laid && laid->job &&
                     std::any_of(laid->job->pictures.begin(), laid->job->pictures.end(),
                                 [&](const Picture& picture) { return picture.image == image; });
  if (!named) return refusal(404, "page-no-picture", "the job has no such picture");
  const int longest = std::clamp(number_of(asked.request.asked("longest"), usual_longest),
                                 least_longest, most_longest);
  return Later{[this, file = *image_file(asked.name(), image), longest](Halt&) -> Reply {
    auto copy = images_.copy(file, longest);
    if (!copy) return refusal(404, "page-no-picture", copy.error());
    return {200, copy->type, std::move(copy->bytes)};
  }};
}

Answer Site::events(const Asked& asked) {
  const LaidPtr laid = desk_.now(asked.name());
  if (!laid) return no_job(asked.name());
  desk_.look(asked.name());  // what changes from now on is told
  listened_[asked.name()] = laid->fingerprint;
  return Stream{asked.name()};
}

Answer Site::choices(const Asked& asked) {
  const std::string& list = asked.request.asked("jobs");
  Json out = Json::array();
  for (std::size_t at = 0; at <= list.size() && !list.empty();) {
    const std::size_t end = std::min(list.find(',', at), list.size());
    const std::string name = list.substr(at, end - at);
    const LaidPtr laid = desk_.now(name);
    if (!laid) return no_job(name);
    if (out.size() == proof::most_choices) {
      return refusal(400, "page-choices", "found more than six versions; six stand side by side");
    }
    out.push_back({{"name", name},
                   {"letter", proof::letter_of(out.size())},
                   {"title", laid->job ? laid->job->title : ""},
                   {"fp", laid->fingerprint}});
    at = end + 1;
  }
  return json({{"choices", std::move(out)}});
}

}  // namespace mullion::cli::page
