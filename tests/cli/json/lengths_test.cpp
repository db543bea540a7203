// A length is the same on every output: what `check` tells in ticks, against the words of check,
// cuts, proof and template, as poppler reads them.

#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <random>
#include <regex>

#include "engine/length/format.h"
#include "tests/how_many.h"
#include "tests/oracle/pdf.h"
#include "tests/oracle/program.h"

namespace {

using namespace mullion;
using Json = nlohmann::json;

const std::string& folder() {
  static const std::string path =
      oracle::scratch_folder("cli_lengths_" + std::to_string(::getpid()));
  return path;
}

// Two or three pictures of half millimetres in a row or a column, under one to three mats of which
// little is stated.
std::string metric_job(std::mt19937& random) {
  const auto pick = [&](int least, int most) {
    return std::uniform_int_distribution<int>(least, most)(random);
  };
  const bool in_cm = pick(0, 2) == 0;
  const auto size = [&](int halves) {  // of a millimetre
    return describe_number(Length::from_ticks(800 * halves),
                           {in_cm ? Unit::centimetre : Unit::millimetre, Length::from_ticks(800)});
  };
  std::string pictures, openings;
  const int count = pick(2, 3);
  for (int i = 0; i < count; ++i) {
    const std::string id = "p" + std::to_string(i);
    pictures += "<picture id=\"" + id + "\" width=\"" + size(pick(180, 500)) + "\" height=\"" +
                size(pick(180, 500)) + "\"/>";
    openings += "<opening picture=\"" + id + "\"/>";
  }
  std::string layers = "<layer board=\"Oat\"/>";
  for (int i = pick(0, 2); i > 0; --i) {
    layers +=
        pick(0, 1) == 0 ? "<layer board=\"Ink\"/>" : "<layer board=\"Ink\" reveal=\"3.5 mm\"/>";
  }
  const std::string frame = pick(0, 1) == 0
                                ? ""
                                : "<frame rabbet-width=\"" + size(2 * pick(950, 1100)) +
                                      "\" rabbet-height=\"" + size(2 * pick(950, 1100)) + "\"/>";
  const std::string group = pick(0, 1) == 0 ? "row" : "column";
  return "<job version=\"1\" reference=\"M\" unit=\"" + std::string(in_cm ? "cm" : "mm") +
         "\"><pictures>" + pictures + "</pictures><layers>" + layers + "</layers>" + frame +
         "<arrange><" + group + ">" + openings + "</" + group + "></arrange></job>";
}

// Without line breaks and runs of blanks.
std::string flat(const std::string& text) {
  return std::regex_replace(text, std::regex("\\s+"), " ");
}

struct Outputs {
  Json check;
  std::string words, cuts, proof, pattern;
};

Outputs outputs_of(const std::string& job) {
  const auto page = [&](const char* verb) {
    const std::string path = folder() + "/" + verb + ".pdf";
    const oracle::Run run = oracle::mullion({verb, job, "-o", path});
    INFO(run.err);
    REQUIRE(run.status == 0);
    return flat(oracle::pdf_text(path));
  };
  const oracle::Run json = oracle::mullion({"check", job, "--json"});
  return {Json::parse(json.out), flat(oracle::mullion({"check", job}).out),
          flat(oracle::mullion({"cuts", job}).out), page("proof"), page("template")};
}

bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

// What is said of a length of the job.
class Said {
 public:
  explicit Said(const Json& check)
      : scale_{check.at("job").at("unit") == "in"   ? Unit::inch
               : check.at("job").at("unit") == "mm" ? Unit::millimetre
                                                    : Unit::centimetre,
               ticks(check.at("job").at("increment"))} {}

  std::string text(const Json& length) const { return describe(ticks(length), scale_); }
  // The metric bench is ruled in millimetres.
  std::string on_cutter(const Json& length) const {
    const Unit unit = scale_.unit == Unit::inch ? Unit::inch : Unit::millimetre;
    return describe(ticks(length), {unit, scale_.increment});
  }
  std::string number(const Json& length) const { return describe_number(ticks(length), scale_); }
  // "9 x 12 in" with the sign that the output has between.
  std::string size(const Json& width, const Json& height) const {
    return number(width) + " \xC3\x97 " + text(height);
  }

 private:
  static Length ticks(const Json& length) {
    return Length::from_ticks(length.at("ticks").get<std::int64_t>());
  }
  Scale scale_;
};

void compare(const std::string& job) {
  const Outputs out = outputs_of(job);
  const Said said(out.check);
  const std::string mat =
      said.text(out.check.at("width")) + " x " + said.text(out.check.at("height"));
  INFO(job << ", " << mat << "\n" << out.words << "\n" << out.proof);
  CHECK(has(out.words, "mat " + mat));
  CHECK(has(out.cuts, said.on_cutter(out.check.at("width")) + " x " +
                          said.on_cutter(out.check.at("height")) + ";"));
  CHECK(has(out.pattern, mat + ", "));
  CHECK(has(out.proof, "Mat " + said.size(out.check.at("width"), out.check.at("height"))));
  const Json& borders = out.check.at("borders");
  CHECK(has(out.words, "left " + said.text(borders.at("left")) + ", top " +
                           said.text(borders.at("top")) + ", right " +
                           said.text(borders.at("right")) + ", bottom " +
                           said.text(borders.at("bottom"))));
  for (const char* side : {"left", "top", "right", "bottom"}) {
    CHECK(has(out.proof, said.text(borders.at(side))));
  }
  for (const Json& layer : out.check.at("layers")) {
    for (const Json& window : layer.at("windows")) {
      if (!window.at("seen").get<bool>() || window.at("openings").size() != 1) continue;
      const Json& back = window.at("back");
      CHECK(has(out.words, said.text(back.at("width")) + " x " + said.text(back.at("height"))));
      if (layer == out.check.at("layers").front()) {
        CHECK(has(out.pattern, said.number(back.at("left"))));
        CHECK(has(out.pattern, said.number(back.at("top"))));
      }
      if (layer == out.check.at("layers").back()) {
        CHECK(has(out.proof, said.size(back.at("width"), back.at("height"))));
      }
    }
  }
}

}  // namespace

TEST_CASE("a length of a random metric job is the same in check, cuts, proof and template") {
  std::mt19937 random(1016);
  for (int n = 0; n < test::how_many(5, 60); ++n) {
    const std::string job = folder() + "/metric.xml";
    oracle::write_file(job, metric_job(random));
    if (oracle::mullion({"check", job}).status != 0) continue;  // borders too small for the frame
    compare(job);
  }
}

TEST_CASE("a length of the gallery's jobs is the same in check, cuts, proof and template") {
  std::vector<std::string> jobs;
  for (const auto& entry : std::filesystem::directory_iterator(oracle::gallery(""))) {
    if (entry.path().extension() == ".xml") jobs.push_back(entry.path().string());
  }
  std::sort(jobs.begin(), jobs.end());
  REQUIRE(jobs.size() > 20);
  for (std::size_t i = 0; i < jobs.size(); ++i) {
    if (i % 8 == 3 || test::how_many(0, 1) == 1) compare(jobs[i]);
  }
}
