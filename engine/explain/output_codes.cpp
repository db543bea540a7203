#include "engine/explain/families.h"

namespace mullion::explain {

std::vector<Explanation> output_codes() {
  using enum Severity;
  return {
      {"picture-unreadable", error, "an image cannot be read",
       "The proof would show the customer an empty opening. It is not there, is neither JPEG nor "
       "PNG, or is damaged.",
       "Open it in a viewer and save it again as JPEG or PNG, or take it off the picture."},
      {"template-layer", error, "the job has no layer of that number",
       "Layers count from 1 at the top.", "Choose one that there is, or leave --layer out."},
      {"template-paper", error, "the template cannot be divided onto that paper",
       "Too little of the sheet is left between its margins and the strips that are joined.",
       "Choose a larger paper or narrower margins."},
      {"template-format", error, "this template is made as a PDF alone",
       "Sheets that are joined need pages at full scale.", "Write to a file that ends in .pdf."},
      {"template-plot", error, "a plot cannot be made of this",
       "A plot holds one layer on a page of the board's size.",
       "State --layer, and no paper to divide it onto."},
      {"template-kerf", error, "a plot's kerf does not fit the mat",
       "Its lines are moved by half the kerf, and something is narrower than that.",
       "State a smaller kerf."},
      {"printer-bad-length", error, "a length of a printer file cannot be read",
       "The template is corrected by it.", "Write it as on the measuring page, such as 199.6 mm."},
      {"printer-missing-element", error, "a printer file does not hold one set of measures",
       "The template is corrected by what was measured.",
       "Print the page of `mullion printer`, measure it, and let the program write the file."},
      {"printer-reading", error, "what was measured is not possible for a printer",
       "A correction from a wrong reading makes every mat wrong.",
       "Measure again, from line to line, and check the unit."},
  };
}

}  // namespace mullion::explain
