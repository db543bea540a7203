#include "engine/measures/remedies.h"

#include <algorithm>
#include <optional>

#include "engine/job/read.h"
#include "engine/mat/checks.h"
#include "engine/measures/concern.h"
#include "engine/measures/dimensions.h"

namespace mullion {
namespace {

using layout::Statement;
using layout::ToldConflict;
using layout::Way;

constexpr std::size_t most_tried = 24;
// So many are numbers, where as many fit, so that others are left free.
constexpr std::size_t most_numbers = 4;

// --- what a statement is called ------------------------------------------------------------------

// The name of the gap that is stated at that place: of one, or of all of a row or column.
struct GapFinder {
  const Place& place;
  edit::PartNames names;
  std::size_t next = 0;

  std::string in(const Node& node) {
    const auto* group = std::get_if<Group>(&node.what);
    if (group == nullptr) return {};
    const std::string name = names.groups[next++];
    if (group->place == place) return name + ".gap";
    for (std::size_t i = 0; i < group->gaps.size(); ++i) {
      if (group->gaps[i].place == place) return name + ".gap." + std::to_string(i + 1);
    }
    for (const Node& child : group->children) {
      if (std::string found = in(child); !found.empty()) return found;
    }
    return {};
  }
};

// By which an edit states its number; empty where none can.
std::string name_of(const Statement& statement, const Job& job) {
  const bool across = statement.axis == layout::across;
  switch (statement.kind) {
    case Statement::Kind::outer:
      return across ? "outer.width" : "outer.height";
    case Statement::Kind::frame:
      return across ? "frame.rabbet-width" : "frame.rabbet-height";
    case Statement::Kind::border:
      return border_name(statement);
    case Statement::Kind::gap:
      return GapFinder{statement.place, edit::names_of(job)}.in(job.arrangement);
    case Statement::Kind::least_bar:
      return "arrange.least-bar";
    case Statement::Kind::least_border:
      return "border.least";
    case Statement::Kind::rule:
      return "rule." + std::to_string(statement.rule + 1) + ".length";
    case Statement::Kind::wider_bottom:
    case Statement::Kind::bottom_times:
      return "border.bottom";
    case Statement::Kind::structure:
    case Statement::Kind::equal_gaps:
    case Statement::Kind::equal_sizes:
    case Statement::Kind::alignments:
    case Statement::Kind::side_borders:
    case Statement::Kind::end_borders:
    case Statement::Kind::optical_border:
    case Statement::Kind::alignment:
    case Statement::Kind::opening:
    case Statement::Kind::ring:
    case Statement::Kind::place:
    case Statement::Kind::least_opening:
    case Statement::Kind::held_bar:
    case Statement::Kind::held_border:
      return {};
  }
  return {};
}

// --- edits ---------------------------------------------------------------------------------------

struct Candidate {
  std::string words;
  std::vector<edit::Edit> edits;
  std::vector<std::string> names;  // that it states otherwise
  std::optional<Length> number;    // all of them: this one
  std::string measure;             // left free: the dimension that it then comes to
};

void add_way(const Way& way, const Job& job, Candidate& to) {
  for (const Statement& statement : way.what) {
    const std::string name = name_of(statement, job);
    if (name.empty() || std::find(to.names.begin(), to.names.end(), name) != to.names.end()) {
      continue;
    }
    to.names.push_back(name);
    if (!way.number) {
      const bool is_rule = statement.kind == Statement::Kind::rule;
      const std::string rule = "rule." + std::to_string(statement.rule + 1);
      to.edits.push_back(is_rule ? edit::Edit(edit::Remove{rule})
                                 : edit::Edit(edit::State{name, "free"}));
      continue;
    }
    const bool framed = statement.kind == Statement::Kind::frame;
    const Length number = framed ? *way.number + job.frame->allowance : *way.number;
    to.edits.push_back(edit::State{name, exact_number(number, job.scale.unit)});
  }
}

// One way of each conflict. The first ways of all come first; then those that differ in one.
std::vector<Candidate> numbers(const std::vector<ToldConflict>& conflicts, const Job& job,
                               const Locale& locale) {
  std::vector<Candidate> out;
  const bool settled = std::all_of(conflicts.begin(), conflicts.end(),
                                   [](const ToldConflict& one) { return !one.ways.empty(); });
  if (!settled) return out;
  for (std::size_t varied = 0; varied < conflicts.size(); ++varied) {
    for (std::size_t i = varied == 0 ? 0 : 1; i < conflicts[varied].ways.size(); ++i) {
      Candidate& candidate = out.emplace_back();
      std::vector<std::string> words;
      for (std::size_t c = 0; c < conflicts.size(); ++c) {
        const Way& way = conflicts[c].ways[c == varied ? i : 0];
        words.push_back(way.words);
        add_way(way, job, candidate);
      }
      candidate.words = locale.all_of(words);
      if (conflicts.size() == 1) candidate.number = conflicts[0].ways[i].number;
    }
  }
  return out;
}

class Freeing {
 public:
  Freeing(const Job& job, const Locale& locale)
      : job_(job), locale_(locale), names_(edit::names_of(job)) {}

