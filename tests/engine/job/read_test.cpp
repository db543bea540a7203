// What a good job file means.

#include "engine/job/read.h"

#include "complaint.h"
#include "engine/job/write.h"
#include "tests/oracle/program.h"

using namespace mullion;

namespace {

Job beaches() {
  auto job = read_job(oracle::test_data("jobs/three_beaches.xml"));
  if (!job) FAIL(to_string(job.error().front()));
  return *job;
}

Job read_with(const std::string& parts, const std::string& head = "unit=\"in\"") {
  auto job = parse_job("<job version=\"1\" " + head + ">" + parts + "</job>", "test.xml");
  if (!job) FAIL(to_string(job.error().front()));
  return *job;
}

const std::string one_opening =
    "<layers><layer/></layers><arrange><opening width=\"8\" height=\"10\"/></arrange>";

Borders borders(const std::string& attributes) {
  return read_with(one_opening + "<borders " + attributes + "/>").borders;
}

const Opening& opening_at(const Node& node, std::size_t index) {
  return std::get<Opening>(std::get<Group>(node.what).children.at(index).what);
}

}  // namespace

TEST_CASE("a job file says for whom, what, how many and in which unit") {
  const Job job = beaches();
  CHECK(job.version == 1);
  CHECK(job.reference == "A-1042");
  CHECK(job.revision == 2);
  CHECK(job.date == "2026-03-02");
  CHECK(job.quantity == 3);
  CHECK(job.scale == Scale{Unit::inch, sixty_fourths(4)});
  CHECK(job.customer == "Orla Venn");
  CHECK(job.email == "orla@example.org");
  CHECK(job.title == "Three beaches");
  CHECK(job.note == "Hang in the hall,\nabove the bench.");
  CHECK(job.wall == Colour{0xdd, 0xda, 0xd2});
}

TEST_CASE("pictures have a size, an edge that is covered or floats, and an image with its crop") {
  const Job job = beaches();
  REQUIRE(job.pictures.size() == 3);
  const Picture& dune = job.pictures[0];
  CHECK(dune.width == inches(10));
  CHECK(dune.height == inches(8));
  CHECK(dune.image == "dune.png");
  CHECK(dune.overlap == sixty_fourths(12));
  CHECK(dune.zoom == 1.2);
  CHECK(dune.pan_x == 0);
  CHECK(dune.pan_y == -0.5);
  CHECK(dune.may_turn);
  CHECK(dune.place == Place{12, 5});
  CHECK(job.pictures[1].overlap == sixty_fourths(8));
  CHECK_FALSE(job.pictures[1].may_turn);
  CHECK_FALSE(job.pictures[2].overlap);
  CHECK(job.pictures[2].float_gap == sixty_fourths(16));
}

