// The limits of a job file, at the limit and one beyond it.

#include <catch2/catch.hpp>
#include <ctime>

#include "engine/job/read.h"
#include "engine/job/write.h"
#include "tests/oracle/program.h"

using namespace mullion;

namespace {

std::string times(std::size_t n, const std::string& text) {
  std::string out;
  out.reserve(n * text.size());
  for (std::size_t i = 0; i < n; ++i) out += text;
  return out;
}

std::string job(const std::string& arrange, const std::string& more = "",
                const std::string& layers = "<layer/>") {
  return "<job version=\"1\" unit=\"in\"><layers>" + layers + "</layers><arrange>" + arrange +
         "</arrange>" + more + "</job>";
}

const std::string opening = "<opening width=\"1\" height=\"1\"/>";

// The code of the first problem; empty for a good job.
std::string code(const std::string& xml) {
  const auto read = parse_job(xml, "limit.xml");
  return read ? "" : read.error().front().code;
}

}  // namespace

TEST_CASE("a job has at most 2000 openings") {
  CHECK(code(job("<row>" + times(most_openings, opening) + "</row>")).empty());
  CHECK(code(job("<row>" + times(most_openings + 1, opening) + "</row>")) == "job-too-many");
}

TEST_CASE("a job has at most 2000 pictures, 64 layers, 5000 rules and 16 grooves around a thing") {
  const auto pictures = [](std::size_t n) {
    std::string out = "<pictures>";
    for (std::size_t i = 0; i < n; ++i) {
      out += "<picture id=\"p" + std::to_string(i) + "\" width=\"1\" height=\"1\"/>";
    }
    return out + "</pictures>";
  };
  CHECK(code(job(opening, pictures(most_pictures))).empty());
  CHECK(code(job(opening, pictures(most_pictures + 1))) == "job-too-many");
  CHECK(code(job(opening, "", times(most_layers, "<layer/>"))).empty());
  CHECK(code(job(opening, "", times(most_layers + 1, "<layer/>"))) == "job-too-many");
  const std::string rule = "<at-most measure=\"outer.width\" length=\"9\"/>";
  CHECK(code(job(opening, "<rules>" + times(most_rules, rule) + "</rules>")).empty());
  CHECK(code(job(opening, "<rules>" + times(most_rules + 1, rule) + "</rules>")) == "job-too-many");
  const std::string groove = "<groove distance=\"1\" width=\"1/16\"/>";
  CHECK(code(job(opening, "<rules><equal of=\"" + times(most_listed + 1, "a ") + "\"/></rules>")) ==
        "job-too-many");
  CHECK(code(job(opening + times(most_grooves, groove))).empty());
  CHECK(code(job(opening + times(most_grooves + 1, groove))) == "job-too-many");
}

TEST_CASE("elements nest 32 deep") {
  const auto nested = [](std::size_t depth) {  // <job>, <arrange> and <opening> are three
    return job(times(depth - 3, "<row>") + opening + times(depth - 3, "</row>"));
  };
  CHECK(code(nested(deepest_job_xml)).empty());
  CHECK(code(nested(deepest_job_xml + 1)) == "job-too-deep");
  CHECK(code(times(500'000, "<a>")) == "job-xml");
  CHECK(code(times(200'000, "<a>") + times(200'000, "</a>")) == "job-too-deep");
}

TEST_CASE("a file has at most 4 MB") {
  const std::string folder = oracle::scratch_folder("job-size");
  const std::string good = job(opening);
  const std::string path = folder + "/large.xml";
  oracle::write_file(path, good + std::string(largest_job_file - good.size(), '\n'));
  CHECK(read_job(path));
  oracle::write_file(path, good + std::string(largest_job_file - good.size() + 1, '\n'));
  const auto large = read_job(path);
  REQUIRE_FALSE(large);
  CHECK(large.error().front().code == "file-read");
  CHECK(code(good + std::string(largest_job_file, '\n')) == "job-too-large");
}

TEST_CASE("texts have limits of their own, in characters") {
  const auto with_title = [](std::size_t n) {
    return job(opening, "<title>" + times(n, "\u00e9") + "</title>");
  };
  CHECK(code(with_title(longest_line)).empty());
  CHECK(code(with_title(longest_line + 1)) == "job-too-long");
  CHECK(code(job(opening, "<note>" + times(longest_note + 1, "n") + "</note>")) == "job-too-long");
  const auto with_name = [](std::size_t n) {
    return job(opening, "<customer name=\"" + times(n, "n") + "\"/>");
  };
  CHECK(code(with_name(longest_line)).empty());
  CHECK(code(with_name(longest_line + 1)) == "job-too-long");
  const auto with_id = [](std::size_t n) {
    return job("<row id=\"" + times(n, "i") + "\">" + opening + "</row>");
  };
  CHECK(code(with_id(longest_id)).empty());
  CHECK(code(with_id(longest_id + 1)) == "job-too-long");
  CHECK(code(job(opening, "<pictures><picture id=\"a\" width=\"1\" height=\"1\" image=\"" +
                              times(longest_path + 1, "p") + "\"/></pictures>")) == "job-too-long");
}

TEST_CASE("a run lists twenty problems in the order of the file, and counts the rest") {
  const auto bad = parse_job(job(opening, times(50, "\n<oops/>")), "bad.xml");
  REQUIRE_FALSE(bad);
  REQUIRE(bad.error().size() == most_problems + 1);
  for (std::size_t i = 0; i < most_problems; ++i) {
    CHECK(bad.error()[i].place == Place{static_cast<int>(i) + 2, 1});
  }
  CHECK(bad.error().back().severity == Severity::note);
  CHECK(bad.error().back().message == "problems not listed: 30");
}

TEST_CASE("independent problems are reported in one run") {
  const auto bad = parse_job(
      "<job version=\"1\" unit=\"in\" quantity=\"x\">\n<layers>\n<layer ply=\"0\"/></layers>\n"
      "<arrange>\n<row gap=\"-1\">\n<opening width=\"1\"/>\n</row></arrange>\n<borders tob=\"1\"/>"
      "</job>",
      "bad.xml");
  REQUIRE_FALSE(bad);
  std::vector<int> lines;
  for (const Problem& problem : bad.error()) lines.push_back(problem.place.line);
  CHECK(lines == std::vector<int>{1, 3, 5, 6, 8});
}

TEST_CASE("hostile files of the greatest size are answered within seconds") {
  const std::size_t room = largest_job_file - 200;
  const std::string heads[] = {
      job(opening, times(room / 4, "<a/>")),
      job(opening, "<wall colour=\"#ffffff\" " + times(room / 5, "a='' ") + "/>"),
      job(opening, "<note>" + times(room / 1, "&") + "</note>"),
      job(opening, "<rules><equal of=\"" + times(room / 2, "a ") + "\"/></rules>"),
      job(opening, "", "<layer only=\"" + times(room / 2, "a ") + "\"/>"),
      job("<row>" + times(room / 6, "<gap/>") + "</row>"),
      job("<row>" + times(room / opening.size(), opening) + "</row>"),
  };
  for (const std::string& xml : heads) {
    const std::clock_t start = std::clock();
    CHECK_FALSE(code(xml).empty());
    const double seconds = static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
    INFO(xml.substr(0, 160));
    CHECK(seconds < 10);
  }
}

TEST_CASE("a file that is not there is reported by its path") {
  const auto none = read_job("/nowhere/job.xml");
  REQUIRE_FALSE(none);
  CHECK(none.error().front().code == "file-read");
  CHECK(none.error().front().message == "cannot read /nowhere/job.xml: No such file or directory");
}
