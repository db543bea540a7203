#include "engine/suggest/bonds.h"

#include <algorithm>
#include <bit>
#include <map>

namespace mullion::suggest {
namespace {

Members only(std::size_t item) {
  return Members{1} << item;
}

// Whether the parts of a row or column keep a group together, or can in a longer row that they end.
bool keep_together(const std::vector<Members>& parts, Members group) {
  int last = -1;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const Members in = parts[i] & group;
    if (in == 0) continue;
    if (in != parts[i]) return in == group;
    if (last >= 0 && last + 1 != static_cast<int>(i)) return false;
    last = static_cast<int>(i);
  }
  Members all = 0;
  for (const Members part : parts) all |= part;
  const bool unfinished = (all & group) != 0 && (all & group) != group;
  return !unfinished || (parts.front() & group) != 0;
}

// Puts the entries that have a rank into the places of all such entries, by rising rank.
template <class T, class RankOf>
void sort_ranked(std::vector<T>& list, const RankOf& rank_of) {
  std::vector<T> ranked;
  for (const T& entry : list) {
    if (rank_of(entry) > 0) ranked.push_back(entry);
  }
  std::sort(ranked.begin(), ranked.end(),
            [&](const T& a, const T& b) { return rank_of(a) < rank_of(b); });
  auto next = ranked.begin();
  for (T& entry : list) {
    if (rank_of(entry) > 0) entry = *next++;
  }
}

}  // namespace

Bonds::Bonds(const std::vector<Item>& items) : rank_(items.size()) {
  std::map<int, Members> groups;
  std::map<int, std::size_t> orders;
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (items[i].group >= 0) groups[items[i].group] |= only(i);
    if (items[i].order > 0) orders[items[i].order] = i;
  }
  for (const auto& [number, members] : groups) {
    if (std::popcount(members) > 1) groups_.push_back(members);
  }
  int rank = 0;
  for (const auto& [order, item] : orders) rank_[item] = ++rank;
  has_order_ = rank > 1;
}

Bonds::Span Bonds::span(Members members) const {
  Span out;
  for (std::size_t i = 0; i < rank_.size(); ++i) {
    if ((members & only(i)) == 0 || rank_[i] == 0) continue;
    out.first = out.first == 0 ? rank_[i] : std::min(out.first, rank_[i]);
    out.last = std::max(out.last, rank_[i]);
  }
  return out;
}

bool Bonds::may_stand(const std::vector<Members>& parts) const {
  int last = 0;
  for (const Members part : parts) {
    const Span ranks = span(part);
    if (ranks.first == 0) continue;
    if (ranks.first < last) return false;
    last = ranks.last;
  }
  return std::all_of(groups_.begin(), groups_.end(),
                     [&](Members group) { return keep_together(parts, group); });
}

bool Bonds::are_kept(const Block& block) const {
  if (block.parts.empty()) return true;
  std::vector<Members> parts;
  for (const Block& part : block.parts) {
    if (!are_kept(part)) return false;
    parts.push_back(members_of(part));
  }
  return may_stand(parts);
}

bool Bonds::may_join(Members first, Members second) const {
  const Span a = span(first), b = span(second);
  if (a.first > 0 && b.first > 0 && a.last + 1 != b.first) return false;
  return std::all_of(groups_.begin(), groups_.end(), [&](Members group) {
    const auto open = [&](Members m) { return (m & group) != 0 && (m & group) != group; };
    if (!open(first) && !open(second)) return true;
    return ((first | second) & ~group) == 0;
  });
}

bool Bonds::are_possible() const {
  return std::all_of(groups_.begin(), groups_.end(), [&](Members group) {
    const Span ranks = span(group);
    for (std::size_t i = 0; i < rank_.size(); ++i) {
      const bool within = ranks.first < rank_[i] && rank_[i] < ranks.last;
      if (within && (group & only(i)) == 0) return false;
    }
    return true;
  });
}

std::vector<int> Bonds::sequence() const {
  std::vector<std::vector<int>> units;
  Members taken = 0;
  for (std::size_t i = 0; i < rank_.size(); ++i) {
    if ((taken & only(i)) != 0) continue;
    Members unit = only(i);
    for (const Members group : groups_) {
      if ((group & only(i)) != 0) unit = group;
    }
    taken |= unit;
    std::vector<int>& members = units.emplace_back();
    for (std::size_t j = 0; j < rank_.size(); ++j) {
      if ((unit & only(j)) != 0) members.push_back(static_cast<int>(j));
    }
    sort_ranked(members, [&](int item) { return rank_[static_cast<std::size_t>(item)]; });
  }
  sort_ranked(units, [&](const std::vector<int>& unit) {
    Members members = 0;
    for (const int item : unit) members |= only(static_cast<std::size_t>(item));
    return span(members).first;
  });
  std::vector<int> out;
  for (const auto& unit : units) out.insert(out.end(), unit.begin(), unit.end());
  return out;
}

Members members_of(const Block& block) {
  if (block.kind == Block::Kind::picture) return only(static_cast<std::size_t>(block.item));
  Members out = 0;
  for (const Block& part : block.parts) out |= members_of(part);
  return out;
}

}  // namespace mullion::suggest
