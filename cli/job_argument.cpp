#include "cli/job_argument.h"

#include <charconv>
#include <filesystem>
#include <set>

namespace mullion::cli {

tl::expected<JobArgument, std::string> job_argument(const std::string& text) {
  const std::size_t star = text.rfind('*');
  std::error_code ignored;
  if (star == std::string::npos || std::filesystem::exists(text, ignored)) {
    return JobArgument{text, std::nullopt};
  }
  int quantity = 0;
  const char* const end = text.data() + text.size();
  const auto read = std::from_chars(text.data() + star + 1, end, quantity);
  if (read.ec != std::errc() || read.ptr != end || quantity < 1 || quantity > most_mats) {
    return tl::unexpected("found \"" + text + "\"; expected a whole number from 1 to " +
                          std::to_string(most_mats) + " after the *, as in job.xml*40");
  }
  return JobArgument{text.substr(0, star), quantity};
}

Result<std::vector<OrderedJob>> load_orders(const std::vector<JobArgument>& arguments) {
  std::vector<OrderedJob> out;
  std::set<std::string> orders;
  for (const JobArgument& argument : arguments) {
    Result<Loaded> loaded = load(argument.path);
    if (!loaded) return tl::unexpected(std::move(loaded.error()));
    OrderedJob job{loaded->job.reference, argument.quantity.value_or(loaded->job.quantity),
                   std::move(*loaded)};
    if (job.order.empty()) job.order = std::filesystem::path(argument.path).stem().string();
    if (!orders.insert(job.order).second) {
      return tl::unexpected(
          Problems{{Severity::error,
                    "repeated-order",
                    "found the order " + job.order + " again in " + argument.path +
                        "; expected a reference of its own for each job",
                    {},
                    {}}});
    }
    out.push_back(std::move(job));
  }
  return out;
}

}  // namespace mullion::cli
