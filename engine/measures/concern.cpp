#include "engine/measures/concern.h"

#include <algorithm>
#include <map>

#include "engine/edit/edit.h"
#include "engine/measures/dimensions.h"

namespace mullion {
namespace {

class Finder {
 public:
  Finder(const Job& job, const Place& place)
      : job_(job), place_(place), names_(edit::names_of(job)) {}

  Concern find() {
    for (const Picture& picture : job_.pictures) {
      if (picture.place == place_) picture_ = picture.id;
    }
    visit(job_.arrangement);
    if (job_.borders.place == place_) {
      out_.measures = {"border.left", "border.top", "border.right", "border.bottom"};
    }
    if (job_.outer_place == place_ || (job_.frame && job_.frame->place == place_)) {
      out_.measures = {"outer.width", "outer.height"};
    }
    for (std::size_t i = 0; i < job_.layers.size(); ++i) {
      if (job_.layers[i].place == place_ && i > 0) {
        out_.measures = {"layer." + std::to_string(i + 1) + ".reveal"};
      }
    }
    for (const Rule& rule : job_.rules) {
      if (rule.place == place_) add_rule(rule);
    }
    return std::move(out_);
  }

 private:
  void visit(const Node& node) {
    if (const auto* opening = std::get_if<Opening>(&node.what)) return visit(*opening);
    const Group& group = std::get<Group>(node.what);
    const std::string name = names_.groups[next_group_++];
    const std::size_t first = next_opening_;
    for (const Node& child : group.children) visit(child);
    for (std::size_t i = 0; i < group.gaps.size(); ++i) {
      const std::string& id = group.gaps[i].id;
      if (!id.empty()) gaps_.emplace(id, name + ".gap." + std::to_string(i + 1));
      if (group.gaps[i].place == place_ && group.gaps[i].place != group.place) {
        out_.measures.push_back(name + ".gap." + std::to_string(i + 1));
      }
    }
    if (group.place != place_) return;
    out_.openings.clear();
    for (std::size_t i = first; i < next_opening_; ++i) {
      out_.openings.push_back(static_cast<int>(i) + 1);
    }
    for (std::size_t i = 0; i < group.gaps.size(); ++i) {
      out_.measures.push_back(name + ".gap." + std::to_string(i + 1));
    }
    if (group.along == Along::ring) out_.measures.push_back(name + ".across");
  }

  void visit(const Opening& opening) {
    const int number = static_cast<int>(++next_opening_);
    ids_.push_back(opening.id);
    if (opening.place != place_ && (picture_.empty() || opening.picture != picture_)) return;
    const std::string& name = names_.openings[static_cast<std::size_t>(number - 1)];
    out_.openings.push_back(number);
    out_.measures.insert(out_.measures.end(), {name + ".width", name + ".height"});
  }

  void add_rule(const Rule& rule) {
    for (const std::string& measure : rule.of) {
      const std::string owner = measure.substr(0, measure.rfind('.'));
      const auto id = std::find(ids_.begin(), ids_.end(), owner);
      const auto gap = gaps_.find(measure);
      if (gap != gaps_.end()) {
        out_.measures.push_back(gap->second);
      } else if (id == ids_.end()) {
        out_.measures.push_back(measure);
      } else {
        out_.openings.push_back(static_cast<int>(id - ids_.begin()) + 1);
      }
    }
  }

  const Job& job_;
  const Place& place_;
  edit::PartNames names_;
  std::string picture_;  // that stands at the place
  std::vector<std::string> ids_;
  std::map<std::string, std::string> gaps_;  // names for edits, by id
  std::size_t next_opening_ = 0, next_group_ = 0;
  Concern out_;
};

using layout::Statement;

// Where a statement says less than the place does: one border, one side of an opening.
Concern concern_of(const Job& job, const Statement& statement) {
  const bool is_across = statement.axis == layout::across;
  if (layout::is_outer(statement)) return {{}, {is_across ? "outer.width" : "outer.height"}};
  if (statement.kind == Statement::Kind::border) return {{}, {border_name(statement)}};
  if (statement.kind == Statement::Kind::wider_bottom ||
      statement.kind == Statement::Kind::bottom_times) {
    return {{}, {"border.top", "border.bottom"}};
  }
  Concern out = concern_of(job, statement.place);
  if (statement.kind == Statement::Kind::opening) {
    std::erase_if(out.measures, [&](const std::string& name) {
      return !name.ends_with(is_across ? ".width" : ".height");
    });
  }
  if (statement.kind == Statement::Kind::gap) out.openings.clear();
  return out;
}

template <class T>
void add_new(std::vector<T>& to, const std::vector<T>& from) {
  for (const T& one : from) {
    if (std::find(to.begin(), to.end(), one) == to.end()) to.push_back(one);
  }
}

}  // namespace

const char* border_name(const layout::Statement& border) {
  if (border.axis == layout::across) return border.far ? "border.right" : "border.left";
  return border.far ? "border.bottom" : "border.top";
}

Concern concern_of(const Job& job, const Place& place) {
  if (place == Place{}) return {};
  return Finder(job, place).find();
}

Concern concern_of(const Job& job, const std::vector<Statement>& statements) {
  Concern out;
  for (const Statement& statement : statements) {
    const Concern one = concern_of(job, statement);
    add_new(out.openings, one.openings);
    add_new(out.measures, one.measures);
  }
  return out;
}

}  // namespace mullion
