#include "engine/layout/conflict.h"

#include <algorithm>
#include <map>
#include <optional>

#include "engine/layout/remedy.h"
#include "engine/layout/words.h"

namespace mullion::layout {
namespace {

using solver::Rational;

// Conflicts told at a time.
constexpr int most_told = 8;

// What one statement has to do with a conflict: its rules' multipliers, summed.
struct Share {
  int tag = 0;
  const Statement* statement = nullptr;
  Rational amount;      // what it adds to the sum that cannot close; > 0: it needs, < 0: it has
  Rational multiplier;  // summed over its rules

  bool is_outer() const { return layout::is_outer(*statement); }

  // How many of the stated number make the amount, where that is a whole number.
  std::optional<int> count() const {
    const Rational times = abs(multiplier);
    if (!times.is_integer() || times.is_zero() || times > Rational(1000)) return std::nullopt;
    if (abs(amount) != times * Rational(statement->value.ticks())) return std::nullopt;
    return static_cast<int>(times.to_int64());
  }
};

std::vector<Share> shares_of(const Model& model, const solver::Conflict& conflict) {
  std::map<int, Share> by_tag;
  for (const auto& part : conflict.parts) {
    const solver::Constraint& rule = model.system.constraints()[part.constraint];
    if (rule.tag <= 0) continue;
    Share& share = by_tag[rule.tag];
    share.tag = rule.tag;
    share.statement = &model.statements[rule.tag];
    share.amount -= part.multiplier * rule.form.constant();
    share.multiplier += part.multiplier;
  }
  std::vector<Share> shares;
  shares.reserve(by_tag.size());
  for (auto& [tag, share] : by_tag) shares.push_back(share);
  return shares;
}

const Share* outer_of(const std::vector<Share>& shares) {
  const auto outer = std::find_if(shares.begin(), shares.end(), [](const Share& share) {
    return share.is_outer() && !share.multiplier.is_zero();
  });
  return outer == shares.end() ? nullptr : &*outer;
}

// The statement that counts once: the outer size, on the side of what there is; else the number
// that counts least often among those that could be another one.
Rational scale_of(const std::vector<Share>& shares) {
  if (const Share* outer = outer_of(shares)) {
    const Rational scale = Rational(-1) / outer->multiplier;
    return outer->amount.sign() * scale.sign() > 0 ? -scale : scale;
  }
  Rational least;
  for (const Share& share : shares) {
    const Rational times = abs(share.multiplier);
    if (!share.statement->adjustable || times.is_zero()) continue;
    if (least.is_zero() || times < least) least = times;
  }
  return least.is_zero() ? Rational(1) : Rational(1) / least;
}

std::string borders_text(const std::vector<Length>& borders, const Scale& scale) {
  if (borders.size() == 1) return "a border of " + describe_exact_number(borders[0], scale);
  std::vector<std::string> numbers;
  numbers.reserve(borders.size());
  for (const Length border : borders) numbers.push_back(describe_exact_number(border, scale));
  std::string text = "borders ";
  for (std::size_t i = 0; i < numbers.size(); ++i) text += (i == 0 ? "" : " + ") + numbers[i];
  return text;
}

std::string list_needs(const Job& job, const std::vector<Share>& shares) {
  const Scale& scale = job.scale;
  std::vector<Length> borders;
  std::map<Length, int, std::greater<>> openings, gaps;  // how many of a size
  std::vector<std::string> others;
  for (const Share& share : shares) {
    if (share.is_outer()) continue;
    const Statement& statement = *share.statement;
    const int count = *share.count();
    if (statement.kind == Statement::Kind::border) {
      borders.insert(borders.end(), static_cast<std::size_t>(count), statement.value);
    } else if (statement.kind == Statement::Kind::opening) {
      openings[statement.value] += count;
    } else if (statement.kind == Statement::Kind::gap) {
      gaps[statement.value] += count;
    } else {
      others.push_back(is_limit(statement) ? counted_limit(count, statement, scale)
                                           : text_of(statement, job));
    }
  }
  std::vector<std::string> items;
  if (!borders.empty()) items.push_back(borders_text(borders, scale));
  for (const auto& [size, count] : openings) {
    items.push_back(counted(count, "opening", "openings") + " of " +
                    describe_exact_number(size, scale));
  }
  for (const auto& [size, count] : gaps) {
    items.push_back(counted(count, "gap", "gaps") + " of " + describe_exact_number(size, scale));
  }
  items.insert(items.end(), others.begin(), others.end());
  return joined(items);
}

// Whether the stated numbers, so many times each, make one sum beside the outer size.
bool adds_up(const std::vector<Share>& shares) {
  const Share* outer = outer_of(shares);
  return outer != nullptr && std::all_of(shares.begin(), shares.end(), [&](const Share& share) {
           if (&share == outer) return true;
           return !share.is_outer() && share.amount.sign() > 0 && share.count() &&
                  (!is_rule(*share.statement) || (*share.count() == 1 && shares.size() > 2));
         });
}

std::string sum_sentence(const Job& job, const std::vector<Share>& shares,
                         const Rational& shortfall) {
  const Scale& scale = job.scale;
  const Share& outer = *outer_of(shares);
  const Rational need = Rational(outer.statement->value.ticks()) + shortfall;
  const int parts = static_cast<int>(shares.size()) - 1;
  const bool is_one = parts == 1 && *shares[&outer == &shares[0] ? 1 : 0].count() == 1;
  const char* verb = shortfall.sign() > 0 ? is_one ? " needs " : " need "
                     : is_one             ? " comes to "
                                          : " come to ";
  return list_needs(job, shares) + verb + ticks_text(need, scale) + "; " +
         text_of(*outer.statement, job) + " is " + describe_exact(outer.statement->value, scale) +
         ": " + ticks_text(abs(shortfall), scale) + (shortfall.sign() > 0 ? " short" : " too much");
}

std::string listed(const Job& job, const Share& share) {
  const Statement& statement = *share.statement;
  if (is_limit(statement)) return counted_limit(share.count().value_or(1), statement, job.scale);
  const std::string text = text_of(statement, job);
  const bool is_named_alone = share.is_outer() || statement.kind == Statement::Kind::border;
  return is_named_alone ? text + " of " + describe_exact(statement.value, job.scale) : text;
}

std::string list_sentence(const Job& job, const std::vector<Share>& shares,
                          const Rational& shortfall) {
  const Scale& scale = job.scale;
  std::vector<std::string> items;
  std::map<Length, int, std::greater<>> gaps;  // how many of a size
  for (const Share& share : shares) {
    if (share.statement->kind == Statement::Kind::gap) {
      gaps[share.statement->value] += share.count().value_or(1);
    } else {
      items.push_back(listed(job, share));
    }
  }
  for (const auto& [size, count] : gaps) {
    items.push_back(counted(count, "gap", "gaps") + " of " + describe_exact(size, scale));
  }
  return "these cannot all hold: " + joined(items) + "; they miss by " +
         ticks_text(abs(shortfall), scale);
}

std::string suggestion(const Job& job, const Model& model, const RequiredRules& linked,
                       const std::vector<Share>& shares, const solver::Conflict& conflict) {
  std::vector<int> tags, parts;
  for (const Share& share : shares) tags.push_back(share.tag);
  const auto told = [&](const std::vector<Remedy>& ways) {
    std::vector<std::string> texts;
    for (const Remedy& way : ways) texts.push_back(text_of(way, model, job));
    return "; " + joined(texts, " or ");
  };
  const std::vector<Remedy> ways = ways_out(job, model, linked, tags);
  if (!ways.empty()) return told(ways) + " would fit";
  const std::vector<Remedy> closing = ways_out(job, model, parts_of(conflict, linked), tags);
  if (closing.empty()) return {};
  return told(closing) + " would settle this, but other numbers do not fit either";
}

Problems describe(const Job& job, const Model& model, const RequiredRules& linked,
                  const solver::Conflict& conflict) {
  std::vector<Share> shares = shares_of(model, conflict);
  const Rational scale = scale_of(shares), shortfall = conflict.shortfall * scale;
  for (Share& share : shares) {
    share.amount *= scale;
    share.multiplier *= scale;
  }
  const std::string what = adds_up(shares) ? sum_sentence(job, shares, shortfall)
                                           : list_sentence(job, shares, shortfall);
  Problem main{Severity::error,
               "layout-conflict",
               what + suggestion(job, model, linked, shares, conflict),
               {},
               job.file};
  Problems problems;
  for (const Share& share : shares) {
    const Place place = share.statement->place;
    if (place.line == 0) continue;
    if (main.place.line == 0) main.place = place;
    problems.push_back({Severity::note, "layout-conflict",
                        "this takes part: " + text_of(*share.statement, job), place, job.file});
  }
  problems.insert(problems.begin(), main);
  return problems;
}

}  // namespace

Problems describe_conflict(const Job& job, const Model& model, const solver::Conflict& conflict) {
  const RequiredRules all = required_rules(model);
  Problems problems;
  RequiredRules left = all;
  solver::Conflict next = conflict;
  for (int told = 0; told < most_told; ++told) {
    const RequiredRules linked = linked_to(next, all);
    const Problems more = describe(job, model, linked, next);
    problems.insert(problems.end(), more.begin(), more.end());
    left = without_statements_of(next, linked, left);
    auto other = solver::solve(left.system);
    if (other) break;
    next = renumbered(std::move(other.error()), left);
  }
  return problems;
}

}  // namespace mullion::layout
