#include "engine/measures/remedies.h"

#include <optional>

#include "engine/job/read.h"
#include "engine/measures/dimensions.h"

namespace mullion {
namespace {

// A stated size that may be left free; `measure` is the dimension that it then comes to.
struct Candidate {
  std::string name, words, measure;
};

constexpr std::size_t most_tried = 16;

void add_gaps(const Node& node, const edit::PartNames& names, std::size_t& next,
              std::vector<Candidate>& out) {
  const auto* group = std::get_if<Group>(&node.what);
  if (group == nullptr) return;
  const std::string name = names.groups[next++];
  const std::string kind = group->along == Along::row ? "row" : "column";
  if (group->gap) {
    out.push_back(
        {name + ".gap",
         "leave the gaps of the " + kind + (group->id.empty() ? "" : " " + group->id) + " free",
         name + ".gap.1"});
  }
  for (const Node& child : group->children) add_gaps(child, names, next, out);
}

std::vector<Candidate> candidates(const Job& job) {
  std::vector<Candidate> out;
  if (job.outer_width) out.push_back({"outer.width", "leave the outer width free", "outer.width"});
  if (job.outer_height) {
    out.push_back({"outer.height", "leave the outer height free", "outer.height"});
  }
  const Borders& borders = job.borders;
  const auto border = [&](const char* side, const std::optional<Length>& stated) {
    if (!stated) return;
    const std::string name = std::string("border.") + side;
    out.push_back({name, "leave the " + std::string(side) + " border free", name});
  };
  border("left", borders.left);
  border("right", borders.right);
  border("top", borders.top);
  border("bottom", borders.bottom_size);
  std::size_t next = 0;
  add_gaps(job.arrangement, edit::names_of(job), next, out);
  if (borders.least) out.push_back({"border.least", "state no least border", ""});
  return out;
}

std::optional<Remedy> tried(const std::string& text, const Job& job, const Candidate& candidate) {
  const edit::Edit edit =
      edit::State{candidate.name,
                  candidate.measure.empty() ? std::nullopt : std::optional<std::string>("free")};
  const auto edited = edit::apply(text, edit, job.file);
  if (!edited) return std::nullopt;
  const auto freed = parse_job(edited->text, job.file);
  if (!freed) return std::nullopt;
  const auto layout = lay_out(*freed);
  if (!layout) return std::nullopt;
  const auto mat = build_mat(*freed, *layout);
  if (!mat) return std::nullopt;
  std::string words = candidate.words;
  for (const Dimension& dimension : dimensions_of(*freed, *layout, *mat)) {
    if (dimension.name != candidate.measure) continue;
    words += ": it becomes " + format_exact(dimension.value, job.scale.unit);
  }
  return Remedy{std::move(words), edit};
}

}  // namespace

std::vector<Remedy> remedies_for(const std::string& text, const Job& job) {
  std::vector<Remedy> out;
  std::size_t tries = 0;
  for (const Candidate& candidate : candidates(job)) {
    if (out.size() == most_remedies || tries++ == most_tried) break;
    if (auto remedy = tried(text, job, candidate)) out.push_back(std::move(*remedy));
  }
  return out;
}

}  // namespace mullion
