#include "tests/oracle/english.h"

#include <algorithm>
#include <cctype>
#include <regex>

#include "tests/oracle/program.h"

namespace oracle {
namespace {

bool is_telling(const std::string& piece) {
  const auto letters = std::count_if(piece.begin(), piece.end(),
                                     [](unsigned char c) { return std::isalpha(c) != 0; });
  return letters >= 10 && std::regex_search(piece, std::regex("[A-Za-z]{2} [A-Za-z]{2}"));
}

// What stands between the places for arguments.
std::vector<std::string> pieces_of(const std::string& message) {
  static const std::regex place(" ?%[1-9] ?");
  std::vector<std::string> out;
  for (std::sregex_token_iterator it(message.begin(), message.end(), place, -1), end; it != end;
       ++it) {
    if (is_telling(*it)) out.push_back(*it);
  }
  return out;
}

std::vector<std::string> pieces_of_messages() {
  static const std::regex line("msgid(?:_plural)? \"(.+)\"");
  const std::string catalogue =
      read_file(std::string(MULLION_SOURCE) + "/engine/locale/translations/de.po");
  std::vector<std::string> out;
  for (std::sregex_iterator it(catalogue.begin(), catalogue.end(), line), end; it != end; ++it) {
    for (std::string& piece : pieces_of((*it)[1])) out.push_back(std::move(piece));
  }
  return out;
}

std::string on_one_line(const std::string& text) {
  std::string out;
  for (const char c : text) {
    const bool blank = std::isspace(static_cast<unsigned char>(c)) != 0;
    if (!blank) {
      out += c;
    } else if (!out.ends_with(' ')) {
      out += ' ';
    }
  }
  return out;
}

}  // namespace

std::vector<std::string> english_in(const std::string& text) {
  static const std::vector<std::string> pieces = pieces_of_messages();
  const std::string line = on_one_line(text);
  std::vector<std::string> out;
  for (const std::string& piece : pieces) {
    if (line.find(piece) != std::string::npos) out.push_back(piece);
  }
  return out;
}

}  // namespace oracle
