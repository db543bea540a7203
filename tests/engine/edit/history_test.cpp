// Undo and redo beside the job, with others who write the same file.

#include <catch2/catch.hpp>
#include <filesystem>

#include "engine/edit/edited_file.h"
#include "tests/oracle/program.h"

using namespace mullion;
using namespace mullion::edit;

namespace {

// The gallery's double mat in a folder of its own.
struct Desk {
  explicit Desk(const std::string& name)
      : path(oracle::scratch_folder("edit-" + name) + "/job.xml"),
        first(oracle::read_file(oracle::gallery("double-mat.xml"))) {
    oracle::write_file(path, first);
  }
  EditedFile open() const { return EditedFile::open(path).value(); }
  std::string text() const { return oracle::read_file(path); }
  // As an editor would.
  void replace(const std::string& old, const std::string& with) const {
    std::string changed = text();
    changed.replace(changed.find(old), old.size(), with);
    oracle::write_file(path, changed);
  }

  std::string path, first;
};

void make(EditedFile& file, const std::string& name, const std::string& value) {
  const auto saved = file.edit(State{name, value}, fingerprint(file.text()));
  if (!saved) FAIL(to_string(saved.error().front()));
  CHECK(saved->notes.empty());
}

std::string code_of(const Result<Saved>& refused) {
  return refused ? std::string() : refused.error().front().code;
}

}  // namespace

TEST_CASE("edits are undone and done again to the byte, also after the file was closed") {
  const Desk desk("undo");
  std::vector<std::string> texts{desk.first};
  {
    EditedFile file = desk.open();
    for (const char* width : {"17", "18 1/2", "20"}) {
      make(file, "outer.width", width);
      texts.push_back(desk.text());
    }
    make(file, "layer.2.colour", "#ffffff");
    texts.push_back(desk.text());
  }
  EditedFile file = desk.open();
  for (std::size_t i = texts.size() - 1; i > 0; --i) {
    REQUIRE(file.undo());
    CHECK(desk.text() == texts[i - 1]);
  }
  CHECK(code_of(file.undo()) == "edit-nothing-to-undo");
  EditedFile again = desk.open();
  for (std::size_t i = 1; i < texts.size(); ++i) {
    REQUIRE(again.redo());
    CHECK(desk.text() == texts[i]);
  }
  CHECK_FALSE(again.history().can_redo());
}

TEST_CASE("after an edit nothing is left to be done again") {
  const Desk desk("redo-gone");
  EditedFile file = desk.open();
  make(file, "outer.width", "17");
  REQUIRE(file.undo());
  make(file, "outer.width", "18");
  CHECK_FALSE(file.history().can_redo());
  CHECK_FALSE(desk.open().history().can_redo());
}

TEST_CASE("what an editor saved meanwhile stays when an edit is made, undone and done again") {
  const Desk desk("meanwhile");
  EditedFile file = desk.open();
  const std::string seen = fingerprint(file.text());
  desk.replace("Ines Halloway", "Ines Halloway-Marsh");
  REQUIRE(file.edit(State{"layer.2.colour", "#102030"}, seen));
  CHECK(desk.text().find("Ines Halloway-Marsh") != std::string::npos);
  CHECK(desk.text().find("#102030") != std::string::npos);

  desk.replace("<!-- A top mat", "<!-- For the hall. A top mat");
  REQUIRE(file.undo());
  CHECK(desk.text().find("#3f5563") != std::string::npos);
  CHECK(desk.text().find("For the hall") != std::string::npos);
  REQUIRE(desk.open().redo());
  CHECK(desk.text().find("#102030") != std::string::npos);
  CHECK(desk.text().find("For the hall") != std::string::npos);
}

TEST_CASE("an edit of words that an editor changed meanwhile is refused, and nothing is written") {
  const Desk desk("refused");
  EditedFile file = desk.open();
  const std::string seen = fingerprint(file.text());
  desk.replace("#3f5563", "#445566");
  const std::string theirs = desk.text();
  CHECK(code_of(file.edit(State{"layer.2.colour", "#102030"}, seen)) == "edit-changed-meanwhile");
  CHECK(code_of(file.edit(State{"layer.2.colour", "#102030"}, "0123456789abcdef")) ==
        "edit-changed-meanwhile");
  CHECK(desk.text() == theirs);
}

