#include "engine/locale/locale.h"
#include "engine/mat/checks.h"

namespace mullion {

const std::vector<Explanation>& check_table() {
  using enum Severity;
  static const std::vector<Explanation> table{
      {"check-beyond-board", error, mark("an opening lies beyond the board"),
       mark("Every window has to lie inside the blank."),
       mark("Make the outer size larger, or the borders, gaps or openings smaller.")},
      {"check-border-bevel", error, mark("a bevel runs off the board"),
       mark("The bevel makes a window wider on the face by its run on every side, so nothing would "
            "be "
            "left of the face there."),
       mark(
           "Make the border, or the strip beside the window of an under-mat, wider than the run.")},
      {"check-overlapping", error, mark("two openings overlap"),
       mark("Two windows that overlap become one."),
       mark("Give the gap between them a size, or fixed places that keep them apart.")},
      {"check-bevels-meet", error, mark("nothing is left of a bar between two bevels"),
       mark("On the face a bar is narrower than on the back by the run of both bevels."),
       mark("Make the gap wider.")},
      {"check-layer-order", error, mark("a window is larger than the one above it"),
       mark("An under-mat shows only where its window is smaller than the one above."),
       mark("Look at the reveals of the layer and of the opening.")},
      {"check-not-held", error, mark("the mat does not cover the picture's edge"),
       mark("The picture is held by the innermost back edge. Where that edge lies outside the "
            "picture, "
            "it falls through or its edge shows."),
       mark("Make the stated opening smaller than the picture, or float the picture.")},
      {"check-behind-lip", error, mark("the frame's lip hides an opening's edge"),
       mark("The rabbet's lip covers the outermost part of the mat. A border no wider than the lip "
            "leaves the opening's edge behind the moulding."),
       mark("Choose a wider border or a narrower lip.")},
      {"check-groove-bevel", error, mark("a groove runs into a bevel"),
       mark("A groove needs face on both sides of it. Its distance is counted from the opening's "
            "back "
            "edge."),
       mark("Make the distance more than the bevel's run and half the groove's width together, and "
            "keep "
            "it clear of the other openings.")},
      {"check-groove-beyond", error, mark("a groove runs off the board"),
       mark("A groove that meets the board's edge shows there as a notch."),
       mark("Make the border wider or the groove's distance smaller.")},
      {"check-picture-unused", warning, mark("a picture is in no opening"),
       mark("A picture that is listed but shown nowhere is most often one that was forgotten, and "
            "the "
            "customer counts them."),
       mark("Add an opening for it, or take it out of the list of pictures.")},
      {"check-picture-beyond", warning, mark("a picture reaches beyond the board"),
       mark("What the mat hides of the picture is wider than the border. It would have to be "
            "trimmed "
            "or folded, and an original is neither."),
       mark("Choose a wider border.")},
      {"check-pictures-overlap", warning, mark("two pictures overlap behind a bar"),
       mark(
           "Each picture reaches under the bar by its overlap. Where the bar is narrower than both "
           "overlaps, one picture lies on the other."),
       mark("Make the gap wider or the overlaps smaller; a valuable picture is never trimmed to "
            "fit.")},
      {"check-overlap-less", warning, mark("the mat covers a picture by less than was asked for"),
       mark("The stated size of the opening leaves less overlap than the picture's own statement, "
            "or "
            "than 1/8 in (common practice, no source) where it makes none."),
       mark("State a smaller opening, or the overlap that you mean.")},
      {"check-overlap-small", warning, mark("the mat covers a picture by little"),
       mark("Less than 1/16 in of overlap leaves no room for a picture that is not quite square or "
            "that moves with the weather."),
       mark("Cover it by more: 1/8 in is common practice, no source.")},
      {"check-float-hidden", warning, mark("the opening's shape hides edges of a floated picture"),
       mark("A floated picture shows its edges all around. In an opening that is not a rectangle "
            "its "
            "corners lie nearest to the mat's edge, or behind it."),
       mark("State a larger width and height for the opening, or make it a rectangle. Where the "
            "picture "
            "is itself of that shape, all of it shows.")},
      {"check-float-small", warning, mark("a floated picture has little board around it"),
       mark("Less than 1/8 in of board around a floated edge reads as a crooked overlap. Our own "
            "figure."),
       mark("Make the float's board, or the stated opening, wider.")},
      {"check-overcuts-meet", warning, mark("over-cuts nearly meet in a narrow bar"),
       mark(
           "The blade runs past each corner by about one board thickness (common practice, no "
           "source). Where less than one thickness is left between two over-cuts, the bar may tear "
           "and the cuts show."),
       mark("Make the gap wider, or cut short and free the corners by hand.")},
      {"check-bar-thin", warning, mark("a bar between openings is thin for its board"),
       mark("A bar narrower than six thicknesses of its board bends or breaks while the second "
            "opening "
            "is cut. Our own figure."),
       mark("Make the gap wider or choose a thicker board; leave the first fallout in place while "
            "the "
            "second opening is cut.")},
      {"check-border-stack", warning, mark("a border is narrower than the layers below it show"),
       mark("The under-mats' strips are then wider than the border that frames them, and their "
            "blanks "
            "have little to be taped by."),
       mark("Make the border wider or the reveals narrower.")},
      {"check-under-lip", warning, mark("the frame's lip hides much of a border"),
       mark("A border of which more than half lies under the moulding looks like a mistake."),
       mark("Choose a wider border or a narrower lip.")},
      {"check-reveal-hidden", warning, mark("an under-mat's face is not seen"),
       mark("The reveal is no more than the bevel's run, so of this layer only the bevel shows, or "
            "less."),
       mark("Make the reveal wider. Where a job reads reveals from line to line, add the run to "
            "what is "
            "to be seen.")},
      {"check-grooves-cross", warning, mark("two grooves cross or touch"),
       mark("Crossing grooves chip at the crossing."), mark("Give them distances of their own.")},
      {"check-bottom-light", warning, mark("the bottom border is smaller than the top one"),
       mark("A picture that sits low seems to slip out of its frame."),
       mark("Weight the bottom instead, unless it is meant.")},
      {"check-board-large", warning, mark("the board is larger than any usual sheet"),
       mark("Sheets are 32 x 40 in as a standard and 40 x 60 in as oversize (common practice and "
            "suppliers' statements)."),
       mark("Order a larger board before you promise a day, or make the mat smaller.")},
      {"check-cutter-wide", warning, mark("the board is too wide for the cutter"),
       mark("Each cut needs the board across the rail, its far side under or beside the cutter. A "
            "board "
            "that is wider than that does not lie flat, and the cut wanders."),
       mark("Name another cutter with --cutter, cut this mat by hand along a straight-edge, or "
            "make it "
            "smaller.")},
      {"check-cutter-long", warning, mark("a cut is longer than the cutter's rail"),
       mark("The head runs off the rail before the corner is reached, over-cut included. A cut "
            "that is "
            "begun again in the middle shows."),
       mark("Name another cutter with --cutter, or make the opening smaller.")},
      {"check-cutter-reach", warning, mark("a cut lies beyond the end of the rail"),
       mark("With its edge at the squaring arm the board's far lines lie where the blade does not "
            "get, however short they are."),
       mark("Name a cutter whose rail reaches as far with --cutter, or make the mat smaller.")},
      {"check-cutter-thick", warning, mark("the board does not go under the rail"),
       mark("The rail presses the board down along the cut."),
       mark("Name another cutter with --cutter, or use thinner board; a thick layer that is not "
            "seen is a spacer (spacer=\"yes\").")},
      {"check-cutter-deep", warning, mark("the blade does not cut through the board"),
       mark("At a bevel its way through the board is longer than the board is thick."),
       mark("Use thinner board or a steeper bevel, or name another cutter with --cutter.")},
      {"check-cutter-trim", warning, mark("an under-mat's trim cuts into its window"),
       mark("An under-mat that is taped behind the top mat is smaller by the trim on each side "
            "(1/8 in "
            "or "
            "3 mm where nothing else is said). What of its window lies beyond that edge cannot be "
            "cut."),
       mark("Make the border wider; or cut the mat with a smaller --trim, or with --separate.")},
      {"check-cutter-groove", warning, mark("the panel of a V-groove cannot be cut out"),
       mark("A groove is cut by cutting out the panel inside it from the back. Its edge, half the "
            "groove's width outside the groove's middle, would cross itself."),
       mark("Make the groove narrower, or let it follow a plainer shape.")},
      {"check-top-only", note, mark("the top layer lists its openings"),
       mark("Every opening is cut in the top layer, so the list changes nothing; a list that "
            "leaves one "
            "out is refused."),
       mark("Take `only` off the top layer; put it on the layers below that are to skip an "
            "opening.")},
      {"check-much-hidden", note, mark("the mat hides much of a picture"),
       mark("The stated opening hides more than 1/2 in of the picture on a side."),
       mark("Make sure that a signature, a date or a margin with writing is not among it.")},
      {"check-reveal-narrow", note, mark("a reveal is narrow"),
       mark("A strip below 1/8 in shows every unevenness between two sides. Our own figure."),
       mark("Make it wider where the cutter is not dead true; common practice is 1/4 in.")},
      {"check-off-rule", note, mark("a layer's lines lie between the steps of the rule"),
       mark("The lines of an under-mat are those of the mat above, moved by the reveal and by the "
            "bevel's run; a thickness that is no whole step of the rule moves them off it."),
       mark(
           "Mark them from the template, which shows them where they are. To set them by the rule, "
           "state a reveal that makes up for it.")},
      {"check-borders-least", note, mark("a border is below the least one of a course sheet"),
       mark("E. Stapel, \"Matting and presentation\": at least 2 in on boards to 11 x 14 in, at "
            "least 3 "
            "in on larger ones."),
       mark("Show the customer both; narrower borders are a matter of taste and of price.")},
      {"check-outline-point", note, mark("a point of an outline reaches beyond the opening's size"),
       mark("Sizes and borders are those of the outline's box with bevels and reveals around it. "
            "At a "
            "point both cuts run on until they meet, which is farther out."),
       mark("Make the border or gap on that side wider by as much, where it is to be seen at its "
            "full "
            "width, or blunt the point.")},
      {"check-core-alike", note, mark("a bevel hardly shows against its board"),
       mark("The core has nearly the colour of the face."),
       mark("Choose a board with another core where the bevel is to be seen as a line.")},
      {"check-board-thick", note, mark("a board is thicker than 8-ply"),
       mark("The blade has to reach through at the bevel's slant."),
       mark("Set its depth on scrap of the same board, and keep to what the cutter's maker "
            "allows.")},
      {"layout-gave-way", note, mark("a wish is not met"),
       mark("A rule that is a wish (strong, medium or weak) holds as far as what is stated, and "
            "wishes that are stronger, leave it room. The message says by how much it does not, "
            "and to what it gave way."),
       mark("State it as required to see what it cannot be had with, or take the wish away.")},
      {"layout-moved", note, mark("a size was moved to a step of the rule"),
       mark("Sizes that do not divide into whole steps of the job's increment are moved by the "
            "least "
            "amount that lets every part be read off the rule and the sums close; the remainder "
            "goes to "
            "the bottom border first, then to the outer borders."),
       mark("State a finer increment to move less, or sizes that divide.")},
  };
  return table;
}

}  // namespace mullion
