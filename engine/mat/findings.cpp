#include "engine/mat/findings.h"

#include <algorithm>
#include <stdexcept>

#include "engine/job/standing.h"

namespace mullion {

Findings::Findings(const Job& j, const Layout& l, const Mat& m, const Locale& in)
    : job(j), layout(l), mat(m), locale(in) {
  for (const Standing& standing : standings_of(job.arrangement)) {
    places_.push_back(standing.opening->place);
  }
}

void Findings::add(std::string_view code, std::string message, Place place) {
  const auto& table = check_table();
  const auto info = std::find_if(table.begin(), table.end(),
                                 [&](const Explanation& entry) { return entry.code == code; });
  if (info == table.end()) throw std::logic_error("no check is called " + std::string(code));
  found_[static_cast<std::size_t>(info - table.begin())].push_back(
      {info->severity, std::string(code), std::move(message), place, job.file});
}

Problems Findings::take() {
  Problems out;
  for (auto& [index, problems] : found_) {
    std::move(problems.begin(), problems.end(), std::back_inserter(out));
  }
  found_.clear();
  return out;
}

std::string Findings::name(int opening) const {
  return say("opening %1 \"%2\"", opening,
             layout.openings.at(static_cast<std::size_t>(opening) - 1).id);
}

std::string Findings::name(const Window& window) const {
  if (window.openings.size() == 1) return name(window.openings.front());
  return say("the window of openings %1 to %2", window.openings.front(), window.openings.back());
}

std::string Findings::name(const MatLayer& layer) const {
  return say("layer %1 \"%2\"", layer.number, layer.board.name);
}

Place Findings::place(int opening) const {
  return places_.at(static_cast<std::size_t>(opening) - 1);
}

}  // namespace mullion
