#include <catch2/catch.hpp>

#include "tests/oracle/program.h"

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
  CHECK(run.out.rfind("14 in x 11 in: borders left 2 1/8 in, top 1 5/8 in", 0) == 0);
}
