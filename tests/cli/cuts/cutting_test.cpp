#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <set>

#include "tests/oracle/program.h"

namespace {

std::string text_of(const std::string& pdf) {
  return oracle::run({"pdftotext", "-layout", pdf, "-"}).out;
}

int pages_of(const std::string& pdf) {
  const std::string out = oracle::run({"pdfinfo", pdf}).out;
  return std::stoi(out.substr(out.find("Pages:") + 6));
}

}  // namespace

TEST_CASE("the test cuts are a sheet of paper with a line for every measure") {
  const std::string pdf = oracle::scratch_folder("test-cuts") + "/test.pdf";
  REQUIRE(oracle::mullion({"cutter", "check", "bench", "-o", pdf}).status == 0);
  CHECK(oracle::run({"qpdf", "--check", pdf}).status == 0);
  CHECK(pages_of(pdf) <= 2);
  const std::string text = text_of(pdf);
  for (const char* option :
       {"--line", "--line-far", "--near-end", "--far-end", "--mark", "--start-mark", "--corner",
        "--start-corner", "--rail", "--piece", "--diagonal-ab", "--diagonal-bc"}) {
    CHECK(text.find(option) != std::string::npos);
  }
  CHECK(text.find("guide 3 in, near stop 3 in, far stop 9 in") != std::string::npos);
}

TEST_CASE("what was measured on the test cuts corrects the cutter, and the plans made for it") {
  const std::string folder = oracle::scratch_folder("measured-cutter");
  const std::string file = folder + "/mine.xml";
  // The guide cuts 1/32 in wider than its scale shows.
  const oracle::Run check =
      oracle::mullion({"cutter", "check", "bench", "--line", "3 1/32", "-o", file});
  REQUIRE(check.status == 0);
  CHECK(check.err.find("the scale showed 3 in, the cut is 3 1/32 in from the edge") !=
        std::string::npos);
  const auto first_guide = [&](const std::string& cutter) {
    const std::string path = folder + "/cuts.json";
    REQUIRE(oracle::mullion(
                {"cuts", oracle::gallery("equal-borders.xml"), "--cutter", cutter, "-o", path})
                .status == 0);
    const auto plan = nlohmann::json::parse(oracle::read_file(path));
    return plan["stages"][0]["set_ups"][0]["guide"];
  };
  // So each setting is 1/32 in less than before, to the tick.
  CHECK(first_guide("bench")["shows"] == "3 in");
  const auto corrected = first_guide(file);
  CHECK(corrected["shows"] == "2 31/32 in");
  CHECK(corrected["rounded_by"] == "0 mm");
}

TEST_CASE("a misfit output of the test cuts is refused before anything is written") {
  CHECK(oracle::mullion({"cutter", "check", "bench", "-o", "cutter.png"}).status == 2);
}

TEST_CASE("several jobs with quantities are one run, in text, JSON and PDF") {
  const std::string folder = oracle::scratch_folder("cuts-run");
  const std::vector<std::string> jobs = {"cuts", oracle::gallery("equal-borders.xml") + "*12",
                                         oracle::gallery("weighted-bottom.xml") + "*8"};
  const auto with_output = [&](const std::string& name) {
    std::vector<std::string> arguments = jobs;
    arguments.insert(arguments.end(), {"-o", folder + "/" + name});
    REQUIRE(oracle::mullion(arguments).status == 0);
    return folder + "/" + name;
  };
  CHECK(oracle::mullion(jobs).out.find("Run of 20 mats of 2 kinds") == 0);
  const auto run = nlohmann::json::parse(oracle::read_file(with_output("run.json")));
  CHECK(run["mats"] == 20);
  CHECK(run["kinds"][0]["orders"][0]["order"] == "W-0101");
  const std::string pdf = with_output("run.pdf");
  CHECK(oracle::run({"qpdf", "--check", pdf}).status == 0);
  CHECK(text_of(pdf).find("W-0102: 8") != std::string::npos);
}

TEST_CASE("a quantity that is none is refused with what was expected") {
  const oracle::Run run = oracle::mullion({"cuts", "frame.xml*many"});
  CHECK(run.status == 2);
  CHECK(run.err.find("expected a whole number from 1 to 100000 after the *") != std::string::npos);
  CHECK(oracle::mullion({"cuts", "a.xml", "b.xml", "--quantity", "3"}).status == 2);
}

TEST_CASE(
    "a trim that cuts into an under-mat's window is refused by every verb, and says how much") {
  const std::string folder = oracle::scratch_folder("trim");
  const std::string job = oracle::gallery("double-mat.xml");
  for (const auto& words : std::vector<std::vector<std::string>>{
           {"cuts", job},
           {"sheets", job},
           {"template", job, "-o", folder + "/a.pdf"},
           {"template", job, "-o", folder + "/a.dxf", "--layer", "2"}}) {
    std::vector<std::string> all = words;
    all.insert(all.end(), {"--trim", "5"});
    const oracle::Run run = oracle::mullion(all);
    INFO(words[0] << ": " << run.err);
    CHECK(run.status != 0);
    // The window's edge on the face is 3 1/16 in from the mat's edge.
    CHECK(run.err.find("a trim of 5 in on each side cuts into the window of opening 1 in layer 2; "
                       "expected less than 3 1/16 in [cutter-trim]") != std::string::npos);
    all.back() = "3";
    CHECK(oracle::mullion(all).status == 0);
    all.back() = "-1/8";
    CHECK(oracle::mullion(all).err.find("--trim: expected zero or more") != std::string::npos);
    all.back() = "5";
    all.push_back("--separate");
    CHECK(oracle::mullion(all).status == 0);
  }
}

TEST_CASE("cuts and sheets tell the same blank for each layer, in inches and in millimetres") {
  for (const char* name : {"double-mat", "triple-mat", "seven-picture-collage"}) {
    for (const std::vector<std::string>& words :
         std::vector<std::vector<std::string>>{{}, {"--separate"}, {"--trim", "7 mm"}}) {
      const auto json = [&](const char* verb) {
        std::vector<std::string> all{verb, oracle::gallery(std::string(name) + ".xml"), "--json"};
        all.insert(all.end(), words.begin(), words.end());
        const oracle::Run run = oracle::mullion(all);
        INFO(run.err);
        REQUIRE(run.status == 0);
        return nlohmann::json::parse(run.out);
      };
      // A blank may be turned on its sheet.
      const auto sides = [](const std::string& a, const std::string& b) {
        return std::min(a, b) + " x " + std::max(a, b);
      };
      std::multiset<std::string> of_cuts, of_sheets;
      for (const auto& stage : json("cuts")["plan"]["stages"]) {
        if (stage["kind"] != "layer") continue;
        of_cuts.insert(sides(stage["blank"]["width"], stage["blank"]["height"]));
      }
      for (const auto& board : json("sheets")["plan"]["boards"]) {
        for (const auto& sheet : board["sheets"]) {
          for (const auto& blank : sheet["blanks"]) {
            of_sheets.insert(sides(blank["width"]["text"], blank["height"]["text"]));
          }
        }
      }
      CHECK(of_cuts == of_sheets);
    }
  }
}
