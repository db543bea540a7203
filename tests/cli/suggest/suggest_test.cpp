#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <set>

#include "tests/oracle/program.h"
#include "tests/oracle/terminal.h"

TEST_CASE("suggest writes job files that the schema and the program take, and a contact sheet") {
  const std::string folder = oracle::scratch_folder("suggest");
  const std::string prefix = folder + "/idea", sheet = folder + "/contact.pdf";
  const oracle::Run run = oracle::mullion({"suggest", oracle::gallery("title-and-three.xml"), "-n",
                                           "3", "--jobs", prefix, "--contact", sheet});
  INFO(run.err);
  REQUIRE(run.status == 0);
  CHECK(run.out.find("528 arrangements looked at, every one there is") != std::string::npos);
  for (int i = 1; i <= 3; ++i) {
    const std::string job = prefix + "-" + std::to_string(i) + ".xml";
    CHECK(oracle::run({"xmllint", "--noout", "--schema", MULLION_SOURCE "/engine/job/job.xsd", job})
              .status == 0);
    CHECK(oracle::mullion({"check", job}).status == 0);
  }
  CHECK(oracle::run({"qpdf", "--check", sheet}).status == 0);
}

TEST_CASE("frames lists the smallest frame first") {
  const oracle::Run run =
      oracle::mullion({"frames", oracle::gallery("equal-borders.xml"), "--border", "1 1/2"});
  REQUIRE(run.status == 0);
  CHECK(run.out.rfind(
            "mat 14 in x 11 in, rabbet 14 1/8 in x 11 1/8 in: borders left 2 1/8 in, top 1 5/8 in",
            0) == 0);
}

namespace {

std::string job_of_five(const std::string& folder, const std::string& unit) {
  const std::string path = folder + "/five-" + unit + ".xml";
  std::string xml = "<job version=\"1\" reference=\"Five\" unit=\"" + unit + "\" increment=\"" +
                    (unit == "in" ? "1/16" : "1 mm") + "\"><pictures>";
  for (const char* size : {"8 10", "6 4", "6 4", "5 7", "4 6"}) {
    const std::string text = size;
    const std::size_t space = text.find(' ');
    const int times = unit == "in" ? 1 : 25;
    xml += "<picture id=\"p" + std::to_string(xml.size()) + "\" width=\"" +
           std::to_string(times * std::stoi(text.substr(0, space))) + "\" height=\"" +
           std::to_string(times * std::stoi(text.substr(space))) + "\"/>";
  }
  oracle::write_file(path, xml + "</pictures></job>");
  return path;
}

}  // namespace

TEST_CASE("a contact sheet cuts no caption short, in any language and for any number") {
  const std::string folder = oracle::scratch_folder("captions");
  const std::string job = job_of_five(folder, "in"), sheet = folder + "/contact.pdf";
  for (const char* language : {"en", "de", "fr", "es"}) {
    for (const int count : {1, 2, 6, 9, 24}) {
      INFO(language << ", " << count);
      REQUIRE(oracle::mullion({"suggest", job, "--contact", sheet, "--language", language, "-n",
                               std::to_string(count)})
                  .status == 0);
      const std::string text = oracle::run({"pdftotext", "-layout", sheet, "-"}).out;
      CHECK(text.find("\xE2\x80\xA6") == std::string::npos);  // an ellipsis
      CHECK(text.find("Five") != std::string::npos);
    }
  }
}

TEST_CASE("the contact sheet, the words and the JSON name the same compositions, in their order") {
  const std::string folder = oracle::scratch_folder("compositions");
  const std::string job = job_of_five(folder, "in"), sheet = folder + "/contact.pdf";
  const oracle::Run run = oracle::mullion({"suggest", job, "-n", "3", "--contact", sheet});
  REQUIRE(run.status == 0);
  const auto json =
      nlohmann::json::parse(oracle::mullion({"suggest", job, "-n", "3", "--json"}).out);
  const std::string text = oracle::run({"pdftotext", "-raw", sheet, "-"}).out;
  std::size_t on_sheet = 0, in_words = 0;
  std::set<std::string> names;
  REQUIRE(json.at("suggestions").size() == 3);
  for (const auto& suggestion : json.at("suggestions")) {
    const std::string name = suggestion.at("composition");
    INFO(name << "\n" << text << run.out);
    names.insert(name);
    on_sheet = text.find("\n" + name, on_sheet);
    in_words = run.out.find(", " + name, in_words);
    REQUIRE(on_sheet != std::string::npos);
    REQUIRE(in_words != std::string::npos);
    ++on_sheet;
    ++in_words;
  }
  CHECK(names.size() == 3);
}

