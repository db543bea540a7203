#pragma once

// Frame sizes that are on the shelf, and which of them fit a job.
//
// A list is XML: `<frame-sizes unit="in"><size width="8" height="10"/></frame-sizes>`. Sizes are
// the mat's, which is the glass's; either way round. The rabbet is larger by the frame's allowance
// (engine/edit/frame.h).

#include <string>
#include <string_view>
#include <vector>

#include "engine/job/job.h"
#include "engine/layout/layout.h"

namespace mullion {

struct StockSize {
  Length width, height;
};

// The lists that come with the program: common frame sizes in inches, or in centimetres for jobs
// in metric units. Common practice, no source; 14 x 18, 20 x 24, 22 x 28 and 28 x 40 in are also
// the fitted frames of a museum handbook's chapter on window mats.
std::vector<StockSize> common_frame_sizes(Unit unit);

Result<std::vector<StockSize>> parse_frame_sizes(std::string_view xml, const std::string& file);
Result<std::vector<StockSize>> read_frame_sizes(const std::string& path);

struct FrameFit {
  Length width, height;  // the way round in which it fits
  Sides borders;
};

// The first `most` sizes, by rising area, that take the job's arrangement with every border at
// least as wide as wished. The job's own outer size, frame and stated borders are left aside; a
// weighted bottom is kept. A job of one picture needs no arrangement. Problems: no arrangement of
// several pictures, or no size that fits.
Result<std::vector<FrameFit>> fitting_frames(const Job& job, const std::vector<StockSize>& sizes,
                                             const Sides& least, std::size_t most);

}  // namespace mullion
