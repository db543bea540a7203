#include <catch2/catch.hpp>

#include "tests/oracle/program.h"
#include "tests/oracle/terminal.h"

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

namespace {

// Six pictures, five of which may turn, keep one thread busy for longer than half a second.
std::string busy_job() {
  std::string xml = "<job version=\"1\" reference=\"P\" unit=\"in\" increment=\"1/16\"><pictures>";
  for (int i = 0; i < 6; ++i) {
    xml += "<picture id=\"p" + std::to_string(i) + "\" width=\"" + std::to_string(4 + i) +
           "\" height=\"" + std::to_string(11 - i * i % 5) + "\"" + (i < 5 ? " turn=\"yes\"" : "") +
           "/>";
  }
  const std::string path = oracle::scratch_folder("busy") + "/busy.xml";
  oracle::write_file(path, xml + "</pictures></job>");
  return path;
}

}  // namespace

TEST_CASE("long work shows its progress on a terminal, and nothing of it in a pipe") {
  const std::string job = busy_job();
  const oracle::Run seen =
      oracle::run_on_terminal({MULLION_PROGRAM, "suggest", job, "--threads", "1"});
  CHECK(seen.status == 0);
  CHECK(seen.out.find("arrangements: ") != std::string::npos);
  CHECK(seen.out.find(" %") != std::string::npos);
  const oracle::Run piped = oracle::mullion({"suggest", job, "--threads", "1"});
  CHECK(piped.status == 0);
  CHECK(piped.err.empty());
  CHECK(piped.out.find("arrangements: ") == std::string::npos);
}
