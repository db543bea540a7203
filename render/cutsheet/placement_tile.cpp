#include "render/cutsheet/placement_tile.h"

#include <algorithm>

#include "engine/cuts/sheet/words.h"
#include "render/paper/drawing.h"

namespace mullion::cutsheet {
namespace {

using paper::Box;
using paper::Drawing;
using paper::Spot;
using paper::TextStyle;

// A diagram takes what height its row leaves, up to so many times its usual one.
constexpr double stretched = 1.3;
// A cut's name is set smaller, down to this, before it is broken.
constexpr double least_name = 0.85;

// One tick and the lines of its text.
struct Entry {
  std::vector<std::string> lines;
  double room = 0;
};

double entries_height(const std::vector<Entry>& entries, const Look& look) {
  double height = 0;
  for (const Entry& entry : entries) {
    height += look.text() * line_spacing * static_cast<double>(entry.lines.size()) + 1;
  }
  return height;
}

void draw_entries(Drawing& page, const std::vector<Entry>& entries, const Look& look, Spot at) {
  for (const Entry& entry : entries) {
    tick_box(page, {at.x, at.y + look.text() * 0.15}, look.text() * 0.95);
    for (const std::string& line : entry.lines) {
      draw_fitted(page, line, {at.x + look.text() * 1.6, at.y + look.text()}, entry.room,
                  {.size = look.text()});
      at.y += look.text() * line_spacing;
    }
    at.y += 1;
  }
}

Entry entry_of(const std::string& first, const std::string& more, const Look& look, double width) {
  const double room = width - tile_gap - look.text() * 1.6;
  Entry entry{paper::lines_of(first, room / least_name, {.size = look.text()}), room};
  if (more.empty()) return entry;
  for (std::string& line : paper::lines_of(more, room, {.size = look.text()})) {
    entry.lines.push_back(std::move(line));
  }
  return entry;
}

// The opening is not named where there is one alone.
Entry cut_entry(const BoardPicture& board, const BevelCut& cut, const Look& look, double width) {
  const ToldPlan& plan = board.plan;
  const Stage& stage = board.stage;
  std::string more = brief_ends_text(plan, stage, cut);
  if (cut.pencil > 0 && lines_are_named(plan, stage)) {
    more = plan.locale.say("on line %1", cut.pencil) + (more.empty() ? "" : ", ") + more;
  }
  const std::string opening =
      board.openings.empty() ? "" : openings_text(cut.openings, plan.locale) + ", ";
  return entry_of(
      std::to_string(cut.number) + "  " + opening + plan.locale.say(front_name(cut.kept)), more,
      look, width);
}

// The distances of freehand lines from the edge at the guide's side.
std::string freehand_distances(const ToldPlan& plan, const Placement& placement) {
  std::string out;
  std::optional<Length> last;
  for (const BevelCut& cut : placement.cuts) {
    if (cut.pencil == 0 || last == cut.distance) continue;
    last = cut.distance;
    out += (out.empty() ? "" : ", ") + distance_text(plan, cut.distance);
  }
  if (out.empty()) return "";
  return plan.locale.say("%1 from %2", out, std::string(1, letter(placement.edge)));
}

// From the placement before; where there are several mats, every blank is taken up first.
std::string turn_words(const ToldPlan& plan, const Placement& placement, bool first) {
  const Locale& locale = plan.locale;
  const std::string turn = turn_text(placement.turns, locale);
  if (plan.quantity == 1) return turn;
  return first ? locale.say("take up every blank") : locale.say("then %1", turn);
}

Tile placement_tile(const BoardPicture& board, const Placement& placement, const std::string& turn,
                    const Look& look, double width) {
  const ToldPlan& plan = board.plan;
  const double inner = width - tile_gap;
  std::vector<Entry> entries;
  for (const BevelCut& cut : placement.cuts) {
    entries.push_back(cut_entry(board, cut, look, width));
  }
  const std::string distances = freehand_distances(plan, placement);
  std::vector<std::string> freehand;
  if (!distances.empty()) freehand = paper::lines_of(distances, inner, tile_heading(look));
  const std::string heading =
      plan.locale.say(freehand.empty() ? mark("Edge %1 at the guide") : mark("Edge %1, freehand"),
                      std::string(1, letter(placement.edge)));
  const double line = look.text() * line_spacing;
  const double diagram = look.diagram() * (board.stage.same_order ? look.again : 1.0);
  const double top = look.text() * 2.5;
  Tile tile;
  const double height = top + diagram + line * static_cast<double>(freehand.size()) +
                        entries_height(entries, look) + 2;
  tile.height = height;
  tile.draw = [=, &board, &placement](Drawing& page, const Box& box) {
    draw_fitted(page, heading, {box.x, box.y + look.text() * 1.05}, inner, tile_heading(look));
    draw_fitted(page, turn, {box.x, box.y + look.text() * 2.25}, inner, {.size = look.text()});
    const double room = box.height - height;
    const double tall = std::clamp(diagram + room, diagram, look.diagram() * stretched);
    draw_board_as_it_lies(page, board, placement, {box.x, box.y + top, inner, tall});
    double y = box.y + top + tall;
    for (const std::string& words : freehand) {
      y += line;
      page.text(words, {box.x, y - look.text() * 0.2}, tile_heading(look));
    }
    draw_entries(page, entries, look, {box.x, y + 2});
  };
  return tile;
}

}  // namespace

std::vector<Tile> placement_tiles(const BoardPicture& board, const SetUp& set_up, const Look& look,
                                  double width) {
  std::vector<Tile> out;
  for (const Placement& placement : set_up.placements) {
    out.push_back(placement_tile(board, placement, turn_words(board.plan, placement, out.empty()),
                                 look, width));
  }
  return out;
}

}  // namespace mullion::cutsheet
