// `mullion set` on files: what it writes, what it says, what it refuses.

#include <catch2/catch.hpp>
#include <filesystem>
#include <nlohmann/json.hpp>

#include "engine/edit/edited_file.h"
#include "tests/oracle/program.h"

namespace {

struct Desk {
  explicit Desk(const std::string& name)
      : path(oracle::scratch_folder("set-" + name) + "/job.xml"),
        first(oracle::read_file(oracle::gallery("double-mat.xml"))) {
    oracle::write_file(path, first);
  }
  std::string text() const { return oracle::read_file(path); }

  std::string path, first;
};

std::string with(std::string text, const std::string& old, const std::string& now) {
  text.replace(text.find(old), old.size(), now);
  return text;
}

}  // namespace

TEST_CASE("set changes the values that it is given and leaves all else as it is") {
  const Desk desk("values");
  const auto run = oracle::mullion({"set", desk.path, "outer.width=17", "layer.2.colour=#335577",
                                    "picture.boat.width=10 1/2", "layer.1.board="});
  CHECK(run.status == 0);
  CHECK(run.err.empty());
  std::string expected = with(desk.first, "<outer width=\"16\"", "<outer width=\"17\"");
  expected = with(expected, "#3f5563", "#335577");
  expected = with(expected, "width=\"10\"", "width=\"10 1/2\"");
  expected = with(expected, " board=\"Chalk\"", "");
  CHECK(desk.text() == expected);
  CHECK(run.out.find(desk.path + ":13\n"
                                 "- <outer width=\"16\" height=\"14\"/>\n"
                                 "+ <outer width=\"17\" height=\"14\"/>\n") != std::string::npos);
}

TEST_CASE("set says as JSON which lines it changed") {
  const Desk desk("json");
  const auto run =
      oracle::mullion({"set", desk.path, "outer.width=free", "border.left=2", "--json"});
  REQUIRE(run.status == 0);
  const auto json = nlohmann::json::parse(run.out);
  CHECK(json.at("format") == "mullion set 1");
  CHECK(json.at("status") == 0);
  const auto& changes = json.at("changes");
  REQUIRE(changes.size() == 1);
  CHECK(changes[0].at("line") == 13);
  CHECK(changes[0].at("before")[0] == "<outer width=\"16\" height=\"14\"/>");
  CHECK(changes[0].at("after")[0] == "<outer height=\"14\"/>");
  CHECK(changes[0].at("after")[1] == "<borders left=\"2\"/>");
}

TEST_CASE("set makes all of its changes or none") {
  const Desk desk("none");
  const auto run = oracle::mullion({"set", desk.path, "outer.width=17", "layer.2.colur=#335577"});
  CHECK(run.status == 1);
  CHECK(run.err.find("did you mean \"colour\"?") != std::string::npos);
  CHECK(desk.text() == desk.first);
  CHECK(oracle::mullion({"set", desk.path, "outer.widht=17"}).status == 1);
  const auto json = oracle::mullion({"set", desk.path, "outer=17", "--json"});
  CHECK(json.status == 1);
  CHECK(nlohmann::json::parse(json.out).at("problems")[0].at("code") == "edit-not-a-value");
}

TEST_CASE("set tells a word that is no assignment and a job that is not there") {
  const Desk desk("usage");
  CHECK(oracle::mullion({"set", desk.path, "outer.width"}).status == 2);
  CHECK(oracle::mullion({"set", desk.path, "=3"}).status == 2);
  CHECK(oracle::mullion({"set", desk.path + "x", "outer.width=3"}).status == 3);
  CHECK(desk.text() == desk.first);
}

TEST_CASE("what was set is undone as an edit of the page is, and done again") {
  const Desk desk("history");
  for (const char* value : {"outer.width=20", "border.left=2"}) {
    REQUIRE(oracle::mullion({"set", desk.path, value}).status == 0);
  }
  const std::string last = desk.text();
  auto file = mullion::edit::EditedFile::open(desk.path).value();
  REQUIRE(file.undo());
  REQUIRE(file.undo());
  CHECK(desk.text() == desk.first);
  CHECK_FALSE(file.history().can_undo());
  REQUIRE(file.redo());
  REQUIRE(file.redo());
  CHECK(desk.text() == last);
}

TEST_CASE("a value that is there already changes nothing, not even the file's time") {
  const Desk desk("same");
  const auto before = std::filesystem::last_write_time(desk.path);
  const auto run = oracle::mullion({"set", desk.path, "outer.width=16"});
  CHECK(run.status == 0);
  CHECK(run.out == desk.path + ": as it was\n");
  CHECK(std::filesystem::last_write_time(desk.path) == before);
  CHECK_FALSE(
      std::filesystem::exists(desk.path.substr(0, desk.path.size() - 7) + ".job.xml.history"));
}
