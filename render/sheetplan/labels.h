#pragma once

// Labels for the blanks, and for what is kept on the rack, on common sheets of labels: order,
// layer, size or id, board, size, and a code that a scanner reads.
//
// Places on the sheet of labels are exact lengths from its upper left corner; sizes are written in
// the scale that is given.

#include <string>
#include <string_view>
#include <vector>

#include "engine/locale/locale.h"
#include "engine/sheets/batch/batch.h"
#include "engine/sheets/inventory/take.h"
#include "render/paper/document.h"

namespace mullion {

// A sheet of labels. Figures from memory of sheets that are commonly sold; measure your own, and
// print on plain paper first.
struct LabelSheet {
  std::string_view name;
  paper::PageSize page;
  int columns, rows;
  Length left, top;              // of the first label
  Length width, height;          // of one
  Length step_right, step_down;  // from one to the next
};

const std::vector<LabelSheet>& label_sheets();
// Nothing where none has that name.
const LabelSheet* find_label_sheet(std::string_view name);

struct LabelOptions {
  std::string date;  // ISO 8601; empty: a fixed date
  int skip = 0;      // labels of the first sheet that are gone already
  Scale scale;
  Locale locale{};
};

// One for each piece, of which there may be several; their code is the piece's id.
struct RackLabel {
  StockPiece piece;
  std::string origin;  // such as "from sheet 2"; may be empty
};
std::vector<RackLabel> rack_labels(const std::vector<KeptOffcut>& kept, const SheetPlan& plan,
                                   const Locale& locale);

// A PDF. No label: one empty page.
std::string render_rack_labels(const std::vector<RackLabel>& labels, const LabelSheet& sheet,
                               const LabelOptions& options);
std::string render_labels(const std::vector<BlankLabel>& labels, const LabelSheet& sheet,
                          const LabelOptions& options);

}  // namespace mullion
