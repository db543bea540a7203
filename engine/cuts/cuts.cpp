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
    if (layer.board.spacer) {
      board.kind = StageKind::spacer;
      return board;
    }
    board.over_cut = over_cut(out_.cutter, layer.board.thickness, layer.run);
    board.passes = passes(out_.cutter, layer.board.thickness, layer.run);
    return board;
  }

  void add_layer(const MatLayer& layer) {
    BoardCuts board = this->board(layer);
    if (board.kind == StageKind::layer) check_thickness(board);
    board.lines = lines_of(layer.windows, board.over_cut);
    start_earlier(board);
    if (board.taped) check_trim(board);
    out_.layers.push_back(std::move(board));
  }

  void check_thickness(const BoardCuts& board) {
    const MatLayer& layer = *board.layer;
    const Length thickness = layer.board.thickness;
    const auto refuse_for = [&](Why why, Length limit) {
      refuse({why, layer.number, {}, thickness, limit, {}, layer.board.place});
    };
    if (out_.cutter.thickest_board && thickness > *out_.cutter.thickest_board) {
      refuse_for(Why::board_too_thick, *out_.cutter.thickest_board);
    } else if (board.passes == 0) {
      refuse_for(Why::cut_too_deep, out_.cutter.deepest_in_two.value_or(*out_.cutter.deepest_cut));
    }
  }

  void check_blank() {
    const Length most = half_rounded_down(std::min(mat().outer.width(), mat().outer.height()));
    trim_is_possible_ =
        trim_ >= Length() && trim_ * 2 < std::min(mat().outer.width(), mat().outer.height());
    if (!trim_is_possible_) refuse({Why::trim, 0, {}, trim_, most, {}, {}});
  }

  // Both edges of a window, and its over-cuts, must lie within the blank: what is beyond cannot be
  // cut.
  void check_trim(const BoardCuts& board) {
    if (!trim_is_possible_ || trim_ == Length()) return;
    const Window* worst = nullptr;
    Length least;
    for (const Window& window : board.layer->windows) {
      const Rect cut = outset(window.back, board.over_cut);
      const Length margin = least_margin(united(window.face, cut), mat().outer);
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
    start_earlier(board);
    out_.grooves = std::move(board);
  }

  // The board at its widest across the rail, and the longest cut along it.
  void check_rail() {
    Refusal wide{Why::board_too_wide, 0, {}, {}, out_.cutter.widest_board, {}, {}};
    Refusal along{Why::cut_too_long, 0, {}, {}, out_.cutter.longest_cut, {}, {}};
    Refusal out{Why::beyond_rail, 0, {}, {}, out_.cutter.reach.value_or(Length()), {}, {}};
    const auto look = [&](const BoardCuts& board) {
      for (const StraightLine& line : board.lines.straight) {
        const bool level = line.kept == BoardEdge::top || line.kept == BoardEdge::bottom;
        wide.found = std::max(wide.found, level ? board.edges.height() : board.edges.width());
        take(along, cut_length(line), board, line.window);
        take(out, farthest(line, board), board, line.window);
      }
      for (const SkewLine& line : board.lines.skew) {
        take(along, cut_length(line), board, line.window);
      }
    };
    for (const BoardCuts& board : out_.layers) {
      if (board.kind == StageKind::layer) look(board);
    }
    if (out_.grooves) look(*out_.grooves);
    out_.farthest = out.found;
    if (!out_.cutter.reach) out.found = Length();
    for (Refusal& refusal : {std::ref(wide), std::ref(along), std::ref(out)}) {
      const bool any = refusal.found > Length();
      if (any && refusal.found > refusal.limit) refuse(std::move(refusal));
    }
  }

  // What a cut needs more where it starts than where it ends.
  void start_earlier(BoardCuts& board) const {
    const CutterProfile& cutter = out_.cutter;
    if (cutter.start_extra == Length()) return;
    const auto add = [&](Length& over_cut) {
      if (over_cut > Length()) over_cut = std::max(Length(), over_cut + cutter.start_extra);
    };
    for (StraightLine& line : board.lines.straight) {
      const BoardEdge near = near_edge(edge_at_guide(line.kept, cutter.lean), cutter.side);
      const Length first = distance_from(near, line.ends[0].at, board.edges);
      const Length second = distance_from(near, line.ends[1].at, board.edges);
      add(line.ends[(first > second) == (cutter.stroke == Stroke::pull) ? 0 : 1].over_cut);
    }
    for (SkewLine& line : board.lines.skew) {
      add(cut_as_outlined(cutter) ? line.from_over_cut : line.to_over_cut);
    }
  }

  // Where the cut's far end is along the rail, the board against guide and squaring arm.
  Length farthest(const StraightLine& line, const BoardCuts& board) const {
    const BoardEdge at_guide = edge_at_guide(line.kept, out_.cutter.lean);
    const BoardEdge near = near_edge(at_guide, out_.cutter.side);
    Length most;
    for (const LineEnd& end : line.ends) {
      most = std::max(most, distance_from(near, end.at, board.edges) + end.over_cut);
    }
    return most;
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
