#pragma once

// The blocks of text around the picture. Each draws itself from its upper left corner down, in a
// width, and returns its height.

#include "render/proof/facts.h"
#include "render/proof/sheet.h"

namespace mullion::proof {

inline constexpr double heading_height = 74;
void draw_heading(paper::Drawing& page, paper::Format format, const Sheet& sheet,
                  const paper::Box& box);

double draw_sizes(paper::Drawing& page, const std::vector<SizeFact>& facts, paper::Spot corner,
                  double width);
double draw_materials(paper::Drawing& page, const std::vector<Material>& materials,
                      paper::Spot corner, double width);
double draw_prices(paper::Drawing& page, const Sheet& sheet, paper::Spot corner, double width);

// What sets one choice apart, for the place below its picture.
double draw_card(paper::Drawing& page, const Sheet& sheet, std::size_t choice, paper::Spot corner,
                 double width);

// Openings by number, sizes, materials and prices: of the only choice, or of all alike.
double draw_legend(paper::Drawing& page, const Sheet& sheet, paper::Spot corner, double width);

double draw_approval(paper::Drawing& page, const Sheet& sheet, paper::Spot corner, double width);

inline constexpr double footer_height = 12;
void draw_footer(paper::Drawing& page, const Sheet& sheet, double scale, const paper::Box& box);

// A small drawing of the mat with the openings' numbers, inside a box. Returns its height.
double draw_key(paper::Drawing& page, const Piece& piece, const paper::Box& box);

}  // namespace mullion::proof
