#pragma once

// A program from its first word to its exit status.

#include <initializer_list>

#include "cli/verb.h"

namespace mullion::cli {

using AddVerb = void (*)(CommandLine& program);

// Does what the words ask for in place of this program; returns only where it cannot.
using HandOver = int (*)(char** argv);

// Whatever is thrown is a fault of the program, and told as such. With `hand_over`, command lines
// that begin with neither --version nor one of the verbs are handed over.
int run(int argc, char** argv, std::initializer_list<AddVerb> verbs, HandOver hand_over = nullptr);

}  // namespace mullion::cli
