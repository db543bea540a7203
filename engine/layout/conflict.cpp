#include "engine/layout/conflict.h"

#include <algorithm>
#include <map>
#include <optional>

#include "engine/layout/changed_statement.h"
#include "engine/layout/faults.h"
#include "engine/layout/layout.h"
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

std::string borders_text(const std::vector<Length>& borders, const Scale& scale,
                         const Locale& locale) {
  std::string sum;
  for (const Length border : borders) {
    sum += (sum.empty() ? "" : " + ") + locale.described_number(border, scale);
  }
  return borders.size() == 1 ? locale.say("a border of %1", sum) : locale.say("borders %1", sum);
}

std::string list_needs(const Job& job, const std::vector<Share>& shares, const Locale& locale) {
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
      others.push_back(is_limit(statement) ? counted_limit(count, statement, scale, locale)
                                           : text_of(statement, job, locale));
    }
  }
  std::vector<std::string> items;
  if (!borders.empty()) items.push_back(borders_text(borders, scale, locale));
  for (const auto& [size, count] : openings) {
    items.push_back(counted_openings(count, locale.described_number(size, scale), locale));
  }
  for (const auto& [size, count] : gaps) {
    items.push_back(counted_gaps(count, locale.described_number(size, scale), locale));
  }
  items.insert(items.end(), others.begin(), others.end());
  return locale.all_of(items);
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
                         const Rational& shortfall, const Locale& locale) {
  const Scale& scale = job.scale;
  const Share& outer = *outer_of(shares);
  const auto ticks = [&](const Rational& value) { return ticks_text(value, scale, locale); };
  const std::string needs = list_needs(job, shares, locale);
  const std::string need = ticks(Rational(outer.statement->value.ticks()) + shortfall);
  const std::string what = text_of(*outer.statement, job, locale);
  const std::string has = locale.described(outer.statement->value, scale);
  const std::string off = ticks(abs(shortfall));
  const int parts = static_cast<int>(shares.size()) - 1;
  const bool is_one = parts == 1 && *shares[&outer == &shares[0] ? 1 : 0].count() == 1;
  if (shortfall.sign() > 0) {
    return is_one ? locale.say("%1 needs %2; %3 is %4: %5 short", needs, need, what, has, off)
                  : locale.say("%1 need %2; %3 is %4: %5 short", needs, need, what, has, off);
  }
  return is_one ? locale.say("%1 comes to %2; %3 is %4: %5 too much", needs, need, what, has, off)
                : locale.say("%1 come to %2; %3 is %4: %5 too much", needs, need, what, has, off);
}

std::string listed(const Job& job, const Share& share, const Locale& locale) {
  const Statement& statement = *share.statement;
  if (is_limit(statement)) {
    return counted_limit(share.count().value_or(1), statement, job.scale, locale);
  }
  const std::string text = text_of(statement, job, locale);
  const bool is_named_alone = share.is_outer() || statement.kind == Statement::Kind::border;
  if (!is_named_alone) return text;
  return locale.say_in("sum", "%1 of %2", text, locale.described(statement.value, job.scale));
}

std::string list_sentence(const Job& job, const std::vector<Share>& shares,
                          const Rational& shortfall, const Locale& locale) {
  const Scale& scale = job.scale;
  std::vector<std::string> items;
  std::map<Length, int, std::greater<>> gaps;  // how many of a size
  for (const Share& share : shares) {
    if (share.statement->kind == Statement::Kind::gap) {
      gaps[share.statement->value] += share.count().value_or(1);
    } else {
      items.push_back(listed(job, share, locale));
    }
  }
  for (const auto& [size, count] : gaps) {
    items.push_back(counted_gaps(count, locale.described(size, scale), locale));
  }
  return locale.say("these cannot all hold: %1; they miss by %2", locale.all_of(items),
                    ticks_text(abs(shortfall), scale, locale));
}

void free_gaps(Node& node) {
  auto* group = std::get_if<Group>(&node.what);
  if (group == nullptr) return;
  group->gap.reset();
  for (Gap& gap : group->gaps) gap.size.reset();
  for (Node& child : group->children) free_gaps(child);
}

// What would settle a conflict; `fits`: all else holds then.
struct Proposal {
  std::vector<Remedy> ways;
  bool fits = false;
};

struct Found {
  RequiredRules linked;
  solver::Conflict conflict;
  std::vector<Share> shares;
  Proposal proposal;
};

Proposal proposal_for(const Job& job, const Model& model, const RequiredRules& linked,
                      const std::vector<Share>& shares, const solver::Conflict& conflict) {
  std::vector<int> tags;
  for (const Share& share : shares) tags.push_back(share.tag);
  std::vector<Remedy> ways = ways_out(job, model, linked, tags);
  if (!ways.empty()) return {std::move(ways), true};
  return {ways_out(job, model, parts_of(conflict, linked), tags), false};
}

