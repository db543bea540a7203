#include <catch2/catch.hpp>
#include <regex>

#include "tests/oracle/program.h"

namespace {

std::string job_file_reference() {
  const oracle::Run run = oracle::mullion({"manual", "job-file"});
  REQUIRE(run.status == 0);
  return run.out;
}

// The first example in the reference that begins with `start`.
std::string example(const std::string& text, const std::string& start) {
  const std::size_t from = text.find("```xml\n" + start);
  REQUIRE(from != std::string::npos);
  return text.substr(from + 7, text.find("```", from + 7) - from - 7);
}

}  // namespace

TEST_CASE("the committed reference of the job file is what the schema says") {
  INFO("to write it anew: build/release/cli/mullion manual job-file -o gallery/JOB-FILE.md");
  CHECK(oracle::read_file(oracle::gallery("JOB-FILE.md")) == job_file_reference());
}

TEST_CASE("the reference has a row for every attribute and a heading for every element") {
  const std::string xsd = oracle::read_file(MULLION_SOURCE "/engine/job/job.xsd");
  const std::string text = job_file_reference();
  const std::regex declared("<xs:(element|attribute) name=\"([^\"]+)\"");
  int found = 0;
  for (std::sregex_iterator at(xsd.begin(), xsd.end(), declared), end; at != end; ++at, ++found) {
    const std::string name = (*at)[2];
    INFO(name);
    const bool element = (*at)[1] == "element";
    CHECK(text.find(element ? "\n### " + name + "\n" : "\n| `" + name + "` | ") !=
          std::string::npos);
  }
  CHECK(found > 100);
}

TEST_CASE("every row of the reference says what its word means, and every link leads somewhere") {
  const std::string text = job_file_reference();
  CHECK_FALSE(std::regex_search(text, std::regex("\\|\\s*\\|\n")));
  CHECK(text.find("\n\n Stands") == std::string::npos);
  const std::regex link("\\]\\(#([^)]+)\\)");
  for (std::sregex_iterator at(text.begin(), text.end(), link), end; at != end; ++at) {
    const std::string to = (*at)[1];
    INFO(to);
    CHECK((text.find("\n### " + to + "\n") != std::string::npos ||
           text.find("<a id=\"" + to + "\">") != std::string::npos));
  }
}

TEST_CASE("the examples of the reference are jobs that can be laid out") {
  const std::string text = job_file_reference();
  const std::string folder = oracle::scratch_folder("reference");
  std::string job = oracle::read_file(oracle::gallery("title-and-three.xml"));
  const std::string arrange = example(text, "  <arrange");
  CHECK(job.find(arrange) != std::string::npos);
  job.insert(job.find("</job>"), example(text, "<rules>"));
  oracle::write_file(folder + "/rules.xml", job);
  oracle::write_file(folder + "/whole.xml", example(text, "<?xml"));
  for (const char* name : {"/rules.xml", "/whole.xml"}) {
    const oracle::Run run = oracle::run(
        {"xmllint", "--noout", "--schema", MULLION_SOURCE "/engine/job/job.xsd", folder + name});
    INFO(run.err);
    CHECK(run.status == 0);
    const oracle::Run laid_out = oracle::mullion({"diff", folder + name, folder + name});
    INFO(laid_out.err);
    CHECK(laid_out.status == 0);
  }
}
