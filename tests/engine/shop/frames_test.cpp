#include <catch2/catch.hpp>

#include "engine/job/read.h"
#include "engine/shop/least_room.h"
#include "engine/shop/stock_sizes.h"
#include "engine/shop/wished_borders.h"

using namespace mullion;

namespace {

Job one_picture(const std::string& rest) {
  return parse_job(
             "<job version=\"1\" reference=\"F\" unit=\"in\" increment=\"1/16\"><pictures>"
             "<picture id=\"p\" width=\"10\" height=\"8\"/></pictures>"
             "<layers><layer board=\"Oat\"/></layers>" +
                 rest + "<arrange><opening picture=\"p\"/></arrange></job>",
             "f.xml")
      .value();
}

Sides all(Length border) {
  return {border, border, border, border};
}

Job job_of(const std::string& unit, const std::string& rest) {
  return parse_job("<job version=\"1\" reference=\"F\" unit=\"" + unit + "\" increment=\"" +
                       (unit == "in" ? "1/16" : "1 mm") + "\">" + rest + "</job>",
                   "f.xml", Need::pictures)
      .value();
}

std::string two_prints(const std::string& rest) {
  return R"(<pictures><picture id="a" width="8" height="10"/>
    <picture id="b" width="8" height="10"/></pictures><layers><layer board="Oat"/></layers>)" +
         rest;
}

const std::string in_a_row =
    R"(<arrange><row gap="1"><opening picture="a"/><opening picture="b"/></row></arrange>)";

}  // namespace

// "Measuring for a mat", a frame workshop's leaflet,
// framersworkshop.com/SpecialtyMats/matmeasuring.html
TEST_CASE("an 8 x 10 in picture fits an 11 x 14 in frame with borders of 2 1/8 and 1 5/8 in") {
  const auto fits =
      fitting_frames(one_picture(""), common_frame_sizes(Unit::inch), all(sixty_fourths(96)), 9)
          .value();
  REQUIRE_FALSE(fits.empty());
  CHECK(fits.front().width == inches(14));
  CHECK(fits.front().height == inches(11));
  CHECK(fits.front().borders ==
        Sides{sixty_fourths(136), sixty_fourths(104), sixty_fourths(136), sixty_fourths(104)});
}

TEST_CASE("a size with less than the least border is left out, and a weighted bottom is kept") {
  const auto fits = fitting_frames(one_picture("<borders bottom-extra=\"1/2\"/>"),
                                   common_frame_sizes(Unit::inch), all(inches(2)), 99)
                        .value();
  REQUIRE_FALSE(fits.empty());
  for (const FrameFit& fit : fits) {
    CHECK(fit.borders.top >= inches(2));
    CHECK(fit.borders.left >= inches(2));
    CHECK(fit.borders.bottom - fit.borders.top == sixty_fourths(32));
  }
}

TEST_CASE("a shop's own list is read, and a bad one is refused with its place") {
  const auto own = parse_frame_sizes(
      "<frame-sizes unit=\"cm\">\n  <size width=\"30\" height=\"40\"/>\n</frame-sizes>", "own.xml");
  REQUIRE(own.has_value());
  CHECK(own->front().width == millimetres(300));
  const auto bad = parse_frame_sizes(
      "<frame-sizes>\n  <size width=\"x\" height=\"4\"/>\n</frame-sizes>", "own.xml");
  REQUIRE_FALSE(bad.has_value());
  CHECK(bad.error().front().place.line == 2);
  CHECK_FALSE(parse_frame_sizes("<frame-sizes", "own.xml").has_value());
  CHECK_FALSE(parse_frame_sizes("<sizes/>", "own.xml").has_value());
}

TEST_CASE("the borders wished for are those that the job states, else its least, else usual ones") {
  const auto wished = [](const std::string& unit, const std::string& borders) {
    return wished_borders(job_of(unit, two_prints(borders)));
  };
  CHECK(wished("in", "") == all(inches(2)));
  CHECK(wished("cm", "") == all(millimetres(50)));
  CHECK(wished("in", R"(<borders least="3"/>)") == all(inches(3)));
  CHECK(wished("in", R"(<borders top="4" least="3"/>)") ==
        Sides{inches(3), inches(4), inches(3), inches(4)});
  CHECK(wished("in", R"(<borders sides="3" top="3" bottom="4"/>)") ==
        Sides{inches(3), inches(3), inches(3), inches(4)});
}

TEST_CASE("a stated bottom border stays as much wider than the stated top one in every frame") {
  const Job job = job_of("in", two_prints(R"(<borders sides="3" top="3" bottom="4"/>)" + in_a_row));
  const auto fits =
      fitting_frames(job, common_frame_sizes(Unit::inch), wished_borders(job), 99).value();
  for (const FrameFit& fit : fits) {
    CHECK(fit.borders.left >= inches(3));
    CHECK(fit.borders.top >= inches(3));
    CHECK(fit.borders.bottom - fit.borders.top == inches(1));
  }
}

