#pragma once

// Problems in words, on standard error, and the exit status that they come to.

#include <string>

#include "cli/verb.h"
#include "engine/xml/problem.h"

namespace mullion::cli {

// Of the worst of them: a file that cannot be used, a wrong option, a wrong job, or success.
int status_of(const Problems& problems);

// Prints each problem on a line of its own, followed by the line of the file that it is about with
// a caret under the place, and returns the status.
int report(const Problems& problems);

// Prints for each code among them, once, what to do about it (engine/explain).
void advise(const Problems& problems);

// Prints "error: " and the message, and returns the status.
int refuse(Exit status, const std::string& message);

// The status is bad_usage.
int bad_option(const char* option, const std::string& why);

// A problem with the code "usage", for functions that give a Result.
Problem option_problem(const std::string& option, const std::string& why);

}  // namespace mullion::cli
