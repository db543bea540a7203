// Whatever happens while an output is written, a good file that stood there is never lost for half
// of a new one. strace makes system calls fail, or kills the program at them.

#include <unistd.h>

#include <catch2/catch.hpp>
#include <filesystem>

#include "tests/oracle/program.h"

namespace {

namespace fs = std::filesystem;
using Words = std::vector<std::string>;

constexpr const char* older = "what stood here before";
constexpr const char* job_file = "double-mat.xml";

// Every verb that writes a file, by the ending of what it writes.
struct Output {
  std::string name;
  Words words;  // the file comes last
};

const std::vector<Output>& outputs() {
  const std::string job = oracle::gallery(job_file);
  static const std::vector<Output> all{
      {"template.pdf", {"template", job, "-o"}},
      {"template.dxf", {"template", job, "-o"}},
      {"proof.pdf", {"proof", job, "-o"}},
      {"proof.html", {"proof", job, "-o"}},
      {"draft.eml", {"proof", job, "--shop", oracle::gallery("shop/shop.xml"), "--mail"}},
      {"cuts.pdf", {"cuts", job, "-o"}},
      {"cuts.html", {"cuts", job, "-o"}},
      {"cuts.json", {"cuts", job, "-o"}},
      {"plan.pdf", {"sheets", job, "-o"}},
      {"contact.svg", {"suggest", oracle::gallery("title-and-three.xml"), "--contact"}},
      {"job.xml", {"new", "--size", "10 x 8", "--force"}},
  };
  return all;
}

// One output in a folder of its own, where an older file stands.
class Desk {
 public:
  explicit Desk(const Output& output) : folder_(oracle::scratch_folder("hard-use")) {
    file_ = folder_ + "/" + output.name;
    words_ = output.words;
    words_.push_back(file_);
    oracle::write_file(file_, older);
  }

  // `how` as strace's -e inject takes it.
  oracle::Run run_with(const std::string& system_call, const std::string& how) const {
    Words all{"strace",
              "-f",
              "-qq",
              "-o",
              "/dev/null",
              "-e",
              "trace=" + system_call,
              "-e",
              "inject=" + system_call + ":" + how,
              MULLION_PROGRAM};
    all.insert(all.end(), words_.begin(), words_.end());
    return oracle::run(all);
  }

  oracle::Run run(Words before = {}) const {
    before.push_back(MULLION_PROGRAM);
    before.insert(before.end(), words_.begin(), words_.end());
    return oracle::run(before);
  }

  std::string content() const { return oracle::read_file(file_); }
  std::size_t files() const {
    return static_cast<std::size_t>(
        std::distance(fs::directory_iterator(folder_), fs::directory_iterator()));
  }
  const std::string& folder() const { return folder_; }

 private:
  std::string folder_, file_;
  Words words_;
};

std::string good_bytes(const Output& output) {
  const Desk desk(output);
  const oracle::Run run = desk.run();
  INFO(run.err);
  REQUIRE(run.status == 0);
  REQUIRE(desk.content() != older);
  return desk.content();
}

}  // namespace

TEST_CASE("a full disk, a failing disk and a read-only one leave the older file and no other") {
  for (const Output& output : outputs()) {
    for (const auto& [system_call, error] :
         {std::pair("write", "ENOSPC"), {"fsync", "EIO"}, {"rename", "EROFS"}}) {
      INFO(output.name << " " << system_call << " " << error);
      const Desk desk(output);
      const oracle::Run run = desk.run_with(system_call, std::string("error=") + error);
      CHECK(run.status == 3);
      CHECK(desk.content() == older);
      CHECK(desk.files() == 1);
    }
  }
}

TEST_CASE("a folder that may not be written to is named, and what is in it stays") {
  // The superuser may write anywhere: this right is laid down first.
  const Words as_others =
      ::geteuid() == 0 ? Words{"setpriv", "--bounding-set=-dac_override", "--"} : Words();
  for (const Output& output : outputs()) {
    INFO(output.name);
    const Desk desk(output);
    fs::permissions(desk.folder(), fs::perms::owner_read | fs::perms::owner_exec);
    const oracle::Run run = desk.run(as_others);
    fs::permissions(desk.folder(), fs::perms::owner_all);
    CHECK(run.status == 3);
    CHECK(run.err.find("cannot write " + desk.folder()) != std::string::npos);
    CHECK(run.err.find("Permission denied") != std::string::npos);
    CHECK(desk.content() == older);
    CHECK(desk.files() == 1);
  }
}

TEST_CASE("a program that is killed at any moment of writing leaves the old file or the new one") {
  for (const Output& output : outputs()) {
    const std::string good = good_bytes(output);
    for (const char* system_call : {"write", "fchmod", "fsync", "rename"}) {
      int kills = 0;
      for (;; ++kills) {
        INFO(output.name << " " << system_call << " " << kills + 1);
        REQUIRE(kills < 20);
        const Desk desk(output);
        const oracle::Run run =
            desk.run_with(system_call, "signal=KILL:when=" + std::to_string(kills + 1));
        const std::string content = desk.content();
        CHECK((content == older || content == good));
        if (run.status == 0) break;
      }
      CHECK(kills > 0);
    }
  }
}
