#pragma once

// Whether a text of another language has words of ours in it, for tests.

#include <string>
#include <vector>

namespace oracle {

// The pieces of our sources' English messages, of two words and ten letters or more, that stand in
// the text; line breaks of the text count as blanks. The messages are read from a catalogue, which
// a test keeps complete.
std::vector<std::string> english_in(const std::string& text);

}  // namespace oracle
