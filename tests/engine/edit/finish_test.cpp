#include "engine/edit/finish.h"

#include <catch2/catch.hpp>

#include "engine/edit/edit.h"
#include "tests/engine/layout/jobs.h"
#include "tests/oracle/program.h"

using namespace mullion;
using namespace mullion::edit;

namespace {

const std::string commented =
    "<?xml version=\"1.0\"?>\r\n<!-- ours -->\n<shop version='1'\n   name=\"Fern &amp; Rule\">"
    " <!-- the name -->\n\t<address>\n\t\t1 Row <!-- left door -->\n\t</address>\n"
    "\t<finishes>  <!-- best first -->\n\t\t<finish name='Bare'><layer/></finish> <!-- plain -->\n"
    "\t\t<!-- the end -->\n\t</finishes>\n\n<!-- last -->\n</shop>\n";

Finish oat() {
  Finish out;
  out.name = "Oat \"over\" slate";
  out.layers = {{{"board", "Oat"}, {"colour", "#ece5d4"}},
                {{"board", "Slate"}, {"thickness", "1/16"}, {"reveal", "1/4"}}};
  out.frame = {{"moulding", "Ash"}, {"face", "1"}};
  return out;
}

bool schema_holds(const std::string& shop) {
  const std::string path = oracle::scratch_folder("kept-finish") + "/shop.xml";
  oracle::write_file(path, shop);
  return oracle::run({"xmllint", "--noout", "--schema",
                      std::string(MULLION_SOURCE) + "/engine/shop/shop.xsd", path})
             .status == 0;
}

Finish kept(const std::string& shop, const std::string& name) {
  const Shop read = parse_shop(shop, "shop.xml").value();
  for (const Finish& finish : read.finishes) {
    if (finish.name == name) return finish;
  }
  throw std::runtime_error("no finish " + name);
}

}  // namespace

TEST_CASE("a finish comes into the shop's file, and all that stood there stays byte for byte") {
  const EditedText edited = keeping(oat(), commented, "shop.xml").value();
  REQUIRE(edited.changes.size() == 1);
  CHECK(edited.changes[0].removed.empty());
  CHECK(edited.changes[0].inserted ==
        "\n\t\t<finish name=\"Oat &quot;over&quot; slate\">"
        "\n\t\t\t<layer board=\"Oat\" colour=\"#ece5d4\"/>"
        "\n\t\t\t<layer board=\"Slate\" thickness=\"1/16\" reveal=\"1/4\"/>"
        "\n\t\t\t<frame moulding=\"Ash\" face=\"1\"/>\n\t\t</finish>");
  CHECK(with_changes(edited.text, inverse(edited.changes)) == commented);
  CHECK(schema_holds(edited.text));
  CHECK(kept(edited.text, oat().name).layers == oat().layers);
  CHECK(kept(edited.text, "Bare").layers.size() == 1);
}

TEST_CASE("a finish of a name that is there takes its place") {
  const std::string once = keeping(oat(), commented, "shop.xml")->text;
  CHECK(keeping(oat(), once, "shop.xml")->text == once);
  Finish other = oat();
  other.layers.pop_back();
  other.frame.clear();
  other.unit = Unit::millimetre;
  const std::string twice = keeping(other, once, "shop.xml")->text;
  CHECK(parse_shop(twice, "shop.xml")->finishes.size() == 2);
  CHECK(kept(twice, other.name).layers == other.layers);
  CHECK(kept(twice, other.name).unit == Unit::millimetre);
  CHECK(schema_holds(twice));
}

TEST_CASE("a shop's file without finishes, and one of a single tag, get their first one") {
  for (const std::string& shop :
       {new_shop("Łódź & \"Ørsted\""), std::string("<shop version=\"1\" name=\"F\"></shop>"),
        std::string("<shop version=\"1\" name=\"F\">\n    <address>1 Row</address>\n</shop>\n")}) {
    const std::string text = keeping(oat(), shop, "shop.xml")->text;
    INFO(text);
    CHECK(schema_holds(text));
    CHECK(kept(text, oat().name).layers == oat().layers);
  }
}

TEST_CASE("a finish that no job could take is refused with the reason, and so is a broken file") {
  Finish bad = oat();
  bad.layers[0].emplace_back("reveal", "1/4");
  CHECK(keeping(bad, commented, "shop.xml").error().front().code == "shop-reveal-unseen");
  bad = oat();
  bad.name.clear();
  CHECK(keeping(bad, commented, "shop.xml").error().front().code == "shop-out-of-range");
  CHECK(keeping(oat(), "<shop", "shop.xml").error().front().code == "shop-xml");
  CHECK(keeping(oat(), "<job version=\"1\"/>", "shop.xml").error().front().file == "shop.xml");
}

TEST_CASE(
    "a job takes a finish: boards, their number, the moulding of its frame, lengths as they were") {
  const std::string text =
      "<job version=\"1\" unit=\"mm\" increment=\"1\">\n<!-- mine -->\n<layers>\n"
      "<layer board=\"Snow\" grain=\"yes\"/><!-- top --><layer "
      "board=\"Coal\"/><layer/>\n</layers>\n"
      "<frame rabbet-width=\"300\" rabbet-height=\"200\"/>\n<arrange><opening id=\"a\" "
      "width=\"100\" "
      "height=\"80\"/></arrange>\n</job>\n";
  const Job before = parse_job(text, "job.xml").value();
  const auto edited = apply(text, taking(oat(), before), "job.xml");
  REQUIRE(edited);
  const Job job = parse_job(edited->text, "job.xml").value();
  REQUIRE(job.layers.size() == 2);
  CHECK(job.layers[0].board == "Oat");
  CHECK_FALSE(job.layers[0].grain);
  CHECK(job.layers[1].reveal.left == sixty_fourths(16));
  CHECK(job.layers[1].thickness == sixty_fourths(4));
  CHECK(job.frame->moulding == "Ash");
  CHECK(job.frame->face_width == inches(1));
  CHECK(job.frame->rabbet_width == before.frame->rabbet_width);
  CHECK(edited->text.find("<!-- mine -->") != std::string::npos);
  CHECK(edited->text.find("<!-- top -->") != std::string::npos);
}
