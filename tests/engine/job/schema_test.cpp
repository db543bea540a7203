// The published schema, read by xmllint (libxml2), agrees with the reader and is documented.

#include <catch2/catch.hpp>
#include <pugixml.hpp>
#include <set>

#include "engine/job/read.h"
#include "engine/job/write.h"
#include "tests/oracle/program.h"

using namespace mullion;

namespace {

const std::string schema = std::string(MULLION_SOURCE) + "/engine/job/job.xsd";

const std::vector<std::string> names{"three_beaches", "one_print", "metric_shapes", "inked_names",
                                     "places_and_rings"};

std::string path_of(const std::string& name) {
  return oracle::test_data("jobs/" + name + ".xml");
}

oracle::Run validate(const std::string& path) {
  return oracle::run({"xmllint", "--noout", "--schema", schema, path});
}

Job read(const std::string& name) {
  auto job = read_job(path_of(name));
  if (!job) FAIL(to_string(job.error().front()));
  return *job;
}

std::set<std::string> names_used(const std::string& query) {
  std::set<std::string> out;
  for (const std::string& name : names) {
    pugi::xml_document document;
    REQUIRE(document.load_file(path_of(name).c_str()));
    for (const auto& found : document.select_nodes(query.c_str())) {
      out.insert(found.attribute() ? found.attribute().name() : found.node().name());
    }
  }
  return out;
}

std::set<std::string> names_declared(const std::string& query) {
  std::set<std::string> out;
  pugi::xml_document document;
  REQUIRE(document.load_file(schema.c_str()));
  for (const auto& found : document.select_nodes(query.c_str())) {
    out.insert(found.node().attribute("name").value());
  }
  return out;
}

}  // namespace

TEST_CASE("xmllint accepts every good job, and what we write of it") {
  const std::string folder = oracle::scratch_folder("job-schema");
  for (const std::string& name : names) {
    INFO(name);
    const oracle::Run original = validate(path_of(name));
    INFO(original.err);
    CHECK(original.status == 0);
    const std::string written = folder + "/" + name + ".xml";
    oracle::write_file(written, write_job(read(name)));
    const oracle::Run copy = validate(written);
    INFO(copy.err);
    CHECK(copy.status == 0);
  }
}

TEST_CASE("what is written reads back as the same job, and is written the same again") {
  for (const std::string& name : names) {
    INFO(name);
    const Job job = read(name);
    const std::string written = write_job(job);
    const auto again = parse_job(written, job.file);
    REQUIRE(again);
    CHECK(write_job(*again) == written);
    CHECK(again->scale == job.scale);
    CHECK(again->note == job.note);
    CHECK(again->pictures.size() == job.pictures.size());
    CHECK(again->layers.size() == job.layers.size());
    CHECK(again->rules.size() == job.rules.size());
  }
}

TEST_CASE("the schema names every element and attribute that the reader knows, and no other") {
  CHECK(names_used("//*") == names_declared("//xs:element[@name]"));
  CHECK(names_used("//@*") == names_declared("//xs:attribute[@name]"));
}

TEST_CASE("every element, attribute and type of the schema is explained") {
  pugi::xml_document document;
  REQUIRE(document.load_file(schema.c_str()));
  const auto declared =
      document.select_nodes("//xs:element[@name] | //xs:attribute[@name] | //xs:simpleType[@name]");
  CHECK(declared.size() > 100);
  for (const auto& found : declared) {
    INFO(found.node().attribute("name").value());
    const std::string text =
        found.node().child("xs:annotation").child("xs:documentation").text().get();
    CHECK(text.size() >= 10);
  }
}

TEST_CASE("xmllint refuses with our schema what the reader refuses for its form") {
  const std::string folder = oracle::scratch_folder("job-schema-bad");
  const std::string good = oracle::read_file(path_of("three_beaches"));
  const std::vector<std::pair<std::string, std::string>> slips{
      {"version=\"1\" reference", "version=\"2\" reference"},
      {"unit=\"in\"", "unit=\"inch\""},
      {"width=\"10\"", "width=\"ten\""},
      {"width=\"10\"", "widht=\"10\""},
      {"height=\"8\"", ""},
      {"dune.png", "../dune.png"},
      {"dune.png", "/dune.png"},
      {"#e9e2d0", "oat"},
      {"align=\"bottom\"", "align=\"left\""},
      {"shape=\"ellipse\"", "shape=\"oval\""},
      {"picture=\"pier\"", "picture=\"peer\""},
      {"id=\"pier\"", "id=\"dune\""},
      {"zoom=\"1.2\"", "zoom=\"0.2\""},
      {"times=\"1 1/2\"", "times=\"two\""},
      {"of=\"dune pier\"", "of=\"dune\""},
      {"dune.left", "dune.lefft"},
      {"<borders", "<bordres"},
      {"2026-03-02", "2026-02-30"},
  };
  for (const auto& [right, wrong] : slips) {
    std::string bad = good;
    bad.replace(bad.find(right), right.size(), wrong);
    INFO(right << " -> " << wrong);
    const std::string path = folder + "/bad.xml";
    oracle::write_file(path, bad);
    CHECK(validate(path).status != 0);
    CHECK_FALSE(read_job(path));
  }
}
