#include "engine/explain/families.h"

namespace mullion::explain {

std::vector<Explanation> suggest_codes() {
  using enum Severity;
  return {
      {"suggest-none", error, "there are no pictures to arrange",
       "Suggestions are made for the pictures that the job lists.",
       "List each picture with its size in <pictures>."},
      {"suggest-many", error, "there are more pictures than suggestions are made for",
       "More openings than 24 in one mat leave bars that are hard to keep even.",
       "Divide them over two mats, or arrange them in rows and columns yourself."},
      {"suggest-torn-group", error, "a group and the sequence of pictures contradict one another",
       "A group's pictures stand together, and the sequence would put another between them.",
       "Number the pictures of a group one after the other, or take the order off some."},
      {"suggest-nothing-fits", error, "no arrangement fits on the board",
       "With the least border and the gap around each picture, all of them are larger than the "
       "board or frame.",
       "Take the border, gaps or board that the message names, by --border, --gap or another "
       "frame; or "
       "let pictures turn with turn=\"yes\"."},
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
