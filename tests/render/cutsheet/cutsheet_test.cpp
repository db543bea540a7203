#include "render/cutsheet/cutsheet.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <filesystem>
#include <regex>

#include "engine/cuts/sheet/scale_text.h"
#include "engine/cuts/sheet/words.h"
#include "engine/job/read.h"
#include "render/cutsheet/test_sheet.h"
#include "tests/oracle/english.h"
#include "tests/oracle/program.h"

using namespace mullion;

namespace {

CuttingPlan plan_for(const std::string& job_name, const PlanOptions& options = {}) {
  const Job job = read_job(oracle::gallery(job_name)).value();
  const Mat mat = build_mat(job, lay_out(job).value()).value();
  CuttingPlan plan = plan_cutting(mat, default_cutter(), options).value();
  plan.title = job.title;
  return plan;
}

std::string written(const std::string& name, const std::string& pdf) {
  const std::string path = oracle::scratch_folder(name) + "/cuts.pdf";
  oracle::write_file(path, pdf);
  return path;
}

std::string text_of(const std::string& path) {
  return oracle::run({"pdftotext", "-layout", path, "-"}).out;
}

int pages_of(const std::string& path) {
  const std::string out = oracle::run({"pdfinfo", path}).out;
  return std::stoi(out.substr(out.find("Pages:") + 6));
}

std::size_t count(const std::string& text, const std::string& what) {
  std::size_t n = 0;
  for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + 1)) ++n;
  return n;
}

// In mutool's trace, one move and one line to a place so far off, in points, and no line on from
// there.
int lines_of_length(const std::string& trace, double length) {
  static const std::regex path(
      "<moveto x=\"([-0-9.]+)\" y=\"([-0-9.]+)\"/>\\s*<lineto x=\"([-0-9.]+)\" y=\"([-0-9.]+)\"/>"
      "\\s*(?=<moveto|</stroke_path>)");
  int found = 0;
  for (std::sregex_iterator at(trace.begin(), trace.end(), path), end; at != end; ++at) {
    const auto number = [&](int i) { return std::stod((*at)[static_cast<std::size_t>(i)]); };
    const double far = std::hypot(number(3) - number(1), number(4) - number(2));
    found += std::abs(far - length) < 0.05 ? 1 : 0;
  }
  return found;
}

std::string on_one_line(const std::string& text) {
  std::string out;
  for (const char c : text) {
    const bool blank = c == ' ' || c == '\n' || c == '\f';
    if (!blank || out.empty() || out.back() != ' ') out += blank ? ' ' : c;
  }
  return out;
}

}  // namespace

TEST_CASE("the sheet of a single mat is one page that poppler and qpdf accept") {
  for (const char* job : {"equal-borders.xml", "weighted-bottom.xml", "double-mat.xml"}) {
    const std::string path = written("cutsheet-single", render_cutsheet(plan_for(job)));
    CHECK(pages_of(path) == 1);
    CHECK(oracle::run({"qpdf", "--check", path}).status == 0);
  }
}

TEST_CASE("every set-up and every way the board lies is on the sheet") {
  const CuttingPlan plan = plan_for("double-mat.xml");
  const std::string text = text_of(written("cutsheet-all", render_cutsheet(plan)));
  std::size_t placements = 0;
  for (const Stage& stage : plan.stages) {
    for (const SetUp& set_up : stage.set_ups) {
      placements += set_up.placements.size();
      CHECK(text.find("Set-up " + std::to_string(set_up.number)) != std::string::npos);
    }
  }
  CHECK(count(text, "at the guide") >= placements);
}

TEST_CASE("the one amount of an under-mat is said on the sheet") {
  const std::string text =
      text_of(written("cutsheet-amount", render_cutsheet(plan_for("double-mat.xml"))));
  CHECK(count(text, "every setting changed by one amount") == 1);
  CHECK(text.find("guide opened by 5/16 in") != std::string::npos);
}

TEST_CASE("a run has a tally, and the same plan gives the same bytes") {
  PlanOptions options;
  options.quantity = 40;
  const std::string pdf = render_cutsheet(plan_for("equal-borders.xml", options));
  CHECK(text_of(written("cutsheet-run", pdf)).find("tally of 40") != std::string::npos);
  CHECK(render_cutsheet(plan_for("equal-borders.xml", options)) == pdf);
}

// Nothing is set below the foot of a page, or beside it.
TEST_CASE("every word of every sheet of the gallery stands on its page") {
  static const std::regex page("<page width=\"([0-9.]+)\" height=\"([0-9.]+)\"");
  static const std::regex word(
      "<word xMin=\"([-0-9.]+)\" yMin=\"([-0-9.]+)\" xMax=\"([-0-9.]+)\" "
      "yMax=\"([-0-9.]+)\"");
  constexpr double margin = 12;  // points: less than a printer leaves white
  for (const auto& entry : std::filesystem::directory_iterator(oracle::gallery(""))) {
    if (entry.path().extension() != ".xml") continue;
    const std::string name = entry.path().filename().string();
    const std::string path = written("cutsheet-words", render_cutsheet(plan_for(name)));
    const std::string boxes = oracle::run({"pdftotext", "-bbox", path, "-"}).out;
    std::smatch size;
    REQUIRE(std::regex_search(boxes, size, page));
    const double width = std::stod(size[1]), height = std::stod(size[2]);
    INFO(name);
    for (std::sregex_iterator at(boxes.begin(), boxes.end(), word), end; at != end; ++at) {
      const auto number = [&](int i) { return std::stod((*at)[static_cast<std::size_t>(i)]); };
      const bool on_page = number(1) > margin && number(2) > margin && number(3) < width - margin &&
                           number(4) < height - margin;
      if (!on_page) FAIL_CHECK(at->str());
    }
    CHECK(boxes.find("...<") == std::string::npos);
    CHECK(boxes.find("\u2026") == std::string::npos);
  }
}

