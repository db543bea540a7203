#pragma once

// A first job file from few answers: pictures in a row or in rows, boards one above the other, and
// borders that are stated or follow from a frame. What comes out is for a person to go on with:
// each part has a comment that says what may be changed there.

#include <optional>
#include <string>
#include <vector>

#include "engine/job/job.h"
#include "engine/layout/layout.h"

namespace mullion::starting {

struct StartingPicture {
  std::string name;  // brought to an id, and told apart from the others
  Length width, height;
  std::string image;   // relative to the job file; empty: none
  std::string remark;  // a sentence for the comment, without a full stop; may be empty
};

struct Start {
  Unit unit = Unit::inch;
  std::string reference, customer, title;
  std::vector<StartingPicture> pictures;  // at least one
  std::vector<std::string> boards;        // top to bottom, at least one; "" where none is named
  std::optional<Length> border;  // with a frame the least border; default: the usual large one
  std::optional<Length> bottom_extra;                 // bottom = top + this
  std::optional<Length> rabbet_width, rabbet_height;  // of the frame that is at hand: both or none
  Length gap;                                         // between neighbours
};

// The finest step of a job that states none: 1/16 in, or 1 mm.
Scale usual_scale(Unit unit);

// "10 x 8", "8 1/2 in by 11 in": one size as said_sizes.h reads it. The error is one sentence.
struct Size {
  Length width, height;
};
tl::expected<Size, std::string> parse_size(std::string_view text, Unit unit);

// The picture of a file: its size from its pixels and resolution, 300 pixels per inch where the
// file states none, which the remark then says. `path` is where to read it, `image` is its name
// beside the job. The error is one sentence that names the file.
tl::expected<StartingPicture, std::string> picture_of(const std::string& path,
                                                      const std::string& image, Unit unit);

struct Started {
  std::string xml;
  Job job;
  Layout layout;
};

// The job file, read and laid out as any other: what that finds wrong is the error. `file` is what
// it will be called.
Result<Started> start_job(const Start& start, const std::string& file);

}  // namespace mullion::starting
