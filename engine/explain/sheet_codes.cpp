#include "engine/explain/families.h"

namespace mullion::explain {

std::vector<Explanation> sheet_codes() {
  using enum Severity;
  return {
      {"sheets-no-such-board", error, "the stock has no board of that name",
       "A blank can be cut from its own board only.",
       "Take the name that the message proposes, or add the board to the stock file."},
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

}  // namespace mullion::explain
