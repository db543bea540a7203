// The documents of --json, read by nlohmann::json (RFC 8259), against what the same verb says in
// words.

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "tests/oracle/program.h"

namespace {

using Json = nlohmann::json;
using Words = std::vector<std::string>;

const std::string& folder() {
  static const std::string path = oracle::scratch_folder("cli_json_" + std::to_string(::getpid()));
  return path;
}

struct Both {
  oracle::Run words;
  Json json;
};

// Runs the verb both ways: the status is the same, and JSON is all that the second says.
Both both_ways(Words command) {
  Both both;
  both.words = oracle::mullion(command);
  command.push_back("--json");
  const oracle::Run run = oracle::mullion(command);
  CAPTURE(run.out);
  CHECK(run.status == both.words.status);
  CHECK(run.err.empty());
  both.json = Json::parse(run.out);
  CHECK(both.json.at("status") == run.status);
  return both;
}

std::string text(const Json& length) {
  return length.at("text").get<std::string>();
}

bool says(const oracle::Run& run, const std::string& part) {
  return (run.out + run.err).find(part) != std::string::npos;
}

const std::string weighted = oracle::gallery("weighted-bottom.xml");
const std::string collage = oracle::gallery("seven-picture-collage.xml");
const std::string prices = oracle::gallery("shop/prices.xml");

}  // namespace

TEST_CASE(
    "check gives every layer's windows and every picture's place, from which reveals follow") {
  const Both both = both_ways({"check", oracle::gallery("double-mat.xml")});
  const auto side = [](const Json& box, const char* name) {
    return box.at(name).at("ticks").get<long>();
  };
  const Json& layers = both.json.at("layers");
  REQUIRE(layers.size() == 2);
  const Json& upper = layers[0].at("windows").at(0);
  const Json& lower = layers[1].at("windows").at(0);
  CHECK(upper.at("shape") == "rectangle");
  CHECK(upper.at("seen") == true);
  CHECK(upper.at("openings") == Json::array({1}));
  const long thickness = layers[1].at("thickness").at("ticks").get<long>();
  // At 45 degrees the bevel's run is the thickness; a reveal is what is seen of the face.
  CHECK(side(lower.at("back"), "left") - side(lower.at("face"), "left") == thickness);
  const long reveal = side(lower.at("face"), "left") - side(upper.at("back"), "left");
  CHECK(reveal == 40640 / 4);
  const Json& picture = both.json.at("pictures").at(0);
  CHECK(picture.at("opening") == 1);
  CHECK(picture.at("seen") == lower.at("back"));
  CHECK(side(picture.at("place"), "left") < side(picture.at("seen"), "left"));
  CHECK(says(both.words, "layer 2: " + text(lower.at("back").at("width"))));
  CHECK(says(both.words, "is seen, of " + text(picture.at("place").at("width"))));
}

TEST_CASE("check gives the mat, its borders and every opening as the words do") {
  const Both both = both_ways({"check", collage});
  const Json& json = both.json;
  CHECK(json.at("format") == "mullion check 1");
  CHECK(json.at("job").at("file") == collage);
  CHECK(says(both.words, "mat " + text(json.at("width")) + " x " + text(json.at("height"))));
  CHECK(says(both.words, "left " + text(json.at("borders").at("left")) + ", top " +
                             text(json.at("borders").at("top")) + ", right "));
  REQUIRE(json.at("openings").size() == 7);
  for (const Json& opening : json.at("openings")) {
    CHECK(says(both.words, opening.at("id").get<std::string>()));
    CHECK(says(both.words, text(opening.at("width")) + " x " + text(opening.at("height")) + ", " +
                               text(opening.at("left")) + " from the left and " +
                               text(opening.at("top")) + " from the top"));
  }
}

TEST_CASE("borders and openings add up to the mat in ticks, exactly") {
  const Json json = both_ways({"check", weighted}).json;
  REQUIRE(json.at("openings").size() == 1);
  const auto ticks = [](const Json& length) { return length.at("ticks").get<long long>(); };
  const Json &borders = json.at("borders"), &opening = json.at("openings").at(0);
  CHECK(ticks(borders.at("left")) + ticks(opening.at("width")) + ticks(borders.at("right")) ==
        ticks(json.at("width")));
  CHECK(ticks(borders.at("top")) + ticks(opening.at("height")) + ticks(borders.at("bottom")) ==
        ticks(json.at("height")));
}

