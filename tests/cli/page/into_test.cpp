// `mullion open --into`: outputs made anew at each save.

#include <signal.h>

#include <catch2/catch.hpp>
#include <filesystem>

#include "tests/cli/page/client.h"
#include "tests/oracle/program.h"

namespace fs = std::filesystem;
using namespace page_test;

namespace {

const char* const outputs[] = {"proof.html", "proof.pdf", "template.pdf", "cuts.pdf"};

bool says(const Served& served, const std::string& text) {
  return within(20, [&] { return served.said().find(text) != std::string::npos; });
}

void save(const std::string& file, const std::string& text) {
  oracle::write_file(file + ".new", text);
  fs::rename(file + ".new", file);
}

}  // namespace

TEST_CASE("a save makes every output anew, and a wrong job leaves the older ones") {
  const std::string folder = folder_of_jobs("into"), job = folder + "/one.xml";
  const std::string into = folder + "/made/here";
  Served served(job, {"--into", into, "--language", "de"});
  REQUIRE(says(served, "save 1: all is made anew"));
  for (const char* name : outputs) CHECK(fs::file_size(into + "/" + name) > 1000);
  const std::string first = oracle::read_file(into + "/proof.html");
  CHECK(first.find("First") != std::string::npos);
  CHECK(first.find("lang=\"de\"") != std::string::npos);

  save(job, job_text("Second"));
  REQUIRE(says(served, "save 2: all is made anew"));
  const std::string second = oracle::read_file(into + "/proof.html");
  CHECK(second.find("Second") != std::string::npos);

  save(job, "<job version=\"1\"><pictrues/></job>");
  REQUIRE(says(served, "save 3: nothing is made anew"));
  CHECK(oracle::read_file(into + "/proof.html") == second);

  save(job, job_text("Third"));
  REQUIRE(says(served, "save 4: all is made anew"));
  fs::copy_file(oracle::gallery("pictures/dune.png"), folder + "/pictures/p.png",
                fs::copy_options::overwrite_existing);
  const std::string fourth = oracle::read_file(into + "/proof.html");
  REQUIRE(says(served, "save 5: all is made anew"));
  CHECK(oracle::read_file(into + "/proof.html") != fourth);
  CHECK(served.end(SIGINT) == 0);
}

TEST_CASE("a server ends at once when it is told to, while outputs are being made too") {
  const std::string folder = folder_of_jobs("into-end");
  Served served(folder + "/one.xml", {"--into", folder + "/made"});
  const auto begin = std::chrono::steady_clock::now();
  CHECK(served.end(SIGTERM) == 0);
  CHECK(std::chrono::steady_clock::now() - begin < std::chrono::seconds(3));
}

TEST_CASE("what cannot be opened is refused in words") {
  const oracle::Run none = oracle::mullion({"open", "no-such-job.xml", "--no-browser"});
  CHECK(none.status == 3);
  CHECK(none.err.find("found no file or folder no-such-job.xml") != std::string::npos);
  const std::string folder = folder_of_jobs("refused");
  const oracle::Run image = oracle::mullion({"open", folder + "/pictures/p.png", "--no-browser"});
  CHECK(image.status == 2);
  CHECK(image.err.find("expected a name that ends in .xml") != std::string::npos);
  const oracle::Run both = oracle::mullion({"open", folder, "--no-browser", "--into", folder});
  CHECK(both.status == 2);
  CHECK(both.err.find("expected one job") != std::string::npos);
  const Served served(folder);
  const std::string port = std::to_string(served.port());
  const oracle::Run second = oracle::mullion({"open", folder, "--no-browser", "--port", port});
  CHECK(second.status == 3);
  CHECK(second.err.find("cannot listen on port " + port) != std::string::npos);
}
