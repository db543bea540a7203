#include "engine/explain/families.h"

namespace mullion::explain {

std::vector<Explanation> edit_codes() {
  using enum Severity;
  return {
      {"edit-unknown-name", error, "an edit speaks of something that the job does not have",
       "The edit would have to guess which part is meant, and might change another one.",
       "Look at the name: parts have full stops between them, as in border.left, layer.2.colour or "
       "picture.dune.width. Nothing was changed."},
      {"edit-not-a-value", error, "an edit gives a value to something that has several",
       "A layer or a frame is no number; its colour or its width is.",
       "Name the attribute after one more full stop, as in layer.2.colour."},
      {"edit-without-id", error, "a rule would have to name a part that has no name",
       "The place or the size of this part is stated by a rule, and rules speak of parts by id.",
       "Give the part an id first; then state the measure again."},
      {"edit-layer-without-opening", error, "a layer would be left without an opening of its own",
       "The layer is cut for this opening alone. Without it the layer would be cut for all "
       "openings, which was not asked for.",
       "Take the layer out, or say for which other openings it is cut; then take the opening out."},
      {"edit-wrong-place", error, "a part cannot stand at that place",
       "Openings stand in rows and columns, layers among layers, grooves around parts.",
       "Name a place of the right kind; the message says which."},
      {"edit-wrong-part", error, "an edit cannot be made on this part",
       "Not everything can be moved, copied or grouped.",
       "Choose a part of the kind that the message names."},
      {"edit-within-itself", error, "a part cannot be moved into itself",
       "The place lies within the part that is to go there.", "Choose a place outside the part."},
      {"edit-last-opening", error, "the last opening cannot be taken out",
       "A mat without an opening shows nothing and cannot be laid out.",
       "Add the opening that takes its place first."},
      {"edit-last-layer", error, "the last layer cannot be taken out",
       "A mat is at least one board.", "Change the layer instead."},
      {"edit-is-there", error, "an edit adds what the job has already",
       "A job has one frame, one outer size, one customer.", "Change the one that is there."},
      {"edit-outermost", error, "the outermost row or column cannot be taken away",
       "All parts would be left without an order; several parts stand in a row or a column.",
       "Make a column of the row, or put the parts into another group."},
      {"edit-arrangement", error, "an arrangement is not one opening, row or column",
       "The arrangement of a job has one outermost part.",
       "Put several parts into one row or column."},
      {"edit-json", error, "an edit's JSON is not of the right form",
       "The program would have to guess what the edit is.",
       "Compare it with the forms that the comment before edit_from_json lists in the library's "
       "reference. Nothing was changed."},
      {"edit-changed-meanwhile", error, "the job file was changed meanwhile at the same place",
       "The edit was made on an older text. Making it now would overwrite somebody's words.",
       "Look at the job as it is now and make the edit again. Nothing was changed."},
      {"edit-nothing-to-undo", error, "there is no edit to undo or to do again",
       "All edits are undone already, or none was made here.", "Go on from the job as it is."},
      {"edit-history", warning, "the history of edits beside the job is damaged",
       "Its checksums do not fit: it was changed by hand, or the disk lost a part of it. The job "
       "itself is not concerned.",
       "Go on: the next edit sets the damaged file aside and begins a new history."},
  };
}

}  // namespace mullion::explain
