#include "cli/page/ideas.h"

#include <algorithm>
#include <mutex>
#include <thread>

#include "cli/page/child.h"
#include "cli/page/papers.h"
#include "cli/page/passing_folder.h"
#include "cli/verb.h"
#include "engine/edit/edit_json.h"
#include "engine/file/file.h"
#include "engine/job/read.h"
#include "engine/xml/limits.h"
#include "render/proof/front.h"

namespace mullion::cli::page {
namespace {

constexpr std::size_t most_searches = 8;  // kept, running or not

// What the job states of its borders is kept: the outer size then follows from them.
edit::Edit taking_within_borders(const Job& job, const Job& suggestion) {
  edit::Edit taking = edit::taking(job, suggestion);
  auto* several = std::get_if<edit::Several>(&taking);
  if (several == nullptr) return taking;
  const Borders& borders = job.borders;
  const bool across = borders.left && borders.right && !job.outer_width;
  const bool down = borders.top && borders.bottom_size && !job.outer_height;
  std::erase_if(several->edits, [&](const edit::Edit& one) {
    const auto* state = std::get_if<edit::State>(&one);
    return state != nullptr &&
           ((across && state->name == "outer.width") || (down && state->name == "outer.height"));
  });
  return taking;
}

// Nothing where the edit cannot be made or what comes out cannot be laid out.
std::optional<Json> offered(const Laid& laid, const Job& suggestion, std::size_t number) {
  const edit::Edit taking = taking_within_borders(*laid.job, suggestion);
  const auto text = edit::apply(laid.text, taking, laid.job->file);
  if (!text) return std::nullopt;
  OpenJob open;
  const LaidPtr taken = lay(text->text, laid.job->file, open, {});
  if (!taken->mat) return std::nullopt;
  const Unit unit = taken->job->scale.unit;
  const Layout& layout = *taken->layout;
  Json edits = Json::parse(edit::edit_to_json(taking));
  return Json{{"number", number},
              {"width", of(layout.width, unit)},
              {"height", of(layout.height, unit)},
              {"words", exact_number(layout.width, unit) + " x " +
                            exact_number(layout.height, unit) + " " + word_of(unit)},
              {"svg", proof::thumbnail_svg(*taken->job, *taken->mat)},
              {"edits", edits.at("kind") == "several" ? edits.at("edits") : Json::array({edits})}};
}

}  // namespace

struct Ideas::Search {
  Halt halt;
  std::thread thread;
  mutable std::mutex mutex;
  bool running = true, every_one = false;
  std::uint64_t looked_at = 0, version = 1, told = 0;
  Json suggestions = Json::array();
  Problems problems;

  ~Search() {
    halt.now();
    if (thread.joinable()) thread.join();
  }

  // "looked at 120 of 4000"
  void hear(std::string_view line) {
    constexpr std::string_view beginning = "looked at ";
    if (!line.starts_with(beginning)) return;
    const std::lock_guard lock(mutex);
    looked_at = std::strtoull(std::string(line.substr(beginning.size())).c_str(), nullptr, 10);
    ++version;
  }

  void search(const std::string& path, const LaidPtr& laid, int most, const std::string& sizes) {
    const PassingFolder passing;
    const std::string jobs = passing.path() + "/idea";
    std::vector<std::string> words{"suggest", path, "--json",  "--progress",
                                   "--jobs",  jobs, "--count", std::to_string(most)};
    if (!sizes.empty()) words.insert(words.end(), {"--sizes", sizes});
    const Ended ended = run_again(words, halt, [this](std::string_view line) { hear(line); });
    std::uint64_t looked = 0;
    bool every = false;
    Problems wrong;
    const Json found = Json::parse(ended.output, nullptr, false);
    if (found.is_object()) {
      looked = found.value("arrangements_looked_at", std::uint64_t{0});
      every = found.value("every_one", false);
      for (const Json& problem : found.value("problems", Json::array())) {
        wrong.push_back(
            {Severity::error, problem.value("code", ""), problem.value("message", ""), {}, ""});
      }
    }
    Json offers = Json::array();
    for (int i = 1; ended.status == success && i <= most && !halt.is_asked(); ++i) {
      const auto bytes = read_file(jobs + "-" + std::to_string(i) + ".xml", largest_job_file);
      if (!bytes) break;
      const Result<Job> suggestion = parse_job(*bytes, laid->job->file);
      if (!suggestion) continue;
      if (auto offer = offered(*laid, *suggestion, offers.size() + 1)) {
        offers.push_back(std::move(*offer));
      }
    }
    const std::lock_guard lock(mutex);
    running = false;
    ++version;
    suggestions = std::move(offers);
    every_one = every;
    if (looked > 0) looked_at = looked;
    if (ended.status != success && !halt.is_asked()) problems = std::move(wrong);
  }
};

Ideas::Ideas() = default;
Ideas::~Ideas() = default;

bool Ideas::begin(const std::string& name, const std::string& path, const LaidPtr& laid, int most,
                  const std::string& sizes) {
  searches_.erase(name);
  if (searches_.size() >= most_searches) {
    const auto ended = std::find_if(searches_.begin(), searches_.end(), [](const auto& one) {
      const std::lock_guard lock(one.second->mutex);
      return !one.second->running;
    });
    if (ended == searches_.end()) return false;
    searches_.erase(ended);
  }
  auto& search = searches_[name] = std::make_unique<Search>();
  search->thread = std::thread(
      [one = search.get(), path, laid, most, sizes] { one->search(path, laid, most, sizes); });
  return true;
}

void Ideas::stop(const std::string& name) {
  const auto found = searches_.find(name);
  if (found != searches_.end()) found->second->halt.now();
}

Json Ideas::told(const std::string& name) const {
  const auto found = searches_.find(name);
  if (found == searches_.end()) {
    return {{"running", false},
            {"looked_at", 0},
            {"every_one", false},
            {"suggestions", Json::array()},
            {"problems", Json::array()}};
  }
  const Search& search = *found->second;
  const std::lock_guard lock(search.mutex);
  return {{"running", search.running},
          {"looked_at", search.looked_at},
          {"every_one", search.every_one},
          {"suggestions", search.suggestions},
          {"problems", of(search.problems)}};
}

std::vector<Ideas::News> Ideas::news() {
  std::vector<News> out;
  for (auto& [name, search] : searches_) {
    const std::lock_guard lock(search->mutex);
    if (search->told == search->version) continue;
    search->told = search->version;
    out.push_back({name, search->running, search->looked_at});
  }
  return out;
}

}  // namespace mullion::cli::page