TEST_CASE("problems tell file, line and column, with the same exit status as in words") {
  const std::string job = folder() + "/short.xml";
  oracle::write_file(job,
                     "<job version=\"1\" unit=\"in\"><pictures>\n<picture id=\"dune\" width=\"10\" "
                     "heigth=\"8\"/></pictures></job>\n");
  for (const Words& command : {Words{"check", job},
                               {"frames", job},
                               {"suggest", job},
                               {"diff", job, weighted},
                               {"estimate", job, "--prices", prices}}) {
    const Both both = both_ways(command);
    CAPTURE(command.front());
    CHECK(both.words.status == 1);
    CHECK(both.words.out.empty());
    CHECK(both.json.size() == 3);
    const Json& problem = both.json.at("problems").at(0);
    CHECK(problem.at("severity") == "error");
    CHECK(says(both.words, job + ":" + std::to_string(problem.at("line").get<int>()) + ":" +
                               std::to_string(problem.at("column").get<int>()) +
                               ": error: " + problem.at("message").get<std::string>() + " [" +
                               problem.at("code").get<std::string>() + "]"));
  }
}

TEST_CASE("a job that is not there is status 3 in JSON too") {
  const Both both = both_ways({"check", folder() + "/none.xml"});
  CHECK(both.json.at("status") == 3);
  CHECK(both.json.at("problems").at(0).at("line").is_null());
}

TEST_CASE("a length that cannot be read is status 2 in JSON too") {
  const Both both = both_ways({"frames", weighted, "--border", "wide"});
  CHECK(both.json.at("status") == 2);
  CHECK(both.json.at("problems").at(0).at("code") == "usage");
}

TEST_CASE("frames gives the sizes in the order of the words") {
  const Both both = both_ways({"frames", weighted, "--border", "1 in"});
  std::string expected;
  for (const Json& frame : both.json.at("frames")) {
    const Json& borders = frame.at("borders");
    expected += "mat " + text(frame.at("width")) + " x " + text(frame.at("height")) + ", rabbet " +
                text(frame.at("rabbet_width")) + " x " + text(frame.at("rabbet_height")) +
                ": borders left " + text(borders.at("left")) + ", top " + text(borders.at("top")) +
                ", right " + text(borders.at("right")) + ", bottom " + text(borders.at("bottom")) +
                "\n";
  }
  CHECK(!expected.empty());
  CHECK(both.words.out == expected);
}

TEST_CASE("suggestions carry size and score") {
  const Both both = both_ways({"suggest", collage, "-n", "2"});
  REQUIRE(both.json.at("suggestions").size() == 2);
  for (const Json& suggestion : both.json.at("suggestions")) {
    CHECK(says(both.words, std::to_string(suggestion.at("number").get<int>()) + ": " +
                               text(suggestion.at("width")) + " x " +
                               text(suggestion.at("height"))));
    CHECK(suggestion.at("score") >= 0.0);
    CHECK(suggestion.at("score") <= 1.0);
  }
  CHECK(says(both.words, std::to_string(both.json.at("arrangements_looked_at").get<long long>()) +
                             " arrangements looked at"));
}

TEST_CASE("the items of an estimate add up to its total in the smallest unit") {
  const Both both = both_ways({"estimate", weighted, "--prices", prices});
  long long sum = 0;
  for (const Json& line : both.json.at("lines")) {
    CHECK(!line.contains("cost"));
    const std::string kind = line.at("kind");
    if (kind == "item" || kind == "adjustment") {
      sum += line.at("price").at("units").get<long long>();
    }
    CHECK(says(both.words, line.at("what").get<std::string>()));
  }
  CHECK(sum == both.json.at("total").at("units"));
  CHECK(says(both.words, text(both.json.at("total"))));
}

TEST_CASE("costs are in an estimate's JSON only where they were asked for") {
  const Both both = both_ways({"estimate", weighted, "--prices", prices, "--costs"});
  CHECK(both.json.contains("cost"));
  for (const Json& line : both.json.at("lines")) CHECK(line.contains("how"));
}

TEST_CASE("diff gives each sentence, and none where nothing changed") {
  const Both both = both_ways({"diff", weighted, oracle::gallery("equal-borders.xml")});
  std::string expected;
  for (const Json& change : both.json.at("changes")) expected += change.get<std::string>() + "\n";
  CHECK(!expected.empty());
  CHECK(both.words.out == expected);
  CHECK(both_ways({"diff", weighted, weighted}).json.at("changes").empty());
}

TEST_CASE("a cutter's JSON has the figures of its file") {
  const Both both = both_ways({"cutter", "show", "bench"});
  const Json& cutter = both.json.at("cutter");
  CHECK(both.json.at("format") == "mullion cutter show 1");
  CHECK(says(both.words, "name=\"" + cutter.at("name").get<std::string>() + "\""));
  CHECK(text(cutter.at("longest_cut")) == "48 in");
  CHECK(says(both.words, "longest-cut=\"48\""));
}

