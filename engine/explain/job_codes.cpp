#include "engine/explain/families.h"

namespace mullion::explain {

std::vector<Explanation> file_codes() {
  using enum Severity;
  return {
      {"usage", error, "an option of the command line is wrong",
       "The program would have to guess what you meant, and a guess costs board.",
       "Look at `mullion VERB --help`; nothing was written."},
      {"file-read", error, "a file cannot be read",
       "It is not there, may not be read, is a folder, or is larger than such a file can sensibly "
       "be.",
       "Check the name and the folder. Paths inside a job file are seen from the job file's own "
       "folder."},
      {"file-write", error, "a file cannot be written",
       "The folder is not there, may not be written to, or the disk is full. What was there before "
       "is unharmed.",
       "Make room or choose another folder, and run the command again."},
  };
}

std::vector<Explanation> job_codes() {
  using enum Severity;
  return {
      {"job-xml", error, "the file is not well-formed XML",
       "An element is not closed, a quotation mark is missing, or something stands where nothing "
       "can. What follows has no certain meaning, so nothing is read.",
       "Mend the place that the message names; each <name ...> needs its </name> or ends in />."},
      {"job-too-large", error, "the file is larger than such a file may be",
       "No job of a shop comes near the limit; most often this is another file by mistake.",
       "Check that you named the right file."},
      {"job-too-deep", error, "elements stand within elements too deep",
       "Rows of columns of rows need a few levels; so many come from a damaged or hostile file.",
       "Flatten the arrangement: a row in a row is one longer row."},
      {"job-too-many", error, "there are more of these than the limit",
       "Limits keep a damaged or hostile file from using up the computer's memory.",
       "Divide the job into several."},
      {"job-too-few", error, "a list has too few names in it",
       "A rule that compares needs something to compare with.",
       "Name at least as many as the message asks for, with blanks between them."},
      {"job-too-long", error, "a text is longer than the limit",
       "It would not fit on the pages that show it.", "Shorten it."},
      {"job-encoding", error, "the file is not in UTF-8",
       "Letters with accents would come out wrong on the proof that the customer signs.",
       "Save the file as UTF-8; most editors offer it beside the file's name."},
      {"job-doctype", error, "the file has a document type declaration",
       "It can make a small file unfold into a very large one, and a job has no use for it.",
       "Take out the line that begins with <!DOCTYPE."},
      {"job-entity", error, "an & stands where XML allows none",
       "In XML the sign & begins a name such as &amp;.", "Write &amp; for the sign itself."},
      {"job-version", error, "the file is of a version that this program does not know",
       "Words may mean something else there, and a wrong reading costs board.",
       "Write version=\"1\", or use the program that wrote the file."},
      {"job-unknown-element", error, "an element is not known here",
       "A misspelt element would be passed over, and its border or opening with it.",
       "Take the name that the message proposes, or look in `mullion manual job-file` or in "
       "share/mullion/schema/job.xsd; where it is the outermost element, check that you named the "
       "right file."},
      {"job-unknown-attribute", error, "an attribute is not known here",
       "A misspelt attribute would be passed over, and its size with it.",
       "Take the name that the message proposes, or look in `mullion manual job-file` or in "
       "share/mullion/schema/job.xsd."},
      {"job-unknown-word", error, "a word is not one of those that may stand here",
       "Only the words that are listed have a meaning.", "Choose one that the message names."},
      {"job-letters", error, "letters are asked for as an opening",
       "Letters have islands that fall out, such as the middle of an O, and are not cut from a "
       "font.",
       "Cut a window in a simple shape for a printed title, or draw the form of one letter as a "
       "path "
       "in an SVG file and use shape=\"outline\"."},
      {"job-turned-opening", error, "an opening or a group is to be turned by an angle",
       "Every line is set with the cutter's stops, along the edges of the board; a turned picture "
       "is most often a picture that hangs crooked.",
       "Leave the angle out. Where the window itself is to stand at an angle, draw it as a path in "
       "an SVG file and use shape=\"outline\"."},
      {"job-nested-opening", error, "an opening holds another one",
       "What lies within a window falls out of the board, so that a mat within a mat and the inner "
       "piece of a letter are pieces of their own.",
       "Take the inner opening out. State the inner mat in a job file of its own, cut it, and "
       "mount "
       "it on the backing behind the window."},
      {"job-missing-element", error, "an element is missing",
       "Without it the job cannot be laid out.", "Add what the message asks for."},
      {"job-missing-attribute", error, "an attribute is missing",
       "Without it there is no size, name or choice to work with.",
       "Add what the message asks for."},
      {"job-repeated-element", error, "an element stands twice where one is expected",
       "Two statements of one thing may contradict one another.", "Keep one of them."},
      {"job-repeated-attribute", error, "an attribute stands twice in one element",
       "Two statements of one thing may contradict one another.", "Keep one of them."},
      {"job-stray-text", error, "text stands where only elements may",
       "Loose text most often comes from a tag that was not closed.",
       "Take it out, or put it in <note>."},
      {"job-bad-length", error, "a length cannot be read",
       "Lengths are cut as they are written, so nothing is guessed.",
       "Write 8, 8.5, 8 1/2, 8-1/2 in, 215.9 mm or 21.59 cm."},
      {"job-measured", note, "a measured length was taken to the nearest tick",
       "Lengths are whole numbers of 1/40640 in (0.000625 mm); a gauge reads others too. Sizes "
       "that "
       "are cut stay exact, and this one is off by less than any gauge shows.",
       "Nothing is to be done."},
      {"job-bad-number", error, "a number is not one that may stand here",
       "It is no number, or outside of what makes sense.",
       "Write a number between those that the message names."},
      {"job-out-of-range", error, "a value is too small or too large",
       "A size of nothing cannot be cut, and no board is so large.",
       "Check the unit: a job in inches takes 215.9 as inches unless mm is written."},
      {"job-bad-increment", error, "the increment is none that a rule has",
       "Sizes are brought to whole steps of it, so that they can be read off your rule.",
       "Take the finest division that you can set on your cutter."},
      {"job-bad-date", error, "a date is not a day of the calendar",
       "The proof and the labels carry it.", "Write year-month-day, such as 2026-03-02."},
      {"job-bad-email", error, "an address is none that mail can go to",
       "The proof could not be sent.", "Write an address such as name@example.org."},
      {"job-bad-colour", error, "a colour cannot be read",
       "The proof would show the customer another board.",
       "Write # and six digits: two each for red, green and blue, such as #ece5d4."},
      {"job-bad-path", error, "a path leaves the folder of the job file",
       "A job that comes by mail must not reach other files of yours.",
       "Put the file into the job file's folder or below it, and write / between folders."},
      {"job-bad-id", error, "a name has signs that a name may not have",
       "Rules, layers and openings speak of things by their names, with blanks between them.",
       "Use letters, digits, hyphens and underscores."},
      {"job-reserved-id", error, "a name has a meaning of its own in rules",
       "mat, outer and border name the whole mat and its borders.", "Choose another name."},
      {"job-repeated-id", error, "two things have one name",
       "A rule that speaks of that name would mean either.", "Give each a name of its own."},
      {"job-repeated-name", error, "a rule names one thing twice",
       "A thing is always equal to itself, so another one was meant.",
       "Name the one that you meant."},
      {"job-unknown-id", error, "a name is that of nothing in the job",
       "Most often it is misspelt.", "Take the name that the message proposes."},
      {"job-unknown-measure", error, "a rule speaks of a measure that there is not",
       "Measures are such as border.left, outer.width, NAME.top, or the name of a gap.",
       "Take the measure that the message proposes."},
      {"job-bad-price", error, "a price cannot be read", "A wrong price is worse than none.",
       "Write it with a decimal point, such as 12.50."},
      {"job-bad-amount", error, "an amount of money cannot be read",
       "A wrong price is worse than none.",
       "Write it with a decimal point and no more decimals than the currency has."},
      {"job-bad-currency", error, "a currency has no code of three capital letters",
       "The estimate would not say which money it means.", "Write the code, such as EUR."},
  };
}

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
      {"job-moved-twice", error, "a part is moved both ways",
       "A part lies to the left or to the right of its place, and above or below it.",
       "Keep one of the two."},
      {"job-ring-centre", error, "a ring has several parts in its middle",
       "One part at most lies in the middle of a ring.",
       "Put them into a <row> or a <column> with centre=\"yes\"."},
      {"job-ring-in-window", error, "a ring stands in a row or column with one window",
       "One window for several openings follows those that lie beside each other.",
       "Leave out `window`, or use rows and columns within it."},
      {"job-arrange-one", error, "the arrangement is not one part",
       "Several parts need to know whether they stand side by side or one above the other.",
       "Put them into a <row>, a <column>, a <ring> or <places>."},
      {"job-border-twice", error, "a border is stated twice", "They may contradict one another.",
       "Keep one of them."},
      {"job-outer-beyond-frame", error, "the mat is larger than the frame takes",
       "A mat that is larger than the rabbet has to be cut down after it is done.",
       "Make the outer size smaller, or leave it out: it then comes from the frame."},
  };
}

}  // namespace mullion::explain
