#pragma once

// How the pages of a written PDF are sent to a printer as they are: one side, no scaling, on their
// own paper.

#include <string>
#include <vector>

#include "render/paper/document.h"

namespace mullion::cli {

// One line for each size of paper, such as
//     lp -o media=na_letter_8.5x11in -o sides=one-sided -o print-scaling=none -P 1-5 mat.pdf
// Names of media, sides and print scaling are those of IPP (PWG 5101.1, RFC 8011 and PWG 5100.13);
// a page that lies across is on the same paper as an upright one.
std::vector<std::string> print_commands(const std::string& file,
                                        const std::vector<paper::Page>& pages);

}  // namespace mullion::cli
