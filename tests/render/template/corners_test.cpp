// The small pieces for corners, measured in the PDF: what a piece says of its place, and where on
// it the cut lines meet, have to give the corner of the opening.

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <optional>

#include "engine/length/format.h"
#include "tests/oracle/drawn_page.h"
#include "tests/oracle/program.h"
#include "tests/render/template/lines_of_layer.h"
#include "tests/render/template/made.h"

using namespace mullion;
using namespace made;
using oracle::DrawnPage;
using oracle::Label;
using oracle::Spot;

namespace {

struct Piece {
  std::string name;
  DrawnPage shown;  // what lies within its square
  Spot corner;      // the square's upper left, on the page
  double side = 0;
  double left = 0, top = 0;  // from the board's edges, as it says, in points
};

// "left 18 1/2 in", "top 1/2 in outside".
std::optional<double> distance_said(const std::string& text, const std::string& edge) {
  if (text.rfind(edge + " ", 0) != 0) return std::nullopt;
  std::string length = text.substr(edge.size() + 1);
  const std::size_t outside = length.find(" outside");
  const auto parsed = parse_length(length.substr(0, outside), Unit::inch);
  if (!parsed) throw std::runtime_error(text);
  return outside == std::string::npos ? to_points(*parsed) : -to_points(*parsed);
}

// The level line right above the label: the foot of its piece's square.
oracle::Stroke foot_above(const DrawnPage& page, const Label& label) {
  for (const oracle::Stroke& s : page.strokes) {
    const auto [from, to] = std::minmax(s.from.x, s.to.x);
    const bool level = std::abs(s.from.y - s.to.y) < 1e-3;
    const double above = label.at.y - s.from.y;
    if (level && to - from > 130 && from < label.at.x && to > label.at.x && above > 0 &&
        above < 12) {
      return {{from, s.from.y}, {to, s.from.y}, 0, false, ""};
    }
  }
  throw std::runtime_error("no piece above " + label.text);
}

// The label beside: left of this one and no more than a line lower, or right below it.
std::string name_beside(const DrawnPage& page, const Label& left, double foot_from) {
  for (const Label& l : page.labels) {
    const double below = l.at.y - left.at.y;
    if (l.at.x > foot_from && l.at.x < left.at.x - 4 && below > 0 && below < 12) return l.text;
  }
  throw std::runtime_error("a piece without a name");
}

double top_below(const DrawnPage& page, const Label& left) {
  for (const Label& l : page.labels) {
    const double below = l.at.y - left.at.y;
    if (std::abs(l.at.x - left.at.x) > 1 || below < 5 || below > 15) continue;
    if (const auto said = distance_said(l.text, "top")) return *said;
  }
  throw std::runtime_error("a piece without a place from the top");
}

std::vector<Piece> pieces_of(const std::vector<DrawnPage>& pages) {
  std::vector<Piece> pieces;
  for (const DrawnPage& page : pages) {
    for (const Label& label : page.labels) {
      const auto left = distance_said(label.text, "left");
      if (!left) continue;
      const oracle::Stroke foot = foot_above(page, label);
      Piece piece{name_beside(page, label, foot.from.x),
                  {},
                  {},
                  foot.to.x - foot.from.x,
                  *left,
                  top_below(page, label)};
      piece.corner = {foot.from.x, foot.from.y - piece.side};
      for (oracle::Stroke stroke : page.strokes) {
        if (oracle::clip_to_box(stroke, piece.corner, foot.to)) {
          piece.shown.strokes.push_back(stroke);
        }
      }
      pieces.push_back(std::move(piece));
    }
  }
  return pieces;
}

// A corner of an opening seen from behind, in points from the board's left and upper edge, and the
// directions in which the opening lies.
struct Corner {
  Spot at;
  double right, down;  // 1 or -1
};

std::vector<Corner> corners_of(const Window& window, const BoardCuts& layer) {
  const Length edge = layer.blank.right, top = layer.blank.top;
  const double low = to_points(edge - window.back.right), high = to_points(edge - window.back.left);
  const double up = to_points(window.back.top - top), down = to_points(window.back.bottom - top);
  return {{{low, up}, 1, 1}, {{low, down}, 1, -1}, {{high, down}, -1, -1}, {{high, up}, -1, 1}};
}

// Both cuts that meet in the corner: on, into the opening's side, and past it by the over-cut.
bool shows_corner(const Piece& piece, const Corner& corner, double over_cut) {
  const Spot at{piece.corner.x + corner.at.x - piece.left,
                piece.corner.y + corner.at.y - piece.top};
  constexpr double room = 18;
  if (at.x < piece.corner.x + room || at.x > piece.corner.x + piece.side - room ||
      at.y < piece.corner.y + room || at.y > piece.corner.y + piece.side - room) {
    return false;
  }
  return oracle::shows_line(piece.shown, {at.x - corner.right * over_cut, at.y},
                            {at.x + corner.right * room, at.y}, hundredth_mm) &&
         oracle::shows_line(piece.shown, {at.x, at.y - corner.down * over_cut},
                            {at.x, at.y + corner.down * room}, hundredth_mm);
}

bool belongs_to(const Piece& piece, const Window& window) {
  const std::string number = std::to_string(window.openings.at(0));
  return piece.name.rfind(number, 0) == 0 &&
         std::isalpha(static_cast<unsigned char>(piece.name.at(number.size())));
}

}  // namespace

