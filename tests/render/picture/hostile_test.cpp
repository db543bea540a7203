// Hostile pictures, given to the program itself with no more than 256 MB of address space and one
// second of the processor's time, both held by the kernel (setrlimit: RLIMIT_AS, RLIMIT_CPU).

#include <png.h>

#include <catch2/catch.hpp>
#include <filesystem>

#include "engine/picture/jpeg_segments.h"
#include "tests/oracle/program.h"
#include "tests/render/picture/files.h"
#include "tests/render/picture/profiles.h"

namespace {

using namespace mullion;
using files::Kind;

std::string job_with(const std::string& image) {
  return R"(<job version="1" unit="in"><pictures><picture id="p" width="8" height="10" image=")" +
         image +
         R"("/></pictures><layers><layer/></layers><borders all="3"/><arrange>)"
         R"(<opening picture="p"/></arrange></job>)";
}

oracle::Run limited_proof(const std::string& folder, const std::string& image,
                          const std::string& output) {
  oracle::write_file(folder + "/job.xml", job_with(image));
  // Address space that threads only set aside is not memory used: small stacks, one arena.
  return oracle::run(
      {"/bin/sh", "-c",
       "ulimit -s 1024 && ulimit -v 262144 && ulimit -t 1 && MALLOC_ARENA_MAX=1 exec " +
           std::string(MULLION_PROGRAM) + " proof " + folder + "/job.xml -o " + folder + "/" +
           output});
}

void check_refused(const oracle::Run& run) {
  INFO(run.err);
  CHECK(run.status == 1);
  CHECK(run.err.find("[picture-unreadable]") != std::string::npos);
  CHECK(run.err.find("job.xml:1:") != std::string::npos);
}

std::string big_16(int value) {
  return {static_cast<char>(value >> 8), static_cast<char>(value & 0xFF)};
}

// The frame header's own height and width replaced (ITU-T T.81, B.2.2).
std::string jpeg_claiming(int width, int height, bool progressive) {
  std::string out = files::jpeg(64, 48, Kind::rgb, 0, progressive);
  const std::size_t frame = out.find(progressive ? "\xFF\xC2" : "\xFF\xC0");
  REQUIRE(frame != std::string::npos);
  return out.replace(frame + 5, 4, big_16(height) + big_16(width));
}

std::string without_end(const std::string& bytes, std::size_t part) {
  return bytes.substr(0, bytes.size() * part / 10);
}

// A JPEG whose last entropy-coded part is missing although it ends with the end marker.
std::string hollow(std::string bytes) {
  return bytes.erase(bytes.size() * 6 / 10, bytes.size() * 3 / 10);
}

TEST_CASE("a picture file that claims, lacks or hides something is refused in 256 MB and 1 s") {
  const std::string folder = oracle::scratch_folder("hostile");
  const std::string whole_png = files::png(400, 300, PNG_COLOR_TYPE_RGB, 8);
  std::string bad_sum = whole_png;
  bad_sum[bad_sum.size() / 2] = static_cast<char>(bad_sum[bad_sum.size() / 2] ^ 0x55);
  const std::pair<const char*, std::string> pictures[] = {
      {"empty.png", ""},
      {"text.png", "not a picture"},
      {"start-alone.jpg", "\xFF\xD8\xFF"},
      {"huge.png", files::png_claiming(100'000, 100'000)},
      {"wide.png", files::png_claiming(0x7FFFFFFF, 1)},
      {"high.png", files::png_claiming(1, 0xFFFFFFFF)},
      {"nothing.png", files::png_claiming(0, 0)},
      {"more-than-it-holds.png", files::png_claiming(7000, 7000)},
      {"half.png", without_end(whole_png, 5)},
      {"damaged.png", bad_sum},
      {"more-than-it-holds.jpg", jpeg_claiming(14000, 14000, false)},
      {"progressive.jpg", jpeg_claiming(7700, 7700, true)},
      {"beyond.jpg", jpeg_claiming(65500, 65500, false)},
      {"nothing.jpg", jpeg_claiming(0, 0, false)},
      {"cut.jpg", without_end(files::jpeg(640, 480), 4)},
      {"cut-late.jpg", without_end(files::jpeg(640, 480), 9)}};
  for (const auto& [name, bytes] : pictures) {
    oracle::write_file(folder + "/" + name, bytes);
    for (const char* output : {"out.pdf", "out.png", "out.html"}) {
      INFO(name << " in " << output);
      check_refused(limited_proof(folder, name, output));
      CHECK_FALSE(std::filesystem::exists(folder + "/" + output));
    }
  }
}

TEST_CASE("a JPEG with a hole in its data is refused, also where its bytes are passed on") {
  const std::string folder = oracle::scratch_folder("hollow");
  oracle::write_file(folder + "/hollow.jpg", hollow(files::jpeg(640, 480)));
  for (const char* output : {"out.pdf", "out.png", "out.html"}) {
    INFO(output);
    check_refused(limited_proof(folder, "hollow.jpg", output));
  }
}

bool looks_damaged(const std::string& jpeg) {
  return mullion::looks_damaged(jpeg, jpeg_segments(jpeg).value());
}

TEST_CASE("a large JPEG's data look damaged where a file system left a block empty") {
  const std::string whole = files::noisy_jpeg(1000, 800);
  CHECK_FALSE(looks_damaged(whole));
  for (const char fill : {'\0', '\x20'}) {
    std::string torn = whole;
    torn.replace(whole.size() / 2, 512, std::string(512, fill));
    CHECK(looks_damaged(torn));
  }
}

TEST_CASE("restarts out of turn look like damage (ITU-T T.81, B.2.1)") {
  std::string jpeg = files::noisy_jpeg(200, 160, 8);  // a restart each 8 blocks
  CHECK_FALSE(looks_damaged(jpeg));
  const std::size_t restart = jpeg.find("\xFF\xD3");
  REQUIRE(restart != std::string::npos);
  jpeg[restart + 1] = '\xD5';
  CHECK(looks_damaged(jpeg));
}

TEST_CASE("what is no regular file is refused as a picture, and nothing waits for it") {
  const std::string folder = oracle::scratch_folder("no-file");
  std::filesystem::create_directory(folder + "/folder.png");
  std::filesystem::create_symlink("/dev/zero", folder + "/zero.png");
  REQUIRE(oracle::run({"mkfifo", folder + "/pipe.png"}).status == 0);
  for (const char* name : {"folder.png", "zero.png", "pipe.png", "missing.png"}) {
    INFO(name);
    check_refused(limited_proof(folder, name, "out.pdf"));
  }
}

TEST_CASE("a profile that unpacks to 64 MB is left aside in 256 MB and 1 s") {
  const std::string folder = oracle::scratch_folder("profile-bomb");
  oracle::write_file(folder + "/bomb.png",
                     profiles::in_png(files::png(64, 64, PNG_COLOR_TYPE_RGB, 8),
                                      std::string(std::size_t{64} << 20, '\0')));
  const auto run = limited_proof(folder, "bomb.png", "out.pdf");
  INFO(run.err);
  CHECK(run.status == 0);
}

TEST_CASE("a JPEG of 24 megapixels makes a proof in 256 MB") {
  const std::string folder = oracle::scratch_folder("large");
  oracle::write_file(folder + "/large.jpg", files::jpeg(6000, 4000, Kind::grey));
  const auto run = limited_proof(folder, "large.jpg", "out.pdf");
  INFO(run.err);
  CHECK(run.status == 0);
}

}  // namespace
