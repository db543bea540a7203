#include "engine/mat/checks.h"

namespace mullion {

const std::vector<CheckInfo>& check_table() {
  static const std::vector<CheckInfo> table{
      {"check-beyond-board", Severity::error, "an opening lies beyond the board",
       "Every window has to lie inside the blank. Make the outer size larger or the borders, gaps "
       "or "
       "openings smaller."},
      {"check-overlapping", Severity::error, "two openings overlap",
       "Two windows that overlap become one. Give the gap between them a size, or a fixed place "
       "that "
       "keeps them apart."},
      {"check-not-held", Severity::error, "the mat does not cover the picture's edge",
       "The picture is held by the back edge of the lowest layer. Where that edge lies outside the "
       "picture it falls through; make the opening smaller than the picture."},
      {"check-overlap-small", Severity::warning, "the mat covers the picture by little",
       "Less than 1/16 in (1.6 mm) of overlap leaves no room for a picture that is not quite "
       "square "
       "or moves with the weather. Common practice, no source: 1/8 in."},
      {"check-bar-thin", Severity::warning, "a bar between openings is thin for its board",
       "A bar narrower than six times the board's thickness bends or breaks while the second "
       "opening "
       "is cut. Our own figure; common practice calls for wider bars on thin board."},
      {"check-overcuts-meet", Severity::warning, "over-cuts meet in a narrow bar",
       "The blade runs past each corner by about the board's thickness. In a bar as narrow as two "
       "over-cuts they touch and show on the face. Make the gap wider."},
      {"check-border-stack", Severity::error, "a border is narrower than the mat needs",
       "The blank of an under-mat needs board around its window to be taped to and to stay flat: "
       "at "
       "least as much as its bevel runs on each side."},
      {"check-under-lip", Severity::warning, "the frame's lip hides much of a border",
       "The rabbet's lip covers the outermost part of the mat. A border that shows less than half "
       "of "
       "its width looks like a mistake; choose a wider border or a narrower lip."},
      {"check-bottom-light", Severity::warning, "the bottom border is smaller than the top one",
       "A picture that sits low seems to slip out of its frame. Weight the bottom instead, unless "
       "it "
       "is meant."},
      {"check-board-large", Severity::warning, "the board is larger than any usual sheet",
       "Sheets are 32 x 40 in as a standard and 40 x 60 in as oversize (common practice and "
       "suppliers' statements). A larger board has to be ordered or pieced."},
      {"check-borders-least", Severity::note, "a border is below the least one of a course sheet",
       "E. Stapel, \"Matting and presentation\": at least 2 in on boards to 11 x 14 in, at least 3 "
       "in "
       "on larger ones. Narrower borders are a matter of taste and of price."},
      {"check-float-small", Severity::warning, "a floated picture has little board around it",
       "Less than 1/8 in of board around a floated edge reads as a crooked overlap. Our own "
       "figure."},
  };
  return table;
}

}  // namespace mullion
