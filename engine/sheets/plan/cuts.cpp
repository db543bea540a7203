#include "engine/sheets/plan/cuts.h"

#include <algorithm>

namespace mullion {
namespace {

// A piece of board on its way: damaged edges that are still on it, and whether its sides are what a
// setting made them or what is left of a sheet.
struct Piece {
  Rect rect;  // with the damaged edges
  Sides damage;
  bool measured_across = false, measured_down = false;
};

// Whether a blank is as wide, or as high, as the whole pattern.
bool has_its_size(const Pattern& pattern, bool width) {
  if (pattern.kind == Pattern::Kind::blank) return true;
  if (pattern.kind == (width ? Pattern::Kind::columns : Pattern::Kind::rows)) return false;
  return std::any_of(pattern.parts.begin(), pattern.parts.end(),
                     [width](const Pattern& part) { return has_its_size(part, width); });
}

class CutList {
 public:
  CutList(const PlannedSheet& sheet, const SheetCutter& cutter) : cutter_(cutter) {
    Piece board{{{}, {}, sheet.width, sheet.height}, sheet.trim};
    if (sheet.stock < 0) {
      take_bevel_off(sheet);
      board.measured_across = board.measured_down = true;
    }
    add(sheet.pattern, board);
  }

  std::vector<NumberedCut> cuts;
  bool possible = true;

 private:
  Length kerf() const { return cutter_.limits.kerf; }

  bool allows(const Rect& board, bool upright) const {
    return upright ? cutter_.limits.allow(board.height(), board.width())
                   : cutter_.limits.allow(board.width(), board.height());
  }

  void take_bevel_off(const PlannedSheet& sheet) {
    const Length margin = sheet.fallout.square ? fallout_margin : Length();
    Rect piece{Length() - margin, Length() - margin, sheet.width + margin, sheet.height + margin};
    const auto mark = [&](bool upright) {
      cut(piece, upright, margin, false);
      cuts.back().stop = margin;
      cuts.back().rest_at_stop = false;
      cuts.back().marked = true;
      (upright ? piece.left : piece.top) = Length();
    };
    mark(true);
    mark(false);
    cut(piece, true, sheet.width, false);
    piece.right = sheet.width;
    cut(piece, false, sheet.height, false);
    for (NumberedCut& one : cuts) one.bevel = true;
  }

  // The damaged edges of one direction, as far as the cutter takes the board.
  void trim(Piece& board, bool upright) {
    Rect& rect = board.rect;
    Length& near = upright ? rect.left : rect.top;
    Length& far = upright ? rect.right : rect.bottom;
    Length& before = upright ? board.damage.left : board.damage.top;
    Length& behind = upright ? board.damage.right : board.damage.bottom;
    if (before == Length() && behind == Length()) return;
    if (!allows(rect, upright)) return;
    if (before > Length()) {
      cut(rect, upright, std::max(before - kerf(), Length()), true);
      cuts.back().trim = true;
      near += before;
      before = {};
    }
    if (behind > Length()) {
      cut(rect, upright, far - behind - near, false);
      cuts.back().trim = true;
      far -= behind;
      behind = {};
      (upright ? board.measured_across : board.measured_down) = true;
    }
  }

  // The pattern lies in the board between its damaged edges.
  void add(const Pattern& pattern, Piece board) {
    trim(board, true);
    trim(board, false);
    if (pattern.kind == Pattern::Kind::waste) return;
    if (pattern.kind == Pattern::Kind::blank) return finish(board);
    divide(pattern, board);
  }

