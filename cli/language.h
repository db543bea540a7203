#pragma once

// The language of what a verb puts on paper: by an option, else by the environment.

#include "cli/command_line.h"
#include "engine/locale/locale.h"

namespace mullion::cli {

// What LC_ALL names, else the variable of the category, such as LC_MESSAGES, else LANG: the order
// of POSIX (IEEE 1003.1, Base Definitions, 8.2). The locale need not be installed. English in that
// territory where the language is not known.
Locale environment_locale(const char* category);

// --language, with the environment's as default.
void add_language_option(const Verb& verb, Locale& locale);

}  // namespace mullion::cli