TEST_CASE("what a test cut corrects is the same in JSON") {
  const std::string corrected = folder() + "/own.xml";
  const Both both = both_ways({"cutter", "check", "bench", "--line", "3 1/16", "-o", corrected});
  REQUIRE(!both.json.at("corrections").empty());
  for (const Json& correction : both.json.at("corrections")) {
    CHECK(says(both.words, correction.at("what").get<std::string>()));
  }
  CHECK(oracle::mullion({"cutter", "show", corrected, "--json"}).status == 0);
}

TEST_CASE("test cuts are set to the scales that the words tell, and go to a file besides") {
  const Both both = both_ways({"cutter", "check", "bench"});
  const Json& test = both.json.at("test_cut");
  CHECK(says(both.words, "guide " + text(test.at("guide")) + ", near stop " +
                             text(test.at("near_stop")) + ", far stop " +
                             text(test.at("far_stop"))));
  both_ways({"cutter", "check", "bench", "-o", folder() + "/test.pdf"});
  CHECK(oracle::read_file(folder() + "/test.pdf").substr(0, 5) == "%PDF-");
  CHECK(both_ways({"cutter", "check", "bench", "-o", folder() + "/test.doc"}).json.at("status") ==
        2);
}

TEST_CASE("a printer's JSON has the scale that its profile file holds") {
  const Words command = {"printer",   "-o",   folder() + "/printer.xml",
                         "--across",  "7",    "7",
                         "--down",    "9",    "9",
                         "--falling", "11.4", "11.4",
                         "--rising",  "11.4", "11.4"};
  const Both both = both_ways(command);
  CHECK(both.words.status == 0);
  CHECK(text(both.json.at("measured").at(0).at("falling")) == "11.4 in");
  CHECK(both.json.at("scale_across").get<double>() == Approx(1).margin(0.01));
  CHECK(!oracle::read_file(folder() + "/printer.xml").empty());
}

TEST_CASE("explain gives every code, or the one asked for, as the words do") {
  const Both one = both_ways({"explain", "check-bar-thin"});
  REQUIRE(one.json.at("codes").size() == 1);
  const Json& code = one.json.at("codes").front();
  CHECK(code.at("code") == "check-bar-thin");
  CHECK(says(one.words, code.at("severity").get<std::string>() +
                            "): " + code.at("summary").get<std::string>()));
  const Both all = both_ways({"explain"});
  CHECK(all.json.at("codes").size() > 100);
  CHECK(both_ways({"explain", "chek-bar-thin"}).json.at("problems").size() == 1);
}

TEST_CASE("a wrong option is told as JSON where the answer was to be JSON") {
  const oracle::Run run = oracle::mullion({"check", collage, "--jsno", "--json"});
  CHECK(run.status == 2);
  CHECK(run.err.empty());
  const Json json = Json::parse(run.out);
  CHECK(json.at("format") == "mullion check 1");
  CHECK(json.at("status") == 2);
  CHECK(json.at("problems").front().at("code") == "usage");
  CHECK(json.at("problems")
            .front()
            .at("message")
            .get<std::string>()
            .find("did you mean \"--json\"?") != std::string::npos);
}

TEST_CASE("cuts answers with what it writes to a .json file, and what the checks said") {
  const Both both = both_ways({"cuts", collage});
  const std::string file = folder() + "/cuts.json";
  REQUIRE(oracle::mullion({"cuts", collage, "-o", file}).status == 0);
  CHECK(both.json.at("format") == "mullion cuts 1");
  CHECK(both.json.at("plan") == Json::parse(oracle::read_file(file)));
  CHECK(says(both.words, both.json.at("problems").front().at("message").get<std::string>()));

  const std::string pdf = folder() + "/cuts.pdf";
  const oracle::Run with_file = oracle::mullion({"cuts", collage, "--json", "-o", pdf});
  CHECK(Json::parse(with_file.out).at("plan") == both.json.at("plan"));
  CHECK(oracle::read_file(pdf).rfind("%PDF-", 0) == 0);

  const Json refused = both_ways({"cuts", collage, "--trim", "thin"}).json;
  CHECK(refused.at("status") == 2);
  CHECK(refused.at("problems").size() == 1);
}

TEST_CASE("sheets answers with what it writes to a .json file") {
  const Both both = both_ways({"sheets", weighted, collage});
  const std::string file = folder() + "/sheets.json";
  REQUIRE(oracle::mullion({"sheets", weighted, collage, "-o", file}).status == 0);
  CHECK(both.json.at("format") == "mullion sheets 1");
  CHECK(both.json.at("plan") == Json::parse(oracle::read_file(file)));
  CHECK(both_ways({"sheets", weighted, "--kerf", "-1", "--trim", "x"}).json.at("problems").size() ==
        2);
  CHECK(both_ways({"sheets", weighted, "--commit"}).json.at("status") == 2);
  CHECK(oracle::mullion({"sheets", weighted, "--json", "-o", "-"}).status == 2);
}
