// Finishes that the shop keeps by name, in finishes.xml beside its other files.

#include <algorithm>
#include <filesystem>

#include "cli/page/body.h"
#include "cli/page/site.h"
#include "engine/edit/edit_json.h"
#include "engine/edit/finish.h"
#include "engine/file/file.h"
#include "engine/xml/limits.h"

namespace mullion::cli::page {
namespace {

namespace fs = std::filesystem;

Result<std::vector<edit::Finish>> finishes_in(const std::string& path) {
  std::error_code ignored;
  if (!fs::exists(path, ignored)) return std::vector<edit::Finish>{};
  const auto bytes = read_file(path, largest_job_file);
  if (!bytes) {
    return tl::unexpected(Problems{{Severity::error, "file-read", bytes.error(), {}, path}});
  }
  return edit::parse_finishes(*bytes, path);
}

// A length as the state tells it, with a unit of its own.
void add_length(edit::Attributes& to, const char* name, const Json& from, Unit unit) {
  const auto ticks = from.find("ticks");
  if (ticks == from.end() || !ticks->is_number_integer()) return;
  to.emplace_back(name, format_exact(Length::from_ticks(ticks->get<std::int64_t>()), unit));
}

void add_text(edit::Attributes& to, const char* name, const Json& from) {
  const std::string text = text_in(from, name);
  if (!text.empty()) to.emplace_back(name, text);
}

void add_yes(edit::Attributes& to, const char* name, const Json& from) {
  const auto found = from.find(name);
  if (found != from.end() && found->is_boolean() && found->get<bool>())
    to.emplace_back(name, "yes");
}

void add_reveal(edit::Attributes& to, const Json& from, Unit unit) {
  const auto reveal = from.find("reveal");
  if (reveal == from.end() || !reveal->is_object()) return;
  const auto all = reveal->find("all");
  if (all != reveal->end() && all->is_object()) return add_length(to, "reveal", *all, unit);
  for (const char* side : {"left", "top", "right", "bottom"}) {
    const auto one = reveal->find(side);
    if (one != reveal->end() && one->is_object()) {
      add_length(to, ("reveal-" + std::string(side)).c_str(), *one, unit);
    }
  }
}

edit::Attributes layer_in(const Json& json, Unit unit) {
  edit::Attributes out;
  for (const char* name : {"name", "board", "colour", "core"}) add_text(out, name, json);
  if (json.contains("ply")) out.emplace_back("ply", std::to_string(number_in(json, "ply", 4)));
  if (json.contains("thickness")) add_length(out, "thickness", json["thickness"], unit);
  add_reveal(out, json, unit);
  add_yes(out, "spacer", json);
  add_yes(out, "grain", json);
  return out;
}

edit::Finish finish_in(const Json& body, Unit unit) {
  edit::Finish out{text_in(body, "name"), {}, {}};
  for (const Json& layer : body.value("layers", Json::array())) {
    if (layer.is_object()) out.layers.push_back(layer_in(layer, unit));
  }
  const auto frame = body.find("frame");
  if (frame == body.end() || !frame->is_object()) return out;
  add_text(out.frame, "moulding", *frame);
  add_text(out.frame, "colour", *frame);
  if (frame->contains("face")) add_length(out.frame, "face", (*frame)["face"], unit);
  return out;
}

}  // namespace

std::string Site::finishes_file() const {
  for (const std::string& file :
       {options_.wishes.shop, options_.wishes.stock, options_.wishes.prices}) {
    if (!file.empty()) return (fs::path(file).parent_path() / "finishes.xml").string();
  }
  return files_.path_of("finishes.xml");
}

Answer Site::finishes(const Asked& asked) {
  const auto kept = finishes_in(finishes_file());
  if (!kept) return json({{"finishes", Json::array()}, {"problems", of(kept.error())}});
  const std::string& name = asked.request.asked("job");
  const LaidPtr laid = name.empty() ? nullptr : desk_.now(name);
  Json out = Json::array();
  for (const edit::Finish& finish : *kept) {
    Json boards = Json::array();
    for (const edit::Attributes& layer : finish.layers) {
      Json words = Json::object();
      for (const auto& [word, value] : layer) words[word] = value;
      boards.push_back(std::move(words));
    }
    out.push_back({{"name", finish.name}, {"layers", std::move(boards)}, {"edits", Json::array()}});
    if (!laid || !laid->job) continue;
    out.back()["edits"] =
        Json::parse(edit::edit_to_json(edit::taking(finish, *laid->job)))["edits"];
  }
  return json({{"finishes", std::move(out)}});
}

Answer Site::keep_finish(const Asked& asked) {
  const auto body = body_of(asked.request);
  if (!body) return body.error();
  const bool metric = options_.locale.measure() == Measure::metric;
  edit::Finish finish = finish_in(*body, metric ? Unit::millimetre : Unit::inch);
  if (finish.name.empty() || finish.name.size() > longest_line || finish.layers.empty()) {
    return refusal(422, "page-body", "expected a name of up to 200 letters, and layers");
  }
  if (const Problems faults = edit::faults_of(finish); !faults.empty()) {
    return json({{"problems", of(faults)}}, 422);
  }
  auto kept = finishes_in(finishes_file());
  if (!kept) return json({{"problems", of(kept.error())}}, 409);
  std::erase_if(*kept, [&](const edit::Finish& one) { return one.name == finish.name; });
  kept->push_back(std::move(finish));
  if (const auto written = replace_file(finishes_file(), edit::write_finishes(*kept)); !written) {
    return refusal(500, "file-write", written.error());
  }
  return finishes(asked);
}

}  // namespace mullion::cli::page