std::string with_proposal(const std::string& sentence, const Proposal& proposal, const Job& job,
                          const Model& model, const Locale& locale) {
  if (proposal.ways.empty()) return sentence;
  std::vector<std::string> texts;
  for (const Remedy& way : proposal.ways) texts.push_back(text_of(way, model, job, locale));
  const std::string ways = locale.one_of(texts);
  return proposal.fits ? locale.say("%1; %2 would fit", sentence, ways)
                       : locale.say("%1; %2 would settle this, but other numbers do not fit either",
                                    sentence, ways);
}

Problems describe(const Job& job, const Model& model, const Found& found,
                  const std::string& nearest, const Locale& locale) {
  std::vector<Share> shares = found.shares;
  const Rational scale = scale_of(shares), shortfall = found.conflict.shortfall * scale;
  for (Share& share : shares) {
    share.amount *= scale;
    share.multiplier *= scale;
  }
  const std::string what = adds_up(shares) ? sum_sentence(job, shares, shortfall, locale)
                                           : list_sentence(job, shares, shortfall, locale);
  const std::string advice = with_proposal(what, found.proposal, job, model, locale);
  Problem main{Severity::error,
               "layout-conflict",
               nearest.empty() ? advice : locale.say("%1; %2", advice, nearest),
               {},
               job.file};
  Problems problems;
  for (const Share& share : shares) {
    const Place place = share.statement->place;
    if (place.line == 0) continue;
    if (main.place.line == 0) main.place = place;
    problems.push_back({Severity::note, "layout-conflict",
                        locale.say("this takes part: %1", text_of(*share.statement, job, locale)),
                        place, job.file});
  }
  problems.insert(problems.begin(), main);
  return problems;
}

// Calls `told` with each conflict among other statements, and the rules that are linked to it.
template <class Told>
void for_each_conflict(const Model& model, const solver::Conflict& conflict, const Told& told) {
  const RequiredRules all = required_rules(model);
  RequiredRules left = all;
  solver::Conflict next = conflict;
  for (int count = 0; count < most_told; ++count) {
    const RequiredRules linked = linked_to(next, all);
    told(linked, next);
    left = without_statements_of(next, linked, left);
    auto other = solver::solve(left.system);
    if (other) break;
    next = renumbered(std::move(other.error()), left);
  }
}

Job with_free_outer_size(Job job) {
  job.outer_width.reset();
  job.outer_height.reset();
  job.frame.reset();
  return job;
}

Job with_all_free(Job job) {
  job = with_free_outer_size(std::move(job));
  job.rules.clear();
  job.borders = {};
  job.least_bar.reset();
  free_gaps(job.arrangement);
  return job;
}

// Whether a job can be laid out, and its checks find no error that even its pictures and openings
// alone have.
class Passing {
 public:
  explicit Passing(const Job& job) : of_itself_(faults_of(with_all_free(job)).value_or(Faults())) {}

  bool operator()(const Job& job) const {
    const auto faults = faults_of(job);
    return faults &&
           std::includes(of_itself_.begin(), of_itself_.end(), faults->begin(), faults->end());
  }

 private:
  using Faults = std::set<Fault>;
  Faults of_itself_;
};

// Followed by a framer, do the ways pass? Each is looked at with the first ways of the other
// conflicts, by laying out the job and asking every check.
class Verification {
 public:
  Verification(const Job& job, const Model& model, const Passing& passes, std::vector<Found>& found)
      : job_(job), model_(model), passes_(passes), found_(found) {}

  // Leaves in each conflict the ways that pass, with a number a little farther off where only that
  // one does. False where none passes for some conflict.
  bool run() {
    if (!find_first()) return false;
    for (std::size_t c = 0; c < found_.size(); ++c) keep_those_that_pass(c);
    return true;
  }

 private:
  Job changed(std::size_t conflict, const Remedy& way) const {
    Job out = job_;
    for (std::size_t c = 0; c < found_.size(); ++c) {
      apply(c == conflict ? way : found_[c].proposal.ways.front(), out);
    }
    return out;
  }

  void apply(const Remedy& way, Job& to) const {
    for (const int tag : way.tags) {
      change(to, model_.statements[static_cast<std::size_t>(tag)], way.number);
    }
  }

  // Ways that pass together, to the front: each conflict's in turn, the others' as they are.
  bool find_first() {
    for (const Found& one : found_) {
      if (!one.proposal.fits || one.proposal.ways.empty()) return false;
    }
    for (std::size_t c = 0; c < found_.size(); ++c) {
      std::vector<Remedy>& ways = found_[c].proposal.ways;
      for (std::size_t i = 0; i < ways.size(); ++i) {
        const auto good = passing(c, ways[i]);
        if (!good) continue;
        ways[i] = *good;
        std::rotate(ways.begin(), ways.begin() + static_cast<std::ptrdiff_t>(i),
                    ways.begin() + static_cast<std::ptrdiff_t>(i) + 1);
        return true;
      }
    }
    return false;
  }

