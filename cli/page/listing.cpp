#include "cli/page/listing.h"

#include <algorithm>
#include <atomic>
#include <filesystem>
#include <thread>

#include "engine/xml/limits.h"
#include "render/proof/front.h"

namespace mullion::cli::page {
namespace {

constexpr int deepest = 4;
constexpr std::size_t most_files = 5000;
constexpr std::size_t few = 4;  // are read by one thread
constexpr std::string_view ending = ".xml";

Json card_of(const std::string& name, const Laid& laid) {
  Json out = {{"name", name}};
  const Job job = laid.job.value_or(Job{});
  const Unit unit = job.scale.unit;
  int errors = 0, warnings = 0;
  std::string first;
  for (const Problem& problem : laid.problems) {
    if (problem.severity == Severity::error && errors++ == 0) first = problem.message;
    warnings += problem.severity == Severity::warning ? 1 : 0;
  }
  out["reference"] = job.reference;
  out["title"] = job.title;
  out["customer"] = job.customer;
  out["date"] = job.date;
  out["unit"] = word_of(unit);
  out["width"] = laid.layout ? of(laid.layout->width, unit) : Json();
  out["height"] = laid.layout ? of(laid.layout->height, unit) : Json();
  out["openings"] = laid.layout ? laid.layout->openings.size() : 0;
  out["errors"] = errors;
  out["warnings"] = warnings;
  out["problem"] = first;
  return out;
}

}  // namespace

std::string outermost_element(std::string_view text) {
  std::size_t at = 0;
  while ((at = text.find('<', at)) != text.npos) {
    const std::string_view rest = text.substr(at);
    if (rest.starts_with("<!--")) {
      at = text.find("-->", at);
      if (at == text.npos) return {};
      continue;
    }
    if (rest.starts_with("<?") || rest.starts_with("<!")) {
      ++at;
      continue;
    }
    return std::string(rest.substr(1, rest.find_first_of(" \t\r\n/>", 1) - 1));
  }
  return {};
}

Listing::Card Listing::read(const Files::Listed& listed) const {
  Card card{listed.stamp, {}, {}, {}};
  auto text = files_.read(listed.name, largest_job_file);
  if (!text) return card;
  card.element = outermost_element(*text);
  if (card.element != "job") return card;
  OpenJob open;
  const std::filesystem::path folder = std::filesystem::path(listed.name).parent_path();
  const auto may_read = [&](const std::string& outline) {
    return !files_.is_outside((folder / outline).string());
  };
  const LaidPtr laid =
      lay(std::move(*text), files_.path_of(listed.name), open, {nullptr, locale_, may_read});
  card.shown = card_of(listed.name.substr(0, listed.name.size() - ending.size()), *laid);
  if (laid->mat) card.drawing = proof::thumbnail_svg(*laid->job, *laid->mat);
  return card;
}

std::vector<std::string> Listing::bring_up_to_date() {
  const std::vector<Files::Listed> listed = files_.list(ending, deepest, most_files);
  std::vector<std::string> names;
  std::vector<std::pair<const Files::Listed*, Card*>> stale;
  for (const Files::Listed& one : listed) {
    names.push_back(one.name);
    Card& card = cards_[one.name];
    if (card.stamp != one.stamp) stale.emplace_back(&one, &card);
  }
  std::atomic<std::size_t> next = 0;
  const auto read_some = [&] {
    for (std::size_t i; (i = next++) < stale.size();) *stale[i].second = read(*stale[i].first);
  };
  std::thread other;
  if (stale.size() > few) other = std::thread(read_some);
  read_some();
  if (other.joinable()) other.join();
  std::erase_if(cards_, [&](const auto& card) {
    return !std::binary_search(names.begin(), names.end(), card.first);
  });
  return names;
}

Json Listing::jobs() {
  const std::lock_guard lock(mutex_);
  Json out = Json::array();
  for (const std::string& name : bring_up_to_date()) {
    if (const Card& card = cards_[name]; card.element == "job") out.push_back(card.shown);
  }
  return {{"jobs", std::move(out)}};
}

std::string Listing::thumbnail(const std::string& name) {
  const std::lock_guard lock(mutex_);
  const std::string file = name + std::string(ending);
  const Stamp stamp = files_.stamp(file);
  if (stamp == Stamp{}) return {};
  const auto known = cards_.find(file);
  if (known == cards_.end() || known->second.stamp != stamp) cards_[file] = read({file, stamp});
  return cards_[file].drawing;
}

std::vector<std::string> Listing::files_of(std::string_view element) {
  const std::lock_guard lock(mutex_);
  std::vector<std::string> out;
  for (const std::string& name : bring_up_to_date()) {
    if (cards_[name].element == element) out.push_back(name);
  }
  return out;
}

}  // namespace mullion::cli::page
