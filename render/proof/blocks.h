#pragma once

// The blocks of text below and above the picture. Each says how high it is and draws itself into a
// box of that height.

#include "render/proof/sheet.h"

namespace mullion::proof {

inline constexpr double heading_height = 74;
void draw_heading(paper::Canvas& canvas, paper::Format format, const Sheet& sheet,
                  const paper::Box& box);

double captions_height(const Sheet& sheet);
void draw_captions(paper::Canvas& canvas, const Sheet& sheet, const paper::Box& box);

double legend_height(const Sheet& sheet);
void draw_legend(paper::Canvas& canvas, const Sheet& sheet, const paper::Box& box);

double prices_height(const Sheet& sheet);
void draw_prices(paper::Canvas& canvas, const Sheet& sheet, const paper::Box& box);

inline constexpr double approval_height = 92;
void draw_approval(paper::Canvas& canvas, const Sheet& sheet, const paper::Box& box);

inline constexpr double footer_height = 12;
void draw_footer(paper::Canvas& canvas, const Sheet& sheet, double scale, const paper::Box& box);

// A small drawing of the mat with the openings' numbers.
void draw_key(paper::Canvas& canvas, const Piece& piece, const paper::Box& box);

}  // namespace mullion::proof
