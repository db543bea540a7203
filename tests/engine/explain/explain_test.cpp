#include "engine/explain/explain.h"

#include <catch2/catch.hpp>
#include <filesystem>
#include <regex>
#include <set>

#include "tests/oracle/program.h"

using namespace mullion;

namespace {

// Words in quotation marks that look like codes and are none.
const std::set<std::string> other_words{"check-rules", "job-file", "page-said"};

// Every word of the sources that has the form of a code.
std::set<std::string> codes_in_sources() {
  const std::regex code(
      "\"((?:check|job|edit|layout|mat|cutting|cutter|sheets|stock|price|printer|template|picture|"
      "suggest|page|said|frame|frames|file|ledger|rack)-[a-z]+(?:-[a-z]+)*)\"");
  std::set<std::string> out;
  for (const char* folder : {"/engine", "/render", "/cli"}) {
    const std::string root = std::string(MULLION_SOURCE) + folder;
    for (const auto& file : std::filesystem::recursive_directory_iterator(root)) {
      const auto ending = file.path().extension();
      const bool is_table = file.path().string().find("/engine/explain/") != std::string::npos;
      if (is_table || (ending != ".cpp" && ending != ".h")) continue;
      const std::string text = oracle::read_file(file.path().string());
      for (std::sregex_iterator it(text.begin(), text.end(), code), end; it != end; ++it) {
        if (!other_words.contains((*it)[1])) out.insert((*it)[1]);
      }
    }
  }
  return out;
}

}  // namespace

TEST_CASE("every code that the program prints is explained") {
  const auto codes = codes_in_sources();
  CHECK(codes.size() > 100);
  for (const std::string& code : codes) {
    INFO(code);
    CHECK(explanation_of(code) != nullptr);
  }
}

TEST_CASE("every explanation is of a code that the program prints") {
  std::set<std::string> codes = codes_in_sources();
  codes.insert("usage");
  for (const Explanation& entry : explanations()) {
    INFO(entry.code);
    CHECK(codes.erase(std::string(entry.code)) == 1);
  }
}

TEST_CASE("an explanation says what it is, why it matters and what to do, in sentences") {
  for (const Explanation& entry : explanations()) {
    INFO(entry.code);
    CHECK_FALSE(entry.summary.empty());
    CHECK(entry.summary.back() != '.');
    CHECK((entry.reason.size() > 15 && entry.reason.back() == '.'));
    CHECK((entry.advice.size() > 10 && entry.advice.back() == '.'));
  }
}

// tests/package/install_test.sh finds each such path in what is installed.
TEST_CASE("an explanation names files where they are installed, not where their sources are") {
  static const std::regex path("[a-z]+(?:/[a-z_.-]+)+");
  int named = 0;
  for (const Explanation& entry : explanations()) {
    for (const std::string_view text : {entry.summary, entry.reason, entry.advice}) {
      const std::string words(text);
      for (std::sregex_iterator it(words.begin(), words.end(), path), end; it != end; ++it) {
        const std::string found = it->str();
        if (!std::filesystem::path(found).has_extension()) continue;
        INFO(entry.code << ": " << found);
        CHECK(found.starts_with("share/mullion/"));
        ++named;
      }
    }
  }
  CHECK(named > 0);
}

TEST_CASE("files that are read like jobs have their codes explained like those of jobs") {
  CHECK(explanation_of("prices-unknown-word") == explanation_of("job-unknown-word"));
  CHECK(explanation_of("cutter-unknown")->summary == "no cutter has that name");
  CHECK(explanation_of("prices-nothing") == nullptr);
  CHECK(explanation_of("") == nullptr);
}