TEST_CASE("seven pictures on two layers take no more than three pages") {
  const std::string path =
      written("cutsheet-collage", render_cutsheet(plan_for("seven-picture-collage.xml")));
  CHECK(pages_of(path) <= 3);
}

namespace {

// Nine openings of unequal sizes on two layers.
CuttingPlan nine_openings(const PlanOptions& options = {}) {
  std::string xml =
      R"(<job version="1" reference="N-9" unit="in" increment="1/16">
      <layers><layer name="Top mat" board="Oat"/><layer name="Under-mat" board="Slate" reveal="1/4"/>
      </layers><borders all="3"/><arrange><column gap="1">)";
  const char* rows[3][3] = {{"5", "4", "6"}, {"6", "5", "4"}, {"4", "6", "5"}};
  for (int row = 0; row < 3; ++row) {
    xml += "<row gap=\"1\">";
    for (int column = 0; column < 3; ++column) {
      xml += "<opening id=\"o" + std::to_string(row * 3 + column) + "\" width=\"" +
             rows[row][column] + "\" height=\"" + (row == 1 ? "5" : "4") + "\"/>";
    }
    xml += "</row>";
  }
  xml += "</column></arrange></job>";
  const Job job = parse_job(xml, "nine.xml").value();
  return plan_cutting(build_mat(job, lay_out(job).value()).value(), default_cutter(), options)
      .value();
}

// The sizes of type on all pages, in points.
std::vector<double> type_sizes(const std::string& path) {
  static const std::regex font("<font [^>]*size=\"([0-9.]+)\"");
  const std::string text = oracle::run({"mutool", "draw", "-F", "stext", path}).out;
  std::vector<double> out;
  for (std::sregex_iterator at(text.begin(), text.end(), font), end; at != end; ++at) {
    out.push_back(std::stod((*at)[1]));
  }
  return out;
}

}  // namespace

TEST_CASE(
    "nine openings on two layers take no more than four pages, in type of 7 points and more") {
  const std::string path = written("cutsheet-nine", render_cutsheet(nine_openings()));
  CHECK(pages_of(path) <= 4);
  const std::vector<double> sizes = type_sizes(path);
  REQUIRE(sizes.size() > 50);
  CHECK(*std::min_element(sizes.begin(), sizes.end()) >= 7);
}

TEST_CASE("the sheet shows every check measure of the plan") {
  const CuttingPlan plan = plan_for("double-mat.xml");
  const std::string text = on_one_line(
      oracle::run({"pdftotext", "-raw", written("cutsheet-checks", render_cutsheet(plan)), "-"})
          .out);
  std::size_t checks = 0;
  for (const Stage& stage : plan.stages) {
    for (const Check& check : stage.checks) {
      ++checks;
      const std::string said = check_text({plan, {}}, stage, check);
      INFO(said);
      CHECK(text.find(said) != std::string::npos);
    }
  }
  CHECK(checks >= 9);
}

TEST_CASE("the marking sheet lists every line of the plan with its distance and edge") {
  PlanOptions options;
  options.way = Way::pencilled;
  const CuttingPlan plan = nine_openings(options);
  const std::string path = written("cutsheet-marks", render_marking_sheet(plan));
  CHECK(pages_of(path) <= 2);
  const std::string text = on_one_line(oracle::run({"pdftotext", path, "-"}).out);
  for (const Stage& stage : plan.stages) {
    REQUIRE_FALSE(stage.pencil_lines.empty());
    for (const PencilLine& line : stage.pencil_lines) {
      const std::string from = "From edge " + edge_name(stage, line.edge) + ":";
      const std::size_t at = text.find(from);
      REQUIRE(at != std::string::npos);
      CHECK(text.find(rule_text(line.distance, plan.cutter.scale), at) != std::string::npos);
    }
  }
}

TEST_CASE("what a scale shows already is said to stay") {
  const std::string text =
      text_of(written("cutsheet-stays", render_cutsheet(plan_for("double-mat.xml"))));
  CHECK(count(text, "guide stays 2 13/16 in") == 1);
  CHECK(count(text, "near stop stays 3 1/8 in") == 1);
}

TEST_CASE("the test window of the test cuts is drawn at full size") {
  const std::string path =
      written("cutsheet-test-window", render_test_sheet(default_cutter(), sixty_fourths(4)));
  // Its lines are 3 in and 10 points at either end long: 236 points.
  const std::string page = oracle::run({"mutool", "draw", "-F", "trace", path}).out;
  CHECK(lines_of_length(page, 236) == 4);
  CHECK(text_of(path).find("3 in square, full size") != std::string::npos);
}

TEST_CASE("the cut sheet of every gallery job carries no English where it is told otherwise") {
  const std::string folder = oracle::scratch_folder("cutsheet-told");
  const std::vector<std::string> languages{"de", "es", "fr"};
  std::size_t jobs = 0;
  for (const auto& entry : std::filesystem::directory_iterator(oracle::gallery(""))) {
    if (entry.path().extension() != ".xml") continue;
    const std::string& language = languages[jobs++ % languages.size()];
    const CuttingPlan plan = plan_for(entry.path().filename().string());
    oracle::write_file(folder + "/c.pdf",
                       render_cutsheet(plan, {}, Locale::find(language).value()));
    const std::string words = oracle::run({"pdftotext", folder + "/c.pdf", "-"}).out;
    INFO(entry.path() << " in " << language << "\n" << words);
    CHECK(oracle::english_in(words).empty());
  }
  CHECK(jobs > 25);
}