TEST_CASE("the help of suggest says what each criterion is and counts") {
  const std::string help = oracle::mullion({"suggest", "--help"}).out;
  for (const std::string name : {"area", "borders", "balance", "alignment", "symmetry", "bars",
                                 "flush", "compact", "proportion", "shape"}) {
    INFO(name);
    CHECK(help.find("\n  " + name + " ") != std::string::npos);
  }
}

TEST_CASE("a contact sheet is the same suggestions as PDF, SVG and PNG") {
  const std::string folder = oracle::scratch_folder("contact-formats");
  const std::string job = job_of_five(folder, "in");
  for (const std::string ending : {"pdf", "svg", "png"}) {
    REQUIRE(oracle::mullion({"suggest", job, "--contact", folder + "/c." + ending}).status == 0);
  }
  const std::string pdf = folder + "/c.pdf";
  REQUIRE(
      oracle::run({"pdftoppm", "-r", "150", "-png", "-singlefile", pdf, folder + "/pdf"}).status ==
      0);
  REQUIRE(oracle::run({"rsvg-convert", "-d", "150", "-p", "150", folder + "/c.svg", "-o",
                       folder + "/svg.png"})
              .status == 0);
  const auto size = [&](const std::string& png) {
    const std::string bytes = oracle::read_file(folder + "/" + png).substr(16, 8);  // IHDR
    return bytes;
  };
  CHECK(size("pdf.png") == size("c.png"));
  CHECK(size("svg.png") == size("c.png"));
}

TEST_CASE("borders and gaps are whole millimetres in a metric job where none are asked for") {
  const std::string folder = oracle::scratch_folder("metric");
  const std::string job = job_of_five(folder, "mm"), made = folder + "/made";
  REQUIRE(oracle::mullion({"suggest", job, "-n", "1", "--jobs", made}).status == 0);
  const std::string xml = oracle::read_file(made + "-1.xml");
  CHECK(xml.find("gap=\"25\"") != std::string::npos);
  CHECK(xml.find("<gap") == std::string::npos);  // stated once for all
  const oracle::Run check = oracle::mullion({"check", made + "-1.xml"});
  CHECK(check.out.find("left 50 mm") != std::string::npos);
}

TEST_CASE("the job's own border is the least one of a suggestion") {
  const std::string folder = oracle::scratch_folder("own-border");
  const std::string job = job_of_five(folder, "in"), made = folder + "/made";
  std::string xml = oracle::read_file(job);
  oracle::write_file(job, xml.insert(xml.find("</job>"), "<borders all=\"3\"/>"));
  REQUIRE(oracle::mullion({"suggest", job, "-n", "1", "--jobs", made}).status == 0);
  CHECK(oracle::mullion({"check", made + "-1.xml"}).out.find("left 3 in, top 3 in") !=
        std::string::npos);
}

TEST_CASE("a shop's own sizes, in centimetres, serve a job in inches") {
  const std::string folder = oracle::scratch_folder("own-sizes");
  const std::string sizes = folder + "/sizes.xml";
  oracle::write_file(sizes,
                     "<frame-sizes unit=\"cm\"><size width=\"50.8\" height=\"60.96\"/>"
                     "<size width=\"10\" height=\"15\"/></frame-sizes>");
  const oracle::Run run =
      oracle::mullion({"frames", oracle::gallery("equal-borders.xml"), "--sizes", sizes});
  REQUIRE(run.status == 0);
  CHECK(run.out.rfind("mat 20 in x 24 in, rabbet 20 1/8 in x 24 1/8 in: borders left ", 0) == 0);
  const oracle::Run ideas =
      oracle::mullion({"suggest", job_of_five(folder, "in"), "--sizes", sizes, "-n", "1"});
  CHECK(
      (ideas.out.rfind("1: 20 in x 24 in", 0) == 0 || ideas.out.rfind("1: 24 in x 20 in", 0) == 0));
}