  void keep_those_that_pass(std::size_t c) {
    std::vector<Remedy> kept;
    for (const Remedy& way : found_[c].proposal.ways) {
      if (const auto good = passing(c, way)) kept.push_back(*good);
    }
    const auto place = [&](const Remedy& way) {
      return model_.statements[static_cast<std::size_t>(way.tags.front())].kind;
    };
    std::stable_partition(kept.begin(), kept.end(), [&](const Remedy& way) {
      return place(way) == Statement::Kind::outer || place(way) == Statement::Kind::frame;
    });
    found_[c].proposal.ways = std::move(kept);
  }

  std::optional<Remedy> passing(std::size_t conflict, const Remedy& way) const {
    if (passes_(changed(conflict, way))) return way;
    if (!way.number) return std::nullopt;
    const Length stated = model_.statements[static_cast<std::size_t>(way.tags.front())].value;
    const Length step = *way.number < stated ? -job_.scale.increment : job_.scale.increment;
    constexpr std::int64_t farthest = 128;
    const auto farther = [&](std::int64_t steps) {
      Remedy out = way;
      out.number = *way.number + step * steps;
      return out;
    };
    const auto passes = [&](std::int64_t steps) {
      const Remedy one = farther(steps);
      return *one.number > Length() && passes_(changed(conflict, one));
    };
    for (std::int64_t good = 1; good <= farthest; good *= 2) {
      if (!passes(good)) continue;
      std::int64_t bad = good / 2;
      while (good - bad > 1) {
        const std::int64_t middle = (good + bad) / 2;
        (passes(middle) ? good : bad) = middle;
      }
      return farther(good);
    }
    return std::nullopt;
  }

  const Job& job_;
  const Model& model_;
  const Passing& passes_;
  std::vector<Found>& found_;
};

// The nearest job that passes where no single numbers do: the outer size left free, then borders,
// gaps and rules too. Empty where none of them passes.
std::string nearest_job(const Job& job, const Passing& passes, const Locale& locale) {
  const auto told = [&](const Job& freed, const char* message) -> std::string {
    if (!passes(freed)) return {};
    const Layout layout = *laid_out(freed);
    const auto size = [&](Length side) { return locale.described(side, job.scale); };
    return locale.say(message, size(layout.width), size(layout.height));
  };
  Job freed = with_free_outer_size(job);
  std::string out = told(freed, mark("an outer size of %1 x %2 passes, all else as it is"));
  if (!out.empty()) return out;
  freed.rules.clear();
  out = told(freed, mark("without the rules an outer size of %1 x %2 passes"));
  if (!out.empty()) return out;
  return told(
      with_all_free(job),
      mark(
          "with borders and gaps left free and without the rules an outer size of %1 x %2 passes"));
}

struct Told {
  std::vector<Found> conflicts;
  std::string nearest;  // the job that passes where no ways do
};

Told verified_conflicts(const Job& job, const Model& model, const solver::Conflict& conflict,
                        const Locale& locale) {
  Told out;
  for_each_conflict(model, conflict, [&](const RequiredRules& linked, const auto& one) {
    const std::vector<Share> shares = shares_of(model, one);
    out.conflicts.push_back({linked, one, shares, proposal_for(job, model, linked, shares, one)});
  });
  const Passing passes(job);
  if (!Verification(job, model, passes, out.conflicts).run()) {
    out.nearest = nearest_job(job, passes, locale);
    for (Found& found : out.conflicts) found.proposal.fits = false;
  }
  return out;
}

}  // namespace

Problems describe_conflict(const Job& job, const Model& model, const solver::Conflict& conflict,
                           const Locale& locale) {
  const Told told = verified_conflicts(job, model, conflict, locale);
  Problems problems;
  for (const Found& found : told.conflicts) {
    const Problems more = describe(job, model, found, told.nearest, locale);
    problems.insert(problems.end(), more.begin(), more.end());
  }
  return problems;
}

std::vector<ToldConflict> conflicts_of(const Job& job, const Model& model,
                                       const solver::Conflict& conflict, const Locale& locale) {
  const auto stated = [&](int tag) { return model.statements[static_cast<std::size_t>(tag)]; };
  std::vector<ToldConflict> out;
  for (const Found& found : verified_conflicts(job, model, conflict, locale).conflicts) {
    ToldConflict& told = out.emplace_back();
    for (const Share& share : found.shares) told.parts.push_back(*share.statement);
    for (const Remedy& remedy : found.proposal.ways) {
      Way& way =
          told.ways.emplace_back(Way{{}, remedy.number, text_of(remedy, model, job, locale)});
      for (const int tag : remedy.tags) way.what.push_back(stated(tag));
    }
  }
  return out;
}

}  // namespace mullion::layout