  std::vector<Candidate> list() {
    if (job_.outer_width) add("outer.width", locale_.say("leave the outer width free"));
    if (job_.outer_height) add("outer.height", locale_.say("leave the outer height free"));
    const Borders& borders = job_.borders;
    if (borders.left) add("border.left", locale_.say("leave the left border free"));
    if (borders.right) add("border.right", locale_.say("leave the right border free"));
    if (borders.top) add("border.top", locale_.say("leave the top border free"));
    if (borders.bottom_size) add("border.bottom", locale_.say("leave the bottom border free"));
    add_gaps(job_.arrangement);
    if (borders.least) add("border.least", locale_.say("state no least border"));
    return std::move(out_);
  }

 private:
  void add(const std::string& name, std::string words) {
    const bool is_limit = name == "border.least";
    out_.push_back(
        {std::move(words), {edit::State{name, "free"}}, {name}, {}, is_limit ? "" : name});
  }

  void add_gaps(const Node& node) {
    const auto* group = std::get_if<Group>(&node.what);
    if (group == nullptr) return;
    const std::string name = names_.groups[next_++];
    if (group->gap) {
      const bool row = group->along == Along::row;
      std::string words = group->id.empty() ? row ? locale_.say("leave the gaps of the row free")
                                                  : locale_.say("leave the gaps of the column free")
                          : row ? locale_.say("leave the gaps of the row %1 free", group->id)
                                : locale_.say("leave the gaps of the column %1 free", group->id);
      add(name + ".gap", std::move(words));
      out_.back().measure += ".1";
    }
    for (const Node& child : group->children) add_gaps(child);
  }

  const Job& job_;
  const Locale& locale_;
  edit::PartNames names_;
  std::size_t next_ = 0;
  std::vector<Candidate> out_;
};

// --- trying --------------------------------------------------------------------------------------

bool has_error(const Problems& problems) {
  return std::any_of(problems.begin(), problems.end(),
                     [](const Problem& problem) { return problem.severity == Severity::error; });
}

// What a candidate comes to.
struct Tried {
  edit::Edit edit;
  std::optional<Length> becomes;  // the dimension that was left free
};

std::optional<Tried> tried(const std::string& text, const Job& job, const Candidate& candidate) {
  if (candidate.edits.empty()) return std::nullopt;
  Tried out{candidate.edits.front(), {}};
  if (candidate.edits.size() > 1) out.edit = edit::Several{candidate.edits};
  const auto edited = edit::apply(text, out.edit, job.file);
  if (!edited) return std::nullopt;
  const auto changed = parse_job(edited->text, job.file);
  if (!changed) return std::nullopt;
  const auto layout = lay_out(*changed);
  if (!layout) return std::nullopt;
  const auto mat = build_mat(*changed, *layout);
  if (!mat || has_error(check_mat(*changed, *layout, *mat))) return std::nullopt;
  for (const Dimension& dimension : dimensions_of(*changed, *layout, *mat)) {
    if (dimension.name == candidate.measure) out.becomes = dimension.value;
  }
  return out;
}

}  // namespace

std::vector<Remedy> remedies_for(const std::string& text, const Job& job,
                                 const std::vector<ToldConflict>& conflicts, const Locale& locale) {
  std::vector<Remedy> out;
  std::size_t tries = 0;
  std::vector<Candidate> offered = numbers(conflicts, job, locale);
  std::erase_if(offered, [&](const Candidate& candidate) {
    if (out.size() == most_numbers || tries == most_tried) return true;
    ++tries;
    auto found = tried(text, job, candidate);
    if (found) out.push_back({candidate.words, std::move(found->edit)});
    return !found;
  });
  // Left free it may come to a number that is offered.
  const auto is_offered = [&](const Candidate& freed, const Tried& found) {
    return std::any_of(offered.begin(), offered.end(), [&](const Candidate& one) {
      return one.names == freed.names && one.number && one.number == found.becomes;
    });
  };
  for (const Candidate& candidate : Freeing(job, locale).list()) {
    if (out.size() == most_remedies || tries == most_tried) break;
    ++tries;
    auto found = tried(text, job, candidate);
    if (!found || is_offered(candidate, *found)) continue;
    std::string words = candidate.words;
    if (found->becomes) {
      words = locale.say("%1: it becomes %2", words,
                         locale.exact_length(*found->becomes, job.scale.unit));
    }
    out.push_back({std::move(words), std::move(found->edit)});
  }
  return out;
}

}  // namespace mullion
