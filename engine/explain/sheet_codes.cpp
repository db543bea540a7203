#include "engine/explain/families.h"

namespace mullion::explain {

std::vector<Explanation> sheet_codes() {
  using enum Severity;
  return {
      {"sheets-no-such-board", error, "the stock has no board of that name",
       "A blank can be cut from its own board only.",
       "Take the name that the message proposes, or add the board to the stock file."},
      {"sheets-incomplete", error, "the boards on hand do not suffice for every mat",
       "A mat is made whole or not at all; orders are served in the order in which they are named.",
       "Buy what the list says, or take what can be made with --commit --incomplete."},
      {"sheets-not-a-job", note, "a file among the jobs is another kind of file",
       "A pattern such as *.xml names the shop's own files too.",
       "Nothing: it is left out. A stock file is given with --stock."},
      {"sheets-blank-too-large", error, "a blank fits on no sheet of its board",
       "Its grain or its size, with the trim and the kerf, allows no place for it.",
       "Order a larger sheet, or let the blank turn where the grain does not matter."},
      {"sheets-trim-too-long", warning, "a sheet is left out because its edge cannot be trimmed",
       "Its damaged edge takes a longer cut than the cutter makes.",
       "Have it cut down, or take it out of the stock."},
      {"stock-no-price", error, "a sheet has no price though others have one",
       "It would count as free, and the plan would cut it first though it is not the cheapest.",
       "Write its price into the stock file; price=\"0\" says that it costs nothing."},
      {"stock-in-use", error, "another run is planning from this stock",
       "Both would cut the same fallout.", "Wait until it has ended."},
      {"stock-lock", error, "the stock file cannot be locked",
       "Without a lock two runs could plan the same sheet.",
       "Check that the folder can be written to."},
      {"stock-journal", error, "the note of an unfinished change to the stock is damaged",
       "The stock file may or may not hold that change.",
       "Compare both files by hand with what lies on the shelf, then remove the note."},
      {"stock-changed", error, "the stock was changed after a run that was cut short",
       "Finishing that run now would undo your change.",
       "Compare both files by hand with what lies on the shelf, then remove the note."},
      {"price-missing", error, "the price book has no price for this",
       "An estimate that leaves it out is too low, and the customer holds you to it.",
       "Add the price to the book, or take the name that the message proposes."},
      {"price-sheet-too-small", error, "the blank is larger than the sheet that the price is for",
       "Its price by the sheet would be too low.",
       "Give the larger sheet an entry of its own in the price book."},
  };
}

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
       "A plot is a page of the board's size, with the cut lines of its layers as groups.",
       "State no paper to divide it onto; for one layer state --layer."},
      {"template-kinds", error, "two kinds of template were asked for at once",
       "The whole board, its corners, marking sticks, a plot and light are made one at a time.",
       "Run it once for each of them."},
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
      {"printer-other-paper", note, "the printer was measured on other paper than this template's",
       "Papers and trays run through a printer differently.",
       "Measure the printer on this paper: `mullion printer --paper` with its name."},
  };
}

}  // namespace mullion::explain
