#pragma once

// How the board lies and what is cut so, in the words of a picture of it.

#include "render/cutsheet/board_view.h"

namespace mullion::cutsheet {

// "Edge B at the guide".
std::string lying_heading(const ToldPlan& plan, const Placement& placement);
// From the placement before, or how every blank is laid: "then half turn".
std::string turn_words(const ToldPlan& plan, const Placement& placement);
// "Edge B at the guide, half turn".
std::string lying_words(const ToldPlan& plan, const Placement& placement);

// "opening 2, left".
std::string line_name(const BevelCut& cut, const Locale& locale);
// "7  opening 2, left"; the opening is not named where there is one alone.
std::string name_of_cut(const BoardPicture& board, const BevelCut& cut);
// Where the line and its ends are that no scale shows.
std::string where_words(const BoardPicture& board, const Placement& placement, const BevelCut& cut);
// All of it, and what is to be checked.
std::string cut_words(const BoardPicture& board, const Placement& placement, const BevelCut& cut);

}  // namespace mullion::cutsheet
