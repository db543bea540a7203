#pragma once

// An edit of a job as a value, and how it changes the text of the job file.
//
// The text is the truth: an edit changes what it speaks of and leaves every other byte as it is:
// comments, blanks, the order of attributes. What is new stands indented like its neighbours. The
// changes are exact, and so is their inverse: applied to the new text it gives the old one back.
//
// Names. Whatever an edit speaks of has a name of parts with full stops between them:
//
//   border  outer  frame  customer  title  note  wall  layers  arrange  rules     of the job
//   picture.ID   layer.N   rule.N                    layers and rules are counted from 1
//   opening.ID   row.ID   column.ID   ring.ID   places.ID   gap.ID
//                                                    ID alone where it is none of the words above
//   arrange.1    arrange.1.2    arrange.1.2.1        the outermost part of the arrangement, its
//                                                    second part, the first one of that
//   PART.gap.N                                       between the parts N and N + 1 of a row or
//                                                    column, with an element of its own or not
//   PART.groove.N                                    of an opening, a row, a column or arrange
//   OPENING.reveal.N                                 of layer N at one opening
//
// An attribute follows after one more full stop: border.left, layer.2.colour, picture.dune.width,
// arrange.1.gap, dune.reveal.2.left. The attributes of the job stand alone: reference, date,
// quantity, revision, unit, increment; and title, note, customer, wall and a gap are values
// themselves. An opening without an id goes by its usual one: its picture's, else opening-7.
// Measures that rules alone can state are stated by a rule: ID.left, .top, .right, .bottom,
// .centre, .middle, and the width and height of a row, a column or a ring. A part of places has
// left, top, right and bottom as attributes of its own; move-left and its like, centre of a part
// of a ring, and across, down, first and gap of the ring are attributes as any.

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include "engine/edit/text_change.h"
#include "engine/job/job.h"

namespace mullion::edit {

// Name and value, as the job file writes them.
using Attributes = std::vector<std::pair<std::string, std::string>>;

// States, changes or frees one value. "free" frees a measure, whichever attributes stated it: the
// left border is no longer `left` nor one of `sides` or `all`. Nothing takes the attribute (or
// title, note, wall ...) out of the file. What cannot stand beside the new value goes: overlap for
// float, sides for left, the sides of a reveal for all of it, a fixed rule's length follows. A new
// id is followed by all that mention it. A new unit is written behind the lengths that named none,
// so that all sizes stay.
struct State {
  std::string name;
  std::optional<std::string> value;
};

// Where a part goes. Beside a part of a ring or of places only before and after are places; there
// is none to the left or right of it. What only its old group understands (move-left, left, centre
// and their like) does not go along. left, right, above and below make a row or a column around
// both where the part of that name does not stand in one. first_in and last_in: a row or a column.
struct Position {
  enum class Where { before, after, left, right, above, below, first_in, last_in };
  Where where = Where::after;
  std::string part;
};

// Adds an element: picture, opening, layer, frame, groove, or a rule by its kind (same-size ...).
// A picture comes with its opening, which has the attributes `opening`, where the job is arranged;
// it is named after its image or counted where no id is stated. Without a position an opening comes
// to the end of the outermost row or column (one is made around a single opening), others to the
// end of their like. The position of a layer, picture or rule is before or after another one; that
// of a groove is `last_in` an opening, a row, a column or arrange.
struct Add {
  std::string element;
  Attributes attributes;
  Attributes opening;
  std::optional<Position> at;
};

// Removes whatever has a name. A picture goes with its opening; a row or column that is left empty
// goes too, and one that is left with a single part gives way to it where nothing is said of it but
// gap and align. Mentions in rules go, and with them rules that are left without enough names;
// numbers of layers are counted anew. Refused: the last opening, the last layer, and an opening
// for which alone a layer is cut.
struct Remove {
  std::string part;
};

// One more beside it: picture (with its opening), opening, layer, groove or rule. `id` is the new
// picture's or opening's name; a free one is found where it is empty.
struct Copy {
  std::string part;
  std::string id;
};

// An opening, a row or a column to any place outside itself; a layer, a picture or a rule before or
// after another one.
struct Move {
  std::string part;
  Position to;
};

// Makes a row or a column of parts, in this order, where the first of them stands.
struct MakeGroup {
  Along along = Along::row;
  std::vector<std::string> parts;
  Attributes attributes;
};

// Makes a column of a row, or a row of a column; a ring and places cannot be turned into one;
// `align` keeps its meaning along the other way.
struct TurnGroup {
  std::string group;
};

// Takes a row or column away and leaves its parts where it stood. Refused for the outermost one of
// several parts.
struct Dissolve {
  std::string group;
};

// Takes an arrangement: the text of the element arrange, with or without its tag. An opening of a
// picture that has one already keeps its text: id, shape, grooves and reveals. Openings without a
// picture that the text does not have are kept, below the others.
struct Arrange {
  std::string text;
};

// Changes of the text itself, such as the inverse of another edit.
struct Change {
  TextChanges changes;
};

struct Several;

using Edit = std::variant<State, Add, Remove, Copy, Move, MakeGroup, TurnGroup, Dissolve, Arrange,
                          Change, Several>;

// One after the other, as one edit: what is not valid in between may be in the end.
struct Several {
  std::vector<Edit> edits;
};

struct EditedText {
  std::string text;
  TextChanges changes;  // from the text before
};

// Refused, with the reason: what has no such name (with a near one), what would not give a valid
// job file, a change of what does not stand there. Problems that the text has already stay its own.
// `file` is used in messages. Codes "edit-..." and those of the job file.
Result<EditedText> apply(const std::string& text, const Edit& edit, const std::string& file = {});

Edit inverse_of(const EditedText& edited);

// The edit was made on `base`, and the text has changed since: its changes are made where they
// belong in `text`, or refused ("edit-changed-meanwhile").
Result<EditedText> apply_meanwhile(const std::string& base, const Edit& edit,
                                   const std::string& text, const std::string& file = {});

// The edit by which a job comes to another one that suggests how it is arranged: arrangement, outer
// size, and how its pictures are turned.
Edit taking(const Job& job, const Job& suggestion);

// The names of openings and of groups, in the order of Layout::openings and Layout::groups.
struct PartNames {
  std::vector<std::string> openings, groups;
};
PartNames names_of(const Job& job);

}  // namespace mullion::edit
