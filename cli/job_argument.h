#pragma once

// A job on the command line, with how many mats are wanted: "frame.xml" is as many as the job
// says, "frame.xml*40" is forty.

#include <optional>
#include <string>
#include <vector>

#include "cli/load.h"

namespace mullion::cli {

inline constexpr int most_mats = 100'000;

struct JobArgument {
  std::string path;
  std::optional<int> quantity;
};

// A file whose own name ends that way is taken as it is. The error is one sentence.
tl::expected<JobArgument, std::string> job_argument(const std::string& text);

struct OrderedJob {
  std::string order;  // the job's reference, else the file's name without its ending
  int quantity = 1;
  Loaded loaded;
};

// Problems are those of the first file that is wrong; two jobs of one order are refused.
Result<std::vector<OrderedJob>> load_orders(const std::vector<JobArgument>& arguments);

}  // namespace mullion::cli
