// Damaged job files: whatever the damage, reading ends with a job or with problems that have a
// place. What is still accepted must be accepted by xmllint with our schema too, and be written
// back faithfully.

#include <catch2/catch.hpp>
#include <random>

#include "engine/job/read.h"
#include "engine/job/write.h"
#include "tests/oracle/program.h"

using namespace mullion;

namespace {

std::vector<std::string> sound_files() {
  std::vector<std::string> out;
  for (const char* name : {"three_beaches", "one_print", "metric_shapes", "inked_names"}) {
    out.push_back(oracle::read_file(oracle::test_data(std::string("jobs/") + name + ".xml")));
  }
  return out;
}

// True when the text was accepted.
bool survives(const std::string& xml) {
  const auto job = parse_job(xml, "damaged.xml");
  if (!job) {
    REQUIRE_FALSE(job.error().empty());
    const Place place = job.error().front().place;
    REQUIRE(place.line >= 1);
    REQUIRE(place.column >= 1);
    return false;
  }
  const std::string written = write_job(*job);
  const auto again = parse_job(written, "written.xml");
  INFO(xml);
  INFO(written);
  REQUIRE(again);
  REQUIRE(write_job(*again) == written);
  return true;
}

class Damage {
 public:
  explicit Damage(unsigned seed) : random_(seed) {}

  std::string apply(std::string text) {
    const std::size_t changes = 1 + below(3);
    for (std::size_t i = 0; i < changes && !text.empty(); ++i) change(text);
    return text;
  }

 private:
  std::size_t below(std::size_t n) { return random_() % n; }

  void change(std::string& text) {
    const std::size_t at = below(text.size());
    switch (below(5)) {
      case 0:
        text[at] = static_cast<char>(text[at] ^ (1 << below(8)));
        return;
      case 1:
        text.erase(at, 1 + below(8));
        return;
      case 2:
        text.insert(at, text.substr(below(text.size()), 1 + below(40)));
        return;
      case 3: {
        constexpr std::string_view telling = "<>/&;\"'=-!?#0123456789 .[]";
        text[at] = telling[below(telling.size())];
        return;
      }
      default:
        std::swap(text[at], text[below(text.size())]);
        return;
    }
  }

  std::mt19937 random_;
};

}  // namespace

TEST_CASE("a job file cut off at any byte is refused with a place") {
  for (const std::string& text : sound_files()) {
    const std::size_t end = text.rfind('>');
    for (std::size_t length = 0; length < end; ++length) {
      REQUIRE_FALSE(survives(text.substr(0, length)));
    }
  }
}

TEST_CASE("a job file with any byte flipped is refused or read, and never breaks the reader") {
  for (const std::string& text : sound_files()) {
    for (std::size_t at = 0; at < text.size(); ++at) {
      std::string damaged = text;
      damaged[at] = static_cast<char>(damaged[at] ^ (1 << (at % 8)));
      survives(damaged);
    }
  }
}

TEST_CASE("xmllint accepts with our schema whatever damage the reader accepts") {
  constexpr unsigned seed = 20260302;
  constexpr int rounds = 4000;
  Damage damage(seed);
  const std::vector<std::string> sound = sound_files();
  const std::string folder = oracle::scratch_folder("job-damage");
  std::vector<std::string> words{"xmllint", "--noout", "--schema",
                                 std::string(MULLION_SOURCE) + "/engine/job/job.xsd"};
  const std::size_t fixed = words.size();
  for (int i = 0; i < rounds; ++i) {
    const std::string damaged = damage.apply(sound[static_cast<std::size_t>(i) % sound.size()]);
    if (!survives(damaged)) continue;
    words.push_back(folder + "/" + std::to_string(i) + ".xml");
    oracle::write_file(words.back(), damaged);
  }
  REQUIRE(words.size() > fixed + 100);
  const oracle::Run run = oracle::run(words);
  INFO(run.err);
  CHECK(run.status == 0);
}
