#pragma once

// Words that an option knows although others may be given, for completion and the manual page.

#include <string>
#include <vector>

namespace mullion::cli {

std::vector<std::string> cutter_names();  // beside which a cutter file may be named
std::vector<std::string> languages();     // to which a territory may be added

}  // namespace mullion::cli