namespace {

// Six pictures, five of which may turn, keep one thread busy for longer than half a second.
std::string busy_job() {
  std::string xml = "<job version=\"1\" reference=\"P\" unit=\"in\" increment=\"1/16\"><pictures>";
  for (int i = 0; i < 6; ++i) {
    xml += "<picture id=\"p" + std::to_string(i) + "\" width=\"" + std::to_string(4 + i) +
           "\" height=\"" + std::to_string(11 - i * i % 5) + "\"" + (i < 5 ? " turn=\"yes\"" : "") +
           "/>";
  }
  const std::string path = oracle::scratch_folder("busy") + "/busy.xml";
  oracle::write_file(path, xml + "</pictures></job>");
  return path;
}

}  // namespace

TEST_CASE("long work shows its progress on a terminal, and nothing of it in a pipe") {
  const std::string job = busy_job();
  const oracle::Run seen =
      oracle::run_on_terminal({MULLION_PROGRAM, "suggest", job, "--threads", "1"});
  CHECK(seen.status == 0);
  CHECK(seen.out.find("arrangements: ") != std::string::npos);
  CHECK(seen.out.find(" %") != std::string::npos);
  const oracle::Run piped = oracle::mullion({"suggest", job, "--threads", "1"});
  CHECK(piped.status == 0);
  CHECK(piped.err.empty());
  CHECK(piped.out.find("arrangements: ") == std::string::npos);
}

TEST_CASE("what a cutter cannot cut is suggested only where nothing else is, and with a word") {
  const std::string folder = oracle::scratch_folder("suggest-cutter");
  const std::string job = job_of_five(folder, "in"), cutter = folder + "/short.xml";
  REQUIRE(oracle::mullion({"cutter", "show", "bench", "-o", cutter}).status == 0);
  std::string profile = oracle::read_file(cutter);
  const auto limit_reach = [&](const std::string& reach) {
    const std::size_t at = profile.find("reach=\"") + 7;
    profile.replace(at, profile.find('"', at) - at, reach);
    oracle::write_file(cutter, profile);
  };
  // How many are offered, how many are told to be beyond the cutter, and what `check` says of the
  // jobs.
  const auto offered = [&] {
    const oracle::Run run = oracle::mullion(
        {"suggest", job, "-n", "6", "--cutter", cutter, "--jobs", folder + "/idea", "--json"});
    REQUIRE(run.status == 0);
    const auto json = nlohmann::json::parse(run.out);
    int refused = 0;
    for (std::size_t i = 1; i <= json.at("suggestions").size(); ++i) {
      const std::string file = folder + "/idea-" + std::to_string(i) + ".xml";
      const oracle::Run check = oracle::mullion({"check", file, "--cutter", cutter});
      refused += check.err.find("[check-cutter-reach]") != std::string::npos ? 1 : 0;
    }
    for (const auto& problem : json.at("problems")) CHECK(problem.at("code") == "suggest-cutter");
    return std::tuple(json.at("suggestions").size(), json.at("problems").size(), refused);
  };
  const std::size_t count = std::get<0>(offered());
  bool some_left_out = false;
  for (const char* reach : {"48", "34", "32", "30", "28", "26", "24", "22", "6"}) {
    limit_reach(reach);
    INFO(reach);
    const auto [some, told, refused] = offered();
    if (told < count) {
      CHECK(some + told == count);
      CHECK(refused == 0);
      some_left_out = some_left_out || told > 0;
    } else {
      CHECK(some == count);
      CHECK(refused == static_cast<int>(count));
    }
  }
  CHECK(some_left_out);
}
