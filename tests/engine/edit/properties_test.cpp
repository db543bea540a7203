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
#include "tests/how_many.h"
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

// Job files that are held to the published schema, many at a time.
class States {
 public:
  void add(const std::string& text) {
    files_.push_back(folder_ + "/" + std::to_string(files_.size()) + ".xml");
    oracle::write_file(files_.back(), text);
    ++count_;
    if (files_.size() == at_a_time) validate();
  }

  void validate() {
    std::vector<std::string> command{"xmllint", "--noout", "--schema",
                                     std::string(MULLION_SOURCE) + "/engine/job/job.xsd"};
    command.insert(command.end(), files_.begin(), files_.end());
    const oracle::Run schema = oracle::run(command);
    INFO(schema.err.substr(0, 2000));
    CHECK(schema.status == 0);
    files_.clear();
  }

  std::size_t count() const { return count_; }

 private:
  static constexpr std::size_t at_a_time = 500;

  std::string folder_ = oracle::scratch_folder("edit-states");
  std::vector<std::string> files_;
  std::size_t count_ = 0;
};

struct Counts {
  int made = 0, refused = 0;
  std::map<std::string, int> by_kind;
};

// Refusals that are a matter of our own rules, not of the job file.
bool is_of_the_edit(const Problems& problems) {
  return problems.front().code.starts_with("edit-");
}

// What an edit states, adds, removes, copies or moves: "state picture", "add same-size".
std::string kind_of(const Edit& edit) {
  const auto head = [](const std::string& name) { return name.substr(0, name.find('.')); };
  if (const auto* one = std::get_if<State>(&edit)) return "state " + head(one->name);
  if (const auto* one = std::get_if<Add>(&edit)) return "add " + one->element;
  if (const auto* one = std::get_if<Remove>(&edit)) {
    return "remove " +
           (one->part.find(".groove.") != std::string::npos ? "groove" : head(one->part));
  }
  if (const auto* one = std::get_if<Copy>(&edit)) return "copy " + head(one->part);
  if (const auto* one = std::get_if<Move>(&edit)) return "move " + head(one->part);
  if (const auto* one = std::get_if<MakeGroup>(&edit)) {
    return one->along == Along::row ? "make a row" : "make a column";
  }
  if (std::holds_alternative<TurnGroup>(edit)) return "turn";
  if (std::holds_alternative<Dissolve>(edit)) return "dissolve";
  return "several";
}

// Each is made at least once.
const std::vector<std::string>& kinds() {
  static const std::vector<std::string> all{"state border",
                                            "state outer",
                                            "state title",
                                            "state picture",
                                            "state layer",
                                            "state opening",
                                            "state arrange",
                                            "state rule",
                                            "state an outline",
                                            "state the reveal of a side",
                                            "add picture",
                                            "add opening",
                                            "add layer",
                                            "add frame",
                                            "add groove",
                                            "add same-size",
                                            "add align",
                                            "add equal",
                                            "add multiple",
                                            "add fixed",
                                            "add at-least",
                                            "add at-most",
                                            "add centred",
                                            "remove picture",
                                            "remove opening",
                                            "remove layer",
                                            "remove rule",
                                            "remove frame",
                                            "remove groove",
                                            "copy picture",
                                            "copy opening",
                                            "copy layer",
                                            "move a row",
                                            "move a column",
                                            "move an opening",
                                            "move layer",
                                            "make a row",
                                            "make a column",
                                            "turn",
                                            "dissolve",
                                            "several"};
  return all;
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
  const std::string kind = random_edit.kind.empty() ? kind_of(random_edit.edit) : random_edit.kind;
  ++counts.by_kind[kind + (after ? "" : ", refused")];
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
  States states;
  const std::size_t every = static_cast<std::size_t>(test::how_many(10, 1));
  for (const std::string& text : texts) {
    Edited state{text, parse_job(text, "job.xml").value()};
    for (std::size_t n = 0; n < each; ++n) {
      try_edit(state, random, counts);
      if (n % every == 0) states.add(state.text);
    }
  }
  states.validate();
  CHECK(states.count() >= edits / every);
  std::string told;
  for (const auto& [kind, count] : counts.by_kind)
    told += kind + ": " + std::to_string(count) + "\n";
  INFO(told);
  CHECK(counts.made + counts.refused >= static_cast<int>(edits));
  CHECK(counts.refused < counts.made / 4);
  for (const std::string& kind : kinds()) {
    INFO(kind);
    CHECK(counts.by_kind[kind] > 0);
  }
}
