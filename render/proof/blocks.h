#pragma once

// The blocks of text around the picture. Each draws itself from its upper left corner down, in a
// width, and returns its height.

#include <functional>

#include "render/proof/facts.h"
#include "render/proof/sheet.h"

namespace mullion::proof {

// The height that a block will have: it is drawn where nobody sees it.
double height_of(const std::function<double(paper::Canvas&)>& block);

inline constexpr double heading_height = 74;
void draw_heading(paper::Canvas& canvas, paper::Format format, const Sheet& sheet,
                  const paper::Box& box);

double draw_sizes(paper::Canvas& canvas, const std::vector<SizeFact>& facts, paper::Spot corner,
                  double width);
double draw_materials(paper::Canvas& canvas, const std::vector<Material>& materials,
                      paper::Spot corner, double width);
double draw_prices(paper::Canvas& canvas, const Sheet& sheet, paper::Spot corner, double width);

// What sets one choice apart, for the place below its picture.
double draw_card(paper::Canvas& canvas, const Sheet& sheet, std::size_t choice, paper::Spot corner,
                 double width);

// Openings by number, sizes, materials and prices: of the only choice, or of all alike.
double draw_legend(paper::Canvas& canvas, const Sheet& sheet, paper::Spot corner, double width);

double draw_approval(paper::Canvas& canvas, const Sheet& sheet, paper::Spot corner, double width);

inline constexpr double footer_height = 12;
void draw_footer(paper::Canvas& canvas, const Sheet& sheet, double scale, const paper::Box& box);

// A small drawing of the mat with the openings' numbers, inside a box. Returns its height.
double draw_key(paper::Canvas& canvas, const Piece& piece, const paper::Box& box);

}  // namespace mullion::proof
