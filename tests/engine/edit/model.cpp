#include "tests/engine/edit/model.h"

#include <algorithm>
#include <map>
#include <set>
#include <stdexcept>

#include "engine/job/parts.h"
#include "engine/job/write.h"

namespace test {

using namespace mullion;
using Where = edit::Position::Where;

namespace {

mullion::Group* group_in(Node& node) {
  return std::get_if<mullion::Group>(&node.what);
}

int mark_of(const Node& node) {
  if (const auto* opening = std::get_if<Opening>(&node.what)) return opening->place.line;
  return std::get<mullion::Group>(node.what).place.line;
}

// The path to the part of that mark.
bool find(const Node& node, int mark, Path& path) {
  if (mark_of(node) == mark) return true;
  const auto* group = std::get_if<mullion::Group>(&node.what);
  if (group == nullptr) return false;
  for (std::size_t i = 0; i < group->children.size(); ++i) {
    path.push_back(i);
    if (find(group->children[i], mark, path)) return true;
    path.pop_back();
  }
  return false;
}

Gap usual_gap(const mullion::Group& group) {
  return {{}, group.gap, {}};
}

std::set<std::string> mentioned(const Job& job) {
  std::set<std::string> out;
  for (const Rule& rule : job.rules) {
    for (const std::string& name : rule.of) out.insert(name.substr(0, name.rfind('.')));
    out.insert(rule.on);
  }
  return out;
}

int worth(const Gap& gap, const mullion::Group& group, const std::set<std::string>& known) {
  if (!gap.id.empty()) return known.contains(gap.id) ? 3 : 2;
  return gap.size != group.gap ? 1 : 0;
}

// A row or column of one part that says nothing else gives way to it.
void unwrap(Node& node) {
  while (auto* group = group_in(node)) {
    for (Node& child : group->children) unwrap(child);
    if (group->children.size() != 1 || !group->id.empty() || group->joined_layer > 0 ||
        !group->grooves.empty()) {
      return;
    }
    Node only = group->children.front();
    node = std::move(only);
  }
}

void list_openings(Node& node, std::vector<Opening*>& out) {
  if (auto* opening = std::get_if<Opening>(&node.what)) {
    out.push_back(opening);
    return;
  }
  for (Node& child : group_in(node)->children) list_openings(child, out);
}

using Names = std::map<int, std::string>;

// The names of parts and gaps by their marks.
void list_names(const Node& node, Names& out) {
  if (const auto* opening = std::get_if<Opening>(&node.what)) {
    out[opening->place.line] = opening->id;
    return;
  }
  const auto& group = std::get<mullion::Group>(node.what);
  if (!group.id.empty()) out[group.place.line] = group.id;
  for (const Gap& gap : group.gaps) {
    if (!gap.id.empty()) out[gap.place.line] = gap.id;
  }
  for (const Node& child : group.children) list_names(child, out);
}

// Empty where the word is gone.
std::string renamed(const std::string& word, const std::map<std::string, std::string>& names) {
  const std::size_t stop = std::min(word.rfind('.'), word.size());
  const auto found = names.find(word.substr(0, stop));
  if (found == names.end()) return word;
  return found->second.empty() ? std::string() : found->second + word.substr(stop);
}

bool rename(std::vector<std::string>& list, const std::map<std::string, std::string>& names) {
  bool changed = false;
  std::vector<std::string> out;
  for (const std::string& word : list) {
    const std::string now = renamed(word, names);
    changed = changed || now != word;
    if (!now.empty()) out.push_back(now);
  }
  list = out;
  return changed;
}

bool stands(const Rule& rule) {
  switch (rule.kind) {
    case Rule::Kind::same_size:
    case Rule::Kind::align:
    case Rule::Kind::equal:
    case Rule::Kind::multiple:
      return rule.of.size() >= 2;
    default:
      return !rule.of.empty() && (rule.kind != Rule::Kind::centred || !rule.on.empty());
  }
}

void renumber_reveals(Node& node, const std::map<int, int>& layers) {
  if (auto* opening = std::get_if<Opening>(&node.what)) {
    std::map<int, Sides> out;
    for (const auto& [layer, sides] : opening->reveals) {
      const auto found = layers.find(layer);
      if (found != layers.end() && found->second > 1) out[found->second] = sides;
    }
    opening->reveals = out;
    return;
  }
  auto& group = *group_in(node);
  const auto found = layers.find(group.joined_layer);
  group.joined_layer = found == layers.end() ? 0 : found->second;
  for (Node& child : group.children) renumber_reveals(child, layers);
}

void forget_unseen(Node& node) {
  if (auto* group = group_in(node)) {
    for (Node& child : group->children) forget_unseen(child);
    if (group->children.size() == 1) group->gap = std::nullopt;
  }
}

}  // namespace

Node& node_at(Job& job, const Path& path) {
  Node* node = &job.arrangement;
  for (const std::size_t index : path) node = &group_in(*node)->children.at(index);
  return *node;
}

std::vector<Path> paths_of(const Job& job) {
  std::vector<Path> out;
  const auto list = [&](const auto& self, const Node& node, const Path& path) -> void {
    out.push_back(path);
    const auto* group = std::get_if<mullion::Group>(&node.what);
    if (group == nullptr) return;
    for (std::size_t i = 0; i < group->children.size(); ++i) {
      Path child = path;
      child.push_back(i);
      self(self, group->children[i], child);
    }
  };
  list(list, job.arrangement, {});
  return out;
}

std::string name_of(const Path& path) {
  std::string out = "arrange.1";
  for (const std::size_t index : path) out += "." + std::to_string(index + 1);
  return out;
}

Model::Model(Job before) : job_(std::move(before)) {
  mark(job_.arrangement);
  for (Layer& layer : job_.layers) layer.place.line = ++marks_;
  for (Picture& picture : job_.pictures) picture.place.line = ++marks_;
  before_ = job_;
}

bool Model::is_line(const mullion::Group& group) {
  return group.along == Along::row || group.along == Along::column;
}

void Model::mark(Node& node) {
  if (auto* opening = std::get_if<Opening>(&node.what)) {
    opening->place.line = ++marks_;
    return;
  }
  auto& group = *group_in(node);
  group.place.line = ++marks_;
  for (Gap& gap : group.gaps) gap.place.line = ++marks_;
  for (Node& child : group.children) mark(child);
}

// Takes it out, with the gap that is worth less of those beside it; groups that are left empty go.
Node Model::cut(const Path& path) {
  Path above = path;
  const std::size_t index = above.back();
  above.pop_back();
  auto& group = *group_in(node_at(job_, above));
  Node out = group.children[index];
  group.children.erase(group.children.begin() + static_cast<std::ptrdiff_t>(index));
  if (group.children.empty()) {
    if (above.empty()) throw std::logic_error("nothing is left");
    cut(above);
    return out;
  }
  if (!is_line(group)) return out;
  std::size_t gap = index == 0 ? 0 : index - 1;
  if (index > 0 && index < group.children.size()) {
    const auto known = mentioned(job_);
    if (worth(group.gaps[index], group, known) <= worth(group.gaps[gap], group, known)) gap = index;
  }
  group.gaps.erase(group.gaps.begin() + static_cast<std::ptrdiff_t>(gap));
  return out;
}

void Model::put(Node part, Where where, int target) {
  Path path;
  if (!find(job_.arrangement, target, path)) throw std::logic_error("the place is gone");
  const bool before = where == Where::before || where == Where::left || where == Where::above ||
                      where == Where::first_in;
  Node& at = node_at(job_, path);
  const bool within = where == Where::first_in || where == Where::last_in;
  const bool says_way = !within && where != Where::before && where != Where::after;
  Along along = where == Where::above || where == Where::below ? Along::column : Along::row;
  if (!says_way && group_in(at) != nullptr && group_in(at)->along == Along::row) {
    along = Along::column;
  }
  mullion::Group* above = nullptr;
  std::size_t index = 0;
  if (!path.empty()) {
    index = path.back();
    path.pop_back();
    above = group_in(node_at(job_, path));
  }
  if (!within && above != nullptr && (!says_way || above->along == along)) {
    index += before ? 0 : 1;
  } else if (within || (group_in(at) != nullptr && group_in(at)->along == along)) {
    above = group_in(at);
    index = before ? 0 : above->children.size();
  } else {
    mullion::Group made;
    made.along = along;
    if (above != nullptr) made.gap = above->gap;
    made.children = {at};
    at.what = made;
    above = group_in(at);
    index = before ? 0 : 1;
  }
  // The new neighbour in front keeps its distance to the one before; the usual gap comes between.
  const std::size_t gap = before ? index : index - 1;
  if (!above->children.empty() && is_line(*above)) {
    const std::size_t place = std::min(gap, above->gaps.size());
    above->gaps.insert(above->gaps.begin() + static_cast<std::ptrdiff_t>(place), usual_gap(*above));
  }
  above->children.insert(above->children.begin() + static_cast<std::ptrdiff_t>(index),
                         std::move(part));
}

void Model::remove_part(const Path& path) {
  cut(path);
}

void Model::move_part(const Path& path, Where where, const Path& to) {
  const int target = mark_of(node_at(job_, to));
  Node& part = node_at(job_, path);
  const Node moved = part;
  // The place it leaves has a mark of its own, so that the part is there once.
  const int left = ++marks_;
  Opening hole;
  hole.place.line = left;
  part.what = hole;
  put(moved, where, target);
  Path hole_path;
  find(job_.arrangement, left, hole_path);
  cut(hole_path);
}

void Model::add_part(Node part, Where where, const Path& to) {
  put(std::move(part), where, mark_of(node_at(job_, to)));
}

void Model::group(Along along, const Path& first, std::size_t count) {
  mullion::Group made;
  made.along = along;
  if (first.empty()) {
    made.children = {job_.arrangement};
    job_.arrangement.what = made;
    return;
  }
  Path above = first;
  const auto index = static_cast<std::ptrdiff_t>(above.back());
  above.pop_back();
  auto& group = *group_in(node_at(job_, above));
  const auto end = index + static_cast<std::ptrdiff_t>(count);
  made.gap = group.gap;
  made.children.assign(group.children.begin() + index, group.children.begin() + end);
  made.gaps.assign(group.gaps.begin() + index, group.gaps.begin() + end - 1);
  group.children.erase(group.children.begin() + index, group.children.begin() + end);
  group.gaps.erase(group.gaps.begin() + index, group.gaps.begin() + end - 1);
  group.children.insert(group.children.begin() + index, Node{made});
}

void Model::turn(const Path& path) {
  auto& group = *group_in(node_at(job_, path));
  group.along = group.along == Along::row ? Along::column : Along::row;
}

void Model::dissolve(const Path& path) {
  if (path.empty()) {
    Node only = group_in(job_.arrangement)->children.front();
    job_.arrangement = only;
    return;
  }
  Path above = path;
  const auto index = static_cast<std::ptrdiff_t>(above.back());
  above.pop_back();
  auto& outer = *group_in(node_at(job_, above));
  mullion::Group inner = *group_in(outer.children[static_cast<std::size_t>(index)]);
  for (Gap& gap : inner.gaps) {
    if (gap.size == inner.gap) gap.size = outer.gap;  // that of its row or column, not its own
  }
  outer.children.erase(outer.children.begin() + index);
  outer.children.insert(outer.children.begin() + index, inner.children.begin(),
                        inner.children.end());
  outer.gaps.insert(outer.gaps.begin() + index, inner.gaps.begin(), inner.gaps.end());
}

bool Model::finish() {
  // Layers, and what speaks of them by number.
  std::map<int, int> marks, numbers;
  for (std::size_t i = 0; i < job_.layers.size(); ++i) {
    marks[job_.layers[i].place.line] = static_cast<int>(i) + 1;
  }
  bool same = true;
  for (std::size_t i = 0; i < before_.layers.size(); ++i) {
    const auto found = marks.find(before_.layers[i].place.line);
    const int old = static_cast<int>(i) + 1;
    if (found != marks.end()) numbers[old] = found->second;
    same = same && found != marks.end() && found->second == old;
  }
  if (!same) renumber_reveals(job_.arrangement, numbers);
  job_.layers.front().reveal = {};

  // Usual names of openings.
  std::map<int, bool> usual;
  std::vector<Opening*> openings;
  list_openings(before_.arrangement, openings);
  for (std::size_t i = 0; i < openings.size(); ++i) {
    const Opening& one = *openings[i];
    usual[one.place.line] = one.id == usual_opening_id(one.picture, i + 1);
  }
  std::map<std::string, std::string> pictures;
  for (const Picture& old : before_.pictures) {
    for (const Picture& now : job_.pictures) {
      if (old.place.line == now.place.line) pictures[old.id] = now.id;
    }
  }
  openings.clear();
  list_openings(job_.arrangement, openings);
  for (std::size_t i = 0; i < openings.size(); ++i) {
    Opening& one = *openings[i];
    const auto picture = pictures.find(one.picture);
    if (one.place.line > 0 && picture != pictures.end()) one.picture = picture->second;
    const bool unnamed = one.place.line == 0
                             ? one.id.empty()
                             : usual[one.place.line] && !named_.contains(one.place.line);
    if (unnamed) {
      one.id = usual_opening_id(one.picture, i + 1);
    }
  }

  Names old_names, names;
  list_names(before_.arrangement, old_names);
  list_names(job_.arrangement, names);
  std::map<std::string, std::string> changes;
  for (const auto& [mark, id] : old_names) {
    const auto found = names.find(mark);
    if (found == names.end() || found->second != id) {
      changes[id] = found == names.end() ? std::string() : found->second;
    }
  }
  for (Layer& layer : job_.layers) {
    if (rename(layer.only, changes) && layer.only.empty()) return false;
  }
  std::vector<Rule> rules;
  for (Rule rule : job_.rules) {
    rename(rule.of, changes);
    rule.on = renamed(rule.on, changes);
    if (stands(rule)) rules.push_back(rule);
  }
  job_.rules = rules;
  return true;
}

std::string said(Job job) {
  unwrap(job.arrangement);
  forget_unseen(job.arrangement);
  for (std::size_t i = 0; i < job.layers.size(); ++i) {
    std::string& name = job.layers[i].name;
    if (name == "Top mat" || name.starts_with("Layer ")) name = usual_layer_name(i + 1);
  }
  return write_job(job);
}

}  // namespace test
