// What a page carries besides the lines of the mat, measured in the file.

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <random>

#include "engine/mat/rect.h"
#include "render/template/template.h"
#include "tests/engine/layout/random_job.h"
#include "tests/how_many.h"
#include "tests/oracle/drawn_page.h"
#include "tests/oracle/program.h"
#include "tests/render/template/made.h"

using oracle::DrawnPage;
using oracle::Label;
using oracle::Spot;

namespace {

constexpr double hundredth_mm = 0.01 / 25.4 * 72;
constexpr double inch = 72;  // ISO 32000-1, 8.3.2.3
constexpr double mm = 72 / 25.4;

struct Bounds {
  double left, top, right, bottom;
};

// Around the letters of a label that runs across or straight up or down: from a quarter of the
// size below the baseline to three quarters above it.
Bounds bounds_of(const Label& label) {
  const double turn = label.turn / 180 * std::acos(-1.0);
  const Spot along{std::cos(turn), std::sin(turn)}, up{std::sin(turn), -std::cos(turn)};
  Bounds box{1e9, 1e9, -1e9, -1e9};
  for (const double x : {0.0, label.length}) {
    for (const double y : {-0.2 * label.size, 0.73 * label.size}) {
      const Spot s{label.at.x + x * along.x + y * up.x, label.at.y + x * along.y + y * up.y};
      box = {std::min(box.left, s.x), std::min(box.top, s.y), std::max(box.right, s.x),
             std::max(box.bottom, s.y)};
    }
  }
  return box;
}

bool overlap(const Bounds& a, const Bounds& b) {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

std::string collisions(const DrawnPage& page) {
  std::string found;
  for (std::size_t i = 0; i < page.labels.size(); ++i) {
    const Bounds a = bounds_of(page.labels[i]);
    if (a.left < 0 || a.top < 0 || a.right > page.width || a.bottom > page.height) {
      found += "off the page: " + page.labels[i].text + "\n";
    }
    for (std::size_t j = 0; j < i; ++j) {
      if (overlap(a, bounds_of(page.labels[j]))) {
        found += page.labels[j].text + " | " + page.labels[i].text + "\n";
      }
    }
  }
  return found;
}

// A rule of that length: a line across, with a stroke standing on each end.
bool shows_rule(const DrawnPage& page, double length) {
  for (const oracle::Stroke& stroke : page.strokes) {
    const Spot from = stroke.from, to{from.x + length, from.y};
    if (std::abs(stroke.to.x - to.x) > hundredth_mm || std::abs(stroke.to.y - from.y) > 1e-3) {
      continue;
    }
    const auto stands_at = [&](double x) {
      return oracle::shows_line(page, {x, from.y}, {x, from.y - 3}, hundredth_mm) ||
             oracle::shows_line(page, {x, from.y}, {x, from.y + 3}, hundredth_mm);
    };
    if (stands_at(from.x) && stands_at(to.x)) return true;
  }
  return false;
}

using PagesOfJobs = std::vector<std::pair<std::string, DrawnPage>>;

PagesOfJobs read_all_pages() {
  const std::string pdf = oracle::scratch_folder("template-pages") + "/template.pdf";
  PagesOfJobs pages;
  for (const std::string& job : made::all_jobs()) {
    for (DrawnPage& page : oracle::drawn_pages(made::template_of(job, pdf))) {
      pages.emplace_back(job, std::move(page));
    }
  }
  return pages;
}

// With the job of each.
const PagesOfJobs& all_pages() {
  static const PagesOfJobs pages = read_all_pages();
  return pages;
}

}  // namespace

TEST_CASE("no label touches another or leaves the page") {
  for (const auto& [job, page] : all_pages()) {
    INFO(job);
    CHECK(page.labels.size() > 10);
    CHECK(collisions(page) == "");
  }
}

// Rows and columns of up to 40 pictures of any size: more lines than the margins can hold.
TEST_CASE("no label of a random job's template touches another or leaves its page") {
  const std::string folder = oracle::scratch_folder("template-random");
  std::mt19937 random(19);
  const int wanted = test::how_many(12, 200);
  int drawn = 0, crowded = 0;
  for (int i = 0; drawn < wanted; ++i) {
    const int most = i % 3 == 0 ? 40 : 10;
    const std::string job = folder + "/job.xml";
    oracle::write_file(job, "<job version=\"1\" unit=\"in\" reference=\"R\">" +
                                test::random_job(random, most) + "</job>");
    const oracle::Run run = oracle::mullion({"template", job, "-o", folder + "/board.pdf"});
    if (run.status != 0) continue;  // its sizes contradict one another, or it is too large
    ++drawn;
    INFO(i << "\n" << oracle::read_file(job));
    for (const DrawnPage& page : oracle::drawn_pages(folder + "/board.pdf")) {
      CHECK(collisions(page) == "");
    }
    const DrawnPage overview =
        oracle::drawn_pages(
            made::template_of(job, folder + "/sheets.pdf", {"--paper", "letter", "--by-layer"}))
            .at(0);
    CHECK(collisions(overview) == "");
    std::string text = oracle::text_of(overview);
    std::replace(text.begin(), text.end(), '\n', ' ');
    crowded += text.find("An edge has more lines than there is room for") != std::string::npos;
  }
  CHECK(crowded > 0);
}

TEST_CASE("a label upon another would be noticed") {
  const std::string folder = oracle::scratch_folder("template-collision");
  const std::string job = oracle::test_data("worked/asymmetric.xml");
  DrawnPage page = oracle::drawn_pages(made::template_of(job, folder + "/t.pdf")).at(0);
  for (const Label& label : std::vector<Label>(page.labels)) {
    page.labels.push_back(label);
    page.labels.back().at.x += 1;
    CHECK(collisions(page) != "");
    page.labels.pop_back();
  }
}

TEST_CASE("every page has a rule of 4 in, one of 100 mm and a square with its diagonal") {
  for (const auto& [job, page] : all_pages()) {
    INFO(job);
    CHECK(shows_rule(page, 4 * inch));
    CHECK(shows_rule(page, 100 * mm));
    const auto square = oracle::find_rectangle(page, inch, inch, hundredth_mm);
    REQUIRE(square);
    const Spot low{square->x, square->y + inch}, high{square->x + inch, square->y};
    CHECK(oracle::shows_line(page, low, high, hundredth_mm));
    CHECK_FALSE(shows_rule(page, 4.01 * inch));
  }
}

TEST_CASE("the page is the board's size and margins") {
  for (const auto& [job, page] : all_pages()) {
    INFO(job);
    const mullion::Mat mat = made::mat_of(job);
    const double width = mullion::to_points(mat.outer.width());
    const double height = mullion::to_points(mat.outer.height());
    CHECK(page.width >= width + inch);
    CHECK(page.width <= std::max(width + 4 * inch, 12 * inch));
    CHECK(page.height >= height + inch);
    CHECK(page.height <= height + 6 * inch);
  }
}

TEST_CASE("the board says whose it is inside the line that is trimmed to, on every layer") {
  const std::string folder = oracle::scratch_folder("template-named");
  for (const std::string& job : made::all_jobs()) {
    const mullion::Job read = mullion::read_job(job).value();
    const mullion::Mat mat = made::mat_of(job);
    const mullion::Cuts cuts = mullion::cuts_of(mat);
    const auto pages = oracle::drawn_pages(made::template_of(job, folder + "/page.pdf"));
    REQUIRE(pages.size() == cuts.layers.size());
    const mullion::TemplatePage page = mullion::template_page(mat);
    const std::string reference = read.reference.empty() ? "Layer" : read.reference;
    for (std::size_t i = 0; i < pages.size(); ++i) {
      INFO(job << ", layer " << i + 1);
      const mullion::Rect blank = mullion::mirrored(cuts.layers[i].blank, mat.outer.width());
      const Bounds board{mullion::to_points(page.board_left + blank.left),
                         mullion::to_points(page.board_top + blank.top),
                         mullion::to_points(page.board_left + blank.right),
                         mullion::to_points(page.board_top + blank.bottom)};
      CHECK(std::any_of(pages[i].labels.begin(), pages[i].labels.end(), [&](const Label& label) {
        const Bounds box = bounds_of(label);
        return label.text.find(reference) == 0 && box.left > board.left &&
               box.right < board.right && box.top > board.top && box.bottom < board.bottom;
      }));
    }
  }
}

TEST_CASE("without any font there is an error that says so, and no file") {
  const std::string folder = oracle::scratch_folder("template-no-font");
  oracle::write_file(folder + "/fonts.conf", "<?xml version=\"1.0\"?><fontconfig><cachedir>" +
                                                 folder + "/cache</cachedir></fontconfig>");
  const oracle::Run run =
      oracle::run({"env", "FONTCONFIG_FILE=" + folder + "/fonts.conf", MULLION_PROGRAM, "template",
                   oracle::gallery("equal-borders.xml"), "-o", folder + "/out.pdf"});
  CHECK(run.status != 0);
  CHECK(run.err.find("no font was found on this machine") != std::string::npos);
  CHECK(oracle::run({"test", "-e", folder + "/out.pdf"}).status != 0);
}

TEST_CASE("each side of a sheet keeps its own white edge") {
  const std::string folder = oracle::scratch_folder("template-white");
  const auto pages = oracle::drawn_pages(
      made::template_of(oracle::gallery("equal-borders.xml"), folder + "/sheets.pdf",
                        {"--paper", "letter", "--unprintable", "bottom=1, left=1/8, top=1/2"}));
  for (std::size_t i = 1; i < pages.size(); ++i) {
    const DrawnPage& page = pages[i];
    const bool across = page.width > page.height;
    // A page that lies across may be turned either way: 1 in at its sides, 1/4 in above and below.
    const double left = across ? 1 : 0.125, right = across ? 1 : 0.25, top = across ? 0.25 : 0.5,
                 bottom = across ? 0.25 : 1;
    for (const oracle::Stroke& stroke : page.strokes) {
      for (const Spot& end : {stroke.from, stroke.to}) {
        CHECK(end.x > left * inch - 0.01);
        CHECK(end.y > top * inch - 0.01);
        CHECK(end.x < page.width - right * inch + 0.01);
        CHECK(end.y < page.height - bottom * inch + 0.01);
      }
    }
  }
}