TEST_CASE("an undo whose words were changed is refused, and can be passed over") {
  const Desk desk("pass-over");
  EditedFile file = desk.open();
  make(file, "outer.width", "17");
  make(file, "layer.2.colour", "#102030");
  desk.replace("#102030", "#445566");
  const std::string theirs = desk.text();
  CHECK(code_of(file.undo()) == "edit-changed-meanwhile");
  CHECK(desk.text() == theirs);
  REQUIRE(file.pass_over());
  EditedFile again = desk.open();
  REQUIRE(again.undo());
  CHECK(desk.text().find("width=\"16\" height=\"14\"") != std::string::npos);
  CHECK(desk.text().find("#445566") != std::string::npos);
  CHECK_FALSE(again.history().can_undo());
}

TEST_CASE("an interrupted line of the history is passed over") {
  const Desk desk("interrupted");
  {
    EditedFile file = desk.open();
    make(file, "outer.width", "17");
    make(file, "outer.width", "18");
  }
  const std::string path = history_path(desk.path), whole = oracle::read_file(path);
  for (const std::size_t lost : {std::size_t{1}, std::size_t{20}, std::size_t{90}}) {
    oracle::write_file(path, whole.substr(0, whole.size() - lost));
    EditedFile file = desk.open();
    CHECK(file.history().notes().empty());
    CHECK(file.history().can_undo());
    CHECK(oracle::read_file(path) == whole.substr(0, whole.rfind('\n', whole.size() - 2) + 1));
  }
}

TEST_CASE("a damaged history is said and set aside, and the job is not concerned") {
  const Desk desk("damaged");
  {
    EditedFile file = desk.open();
    make(file, "outer.width", "17");
    make(file, "outer.width", "18");
  }
  const std::string path = history_path(desk.path), whole = oracle::read_file(path);
  const std::string text = desk.text();
  std::vector<std::string> bad{"<job/>", std::string(3, '\0'), whole + "{}\n"};
  for (std::size_t at = 0; at + 1 < whole.size(); at += 7) {
    std::string one = whole;
    one[at] = static_cast<char>(one[at] ^ 1);
    bad.push_back(one);
  }
  for (const std::string& bytes : bad) {
    oracle::write_file(path, bytes);
    EditedFile file = desk.open();
    INFO(bytes);
    REQUIRE(file.history().notes().size() == 1);
    CHECK(file.history().notes().front().code == "edit-history");
    CHECK_FALSE(file.history().can_undo());
    CHECK(desk.text() == text);
  }
  EditedFile file = desk.open();
  make(file, "outer.width", "19");
  CHECK(oracle::read_file(path + ".damaged") == bad.back());
  REQUIRE(desk.open().undo());
  CHECK(desk.text() == text);
}

TEST_CASE("a history that cannot be written does not stop the job from being saved") {
  const Desk desk("unwritable");
  EditedFile file = desk.open();
  std::filesystem::create_directory(history_path(desk.path));
  const auto saved = file.edit(State{"outer.width", "17"}, fingerprint(file.text()));
  REQUIRE(saved);
  REQUIRE(saved->notes.size() == 1);
  CHECK(saved->notes.front().severity == Severity::warning);
  CHECK(desk.text().find("<outer width=\"17\" height=\"14\"/>") != std::string::npos);
  CHECK(file.history().can_undo());
}

TEST_CASE("a job file that is gone is said, and its text can still be had") {
  const Desk desk("gone");
  EditedFile file = desk.open();
  std::filesystem::remove(desk.path);
  CHECK(code_of(file.edit(State{"outer.width", "17"}, fingerprint(file.text()))) == "file-read");
  CHECK(file.text() == desk.first);
  CHECK_FALSE(std::filesystem::exists(desk.path));
}

TEST_CASE("a fingerprint is the published one of its text") {
  // Known values of FNV-1a, 64 bits; from memory.
  CHECK(fingerprint("") == "cbf29ce484222325");
  CHECK(fingerprint("a") == "af63dc4c8601ec8c");
  CHECK(fingerprint("foobar") == "85944171f73967e8");
}
