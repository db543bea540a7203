#include "engine/sheets/stock/board.h"

#include <tuple>

#include "engine/sheets/stock/size_text.h"
#include "engine/xml/colour.h"

namespace mullion {
namespace {

auto key(const Board& board) {
  const Colour& colour = board.colour;
  return std::make_tuple(std::string_view(board.name), board.thickness, colour.red, colour.green,
                         colour.blue, board.any_colour);
}

// A rule shows it in one of the systems, or it was measured.
std::string thickness_text(Length thickness, const Scale& scale, const Locale& locale) {
  for (const Unit unit : {Unit::inch, Unit::millimetre}) {
    if (thickness == to_finest_mark(thickness, unit)) return size_text(thickness, scale, locale);
  }
  return locale.measured(thickness, scale.unit);
}

}  // namespace

bool operator<(const Board& a, const Board& b) {
  return key(a) < key(b);
}

Board board_of(const Layer& layer) {
  return {layer.board, layer.colour, layer.thickness, !layer.states_colour};
}

std::string describe(const Board& board, const Scale& scale, const Locale& locale) {
  const std::string name = board.name.empty() ? locale.say("unnamed board") : board.name;
  const std::string colour = board.any_colour ? "" : format_colour(board.colour) + ", ";
  return name + ", " + colour + thickness_text(board.thickness, scale, locale);
}

}  // namespace mullion
