#include <catch2/catch.hpp>
#include <filesystem>

#include "tests/oracle/program.h"
#include "tests/oracle/terminal.h"

namespace {

using Words = std::vector<std::string>;

std::string fresh(const std::string& name) {
  const std::string path = oracle::scratch_folder("new_" + name) + "/job.xml";
  std::filesystem::remove(path);
  return path;
}

oracle::Run begin(const std::string& job, Words words) {
  words.insert(words.begin(), {"new", job});
  return oracle::mullion(words);
}

bool is_valid(const std::string& job) {
  const std::string schema = std::string(MULLION_SOURCE) + "/engine/job/job.xsd";
  return oracle::run({"xmllint", "--noout", "--schema", schema, job}).status == 0 &&
         oracle::mullion({"check", job}).status == 0;
}

bool holds(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("a size alone makes a job with comments that the schema takes and that lays out") {
  const std::string job = fresh("size");
  const auto run = begin(job, {"--size", "10 x 8", "--customer", "O. -- Venn & <Sons>"});
  CHECK(run.status == 0);
  CHECK(holds(run.out, "mat 15 3/4 in x 13 3/4 in"));  // 10 - 2/8 + 2 * 3
  CHECK(is_valid(job));
  CHECK(holds(oracle::read_file(job), "<!-- "));
}

TEST_CASE("sizes of print come from pixels and the resolution of the file") {
  const std::string job = fresh("image");
  const std::string image = std::filesystem::path(job).parent_path().string() + "/print.png";
  std::filesystem::copy_file(oracle::gallery("pictures/dune.png"), image,
                             std::filesystem::copy_options::overwrite_existing);
  CHECK(begin(job, {image, "--layers", "2"}).status == 0);
  CHECK(is_valid(job));
  CHECK(holds(oracle::read_file(job), "image=\"print.png\""));
}

TEST_CASE("a job that is there stays as it was unless it is to be replaced") {
  const std::string job = fresh("there");
  oracle::write_file(job, "mine");
  CHECK(begin(job, {"--size", "10 x 8"}).status == 3);
  CHECK(oracle::read_file(job) == "mine");
  CHECK(begin(job, {"--size", "10 x 8", "--force"}).status == 0);
  CHECK(is_valid(job));
}

TEST_CASE("a frame that is too small writes nothing") {
  const std::string job = fresh("small");
  CHECK(begin(job, {"--size", "10 x 8", "--frame", "9 x 12"}).status == 1);
  CHECK(!std::filesystem::exists(job));
}

TEST_CASE("nine prints of millimetres stand in rows in a frame") {
  const std::string job = fresh("nine");
  Words words = {"--unit", "mm", "--frame", "700 x 700", "--bottom-extra", "5"};
  for (int i = 0; i < 9; ++i) words.insert(words.end(), {"--size", "130 x 90"});
  CHECK(begin(job, words).status == 0);
  CHECK(is_valid(job));
}

TEST_CASE("without a terminal nothing is asked") {
  CHECK(begin(fresh("quiet"), {}).status == 2);
}

TEST_CASE("on a terminal the answers make the job, and a wrong one is asked again") {
  const std::string job = fresh("asked");
  const auto run = oracle::run_on_terminal(
      {MULLION_PROGRAM, "new", job}, "in\n1\ndune\nwide\n10 x 8\n2\n\n2 1/2\n1/2\nOrla Venn\n\n");
  CAPTURE(run.out);
  CHECK(run.status == 0);
  CHECK(holds(run.out, "expected width x height"));
  CHECK(holds(oracle::read_file(job), "<customer name=\"Orla Venn\""));
  CHECK(holds(oracle::read_file(job), "bottom-extra=\"1/2\""));
  CHECK(is_valid(job));
}

TEST_CASE("answers that end write nothing") {
  const std::string job = fresh("ended");
  CHECK(oracle::run_on_terminal({MULLION_PROGRAM, "new", job}, "in\n\x04").status == 1);
  CHECK(!std::filesystem::exists(job));
}

TEST_CASE("sizes of an option are said as on the page: how many, in what unit, by what name") {
  const std::string path = oracle::scratch_folder("new-said") + "/job.xml";
  const auto run = oracle::mullion({"new", path, "--unit", "mm", "--size", "8 in x 10 *2", "--size",
                                    "21 x 29,7 cm Diploma", "--name", "First"});
  INFO(run.err);
  REQUIRE(run.status == 0);
  const std::string text = oracle::read_file(path);
  INFO(text);
  CHECK(text.find("<picture id=\"First\"") != std::string::npos);
  CHECK(text.find("<picture id=\"Diploma\" width=\"210\" height=\"297\"") != std::string::npos);
  const auto count = [&](const std::string& piece) {
    int times = 0;
    for (std::size_t at = 0; (at = text.find(piece, at)) != std::string::npos; ++at) ++times;
    return times;
  };
  CHECK(count("<picture ") == 3);
  CHECK(count("width=\"203.2\" height=\"254\"") == 2);
  const auto wrong = oracle::mullion({"new", path, "--force", "--size", "8x10 *0"});
  CHECK(wrong.status == 2);
  CHECK(wrong.err.find("expected a number from 1 to 500 behind the *") != std::string::npos);
}
