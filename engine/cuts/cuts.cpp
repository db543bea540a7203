#include "engine/cuts/cuts.h"

#include <algorithm>

#include "engine/mat/parallel.h"
#include "engine/mat/rect.h"

namespace mullion {
namespace {

using Why = Refusal::Why;

// Where a groove's panel is cut out: the groove's outer edge on the face, and below it the back.
tl::expected<Window, std::string> panel_of(const MatGroove& groove, Length run) {
  const Length half = half_rounded_down(groove.width);
  Window panel;
  panel.openings = groove.openings;
  const Rect middle = bounding_box(groove.line);
  if (groove.line == rectangle(middle)) {
    panel.face_edge = rectangle(outset(middle, half));
    panel.back_edge = rectangle(outset(middle, half - run));
  } else {
    panel.shape.kind = groove.shape;
    const auto face = parallel(groove.line, half);
    if (!face) return tl::unexpected(face.error());
    const auto back = parallel(groove.line, half - run);
    if (!back) return tl::unexpected(back.error());
    panel.face_edge = *face;
    panel.back_edge = *back;
  }
  panel.face = bounding_box(panel.face_edge);
  panel.back = bounding_box(panel.back_edge);
  return panel;
}

// The least that lies between the inner rectangle and a side of the outer one.
Length least_margin(const Rect& inner, const Rect& outer) {
  return std::min({inner.left - outer.left, inner.top - outer.top, outer.right - inner.right,
                   outer.bottom - inner.bottom});
}

class CutsBuilder {
 public:
  CutsBuilder(const Mat& mat, const CutterProfile& cutter, const CutOptions& options)
      : trim_(options.trim.value_or(usual_trim(mat.unit))) {
    out_.mat = &mat;
    out_.cutter = cutter;
    out_.stacked = options.stacked && mat.layers.size() > 1;
  }

  Cuts build() {
    if (mat().layers.empty()) refuse({Why::no_layer, 0, {}, {}, {}, {}, {}});
    if (out_.stacked) check_blank();
    out_.layers.reserve(mat().layers.size());
    for (const MatLayer& layer : mat().layers) add_layer(layer);
    add_grooves();
    check_rail();
    return std::move(out_);
  }

 private:
  const Mat& mat() const { return *out_.mat; }
  void refuse(Refusal refusal) { out_.refusals.push_back(std::move(refusal)); }

  BoardCuts board(const MatLayer& layer) const {
    BoardCuts board;
    board.layer = &layer;
    board.taped = out_.stacked && layer.number > 1;
    board.edges = board.blank = mat().outer;
    if (board.taped) board.blank = inset(mat().outer, {trim_, trim_, trim_, trim_});
    board.over_cut = over_cut(out_.cutter, layer.run);
    return board;
  }

  void add_layer(const MatLayer& layer) {
    BoardCuts board = this->board(layer);
    board.lines = lines_of(layer.windows, board.over_cut);
    if (board.taped) check_trim(board);
    out_.layers.push_back(std::move(board));
  }

  void check_blank() {
    const Length most = half_rounded_down(std::min(mat().outer.width(), mat().outer.height()));
    trim_is_possible_ =
        trim_ >= Length() && trim_ * 2 < std::min(mat().outer.width(), mat().outer.height());
    if (!trim_is_possible_) refuse({Why::trim, 0, {}, trim_, most, {}, {}});
  }

  // Both edges of a window must lie within the blank: what is beyond cannot be cut.
  void check_trim(const BoardCuts& board) {
    if (!trim_is_possible_ || trim_ == Length()) return;
    const Window* worst = nullptr;
    Length least;
    for (const Window& window : board.layer->windows) {
      const Length margin = least_margin(united(window.face, window.back), mat().outer);
      if (worst != nullptr && margin >= least) continue;
      worst = &window;
      least = margin;
    }
    if (worst == nullptr || trim_ < least) return;
    refuse({Why::trim,
            board.layer->number,
            worst->openings,
            trim_,
            least,
            {},
            board.layer->board.place});
  }

  void add_grooves() {
    if (mat().grooves.empty() || mat().layers.empty()) return;
    BoardCuts board = this->board(mat().layers.front());
    board.kind = StageKind::groove;
    bool possible = true;
    for (const MatGroove& groove : mat().grooves) {
      auto panel = panel_of(groove, board.layer->run);
      if (panel) {
        board.panels.push_back(std::move(*panel));
        continue;
      }
      possible = false;
      refuse({Why::groove, 1, groove.openings, {}, {}, panel.error(), groove.place});
    }
    if (!possible) return;
    board.lines = lines_of(board.panels, board.over_cut);
    out_.grooves = std::move(board);
  }

  // The board at its widest across the rail, and the longest cut along it.
  void check_rail() {
    Refusal wide{Why::board_too_wide, 0, {}, {}, out_.cutter.widest_board, {}, {}};
    Refusal along{Why::cut_too_long, 0, {}, {}, out_.cutter.longest_cut, {}, {}};
    const auto look = [&](const BoardCuts& board) {
      for (const StraightLine& line : board.lines.straight) {
        const bool level = line.kept == BoardEdge::top || line.kept == BoardEdge::bottom;
        wide.found = std::max(wide.found, level ? board.edges.height() : board.edges.width());
        take(along, cut_length(line), board, line.window);
      }
      for (const SkewLine& line : board.lines.skew) {
        take(along, cut_length(line), board, line.window);
      }
    };
    for (const BoardCuts& board : out_.layers) look(board);
    if (out_.grooves) look(*out_.grooves);
    for (Refusal& refusal : {std::ref(wide), std::ref(along)}) {
      if (refusal.found > refusal.limit) refuse(std::move(refusal));
    }
  }

  static void take(Refusal& longest, Length length, const BoardCuts& board, int window) {
    if (length <= longest.found) return;
    longest.found = length;
    longest.layer = board.layer->number;
    longest.openings = board.windows()[static_cast<std::size_t>(window)].openings;
    longest.place = board.layer->board.place;
  }

  Length trim_;
  bool trim_is_possible_ = true;
  Cuts out_;
};

}  // namespace

Length usual_trim(Unit unit) {
  return unit == Unit::inch ? sixty_fourths(8) : millimetres(3);
}

Cuts cuts_of(const Mat& mat, const CutterProfile& cutter, const CutOptions& options) {
  return CutsBuilder(mat, cutter, options).build();
}

Cuts cuts_of(const Mat& mat, const CutOptions& options) {
  return cuts_of(mat, generic_cutter_for(mat.unit), options);
}

}  // namespace mullion
