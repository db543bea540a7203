#pragma once

// What is made of a job for paper, each by the verb that the framer would type.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "cli/page/halt.h"
#include "engine/xml/problem.h"

namespace mullion::cli::page {

struct Paper {
  std::string name;  // of the file, such as "proof.pdf"
  std::string type;  // of its bytes
  bool is_document;  // shown by a browser by itself
};

const std::vector<Paper>& papers();
const Paper* paper_called(std::string_view name);  // null where there is none

// Values of the verbs' options; empty where not given.
struct PaperWishes {
  std::string shop, prices, stock, paper, cutter, printer, language;
};

// The words of the verb that writes it to the file; an estimate goes to standard output.
std::vector<std::string> words_for(const Paper& paper, const std::string& job,
                                   const std::string& file, const PaperWishes& wishes);

struct MadePaper {
  std::optional<std::string> bytes;
  Problems problems;  // errors where there are no bytes; else notes and warnings
};

MadePaper make_paper(const Paper& paper, const std::string& job, const PaperWishes& wishes,
                     Halt& halt);

// What a verb said on standard error, line by line (report.h).
Problems problems_in(std::string_view said);

// Checks the job and makes into the folder what is made at each save: proofs, template and cuts.
// What fails leaves the older file alone.
struct MadeAnew {
  std::string problems;  // in the words of the terminal
  std::size_t made = 0, failed = 0;
};
MadeAnew make_anew(const std::string& job, const std::string& folder, const PaperWishes& wishes,
                   Halt& halt);

}  // namespace mullion::cli::page
