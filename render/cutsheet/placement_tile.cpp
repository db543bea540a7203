#include "render/cutsheet/placement_tile.h"

#include <algorithm>

#include "engine/cuts/sheet/words.h"
#include "render/cutsheet/placement_words.h"
#include "render/paper/drawing.h"

namespace mullion::cutsheet {
namespace {

using paper::Box;
using paper::Drawing;
using paper::Spot;
using paper::TextStyle;

// A diagram takes what height its row leaves, up to so many times its usual one.
constexpr double stretched = 1.3;
// A cut's name is set smaller, down to this and to this size, before it is broken.
constexpr double least_name = 0.85, least_size = 7.1;

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
  const double least = std::max(least_name, least_size / look.text());
  Entry entry{paper::lines_of(first, room / least, {.size = look.text()}), room};
  if (more.empty()) return entry;
  for (std::string& line : paper::lines_of(more, room, {.size = look.text()})) {
    entry.lines.push_back(std::move(line));
  }
  return entry;
}

Entry cut_entry(const BoardPicture& board, const Placement& placement, const BevelCut& cut,
                const Look& look, double width) {
  Entry entry = entry_of(name_of_cut(board, cut), where_words(board, placement, cut), look, width);
  for (const std::string& check : checks_at(board.plan, board.stage, cut.number)) {
    for (std::string& line : paper::lines_of(check, entry.room, {.size = look.small()})) {
      entry.lines.push_back(std::move(line));
    }
  }
  return entry;
}

// Of a diagram's usual size. Where no words tell between which lines a cut runs, the picture must.
double part_of(const BoardPicture& board, const Look& look) {
  if (!board.stage.same_order) return 1;
  return look.again > 0 || lines_are_named(board.plan, board.stage) ? look.again : 1;
}

Tile placement_tile(const BoardPicture& board, const Placement& placement, const std::string& turn,
                    const Look& look, double width) {
  const ToldPlan& plan = board.plan;
  const double inner = width - tile_gap;
  std::vector<Entry> entries;
  for (const BevelCut& cut : placement.cuts) {
    entries.push_back(cut_entry(board, placement, cut, look, width));
  }
  const std::string heading = lying_heading(plan, placement);
  const double part = part_of(board, look);
  const double diagram = look.diagram() * part;
  const paper::TextStyle turn_style{.size = look.dense ? look.small() : look.text()};
  const std::vector<std::string> turns = paper::lines_of(turn, inner, turn_style);
  const double top = look.text() * 1.3 + turn_style.size * 1.2 * static_cast<double>(turns.size());
  Tile tile;
  const double height = top + diagram + entries_height(entries, look) + 2;
  tile.height = height;
  tile.draw = [=, &board, &placement](Drawing& page, const Box& box) {
    draw_fitted(page, heading, {box.x, box.y + look.text() * 1.05}, inner, tile_heading(look));
    double y = box.y + look.text() * 1.05;
    for (const std::string& words : turns) {
      y += turn_style.size * 1.2;
      page.text(words, {box.x, y}, turn_style);
    }
    const double room = box.height - height;
    double tall = 0;
    if (part > 0) {
      tall = std::clamp(diagram + room, diagram, look.diagram() * stretched);
      draw_board_as_it_lies(page, board, placement, {box.x, box.y + top, inner, tall});
    }
    draw_entries(page, entries, look, {box.x, box.y + top + tall + 2});
  };
  return tile;
}

}  // namespace

std::vector<Tile> placement_tiles(const BoardPicture& board, const SetUp& set_up, const Look& look,
                                  double width) {
  std::vector<Tile> out;
  for (const Placement& placement : set_up.placements) {
    out.push_back(placement_tile(board, placement, turn_words(board.plan, placement), look, width));
  }
  return out;
}

}  // namespace mullion::cutsheet
