// What takes its time: work for other threads and child processes.

#include <algorithm>
#include <filesystem>
#include <stdexcept>

#include "cli/page/site.h"
#include "engine/edit/edit_json.h"
#include "engine/edit/frame.h"
#include "engine/job/read.h"
#include "engine/shop/stock_sizes.h"
#include "engine/shop/wished_borders.h"

namespace mullion::cli::page {

namespace {

namespace fs = std::filesystem;

constexpr std::size_t most_frames = 8;
constexpr int usual_ideas = 6, most_ideas = 24;

Json frames_of(const Job& job, const std::vector<FrameFit>& fits) {
  const Unit unit = job.scale.unit;
  Json frames = Json::array();
  for (const FrameFit& fit : fits) {
    const edit::Rabbet rabbet = edit::rabbet_of(fit, job);
    frames.push_back(
        {{"width", of(fit.width, unit)},
         {"height", of(fit.height, unit)},
         {"borders",
          {{"left", of(fit.borders.left, unit)},
           {"top", of(fit.borders.top, unit)},
           {"right", of(fit.borders.right, unit)},
           {"bottom", of(fit.borders.bottom, unit)}}},
         {"rabbet", {{"width", of(rabbet.width, unit)}, {"height", of(rabbet.height, unit)}}},
         {"edits", Json::parse(edit::edit_to_json(edit::taking(fit, job)))["edits"]}});
  }
  return frames;
}

}  // namespace

Answer Site::find_ideas(const Asked& asked) {
  const LaidPtr laid = desk_.now(asked.name());
  if (!laid) return no_job(asked.name());
  if (!laid->job) return json({{"problems", of(laid->problems)}}, 422);
  const Json body = Json::parse(asked.request.body, nullptr, false);
  const int most = body.is_object() && body.contains("most") && body["most"].is_number_integer()
                       ? std::clamp(body["most"].get<int>(), 1, most_ideas)
                       : usual_ideas;
  const std::string path = files_.path_of(Desk::file_of(asked.name()));
  if (ideas_.begin(asked.name(), path, laid, most, options_.sizes)) {
    return json(ideas_.told(asked.name()), 202);
  }
  return refusal(503, "page-busy", "too many searches run; stop one of them");
}

Answer Site::ideas(const Asked& asked) {
  return json(ideas_.told(asked.name()));
}

Answer Site::stop_ideas(const Asked& asked) {
  ideas_.stop(asked.name());
  return json(ideas_.told(asked.name()));
}

Answer Site::frames(const Asked& asked) {
  const LaidPtr laid = desk_.now(asked.name());
  if (!laid) return no_job(asked.name());
  if (!laid->job) return json({{"problems", of(laid->problems)}}, 422);
  return Later{[laid, sizes = options_.sizes](Halt&) {
    const Job& job = *laid->job;
    std::vector<StockSize> known = common_frame_sizes(job.scale.unit);
    if (!sizes.empty()) {
      auto own = read_frame_sizes(sizes);
      if (!own) return json({{"problems", of(own.error())}}, 422);
      known = std::move(*own);
    }
    const auto fits = fitting_frames(job, known, wished_borders(job), most_frames);
    if (!fits) return json({{"frames", Json::array()}, {"problems", of(fits.error())}});
    return json({{"frames", frames_of(job, *fits)}});
  }};
}

PaperWishes Site::wishes_of(const Asked& asked) const {
  PaperWishes wishes = options_.wishes;
  const Request& request = asked.request;
  if (const std::string& paper = request.asked("paper"); !paper.empty()) wishes.paper = paper;
  if (const std::string& language = request.asked("language"); !language.empty()) {
    wishes.language = language;
  }
  // A profile is a generic one's name, or a file below the opened folder.
  const auto profile = [&](const char* name, std::string& wish) {
    const std::string& asked_for = request.asked(name);
    if (asked_for.empty()) return;
    wish = asked_for.ends_with(".xml") && files_.leads_inside(asked_for)
               ? files_.path_of(asked_for)
               : asked_for.substr(0, asked_for.find('/'));
  };
  profile("cutter", wishes.cutter);
  profile("printer", wishes.printer);
  if (request.asked("prices") == "no") wishes.prices.clear();
  if (request.asked("shop") == "no") wishes.shop.clear();
  return wishes;
}

// Nothing where each file that the job names lies below the opened folder.
std::optional<Reply> Site::leads_out(const std::string& name, const Laid& laid) const {
  for (const std::string& file : Desk::named_files(name, laid)) {
    if (files_.is_outside(file)) {
      return refusal(403, "page-outside", file + " leads out of the opened folder");
    }
  }
  return std::nullopt;
}

Answer Site::paper(const Asked& asked) {
  const Paper* kind = paper_called(asked.parts[1]);
  if (kind == nullptr) return refusal(404, "page-paper", "there is no such paper");
  const LaidPtr laid = desk_.now(asked.name());
  if (!laid) return no_job(asked.name());
  if (auto out = leads_out(asked.name(), *laid)) return std::move(*out);
  const PaperWishes wishes = wishes_of(asked);
  if (kind->name == "estimate.txt" && wishes.prices.empty()) {
    return refusal(422, "page-no-prices", "there is no price book; put prices.xml beside the jobs");
  }
  return Later{[kind, wishes, job = files_.path_of(Desk::file_of(asked.name()))](Halt& halt) {
    MadePaper made = make_paper(*kind, job, wishes, halt);
    if (!made.bytes) return json({{"problems", of(made.problems)}}, 422);
    Reply reply{200, kind->type, std::move(*made.bytes)};
    if (kind->type.starts_with("text/html")) {
      reply.headers.emplace_back("Content-Security-Policy", document_policy);
    }
    if (!kind->is_document) {
      reply.headers.emplace_back("Content-Disposition",
                                 "attachment; filename=\"" + kind->name + "\"");
    }
    return reply;
  }};
}

Answer Site::save_papers(const Asked& asked) {
  const LaidPtr laid = desk_.now(asked.name());
  if (!laid) return no_job(asked.name());
  if (auto out = leads_out(asked.name(), *laid)) return std::move(*out);
  const Json body = Json::parse(asked.request.body, nullptr, false);
  if (!body.is_object() || !body.contains("kinds") || !body["kinds"].is_array()) {
    return refusal(400, "page-body", "expected {\"kinds\": [...]}");
  }
  std::vector<const Paper*> kinds;
  for (const Json& one : body["kinds"]) {
    const Paper* kind = one.is_string() ? paper_called(one.get<std::string>()) : nullptr;
    if (kind == nullptr) return refusal(404, "page-paper", "there is no such paper: " + one.dump());
    kinds.push_back(kind);
  }
  Request with_options = asked.request;
  for (const char* name : {"paper", "printer", "cutter", "prices", "shop", "language"}) {
    if (body.contains(name) && body[name].is_string()) {
      with_options.query[name] = body[name].get<std::string>();
    }
  }
  const PaperWishes wishes = wishes_of({with_options, asked.parts});
  return Later{[this, kinds, wishes, name = asked.name()](Halt& halt) {
    Json saved = Json::array();
    Problems problems;
    for (const Paper* kind : kinds) {
      MadePaper made = make_paper(*kind, files_.path_of(Desk::file_of(name)), wishes, halt);
      if (!made.bytes) {
        problems.insert(problems.end(), made.problems.begin(), made.problems.end());
        continue;
      }
      const std::string file = name + "-" + kind->name;
      const auto written = files_.replace(file, *made.bytes);
      if (written) {
        saved.push_back(fs::path(file).filename().string());
      } else {
        problems.push_back({Severity::error, "file-write", written.error(), {}, file});
      }
    }
    return json({{"saved", std::move(saved)}, {"problems", of(problems)}},
                problems.empty() ? 200 : 422);
  }};
}

}  // namespace mullion::cli::page
