// Random edits of many jobs: each is undone to the byte, says what the job in memory says, and
// leaves alone what it does not speak of.

#include <catch2/catch.hpp>
#include <cstdlib>
#include <filesystem>
#include <map>
#include <regex>
#include <set>

#include "engine/edit/edit_json.h"
#include "engine/job/read.h"
#include "engine/job/write.h"
#include "tests/engine/edit/random_edit.h"
#include "tests/engine/layout/wild_job.h"
#include "tests/oracle/program.h"

using namespace mullion;
using namespace mullion::edit;

namespace {

// All jobs of the gallery and of the tests' data.
std::vector<std::string> jobs_on_disk() {
  std::vector<std::string> out;
  for (const std::string& folder :
       {oracle::gallery(""), oracle::test_data("jobs"), oracle::test_data("worked")}) {
    std::vector<std::string> paths;
    for (const auto& entry : std::filesystem::directory_iterator(folder)) {
      if (entry.path().extension() == ".xml") paths.push_back(entry.path().string());
    }
    std::sort(paths.begin(), paths.end());
    for (const std::string& path : paths) out.push_back(oracle::read_file(path));
  }
  return out;
}

// A random job as a text of few lines, or of one statement a line.
std::string random_text(std::mt19937& random) {
  const test::WildJob wild = test::wild_job(random, 9);
  const bool tidy = random() % 2 == 0;
  if (tidy) return write_job(wild.job());
  std::string lines =
      std::regex_replace(wild.lines, std::regex("id=\"(p\\d+)\" picture=\"\\1\""), "picture='$1'");
  lines = std::regex_replace(lines, std::regex("<layer "), "<!-- a board --><layer\n  ");
  return "<job version=\"1\" " + wild.attributes + ">\n<!-- by chance -->\n" + lines + "</job>";
}

std::multiset<std::string> comments_of(const std::string& text) {
  std::multiset<std::string> out;
  for (std::size_t at = text.find("<!--"); at != std::string::npos; at = text.find("<!--", at)) {
    const std::size_t end = text.find("-->", at);
    std::string comment;
    for (const char c : text.substr(at, end - at)) {
      if (c != ' ' && c != '\n') comment += c;  // it may stand further in or out
    }
    out.insert(comment);
    at = end;
  }
  return out;
}

// More where the environment asks for them, from another beginning: MULLION_RANDOM_EDITS=1000000.
std::size_t edits_to_try() {
  const char* const asked = std::getenv("MULLION_RANDOM_EDITS");
  return asked == nullptr ? 10'000 : std::stoul(asked);
}

struct Counts {
  int made = 0, refused = 0;
  std::map<std::string, int> by_kind;
};

// Refusals that are a matter of our own rules, not of the job file.
bool is_of_the_edit(const Problems& problems) {
  return problems.front().code.starts_with("edit-");
}

// A job file, and what it says.
struct Edited {
  std::string text;
  Job job;
};

void try_edit(Edited& state, std::mt19937& random, Counts& counts) {
  std::string& text = state.text;
  const Job& job = state.job;
  const test::RandomEdit random_edit = test::random_edit(random, job);
  const std::string json = edit_to_json(random_edit.edit);
  INFO(text);
  INFO(json);
  CHECK(edit_to_json(edit_from_json(json).value()) == json);

  test::Model model(job);
  const bool may = random_edit.in_memory(model) && model.finish();
  const auto after = apply(text, random_edit.edit, "job.xml");
  const std::string kind = json.substr(0, json.find(',')) + (after ? "" : " refused");
  ++counts.by_kind[kind];
  if (!after) {
    ++counts.refused;
    INFO(to_string(after.error().front()));
    if (may && !is_of_the_edit(after.error())) {
      CHECK_FALSE(parse_job(write_job(model.job()), "job.xml"));
    } else {
      CHECK_FALSE(may);
    }
    return;
  }
  ++counts.made;
  INFO(after->text);
  REQUIRE(may);
  Job now = parse_job(after->text, "job.xml").value();
  CHECK(test::said(now) == test::said(model.job()));

  CHECK(with_changes(text, after->changes) == after->text);
  CHECK(with_changes(after->text, inverse(after->changes)) == text);
  if (counts.made % 10 == 0) {
    const auto back = apply(after->text, inverse_of(*after), "job.xml");
    REQUIRE(back);
    CHECK(back->text == text);
  }
  if (!random_edit.takes_out) CHECK(comments_of(after->text) == comments_of(text));
  if (const auto* value = std::get_if<State>(&random_edit.edit)) {
    std::size_t touched = 0;
    for (const TextChange& change : after->changes) {
      touched += change.removed.size() + change.inserted.size();
    }
    const bool renames = value->name.ends_with(".id");
    CHECK(touched <= (renames ? 4000 : 200 + value->value.value_or("").size()));
  }
  state = {after->text, std::move(now)};
}

}  // namespace

TEST_CASE("random edits are undone to the byte and say in the file what they say in memory") {
  const std::size_t edits = edits_to_try();
  std::mt19937 random(static_cast<unsigned>(edits));
  Counts counts;
  std::vector<std::string> texts = jobs_on_disk();
  REQUIRE(texts.size() > 40);
  for (int i = 0; i < 160; ++i) texts.push_back(random_text(random));
  const std::size_t each = edits / texts.size() + 1;
  const std::string folder = oracle::scratch_folder("edit-states");
  std::vector<std::string> command{"xmllint", "--noout", "--schema",
                                   std::string(MULLION_SOURCE) + "/engine/job/job.xsd"};
  for (std::size_t i = 0; i < texts.size(); ++i) {
    Edited state{texts[i], parse_job(texts[i], "job.xml").value()};
    for (std::size_t n = 0; n < each; ++n) {
      try_edit(state, random, counts);
      if (n % 12 != 11 || command.size() > 600) continue;
      command.push_back(folder + "/" + std::to_string(i) + "-" + std::to_string(n) + ".xml");
      oracle::write_file(command.back(), state.text);
    }
  }
  std::string kinds;
  for (const auto& [kind, count] : counts.by_kind)
    kinds += kind + ": " + std::to_string(count) + "\n";
  INFO(kinds);
  CHECK(counts.made + counts.refused >= static_cast<int>(edits));
  CHECK(counts.refused < counts.made / 4);
  CHECK(command.size() > 500);
  const oracle::Run schema = oracle::run(command);
  INFO(schema.err.substr(0, 2000));
  CHECK(schema.status == 0);
}
