#pragma once

// Pages as a printer makes them: its faults undone (engine/shop/printer_correction.h), and what it
// leaves white.
//
// A profile speaks of the paper as it runs through the printer, upright. A sheet's page that is
// wider than high, or not as wide as the roll, is turned by a quarter by the printer's driver, this
// way or that, so that the printer's axes are exchanged on it. A page of the board's size is taken
// as it is: it says that it is not to be turned.

#include <string>

#include "render/paper/tiling.h"
#include "render/template/template.h"

namespace mullion {

// Does the driver turn the page to bring it onto the sheet that was asked for?
bool is_turned(const TemplateOptions& options, const paper::PageSize& page);

// Undoes what the printer does, about a page's centre; nothing without a profile.
paper::Transform undoing(const TemplateOptions& options, const paper::PageSize& page);

// How much of a page is left to draw on when the printer's faults are undone.
paper::Shrink shrinkage(const TemplateOptions& options, const paper::SheetSize& sheet, bool turned);

// What the printer leaves white of a page. A driver may turn it this way or that: of a page that is
// turned the wider of two opposite margins counts on both sides.
Sides unprintable(const TemplateOptions& options, bool turned);

// "Corrected for the printer Shop laser: across +0.29 %, ..."; empty without a profile.
std::string correction_text(const TemplateOptions& options);

}  // namespace mullion
