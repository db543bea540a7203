// A ready-made frame is taken: the job then has its rabbet, and the mat the size that was told.

#include "engine/edit/frame.h"

#include <catch2/catch.hpp>
#include <filesystem>

#include "engine/shop/wished_borders.h"
#include "tests/oracle/program.h"

using namespace mullion;

TEST_CASE("a job of the gallery that takes a frame of the list has its rabbet, size and borders") {
  int taken = 0;
  for (const auto& entry : std::filesystem::directory_iterator(oracle::gallery(""))) {
    if (entry.path().extension() != ".xml") continue;
    const std::string file = entry.path().string(), text = oracle::read_file(file);
    const Job job = parse_job(text, file).value();
    const auto fits =
        fitting_frames(job, common_frame_sizes(job.scale.unit), wished_borders(job), 3);
    if (!fits) continue;
    for (const FrameFit& fit : *fits) {
      INFO(file << " " << format_exact(fit.width, job.scale.unit));
      const auto edited = edit::apply(text, edit::taking(fit, job), file);
      if (!edited) INFO(to_string(edited.error().front()));
      REQUIRE(edited);
      const Job framed = parse_job(edited->text, file).value();
      REQUIRE(framed.frame);
      CHECK(framed.frame->rabbet_width == fit.width + framed.frame->allowance);
      CHECK(framed.frame->rabbet_height == fit.height + framed.frame->allowance);
      CHECK_FALSE(framed.outer_width);
      if (job.frame) CHECK(framed.frame->moulding == job.frame->moulding);
      const auto layout = lay_out(framed);
      REQUIRE(layout);
      CHECK(layout->width == fit.width);
      CHECK(layout->height == fit.height);
      ++taken;
    }
  }
  CHECK(taken > 15);
}
