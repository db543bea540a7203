#include "render/proof/reveals.h"

#include <algorithm>
#include <array>

#include "engine/job/layer_name.h"
#include "engine/job/standing.h"
#include "render/proof/sizes.h"

namespace mullion::proof {
namespace {

constexpr std::array<const char*, 4> side_words{mark("left"), mark("top"), mark("right"),
                                                mark("bottom")};  // in the order of every_side

struct Shown {
  Sides reveal;
  std::vector<int> openings;
};

bool shows(const MatLayer& layer, int opening) {
  return std::any_of(layer.windows.begin(), layer.windows.end(),
                     [&](const Window& window) { return window.seen && serves(window, opening); });
}

// Alike reveals together, in the order of their first openings.
std::vector<Shown> reveals_in(const Piece& piece, const MatLayer& layer) {
  std::vector<Shown> out;
  int number = 0;
  for (const Standing& standing : standings_of(piece.job->arrangement)) {
    ++number;
    if (!shows(layer, number)) continue;
    const Sides reveal = reveal_of(*piece.job, *standing.opening, layer.number);
    auto same = std::find_if(out.begin(), out.end(),
                             [&](const Shown& shown) { return shown.reveal == reveal; });
    if (same == out.end()) same = out.insert(out.end(), {reveal, {}});
    same->openings.push_back(number);
  }
  return out;
}

// The one that most sides have; of those the upper side's, then the left one's.
Length usual(const Sides& reveal) {
  Length most;
  std::ptrdiff_t count = 0;
  for (const Length length : {reveal.top, reveal.left, reveal.right, reveal.bottom}) {
    const auto same = std::count_if(every_side.begin(), every_side.end(),
                                    [&](auto side) { return reveal.*side == length; });
    if (same <= count) continue;
    count = same;
    most = length;
  }
  return most;
}

void add_facts(std::vector<SizeFact>& facts, const std::string& label, const Sides& reveal,
               const Scale& scale, const Locale& locale) {
  const Length most = usual(reveal);
  facts.push_back(fact(label, length_text(most, scale, locale)));
  for (std::size_t side = 0; side < every_side.size(); ++side) {
    const Length length = reveal.*every_side[side];
    if (length == most) continue;
    facts.push_back(
        fact(label + ", " + locale.say(side_words[side]), length_text(length, scale, locale)));
  }
}

}  // namespace

std::vector<SizeFact> reveal_facts(const Piece& piece, const Locale& locale) {
  std::vector<SizeFact> facts;
  for (const MatLayer& layer : piece.mat->layers) {
    if (layer.number == 1 || layer.board.spacer) continue;
    const std::string& name = layer.board.name;
    const std::string label = locale.say(
        "Reveal, %1", name.empty() ? layer.board.board : name_on_paper(name, layer.number, locale));
    const std::vector<Shown> shown = reveals_in(piece, layer);
    for (const Shown& part : shown) {
      std::string where;
      if (shown.size() > 1) {
        where =
            ", " + locale.say(part.openings.size() > 1 ? mark("openings %1") : mark("opening %1"),
                              ranges(part.openings));
      }
      add_facts(facts, label + where, part.reveal, piece.job->scale, locale);
    }
  }
  return facts;
}

}  // namespace mullion::proof