TEST_CASE("every corner of every rectangular opening is on a piece that says its place right") {
  for (const char* name : {"equal-borders", "double-mat", "title-and-three",
                           "seven-picture-collage", "weighted-bottom"}) {
    const std::string job = oracle::gallery(std::string(name) + ".xml");
    const Mat mat = mat_of(job);
    const Cuts cuts = cuts_of(mat);
    for (const BoardCuts& layer : cuts.layers) {
      const auto pieces = pieces_of(oracle::drawn_pages(
          template_of(job, oracle::scratch_folder("corners") + "/corners.pdf",
                      {"--corners", "--layer", std::to_string(layer.layer->number)})));
      for (const Window& window : layer.windows()) {
        for (const Corner& corner : corners_of(window, layer)) {
          INFO(name << ", layer " << layer.layer->number << ", opening " << window.openings.at(0)
                    << ", corner at " << corner.at.x / 72 << ", " << corner.at.y / 72 << " in");
          CHECK(std::any_of(pieces.begin(), pieces.end(), [&](const Piece& piece) {
            return belongs_to(piece, window) &&
                   shows_corner(piece, corner, to_points(layer.over_cut));
          }));
        }
      }
    }
  }
}

TEST_CASE("a piece that says a place 1/16 in wrong would be noticed") {
  const std::string job = oracle::gallery("equal-borders.xml");
  const Mat mat = made::mat_of(job);
  const Cuts cuts = cuts_of(mat);
  const BoardCuts& layer = cuts.layers.at(0);
  const auto pieces = pieces_of(oracle::drawn_pages(
      template_of(job, oracle::scratch_folder("corners-wrong") + "/corners.pdf", {"--corners"})));
  REQUIRE(pieces.size() == 4);
  for (Piece piece : pieces) {
    const auto shows_one = [&] {
      for (const Corner& corner : corners_of(layer.windows().at(0), layer)) {
        if (shows_corner(piece, corner, to_points(layer.over_cut))) return true;
      }
      return false;
    };
    REQUIRE(shows_one());
    piece.left += 72.0 / 16;
    CHECK_FALSE(shows_one());
  }
}

TEST_CASE("the pieces of an opening go round it from its upper left, as the back is seen") {
  const std::string job = oracle::gallery("equal-borders.xml");
  const auto pieces = pieces_of(oracle::drawn_pages(
      template_of(job, oracle::scratch_folder("corners-order") + "/corners.pdf", {"--corners"})));
  REQUIRE(pieces.size() == 4);
  CHECK(pieces[0].name == "1a");
  CHECK(pieces[0].left < pieces[2].left);
  CHECK(pieces[0].top < pieces[2].top);
  CHECK(pieces[1].left == pieces[0].left);  // down the left side,
  CHECK(pieces[1].top == pieces[2].top);    // along the lower one
  CHECK(pieces[3].left == pieces[2].left);  // and up the right one
  CHECK(pieces[3].top == pieces[0].top);
}
