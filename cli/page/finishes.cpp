// Finishes that the shop keeps by name, in its own file.

#include "cli/page/body.h"
#include "cli/page/site.h"
#include "engine/edit/edit_json.h"
#include "engine/edit/finish.h"
#include "engine/file/file.h"
#include "engine/file/input.h"
#include "engine/xml/limits.h"

namespace mullion::cli::page {
namespace {

// A length as the state tells it.
void add_length(Finish::Words& to, const char* name, const Json& from, Unit unit) {
  const auto ticks = from.find("ticks");
  if (ticks == from.end() || !ticks->is_number_integer()) return;
  to.emplace_back(name, exact_number(Length::from_ticks(ticks->get<std::int64_t>()), unit));
}

void add_text(Finish::Words& to, const char* name, const Json& from) {
  const std::string text = text_in(from, name);
  if (!text.empty()) to.emplace_back(name, text);
}

void add_yes(Finish::Words& to, const char* name, const Json& from) {
  const auto found = from.find(name);
  if (found != from.end() && found->is_boolean() && found->get<bool>())
    to.emplace_back(name, "yes");
}

void add_reveal(Finish::Words& to, const Json& from, Unit unit) {
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

Finish::Words layer_in(const Json& json, Unit unit) {
  Finish::Words out;
  for (const char* name : {"name", "board", "colour", "core"}) add_text(out, name, json);
  if (json.contains("ply")) out.emplace_back("ply", std::to_string(number_in(json, "ply", 4)));
  if (json.contains("thickness")) add_length(out, "thickness", json["thickness"], unit);
  add_reveal(out, json, unit);
  add_yes(out, "spacer", json);
  add_yes(out, "grain", json);
  return out;
}

Finish finish_in(const Json& body, Unit unit) {
  Finish out{text_in(body, "name"), unit, {}, {}, {}};
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

// Where the shop's file stands or would stand.
std::string Site::shop_file() const {
  return options_.wishes.shop.empty() ? files_.path_of("shop.xml") : options_.wishes.shop;
}

Answer Site::finishes(const Asked& asked) {
  Json out = Json::array();
  if (stamp_of_path(shop_file()) == Stamp{}) {
    return json({{"finishes", std::move(out)}, {"shop", nullptr}});
  }
  const auto shop = read_shop(shop_file());
  if (!shop) return json({{"finishes", std::move(out)}, {"problems", of(shop.error())}});
  const std::string& name = asked.request.asked("job");
  const LaidPtr laid = name.empty() ? nullptr : desk_.now(name);
  for (const Finish& finish : shop->finishes) {
    Json boards = Json::array();
    for (const Finish::Words& layer : finish.layers) {
      Json words = Json::object();
      for (const auto& [word, value] : layer) words[word] = value;
      boards.push_back(std::move(words));
    }
    out.push_back({{"name", finish.name}, {"layers", std::move(boards)}, {"edits", Json::array()}});
    if (!laid || !laid->job) continue;
    out.back()["edits"] =
        Json::parse(edit::edit_to_json(edit::taking(finish, *laid->job)))["edits"];
  }
  return json({{"finishes", std::move(out)}, {"shop", shop->name}});
}

Answer Site::keep_finish(const Asked& asked) {
  const auto body = body_of(asked.request);
  if (!body) return body.error();
  const bool metric = options_.locale.measure() == Measure::metric;
  const Finish finish = finish_in(*body, metric ? Unit::millimetre : Unit::inch);
  const std::string path = shop_file(), shop_name = text_in(*body, "shop");
  std::string shop = edit::new_shop(shop_name);
  if (stamp_of_path(path) != Stamp{}) {
    auto read = read_input(path, largest_job_file);
    if (!read) return json({{"problems", of(read.error())}}, 500);
    shop = std::move(*read);
  } else if (shop_name.empty()) {
    return refusal(409, "page-no-shop",
                   options_.locale.say("there is no shop file yet that finishes are kept in; say "
                                       "the shop's name, and one is begun"));
  }
  if (const auto before = parse_shop(shop, path); !before) {
    return json({{"problems", of(before.error())}}, 409);
  }
  const auto kept = edit::keeping(finish, shop, path);
  if (!kept) return json({{"problems", of(kept.error())}}, 422);
  if (const auto written = replace_file(path, kept->text); !written) {
    return refusal(500, "file-write", written.error());
  }
  options_.wishes.shop = path;
  return finishes(asked);
}

}  // namespace mullion::cli::page