// Two openings of 7 3/4 x 9 3/4 in and a gap of 1 in are 16 1/2 x 9 3/4 in.
TEST_CASE("two prints in a row get the smallest frame that leaves the borders, to the increment") {
  const Job job = job_of("in", two_prints(in_a_row));
  const std::vector<StockSize> sizes{{inches(16), inches(24)}, {inches(14), inches(20)}};
  const auto fit = [&](Length border) { return fitting_frames(job, sizes, all(border), 9); };
  const auto narrow = fit(sixty_fourths(112)).value();  // 1 3/4 in: 20 - 16 1/2 = 2 * 1 3/4
  REQUIRE(narrow.size() == 2);
  CHECK(narrow.front().width == inches(20));
  CHECK(narrow.front().borders ==
        Sides{sixty_fourths(112), sixty_fourths(136), sixty_fourths(112), sixty_fourths(136)});
  CHECK(fit(sixty_fourths(116)).value().front().width == inches(24));
}

TEST_CASE("where no size takes the job, the size that it needs is said, and it is enough") {
  const Job job = job_of("in", two_prints(in_a_row));
  const auto fit = [&](const StockSize& size) {
    return fitting_frames(job, {size}, all(inches(3)), 1);
  };
  const auto none = fit({inches(11), inches(14)});
  REQUIRE_FALSE(none.has_value());
  CHECK(none.error().front().code == "frames-none");
  CHECK(none.error().front().message ==
        "no size in the list takes this job; with borders of at least 3 in it needs 22 1/2 in x "
        "15 3/4 in");
  CHECK(fit({sixty_fourths(22 * 64 + 32), sixty_fourths(15 * 64 + 48)}).has_value());
  CHECK_FALSE(fit({sixty_fourths(22 * 64 + 28), sixty_fourths(15 * 64 + 48)}).has_value());
}

TEST_CASE("one picture needs no arrangement to find its frame, several do") {
  const Job one = job_of("cm", R"(<pictures><picture id="p" width="20" height="30"/></pictures>)");
  const auto fits =
      fitting_frames(one, common_frame_sizes(Unit::centimetre), wished_borders(one), 1);
  REQUIRE(fits.has_value());
  CHECK(fits->front().width == millimetres(300));  // 20 - 2 * 0.3 + 2 * 5 = 29.4 cm
  CHECK(fits->front().height == millimetres(400));
  const Job two = job_of("in", two_prints(""));
  const auto refused = fitting_frames(two, common_frame_sizes(Unit::inch), all(inches(2)), 1);
  REQUIRE_FALSE(refused.has_value());
  CHECK(refused.error().front().code == "frames-not-arranged");
}

TEST_CASE(
    "the sizes on the shelf are whole inches for jobs in inches, whole centimetres for others") {
  const auto are_whole = [](Unit job, Length step) {
    for (const StockSize& size : common_frame_sizes(job)) {
      CHECK(size.width.ticks() % step.ticks() == 0);
      CHECK(size.height.ticks() % step.ticks() == 0);
    }
  };
  are_whole(Unit::inch, inches(1));
  are_whole(Unit::centimetre, millimetres(10));
  are_whole(Unit::millimetre, millimetres(10));
}

TEST_CASE("as many sizes as are asked for are listed, the smallest first") {
  const Job job = job_of("in", two_prints(in_a_row));
  const auto fits = [&](std::size_t most) {
    return fitting_frames(job, common_frame_sizes(Unit::inch), all(inches(1)), most).value();
  };
  const auto every = fits(99), three = fits(3);
  REQUIRE(every.size() > 3);
  REQUIRE(three.size() == 3);
  double before = 0;
  for (std::size_t i = 0; i < every.size(); ++i) {
    const double area = to_inches(every[i].width) * to_inches(every[i].height);
    CHECK(area >= before);
    before = area;
    if (i < 3) CHECK(three[i].width == every[i].width);
  }
}

TEST_CASE("no board that is smaller than the least room and the borders can be laid out") {
  // Openings of 7 3/4 x 9 3/4, 5 3/4 x 3 3/4 and a title of 6 x 1 in, and gaps of 1 and 1/2 in.
  const std::string rest = R"(<pictures><picture id="a" width="8" height="10"/>
    <picture id="b" width="6" height="4"/></pictures><layers><layer board="Oat"/></layers>
    <borders least="2"/><arrange least-bar="1/2"><row gap="1"><opening picture="a"/><column>
    <opening picture="b"/><opening id="title" width="6" height="1"/></column></row></arrange>)";
  Job job = job_of("in", rest);
  const Room room = least_room(job);
  CHECK(room.width == sixty_fourths(14 * 64 + 48));
  CHECK(room.height == sixty_fourths(9 * 64 + 48));
  const auto fits = [&](Length width, Length height) {
    job.outer_width = width;
    job.outer_height = height;
    return lay_out(job).has_value();
  };
  const Length width = room.width + inches(4), height = room.height + inches(4);
  CHECK(fits(width, height));
  CHECK_FALSE(fits(width - sixty_fourths(4), height));
  CHECK_FALSE(fits(width, height - sixty_fourths(4)));
}

TEST_CASE("a long list of sizes too small is gone through at once") {
  const Job job = job_of("in", two_prints(in_a_row));
  std::vector<StockSize> sizes;
  for (int i = 0; i < 2000; ++i) sizes.push_back({inches(5) + sixty_fourths(i % 640), inches(14)});
  sizes.push_back({inches(24), inches(30)});
  const auto fits = fitting_frames(job, sizes, all(inches(2)), 6).value();
  REQUIRE(fits.size() == 2);
  CHECK(fits.front().width == inches(24));
}
