#include "tests/bench/proof.h"

#include <cstdint>
#include <cstdio>
#include <filesystem>
#include <stdexcept>
#include <string>

#include "render/picture/pixels.h"
#include "tests/oracle/program.h"

namespace bench {
namespace {

using namespace mullion;

// 24 megapixels with slow shades and grain, about 10 MB as a JPEG.
std::string photograph() {
  picture::Pixels pixels;
  pixels.size = {6000, 4000};
  std::uint32_t grain = 1;
  for (std::uint32_t y = 0; y < 4000; ++y) {
    for (std::uint32_t x = 0; x < 6000; ++x) {
      grain = grain * 1664525u + 1013904223u;
      const std::uint32_t shade = (x / 31 + y / 23 + (grain >> 26)) & 0xFF;
      pixels.argb.push_back(0xFF000000u | shade << 16 | (255 - shade) << 8 | (x / 24));
    }
  }
  return picture::encode_jpeg(pixels, 90);
}

// A comment makes it a photograph of its own: the same one is in a PDF once.
std::string numbered(const std::string& jpeg, int number) {
  std::string comment("\xFF\xFE\0\x03", 4);
  comment += static_cast<char>(number);
  return std::string(jpeg).insert(2, comment);
}

// Rows of four 6 x 4 in pictures, each a file of its own.
std::string job_of(int pictures, const std::string& folder, const std::string& bytes) {
  std::string listed, arranged;
  for (int i = 0; i < pictures; ++i) {
    const std::string id = "p" + std::to_string(i);
    oracle::write_file(folder + "/" + id + ".jpg", numbered(bytes, i));
    listed += "<picture id='" + id + "' width='6' height='4' image='" + id + ".jpg'/>";
    if (i % 4 == 0) arranged += i == 0 ? "<row>" : "</row><row>";
    arranged += "<opening picture='" + id + "'/>";
  }
  const std::string path = folder + "/" + std::to_string(pictures) + ".xml";
  oracle::write_file(path, "<job version='1' unit='in'><pictures>" + listed +
                               "</pictures><layers><layer/></layers><borders all='3'/><arrange>"
                               "<column gap='1'>" +
                               arranged + "</row></column></arrange></job>");
  return path;
}

// Best of five runs. A process of its own runs the program, so that the peak is the program's
// alone: Linux counts the memory of whoever starts a program into that program's peak.
void row(const std::string& what, const std::string& job, const std::string& output) {
  const auto run = oracle::run({"python3", "-c", R"(
import resource, subprocess, sys, time
times = []
for _ in range(5):
    begin = time.monotonic()
    subprocess.run(sys.argv[1:], check=True)
    times.append(1000 * (time.monotonic() - begin))
used = resource.getrusage(resource.RUSAGE_CHILDREN)
print('%9.2f ms  (median %9.2f)  %.0f ms of processor time a run, peak memory %.0f MB' % (
    min(times), sorted(times)[2], 200 * (used.ru_utime + used.ru_stime), used.ru_maxrss / 1024))
)",
                                MULLION_PROGRAM, "proof", job, "-o", output});
  if (run.status != 0) throw std::runtime_error(run.err);
  std::printf("%-52s %s", what.c_str(), run.out.c_str());
  std::printf("  %.2f MB\n", static_cast<double>(std::filesystem::file_size(output)) / 1e6);
}

}  // namespace

void proof() {
  const std::string folder = oracle::scratch_folder("bench-proof");
  const std::string bytes = photograph();
  for (const int pictures : {1, 12}) {
    const std::string job = job_of(pictures, folder, bytes);
    for (const char* kind : {"pdf", "png", "html"}) {
      row("proof with " + std::to_string(pictures) + " photographs of 24 megapixels, " + kind, job,
          folder + "/p." + kind);
    }
  }
  std::printf("  goals with 12: a PDF in 1 s and 300 MB, a page (html) of 5 MB\n");
}

}  // namespace bench
