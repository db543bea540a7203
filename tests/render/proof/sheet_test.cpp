#include <catch2/catch.hpp>
#include <filesystem>

#include "tests/oracle/pdf.h"
#include "tests/oracle/program.h"

namespace {

std::string text_of_proof(const std::vector<std::string>& words) {
  const std::string path = oracle::scratch_folder("sheet") + "/p.pdf";
  std::vector<std::string> all{"proof", "-o", path};
  all.insert(all.end(), words.begin(), words.end());
  const auto run = oracle::mullion(all);
  INFO(run.err);
  REQUIRE(run.status == 0);
  return oracle::pdf_text(path);
}

bool has(const std::string& text, const std::string& what) {
  return text.find(what) != std::string::npos;
}

TEST_CASE("a proof says whose it is, what it measures and what is signed") {
  const std::string text = text_of_proof({oracle::gallery("seven-picture-collage.xml")});
  for (const char* what : {"A week by the sea", "Family Quillfeather", "W-0106", "2026-03-05",
                           "32 × 24 in", "81.3 × 61 cm", "7 3/4 × 9 3/4 in", "Chalk", "Lagoon",
                           "I approve revision 1 (", "Signature", "Date"}) {
    INFO(what << "\n" << text);
    CHECK(has(text, what));
  }
}

TEST_CASE("a picture in a window shared with taller ones has its own size on the proof") {
  const std::string text = text_of_proof({oracle::test_data("jobs/stepped_window.xml")});
  INFO(text);
  CHECK(has(text, "5 3/4 × 3 3/4 in"));  // 6 x 4 in less 1/8 in a side
  CHECK(has(text, "2 3/4 × 3 3/4 in"));
}

TEST_CASE("reveals that differ by side or opening are told one by one") {
  const std::string job = oracle::scratch_folder("proof-reveals") + "/job.xml";
  oracle::write_file(job, R"(<job version="1" unit="in">
    <layers><layer board="Oat"/><layer name="Slate mat" reveal="1/4" reveal-bottom="1/2"/>
      <layer board="Foam" spacer="yes"/><layer name="Brick mat" reveal="1/8" only="a c"/></layers>
    <borders all="3"/>
    <arrange><row gap="2"><opening id="a" width="4" height="4"/>
      <opening id="b" width="4" height="4"><reveal layer="2" all="3/8"/></opening>
      <opening id="c" width="4" height="4"/></row></arrange></job>)");
  std::string text = text_of_proof({job, "--language", "en"});
  text.erase(std::remove(text.begin(), text.end(), ' '), text.end());
  INFO(text);
  CHECK(has(text, "Reveal,Slatemat,openings1,31/4in"));
  CHECK(has(text, "Reveal,Slatemat,openings1,3,bottom1/2in"));
  CHECK(has(text, "Reveal,Slatemat,opening23/8in"));
  CHECK(has(text, "Reveal,Brickmat1/8in"));
}

TEST_CASE("no price is shown without a price book") {
  CHECK_FALSE(has(text_of_proof({oracle::gallery("double-mat.xml")}), "EUR"));
  const std::string priced = text_of_proof(
      {oracle::gallery("double-mat.xml"), "--prices", oracle::gallery("shop/prices.xml")});
  CHECK(has(priced, "EUR"));
  CHECK(has(priced, "Total"));
  CHECK_FALSE(has(priced, "united inches"));
}

int count(const std::string& text, const std::string& what) {
  int found = 0;
  for (std::size_t at = 0; (at = text.find(what, at)) != std::string::npos; ++at) ++found;
  return found;
}

std::string double_mat_with(const std::string& before, const std::string& after,
                            const std::string& name) {
  std::string xml = oracle::read_file(oracle::gallery("double-mat.xml"));
  REQUIRE(has(xml, before));
  xml.replace(xml.find(before), before.size(), after);
  const std::string folder = oracle::scratch_folder("choice-" + name);
  std::filesystem::create_directory(folder + "/pictures");
  oracle::write_file(folder + "/pictures/boat.png",
                     oracle::read_file(oracle::gallery("pictures/boat.png")));
  oracle::write_file(folder + "/job.xml", xml);
  return folder + "/job.xml";
}

TEST_CASE("each choice tells its own boards, sizes and price, and what all share is told once") {
  const std::string text = text_of_proof(
      {oracle::gallery("double-mat.xml"),
       double_mat_with("Slate", "Marigold, a hand-made cotton board of long name", "board"),
       double_mat_with("width=\"16\" height=\"14\"", "width=\"18\" height=\"15\"", "size"),
       "--prices", oracle::gallery("shop/prices.xml")});
  INFO(text);
  CHECK(has(text, "I approve the one ticked"));
  CHECK(count(text, "Chalk over Slate") == 2);
  CHECK(count(text, "Chalk over Marigold") == 1);
  CHECK(has(text, "long name"));                  // wrapped, not cut
  CHECK(count(text, "16 × 14 in") == 2);          // A and B
  CHECK(count(text, "15 3/4 × 13 3/4 in") == 1);  // the under-mat's blank that B alone has
  CHECK(count(text, "18 × 15 in") == 1);          // of C
  CHECK(count(text, "9 3/4 × 7 3/4 in") == 1);    // all alike
  CHECK(count(text, "revision 1 (") == 3);        // a mark for each
  // 30 and, of the under-mat's blank, 29.5 united inches at 0.42, 3.50, 2 windows at 4.50 and 10
  // minutes at 0.80, to 0.50
  CHECK(count(text, "45.50 EUR") == 4);  // below A and B and in the table
}

TEST_CASE("six choices have a place each, and the totals stand below the pictures alone") {
  std::vector<std::string> words(6, oracle::gallery("double-mat.xml"));
  words.insert(words.end(), {"--prices", oracle::gallery("shop/prices.xml")});
  const std::string text = text_of_proof(words);
  INFO(text);
  CHECK(count(text, "45.50 EUR") == 6);
  CHECK_FALSE(has(text, "Further layers"));
}

TEST_CASE("another crop of the same picture is told in words") {
  const std::string text =
      text_of_proof({oracle::gallery("double-mat.xml"),
                     double_mat_with("image=\"pictures/boat.png\"",
                                     "image=\"pictures/boat.png\" zoom=\"1.5\"", "crop")});
  CHECK(has(text, "the crop of picture boat changed"));
}

TEST_CASE("the mark of a job changes with the job") {
  const std::string folder = oracle::scratch_folder("mark");
  std::string xml = oracle::read_file(oracle::gallery("double-mat.xml"));
  xml.replace(xml.find("pictures/boat.png"), 17, "boat.png");
  oracle::write_file(folder + "/boat.png", oracle::read_file(oracle::gallery("pictures/boat.png")));
  oracle::write_file(folder + "/a.xml", xml);
  xml.replace(xml.find("#3f5563"), 7, "#3f5564");
  oracle::write_file(folder + "/b.xml", xml);
  const auto mark = [](const std::string& text) {
    return text.substr(text.find("I approve revision"), 30);
  };
  CHECK(mark(text_of_proof({folder + "/a.xml"})) == mark(text_of_proof({folder + "/a.xml"})));
  CHECK(mark(text_of_proof({folder + "/a.xml"})) != mark(text_of_proof({folder + "/b.xml"})));
}

TEST_CASE("the same job gives the same bytes in every format") {
  const std::string folder = oracle::scratch_folder("same-bytes");
  for (const char* file : {"p.pdf", "p.svg", "p.png", "p.html"}) {
    INFO(file);
    const auto make = [&] {
      REQUIRE(
          oracle::mullion({"proof", oracle::gallery("double-mat.xml"), "-o", folder + "/" + file})
              .status == 0);
      return oracle::read_file(folder + "/" + file);
    };
    const std::string first = make();
    CHECK(make() == first);
  }
}

TEST_CASE("the PDF is sound") {
  const std::string path = oracle::scratch_folder("sound") + "/p.pdf";
  REQUIRE(oracle::mullion({"proof", oracle::gallery("triple-mat.xml"), "-o", path}).status == 0);
  CHECK(oracle::run({"qpdf", "--check", path}).status == 0);
}

}  // namespace
