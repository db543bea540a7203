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

}  // namespace mullion::explain
