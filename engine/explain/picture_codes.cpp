#include "engine/explain/families.h"

namespace mullion::explain {

std::vector<Explanation> picture_codes() {
  using enum Severity;
  return {
      {"job-overlap-and-float", error, "a picture is both covered and floated",
       "Either the mat covers the picture's edge, or board shows all around it.",
       "Keep overlap or float."},
      {"job-overlap-too-large", error, "the overlap leaves nothing of a picture to see",
       "It is counted on each side, so less than half of the picture is the most.",
       "Check the unit and the number."},
      {"job-repeated-order", error, "two pictures have one place in the sequence",
       "A suggestion could not tell which of them comes first.",
       "Give each picture that has an order a number of its own."},
      {"job-picture-twice", error, "one picture is in two openings",
       "There is one original, and it can lie behind one opening only.",
       "List it twice where there are two prints, each with a name of its own."},
      {"job-free-picture", error, "a picture's opening is to find its own size",
       "A window larger than the picture does not hold it, and a smaller one hides some of it: how "
       "much is the framer's choice and the customer's, not the program's.",
       "Leave the size out, and the window fits the picture. State a smaller length to hide more "
       "of it. For board seen around the picture give the picture a float."},
      {"job-not-equal-sided", error, "a circle or square has two different sides",
       "The picture's own size, or the stated one, is not equal-sided.",
       "State the width alone, or use an ellipse or a rectangle."},
      {"job-not-of-this-shape", error, "an attribute belongs to another shape",
       "A rectangle has no radius and a circle has no corners; most often the shape is missing.",
       "Add the shape that the message names, or take the attribute out."},
      {"job-reveal-twice", error, "an opening has two reveals of one layer",
       "They may contradict one another.", "Keep one of them."},
      {"job-reveal-unseen", error, "a reveal stands where none is seen",
       "A reveal is the strip of an under-mat that shows. The top mat lies above all others, and a "
       "spacer is hidden.",
       "Put it on the layer below."},
      {"job-spacer-on-top", error, "a spacer is the top layer",
       "A spacer lifts the mat above it and is not to be seen.", "Put a mat above it."},
      {"job-window-twice", error, "a group and one within it join the same layer's windows",
       "The outer group has one window in that layer already.", "Keep one of them."},
      {"job-stray-gap", error, "a gap is not between two neighbours",
       "A gap is the bar between what comes before it and what comes after it.",
       "Move it between them, or use the row's or column's own gap."},
      {"job-arrange-one", error, "the arrangement is not one opening, row or column",
       "Several parts need to know whether they stand side by side or one above the other.",
       "Put them into a <row> or a <column>."},
      {"job-border-twice", error, "a border is stated twice", "They may contradict one another.",
       "Keep one of them."},
      {"job-outer-beyond-frame", error, "the mat is larger than the frame takes",
       "A mat that is larger than the rabbet has to be cut down after it is done.",
       "Make the outer size smaller, or leave it out: it then comes from the frame."},
  };
}

}  // namespace mullion::explain