  void divide(const Pattern& pattern, const Piece& board) {
    const bool columns = pattern.kind == Pattern::Kind::columns;
    // Damage may lie at the ends of the cuts, not beside them.
    const Sides& damage = board.damage;
    possible = possible && (columns ? damage.left == Length() && damage.right == Length()
                                    : damage.top == Length() && damage.bottom == Length());
    possible = possible && (pattern.parts.size() < 2 || allows(board.rect, columns));
    Rect rest = board.rect;
    std::vector<Piece> parts;
    for (std::size_t i = 0; i < pattern.parts.size(); ++i) {
      const Length size = columns ? pattern.parts[i].width : pattern.parts[i].height;
      const bool last = i + 1 == pattern.parts.size();
      const bool waste = pattern.parts[i].kind == Pattern::Kind::waste;
      Piece part = board;
      part.rect = rest;
      bool& measured = columns ? part.measured_across : part.measured_down;
      if (!last) {
        cut(rest, columns, size, waste || measured);
        (columns ? part.rect.right : part.rect.bottom) = (columns ? rest.left : rest.top) + size;
        (columns ? rest.left : rest.top) += size + kerf();
        measured = true;
      } else if (!measured && has_its_size(pattern.parts[i], columns)) {
        check(rest, columns);
        measured = true;
      }
      parts.push_back(part);
    }
    for (std::size_t i = 0; i < parts.size(); ++i) add(pattern.parts[i], parts[i]);
  }

  void finish(const Piece& blank) {
    const Sides& damage = blank.damage;
    for (const Length side : {damage.left, damage.top, damage.right, damage.bottom}) {
      possible = possible && side == Length();
    }
    if (!blank.measured_across) check(blank.rect, true);
    if (!blank.measured_down) check(blank.rect, false);
  }

  void check(const Rect& board, bool upright) {
    cut(board, upright, upright ? board.width() : board.height(), false);
    cuts.back().check = true;
  }

  // `rest_will_do`: the part's own size matters to nobody, or the whole was measured.
  void cut(const Rect& board, bool upright, Length part, bool rest_will_do) {
    NumberedCut cut;
    cut.number = static_cast<int>(cuts.size()) + 1;
    cut.piece_width = board.width();
    cut.piece_height = board.height();
    cut.from = upright ? Point{board.left + part, board.top} : Point{board.left, board.top + part};
    cut.to =
        upright ? Point{board.left + part, board.bottom} : Point{board.right, board.top + part};
    const Length rest = (upright ? board.width() : board.height()) - part - kerf();
    const auto reached = [this](Length stop) {
      return !cutter_.farthest_stop || stop <= *cutter_.farthest_stop;
    };
    cut.rest_at_stop = rest_will_do && !reached(part) && rest > Length() && reached(rest);
    cut.stop = cut.rest_at_stop ? rest : part;
    cut.marked = !reached(cut.stop);
    cuts.push_back(cut);
  }

  const SheetCutter& cutter_;
};

void collect(const Pattern& pattern, Length left, Length top, Length kerf, const KeepRule& keep,
             std::vector<Leftover>& found) {
  if (pattern.kind == Pattern::Kind::waste) {
    if (std::min(pattern.width, pattern.height) > Length()) {
      found.push_back({{left, top, left + pattern.width, top + pattern.height},
                       keep.keeps(pattern.width, pattern.height)});
    }
  }
  for (const Pattern& part : pattern.parts) {
    collect(part, left, top, kerf, keep, found);
    if (pattern.kind == Pattern::Kind::columns) left += part.width + kerf;
    if (pattern.kind == Pattern::Kind::rows) top += part.height + kerf;
  }
}

}  // namespace

bool can_be_cut(const PlannedSheet& sheet, const SheetCutter& cutter) {
  return CutList(sheet, cutter).possible;
}

std::vector<NumberedCut> cuts_of(const PlannedSheet& sheet, const SheetCutter& cutter) {
  return CutList(sheet, cutter).cuts;
}

int settings_of(const std::vector<NumberedCut>& cuts) {
  int settings = 0;
  Length stop;
  for (const NumberedCut& cut : cuts) {
    if (cut.stop != stop) ++settings;
    stop = cut.stop;
  }
  return settings;
}

std::vector<Leftover> leftovers_of(const PlannedSheet& sheet, Length kerf, const KeepRule& keep) {
  std::vector<Leftover> found;
  collect(sheet.pattern, sheet.trim.left, sheet.trim.top, kerf, keep, found);
  return found;
}

}  // namespace mullion
