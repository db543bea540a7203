#pragma once

// A sheet of paper as template pages use it: what can be printed on, with a foot of check rules.

#include "render/paper/tiling.h"
#include "render/template/pages.h"

namespace mullion {

inline constexpr Length sheet_foot = millimetres(23);

struct SheetFrame {
  paper::PageSize size;
  paper::Box content;  // printable, above the foot; in true lengths, before the printer's faults
                       // are undone
  paper::Box foot;
};

// The options with the office's paper where none is asked for, and with a square of a roll.
TemplateOptions with_sheet(TemplateOptions options, const Scale& scale);

SheetFrame sheet_frame(const TemplateOptions& options, const paper::PageSize& size);

// Check rules, the sheet's name and subject. All but the name is set once for all sheets.
class SheetFoot {
 public:
  SheetFoot(const SheetFrame& frame, const BoardView& view, const TemplateOptions& options);

  void draw_rules(paper::Drawing& drawing) const;
  void draw_words(paper::Drawing& drawing, const std::string& name) const;
  const paper::Box& room() const { return room_; }  // what is left at the right, for a map

 private:
  std::shared_ptr<const paper::Drawing> rules_, words_;
  paper::Text subject_;
  paper::Box room_;
  paper::Spot baseline_;  // where the name starts
};

}  // namespace mullion
