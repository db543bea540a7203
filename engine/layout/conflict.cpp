#include "engine/layout/conflict.h"

#include <algorithm>
#include <map>

#include "engine/layout/words.h"

namespace mullion::layout {
namespace {

using solver::Rational;

// What one statement has to do with a conflict: its rules' multipliers, summed.
struct Share {
  const Statement* statement = nullptr;
  Rational amount;      // what it adds to the sum that cannot close; > 0: it needs, < 0: it has
  Rational multiplier;  // summed over its rules
};

std::vector<Share> shares_of(const Model& model, const solver::Conflict& conflict) {
  std::map<int, Share> by_tag;
  for (const auto& part : conflict.parts) {
    const solver::Constraint& rule = model.system.constraints()[part.constraint];
    if (rule.tag <= 0) continue;
    Share& share = by_tag[rule.tag];
    share.statement = &model.statements[rule.tag];
    share.amount -= part.multiplier * rule.form.constant();
    share.multiplier += part.multiplier;
  }
  std::vector<Share> shares;
  for (auto& [tag, share] : by_tag) shares.push_back(share);
  return shares;
}

// So that the outer size, where it takes part, stands on the side of what there is, once.
void turn_to_outer(std::vector<Share>& shares, Rational& shortfall) {
  Rational scale = 1;
  for (const Share& share : shares) {
    if (share.statement->kind == Statement::Kind::outer && !share.multiplier.is_zero()) {
      scale = Rational(-1) / share.multiplier;
      if (share.amount.sign() * scale.sign() > 0) scale = -scale;
    }
  }
  for (Share& share : shares) {
    share.amount *= scale;
    share.multiplier *= scale;
  }
  shortfall *= scale;
}

std::string list_needs(const std::vector<Share>& shares, const Scale& scale) {
  std::vector<std::string> items;
  std::vector<Length> borders;
  std::map<std::pair<std::int64_t, bool>, int> openings, gaps;  // by size; how many
  std::vector<std::string> others;
  for (const Share& share : shares) {
    if (share.amount.sign() <= 0) continue;
    const Statement& statement = *share.statement;
    const Rational times = abs(share.multiplier);
    const int count =
        times.is_integer() && times <= Rational(1000) ? static_cast<int>(times.to_int64()) : 1;
    const auto key = std::make_pair(statement.value.ticks(), false);
    switch (statement.kind) {
      case Statement::Kind::border:
        borders.push_back(statement.value);
        break;
      case Statement::Kind::opening:
        openings[key] += count;
        break;
      case Statement::Kind::gap:
        gaps[key] += count;
        break;
      default:
        others.push_back(statement.text);
        break;
    }
  }
  if (borders.size() == 1) items.push_back("a border of " + number_text(borders[0], scale));
  if (borders.size() > 1) {
    std::string text = "borders ";
    for (std::size_t i = 0; i < borders.size(); ++i) {
      text += (i == 0 ? "" : " + ") + number_text(borders[i], scale);
    }
    items.push_back(text);
  }
  for (auto entry = openings.rbegin(); entry != openings.rend(); ++entry) {
    items.push_back(counted(entry->second, "opening", "openings") + " of " +
                    number_text(Length::from_ticks(entry->first.first), scale));
  }
  for (auto entry = gaps.rbegin(); entry != gaps.rend(); ++entry) {
    items.push_back(counted(entry->second, "gap", "gaps") + " of " +
                    number_text(Length::from_ticks(entry->first.first), scale));
  }
  items.insert(items.end(), others.begin(), others.end());
  return joined(items);
}

// What the statement's number would have to be for this set of rules to close; nothing where that
// is not a length of at least zero.
std::optional<Length> resolving_value(const Share& share, const Rational& shortfall,
                                      const Scale& scale) {
  if (!share.statement->adjustable || share.multiplier.is_zero()) return std::nullopt;
  const Rational value = Rational(share.statement->value.ticks()) - shortfall / share.multiplier;
  if (value.sign() < 0) return std::nullopt;
  if (share.multiplier.sign() < 0 || (value / Rational(scale.increment.ticks())).is_integer()) {
    const Rational steps = value / Rational(scale.increment.ticks());
    const Rational whole = steps.is_integer() ? steps : steps.floor() + 1;
    return scale.increment * whole.to_int64();
  }
  return scale.increment * (value / Rational(scale.increment.ticks())).floor().to_int64();
}

bool feasible_with(const Model& model, const Statement* changed, Length value) {
  solver::System trial;
  for (int i = 0; i < model.system.variable_count(); ++i) trial.add_variable();
  for (solver::Constraint rule : model.system.constraints()) {
    if (rule.level != level::required) continue;
    if (rule.tag > 0 && &model.statements[rule.tag] == changed) {
      rule.form +=
          solver::Linear(rule.form.constant().sign() <= 0 ? changed->value.ticks() - value.ticks()
                                                          : value.ticks() - changed->value.ticks());
    }
    trial.add(std::move(rule));
  }
  return solver::solve(trial).has_value();
}

std::string suggestion(const Model& model, const std::vector<Share>& shares,
                       const Rational& shortfall, const Scale& scale) {
  std::vector<std::string> ways;
  for (const Share& share : shares) {
    const auto value = resolving_value(share, shortfall, scale);
    if (!value || !feasible_with(model, share.statement, *value)) continue;
    const std::string size = describe(*value, scale);
    const Statement& statement = *share.statement;
    switch (statement.kind) {
      case Statement::Kind::outer:
        ways.push_back("an" + std::string(statement.text.substr(3, statement.text.find(" (") - 3)) +
                       " of " + size);
        break;
      case Statement::Kind::gap:
        ways.push_back("a gap of " + size);
        break;
      case Statement::Kind::border:
        ways.push_back("a" + statement.text.substr(3) + " of " + size);
        break;
      default:
        ways.push_back(size + " in place of " + describe(statement.value, scale) + " in \"" +
                       statement.text + "\"");
    }
  }
  if (ways.empty()) return {};
  return "; " + joined(ways, " or ") + " would fit";
}

const Share* outer_of(const std::vector<Share>& shares) {
  for (const Share& share : shares) {
    if (share.statement->kind == Statement::Kind::outer) return &share;
  }
  return nullptr;
}

bool adds_up(const std::vector<Share>& shares) {
  return std::all_of(shares.begin(), shares.end(), [](const Share& share) {
    return share.statement->kind == Statement::Kind::outer || share.amount.sign() > 0;
  });
}

std::string sum_sentence(const std::vector<Share>& shares, const Rational& shortfall,
                         const Scale& scale) {
  const Share& outer = *outer_of(shares);
  Rational need;
  for (const Share& share : shares) {
    if (share.amount.sign() > 0) need += share.amount;
  }
  return list_needs(shares, scale) + (shortfall.sign() > 0 ? " need " : " come to ") +
         ticks_text(need, scale) + "; " + outer.statement->text + " is " +
         describe(outer.statement->value, scale) + ": " + ticks_text(abs(shortfall), scale) +
         (shortfall.sign() > 0 ? " short" : " too much");
}

std::string list_sentence(const std::vector<Share>& shares, const Rational& shortfall,
                          const Scale& scale) {
  std::vector<std::string> items;
  for (const Share& share : shares) {
    const Statement& statement = *share.statement;
    const bool bare =
        statement.kind == Statement::Kind::outer || statement.kind == Statement::Kind::border;
    items.push_back(statement.text + (bare ? " of " + describe(statement.value, scale) : ""));
  }
  return "these cannot all hold: " + joined(items) + "; they miss by " +
         ticks_text(shortfall, scale);
}

}  // namespace

Problems describe_conflict(const Job& job, const Model& model, const solver::Conflict& conflict) {
  std::vector<Share> shares = shares_of(model, conflict);
  Rational shortfall = conflict.shortfall;
  turn_to_outer(shares, shortfall);
  const bool sums = outer_of(shares) != nullptr && adds_up(shares);
  const std::string what = sums ? sum_sentence(shares, shortfall, job.scale)
                                : list_sentence(shares, abs(shortfall), job.scale);
  Problems problems;
  Problem main{Severity::error,
               "layout-conflict",
               what + suggestion(model, shares, shortfall, job.scale),
               {},
               job.file};
  for (const Share& share : shares) {
    const Place place = share.statement->place;
    if (place.line == 0) continue;
    if (main.place.line == 0) main.place = place;
    problems.push_back({Severity::note, "layout-conflict",
                        "this takes part: " + share.statement->text, place, job.file});
  }
  problems.insert(problems.begin(), main);
  return problems;
}

}  // namespace mullion::layout
