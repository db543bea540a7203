// Every composition that rows and columns do not give, from the pictures to the drawn piece.

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "tests/oracle/program.h"

namespace {

struct Asked {
  std::string composition;
  std::vector<std::string> sizes;  // "6 8": of each picture, in inches
  std::string outer;               // "22 22"
};

std::string job_of(const Asked& asked) {
  std::string xml =
      "<job version=\"1\" reference=\"C-1\" unit=\"in\" increment=\"1/16\"><pictures>";
  int number = 0;
  const auto both = [](const std::string& size) {
    const std::size_t space = size.find(' ');
    return "width=\"" + size.substr(0, space) + "\" height=\"" + size.substr(space + 1) + "\"";
  };
  for (const std::string& size : asked.sizes) {
    xml += "<picture id=\"p" + std::to_string(++number) + "\" " + both(size) + "/>";
  }
  return xml + "</pictures><layers><layer/></layers><outer " + both(asked.outer) + "/></job>";
}

// The number of the first suggestion of that composition; zero where there is none.
int number_of(const nlohmann::json& suggestions, const std::string& composition) {
  int number = 0;
  for (const auto& one : suggestions) {
    ++number;
    if (one.at("composition") == composition) return number;
  }
  return 0;
}

}  // namespace

TEST_CASE(
    "each composition is written, valid by the schema, passes its checks, and is drawn and cut") {
  const std::string folder = oracle::scratch_folder("compositions");
  const std::vector<Asked> all{
      {"oval", {"6 7", "3 3", "3 3", "3 3", "3 3", "3 3", "3 3", "3 3", "3 3"}, "22 26"},
      {"pinwheel", {"8 5", "8 5", "5 8", "5 8", "3 3"}, "22 22"},
      {"staggered columns", {"4 3", "4 3", "4 3", "4 3", "4 3", "4 3", "4 3", "4 3"}, "22 18"},
      {"staggered rows", {"12 4", "10 3", "12 4", "10 3", "12 4"}, "20 32"},
      {"rows on baselines", {"4 5", "4 3", "5 4", "3 6"}, "26 12"},
      {"title below", {"5 6", "5 6", "5 6", "8 2"}, "24 16"}};
  for (const Asked& asked : all) {
    INFO(asked.composition);
    const std::string job = folder + "/job.xml", prefix = folder + "/idea";
    oracle::write_file(job, job_of(asked));
    const oracle::Run run =
        oracle::mullion({"suggest", job, "--gap", "1/2", "--jobs", prefix, "--json"});
    INFO(run.out << run.err);
    REQUIRE(run.status == 0);
    const int number =
        number_of(nlohmann::json::parse(run.out).at("suggestions"), asked.composition);
    REQUIRE(number > 0);
    const std::string chosen = prefix + "-" + std::to_string(number) + ".xml";
    const oracle::Run valid = oracle::run(
        {"xmllint", "--noout", "--schema", MULLION_SOURCE "/engine/job/job.xsd", chosen});
    INFO(valid.err);
    CHECK(valid.status == 0);
    CHECK(oracle::mullion({"check", chosen}).status == 0);
    CHECK(oracle::mullion({"proof", chosen, "-o", folder + "/proof.pdf"}).status == 0);
    CHECK(oracle::mullion({"template", chosen, "-o", folder + "/template.pdf"}).status == 0);
    CHECK(oracle::mullion({"cuts", chosen, "-o", folder + "/cuts.pdf"}).status == 0);
    for (const char* drawn : {"proof", "template", "cuts"}) {
      CHECK(oracle::run({"qpdf", "--check", folder + "/" + drawn + ".pdf"}).status == 0);
    }
  }
}