TEST_CASE("layers have boards, and reveals by side") {
  const Job job = beaches();
  REQUIRE(job.layers.size() == 3);
  CHECK(job.bevel_millidegrees == 45'000);
  CHECK(job.reveal_reading == RevealReading::seen);
  CHECK(job.layers[0].name == "Top mat");
  CHECK(job.layers[0].thickness == sixty_fourths(4));
  const Layer& under = job.layers[1];
  CHECK(under.board == "Ink");
  CHECK(under.colour == Colour{0x22, 0x30, 0x4a});
  CHECK(under.core == Colour{0xfe, 0xfe, 0xfe});
  CHECK(under.thickness == Length::from_ticks(2400));
  CHECK(under.reveal ==
        Sides{sixty_fourths(16), sixty_fourths(16), sixty_fourths(16), sixty_fourths(24)});
  CHECK(under.grain);
  CHECK(job.layers[2].spacer);
  CHECK(job.layers[2].thickness == sixty_fourths(8));
  CHECK(job.layers[2].only == std::vector<std::string>{"bird"});
}

TEST_CASE("eight-ply board is twice as thick as four-ply unless its thickness is stated") {
  const Job job = read_with(
      "<layers><layer ply=\"8\"/><layer ply=\"8\" thickness=\"3 mm\"/></layers>"
      "<arrange><opening width=\"8\" height=\"10\"/></arrange>");
  CHECK(job.layers[0].thickness == sixty_fourths(8));
  CHECK(job.layers[1].thickness == millimetres(3));
}

TEST_CASE("columns and rows nest, and gaps stand between neighbours") {
  const Job job = beaches();
  CHECK(job.least_bar == sixty_fourths(32));
  CHECK(job.grooves.size() == 1);
  const Group& column = std::get<Group>(job.arrangement.what);
  CHECK(column.along == Along::column);
  CHECK(column.gap == inches(1));
  CHECK(column.align == Align::centre);
  CHECK(column.grooves.size() == 1);
  REQUIRE(column.children.size() == 2);
  REQUIRE(column.gaps.size() == 1);
  CHECK(column.gaps[0].size == inches(1));

  const Opening& title = opening_at(job.arrangement, 0);
  CHECK(title.id == "title");
  CHECK(title.width == inches(12));
  CHECK_FALSE(title.height);

  const Group& row = std::get<Group>(column.children[1].what);
  CHECK(row.along == Along::row);
  CHECK(row.align == Align::end);
  CHECK(row.joined_layer == 2);
  REQUIRE(row.gaps.size() == 2);
  CHECK(row.gaps[0].id == "g1");
  CHECK(row.gaps[0].size == inches(1) + sixty_fourths(32));
  CHECK(row.gaps[1].id == "g2");
  CHECK_FALSE(row.gaps[1].size);

  const Opening& pier = opening_at(column.children[1], 1);
  CHECK(pier.id == "pier");
  CHECK(pier.shape.kind == ShapeKind::ellipse);
  CHECK(pier.reveals.at(2) ==
        Sides{sixty_fourths(12), sixty_fourths(8), sixty_fourths(8), sixty_fourths(8)});
  const Opening& bird = opening_at(column.children[1], 2);
  CHECK(bird.id == "bird");
  CHECK(bird.picture == "gull");
  CHECK(bird.shape == ShapeSpec{ShapeKind::rounded, sixty_fourths(32), {}, {}, {}});
  REQUIRE(bird.grooves.size() == 1);
  CHECK(bird.grooves[0].distance == sixty_fourths(32));
  CHECK(bird.grooves[0].width == sixty_fourths(4));
}

TEST_CASE("an opening is named after its picture, else by its number in the file") {
  const Job job = read_with(
      "<pictures><picture id=\"a\" width=\"4\" height=\"4\"/></pictures><layers><layer/></layers>"
      "<arrange><row><opening width=\"1\" height=\"1\"/><opening picture=\"a\"/>"
      "<opening width=\"1\" height=\"1\"/></row></arrange>");
  CHECK(opening_at(job.arrangement, 0).id == "opening-1");
  CHECK(opening_at(job.arrangement, 1).id == "a");
  CHECK(opening_at(job.arrangement, 2).id == "opening-3");
}

TEST_CASE("a gap that only has a name is as wide as the row says, and free makes it free") {
  const Job job = read_with(
      "<layers><layer/></layers><arrange><row gap=\"2\"><opening width=\"1\" height=\"1\"/>"
      "<gap id=\"g\"/><opening width=\"1\" height=\"1\"/><gap size=\"free\"/>"
      "<opening width=\"1\" height=\"1\"/></row></arrange>");
  const Group& row = std::get<Group>(job.arrangement.what);
  CHECK(row.gaps.at(0).size == inches(2));
  CHECK_FALSE(row.gaps.at(1).size);
}

TEST_CASE("a circle and a square need one stated side") {
  const Job job = read_with(
      "<layers><layer/></layers><arrange><row><opening shape=\"circle\" width=\"5\"/>"
      "<opening shape=\"square\" height=\"3\"/></row></arrange>");
  CHECK(opening_at(job.arrangement, 0).height == inches(5));
  CHECK(opening_at(job.arrangement, 0).shape.kind == ShapeKind::ellipse);
  CHECK(opening_at(job.arrangement, 1).width == inches(3));
}

TEST_CASE("an arch without a rise is a half round") {
  const Job job = read_with(
      "<layers><layer/></layers>"
      "<arrange><opening shape=\"arch\" width=\"5\" height=\"7\"/></arrange>");
  CHECK(std::get<Opening>(job.arrangement.what).shape.rise == Length());
}

TEST_CASE("rules name openings, groups, gaps and measures") {
  const Job job = beaches();
  REQUIRE(job.rules.size() == 8);
  CHECK(job.rules[0].kind == Rule::Kind::same_size);
  CHECK(job.rules[0].of == std::vector<std::string>{"dune", "pier"});
  CHECK(job.rules[0].dimension == "width");
  CHECK(job.rules[0].strength == Strength::strong);
  CHECK(job.rules[1].edge == "middle");
  CHECK(job.rules[1].strength == Strength::weak);
  CHECK(job.rules[2].of == std::vector<std::string>{"g1", "g2", "border.left"});
  CHECK(job.rules[2].strength == Strength::required);
  CHECK(job.rules[3].of == std::vector<std::string>{"title.height", "bird.height"});
  CHECK(job.rules[3].factor_numerator == 3);
  CHECK(job.rules[3].factor_denominator == 2);
  CHECK(job.rules[4].value == inches(3));
  CHECK(job.rules[5].kind == Rule::Kind::at_least);
  CHECK(job.rules[6].kind == Rule::Kind::at_most);
  CHECK(job.rules[7].on == "mat");
  CHECK(job.rules[7].dimension == "across");
  CHECK(job.rules[7].place == Place{49, 5});
}

TEST_CASE("borders are stated together, by pairs or one by one") {
  const Borders all = borders("all=\"3\"");
  CHECK(all.left == inches(3));
  CHECK(all.bottom_size == inches(3));
  CHECK(all.bottom == Borders::Bottom::given);

  const Borders mixed = borders("all=\"3\" sides=\"2\" top=\"4\" bottom=\"5\"");
  CHECK(mixed.left == inches(2));
  CHECK(mixed.right == inches(2));
  CHECK(mixed.top == inches(4));
  CHECK(mixed.bottom_size == inches(5));
}

TEST_CASE("the bottom border is weighted by an amount, a ratio or the optical centre") {
  const Borders extra = borders("all=\"3\" bottom-extra=\"1/2\"");
  CHECK(extra.bottom == Borders::Bottom::extra);
  CHECK(extra.extra == sixty_fourths(32));
  CHECK_FALSE(extra.bottom_size);
  const Borders ratio = borders("top=\"3\" bottom-ratio=\"1.25\"");
  CHECK(ratio.bottom == Borders::Bottom::ratio);
  CHECK(ratio.ratio_numerator == 5);
  CHECK(ratio.ratio_denominator == 4);
  CHECK(borders("bottom=\"optical\"").bottom == Borders::Bottom::optical);
  CHECK(borders("bottom=\"equal\"").bottom == Borders::Bottom::equal);
  CHECK(borders("least=\"2\"").least == inches(2));
}

TEST_CASE("a metric job has metric usual figures") {
  const Job job = read_with(
      "<pictures><picture id=\"a\" width=\"200\" height=\"10 in\"/></pictures>"
      "<layers><layer/><layer/></layers><frame rabbet-width=\"500\" rabbet-height=\"400\"/>"
      "<arrange><opening picture=\"a\"/></arrange>",
      "unit=\"mm\"");
  CHECK(job.scale == Scale{Unit::millimetre, millimetres(1)});
  CHECK(job.pictures[0].width == millimetres(200));
  CHECK(job.pictures[0].height == millimetres(254));
  CHECK(job.pictures[0].overlap == millimetres(3));
  CHECK(job.layers[1].reveal.left == millimetres(6));
  CHECK(job.frame->allowance == millimetres(3));
}

TEST_CASE("an outer size is given, free or left out") {
  const Job job = read_with(one_opening + "<outer width=\"20\" height=\"free\"/>");
  CHECK(job.outer_width == inches(20));
  CHECK_FALSE(job.outer_height);
}

TEST_CASE("a byte order mark, comments and a pointer to the schema do no harm") {
  const auto job = parse_job(
      "\xEF\xBB\xBF<?xml version=\"1.0\" encoding=\"utf-8\"?><!-- a --><job version=\"1\" "
      "unit=\"in\" xmlns:xsi=\"http://www.w3.org/2001/XMLSchema-instance\" "
      "xsi:noNamespaceSchemaLocation=\"job.xsd\"><!-- b -->" +
          one_opening + "</job><!-- c -->",
      "test.xml");
  CHECK(job);
}

TEST_CASE("for suggestions the pictures are enough") {
  const std::string xml =
      "<job version=\"1\" unit=\"in\">"
      "<pictures><picture id=\"a\" width=\"4\" height=\"4\"/></pictures></job>";
  const auto job = parse_job(xml, "test.xml", Need::pictures);
  REQUIRE(job);
  CHECK_FALSE(is_arranged(*job));
  CHECK(job->layers.size() == 1);
  CHECK_FALSE(parse_job(xml, "test.xml"));
  CHECK(is_arranged(beaches()));
}

TEST_CASE("a picture says how it hangs: turned right, left or over") {
  for (const auto& [word, turn] :
       {std::pair{"right", Turn::right}, {"over", Turn::over}, {"left", Turn::left}}) {
    const auto job = parse_job(
        std::string("<job version=\"1\" reference=\"T\" unit=\"in\" increment=\"1/16\"><pictures>"
                    "<picture id=\"a\" width=\"8\" height=\"10\" turned=\"") +
            word + "\"/></pictures></job>",
        "turned.xml", Need::pictures);
    REQUIRE(job.has_value());
    CHECK(job->pictures.front().turned == turn);
    CHECK(write_job(*job).find(std::string(" turned=\"") + word + "\"") != std::string::npos);
  }
}

TEST_CASE("pictures say which stay together and in which sequence, for suggestions") {
  const std::string head =
      "<job version=\"1\" reference=\"T\" unit=\"in\" increment=\"1/16\"><pictures>"
      "<picture id=\"a\" width=\"8\" height=\"10\" group=\"trip\" order=\"2\"/>";
  const auto job = parse_job(head + "</pictures></job>", "order.xml", Need::pictures);
  REQUIRE(job.has_value());
  CHECK(job->pictures.front().group == "trip");
  CHECK(job->pictures.front().order == 2);
  CHECK(write_job(*job).find(" group=\"trip\" order=\"2\"") != std::string::npos);
  const auto twice =
      parse_job(head + "<picture id=\"b\" width=\"8\" height=\"10\" order=\"2\"/></pictures></job>",
                "order.xml", Need::pictures);
  REQUIRE_FALSE(twice.has_value());
  CHECK(twice.error().front().code == "job-repeated-order");
}
