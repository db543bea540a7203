#include "engine/explain/families.h"

namespace mullion::explain {

std::vector<Explanation> page_codes() {
  using enum Severity;
  return {
      {"said-size", error, "a size is not said as sizes are",
       "Pictures are cut for by their width and height, so both must be understood exactly.",
       "Write one size a line: 8x10, 8 1/2 x 11 *3 for three of them, 21 x 29,7 cm, with a name "
       "behind it if you like."},
      {"page-not-arranged", note, "pictures are there, and no arrangement yet",
       "A mat is laid out from rows and columns of openings.",
       "Take one of the suggestions, or put the pictures into rows and columns."},
      {"page-no-job", error, "the job's file is not there",
       "The page shows files of the folder that was opened, and this one was moved, renamed or "
       "deleted, or leads out of the folder.",
       "Put the file back, or open another job."},
      {"page-no-drawing", error, "there is no drawing of that",
       "Only what can be laid out is drawn, and only a layer that the job has.",
       "Mend what is wrong with the job first."},
      {"page-no-picture", error, "a picture cannot be shown",
       "Its file is not there, is damaged, or lies outside the folder that was opened.",
       "Drop the picture's file again, so that it is copied beside the job."},
      {"page-outside", error, "a job names a file outside the opened folder",
       "By a link, a file elsewhere would come on paper that leaves the shop.",
       "Copy the file into the job's folder."},
      {"page-paper", error, "a paper could not be made",
       "The verb that makes it ended without saying why.",
       "Make it on the command line to see what it says."},
      {"page-no-prices", error, "there is no price book",
       "Every price is the shop's own; without a book there is none.",
       "Put prices.xml beside the jobs or in their folder shop, or name it with --prices."},
      {"page-choices", error, "too many versions stand side by side",
       "A customer chooses well among a few, and more would be too small to see.",
       "Choose six of them at most."},
      {"page-busy", error, "too much is asked of the server at once",
       "Each search and each paper takes a processor for a while.",
       "Stop a search or close a tab, and try again."},
      {"page-no-shop", error, "there is no shop file to keep a finish in",
       "Finishes stand in the shop's own file, which also says who the shop is on its papers.",
       "Say the shop's name, and the page begins shop.xml; or write one as share/mullion/schema/shop.xsd "
       "says."},
      {"page-browser", note, "no browser could be started",
       "The desktop's own way to show an address (xdg-open) is not there.",
       "Open the address that the program printed in a browser on this machine."},
      {"page-address", error, "there is no such address on the page's server",
       "The page asks for addresses that it knows, so somebody typed one or the page is older than "
       "the program.",
       "Load the page anew."},
      {"page-method", error, "an address is asked in a way that it does not answer",
       "What is shown is read, and what changes a job is sent; this was mixed up.",
       "Load the page anew."},
      {"page-body", error, "what was sent with a request cannot be used",
       "It is too long or not of the form that the server reads.",
       "Load the page anew; pictures may have up to 96 MB."},
      {"page-code", error, "a code is asked for that the program does not print",
       "Only codes of its own messages are explained.", "Type `mullion explain` to list them all."},
  };
}

}  // namespace mullion::explain
