#include "engine/sheets/plan/cuts.h"

#include <algorithm>

namespace mullion {
namespace {

class CutList {
 public:
  CutList(const PlannedSheet& sheet, const SheetCutter& cutter) : cutter_(cutter) {
    Rect board{{}, {}, sheet.width, sheet.height};
    const Length kerf = cutter.limits.kerf;
    if (sheet.stock < 0) take_bevel_off(sheet);
    if (sheet.trim.left > Length()) {
      trim(board, true, std::max(sheet.trim.left - kerf, Length()));
      board.left = sheet.trim.left;
    }
    if (sheet.trim.right > Length()) {
      trim(board, true, sheet.width - sheet.trim.right - board.left);
      board.right = sheet.width - sheet.trim.right;
    }
    if (sheet.trim.top > Length()) {
      trim(board, false, std::max(sheet.trim.top - kerf, Length()));
      board.top = sheet.trim.top;
    }
    if (sheet.trim.bottom > Length()) {
      trim(board, false, sheet.height - sheet.trim.bottom - board.top);
      board.bottom = sheet.height - sheet.trim.bottom;
    }
    add(sheet.pattern, board.left, board.top);
  }

  std::vector<NumberedCut> cuts;

 private:
  void trim(const Rect& board, bool upright, Length part) {
    add_cut(board, upright, part);
    cuts.back().trim = true;
  }

  void take_bevel_off(const PlannedSheet& sheet) {
    const Length margin = sheet.fallout.square ? fallout_margin : Length();
    Rect piece{Length() - margin, Length() - margin, sheet.width + margin, sheet.height + margin};
    const auto mark = [&](bool upright) {
      add_cut(piece, upright, margin);
      cuts.back().stop = margin;
      cuts.back().rest_at_stop = false;
      cuts.back().marked = true;
      (upright ? piece.left : piece.top) = Length();
    };
    mark(true);
    mark(false);
    add_cut(piece, true, sheet.width);
    piece.right = sheet.width;
    add_cut(piece, false, sheet.height);
    for (NumberedCut& cut : cuts) cut.bevel = true;
  }

  void add(const Pattern& pattern, Length left, Length top) {
    const bool columns = pattern.kind == Pattern::Kind::columns;
    const Length kerf = cutter_.limits.kerf;
    Rect board{left, top, left + pattern.width, top + pattern.height};
    for (std::size_t i = 0; i + 1 < pattern.parts.size(); ++i) {
      const Length part = columns ? pattern.parts[i].width : pattern.parts[i].height;
      add_cut(board, columns, part);
      (columns ? board.left : board.top) += part + kerf;
    }
    for (const Pattern& part : pattern.parts) {
      add(part, left, top);
      (columns ? left : top) += (columns ? part.width : part.height) + kerf;
    }
  }

  void add_cut(const Rect& board, bool upright, Length part) {
    NumberedCut cut;
    cut.number = static_cast<int>(cuts.size()) + 1;
    cut.piece_width = board.width();
    cut.piece_height = board.height();
    cut.from = upright ? Point{board.left + part, board.top} : Point{board.left, board.top + part};
    cut.to =
        upright ? Point{board.left + part, board.bottom} : Point{board.right, board.top + part};
    const Length rest = (upright ? board.width() : board.height()) - part - cutter_.limits.kerf;
    const auto reached = [this](Length stop) {
      return !cutter_.farthest_stop || stop <= *cutter_.farthest_stop;
    };
    cut.rest_at_stop = !reached(part) && rest > Length() && reached(rest);
    cut.stop = cut.rest_at_stop ? rest : part;
    cut.marked = !reached(cut.stop);
    cuts.push_back(cut);
  }

  const SheetCutter& cutter_;
};

void collect(const Pattern& pattern, Length left, Length top, Length kerf, const KeepRule& keep,
             std::vector<Leftover>& found) {
  if (pattern.kind == Pattern::Kind::waste) {
    const Length shorter = std::min(pattern.width, pattern.height);
    const Length longer = std::max(pattern.width, pattern.height);
    if (shorter > Length()) {
      found.push_back({{left, top, left + pattern.width, top + pattern.height},
                       shorter >= keep.shorter && longer >= keep.longer});
    }
  }
  for (const Pattern& part : pattern.parts) {
    collect(part, left, top, kerf, keep, found);
    if (pattern.kind == Pattern::Kind::columns) left += part.width + kerf;
    if (pattern.kind == Pattern::Kind::rows) top += part.height + kerf;
  }
}

}  // namespace

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
