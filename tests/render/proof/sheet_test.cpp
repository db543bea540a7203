#include <catch2/catch.hpp>

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

TEST_CASE("no price is shown without a price book") {
  CHECK_FALSE(has(text_of_proof({oracle::gallery("double-mat.xml")}), "EUR"));
  const std::string priced = text_of_proof(
      {oracle::gallery("double-mat.xml"), "--prices", oracle::gallery("shop/prices.xml")});
  CHECK(has(priced, "EUR"));
  CHECK(has(priced, "Total"));
  CHECK_FALSE(has(priced, "united inches"));
}

TEST_CASE("choices are lettered and told apart") {
  const std::string text =
      text_of_proof({oracle::gallery("double-mat.xml"), oracle::gallery("double-mat.xml"),
                     oracle::gallery("equal-borders.xml")});
  CHECK(has(text, "I choose"));
  CHECK(has(text, "Chalk over Slate"));
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
