#include "engine/explain/families.h"

namespace mullion::explain {

std::vector<Explanation> mat_codes() {
  using enum Severity;
  return {
      {"layout-conflict", error, mark("what the job asks for cannot be had together"),
       mark("The message lists the statements that do not fit, no more than it takes, with their "
            "sum; "
            "the others may stay. A holding bar or border is as narrow as one may become that is "
            "not "
            "stated: it keeps a thickness of board beyond bevels, over-cuts and the frame's lip, "
            "and "
            "the pictures behind it lie side by side."),
       mark("Change one of those listed. Where the message proposes changes, any one of them is "
            "enough, "
            "unless it says that other numbers do not fit either; it has been laid out and has "
            "passed "
            "the checks. A stated size may be narrower than one that holds.")},
      {"layout-overlap", error,
       mark("a ring, a place or a moved part lays openings on one another"),
       mark("On a ring, at places on the mat and beside their own place parts keep no distance of "
            "themselves."),
       mark("Make the ring larger or its parts smaller, or measure the place anew; where the "
            "message "
            "proposes a ring, all of it fits.")},
      {"layout-too-near", error, mark("a ring, a place or a moved part leaves too narrow a bar"),
       mark("A bar keeps a thickness of board beyond bevels and over-cuts, and the pictures behind "
            "it lie side by side; or the job states a wider least bar."),
       mark("Make the ring larger or its parts smaller, or measure the place anew; where the "
            "message "
            "proposes a ring, all of it fits.")},
      {"mat-no-window", error, mark("the reveals leave no window"),
       mark("Each under-mat takes its reveal and its bevel's run off the opening on both sides."),
       mark("Make the reveals smaller, or give the opening fewer layers.")},
      {"mat-shape", error, mark("an opening's shape cannot be made at its size"),
       mark("The opening is smaller than its corners, arch or outline need, or its parallel line "
            "at the "
            "bevel's run crosses itself."),
       mark("Make the opening larger, or the corners smaller.")},
      {"mat-outline-file", error, mark("an outline's file cannot be used"),
       mark("A free outline is one closed path of lines and curves in an SVG file."),
       mark("Look at the place that the message names; text has to be turned into paths before.")},
      {"mat-uneven-reveal", error, mark("a shape with curves or slants has reveals that differ"),
       mark("Only straight level sides can be moved by different amounts; a curve would change its "
            "form. The foot of an arch is such a side."),
       mark("State one reveal for all sides of that opening; an arch may have another at its "
            "bottom.")},
      {"mat-top-skips", error, mark("the top layer leaves an opening out"),
       mark("What is not cut in the top mat is not seen at all."),
       mark("Take `only` off the top layer.")},
      {"mat-part-of-window", error,
       mark("a layer is cut for some of the openings in a shared window"),
       mark("They are seen through one window, of that layer or of one above it, so the layer's "
            "edge "
            "would "
            "end in mid-air."),
       mark("Name all of them in `only`, or none; or leave `window` out.")},
      {"mat-joined-shape", error, mark("an opening above a joined window is no rectangle"),
       mark("The sides of a window that joins a group are straight and level, and its reveal "
            "follows "
            "the edges above it."),
       mark("Make the group's openings rectangles, or give them windows of their own.")},
      {"mat-joined-apart", error, mark("openings that share a window do not lie side by side"),
       mark("The window passes from one opening to the next behind the bar between them. Where the "
            "one "
            "ends above or beside the other there is no such way."),
       mark("Move the openings, or leave `window` out, so that each has a window of its own.")},
      {"mat-groove-in-window", error, mark("a groove is around an opening with no board around it"),
       mark("Where a group has one window in the top mat there is no bar to cut a groove in."),
       mark("Put the groove around the group.")},
  };
}

std::vector<Explanation> suggest_codes() {
  using enum Severity;
  return {
      {"suggest-none", error, "there are no pictures to arrange",
       "Suggestions are made for the pictures that the job lists.",
       "List each picture with its size in <pictures>."},
      {"suggest-many", error, "there are more pictures than suggestions are made for",
       "More openings than 48 in one mat leave bars that are hard to keep even.",
       "Divide them over two mats, or arrange them in rows and columns yourself."},
      {"suggest-torn-group", error, "a group and the sequence of pictures contradict one another",
       "A group's pictures stand together, and the sequence would put another between them.",
       "Number the pictures of a group one after the other, or take the order off some."},
      {"suggest-nothing-fits", error, "no arrangement fits on the board",
       "Either every arrangement of rows and columns with the least border and gaps is larger than "
       "the board or frame, which the program has proved, or the message says that none was found "
       "among so many that were looked at.",
       "Take the border, gaps or board that the message names, by --border, --gap or another "
       "frame; or "
       "let pictures turn with turn=\"yes\"."},
      {"suggest-cutter", warning, "the cutter cannot cut an arrangement that was found",
       "A board may be too wide for the cutter, a cut too long or beyond its rail, or a layer too "
       "thick: such an arrangement is left out while others can be cut.",
       "Name your own cutter by --cutter, a smaller board or frame, or more arrangements by -n; if "
       "all are told so, have the mat cut elsewhere."},
      {"suggest-left-aside", note, "a suggestion does not keep something that the job states",
       "Suggestions are arrangements of their own: borders follow from them and from the board, "
       "and "
       "rules speak of openings that lie otherwise.",
       "State borders and rules anew in the suggested job, or ask for wider ones by --border."},
      {"suggest-elsewhere", warning, "suggested jobs are written away from their images",
       "A job file names its images from its own folder, so proofs of the copies will not find "
       "them.",
       "Write them beside the job, or copy the images too."},
      {"frames-none", error, "no frame size on the list takes the job",
       "With the wished borders around its arrangement the mat is larger than every size of the "
       "list.",
       "Allow less with --border, name a longer list with --sizes, or have a frame made to the "
       "size "
       "that the message names."},
      {"frames-not-arranged", error, "a frame is asked for before there is an arrangement",
       "How large a frame several pictures need depends on how they are arranged.",
       "Let `mullion suggest --stock` find arrangement and frame together, or write an <arrange>."},
      {"frame-sizes", error, "a list of frame sizes cannot be read",
       "A list is <frame-sizes unit=\"in\"> with a <size width=\"8\" height=\"10\"/> for each.",
       "Mend the place that the message names."},
  };
}

}  // namespace mullion::explain
