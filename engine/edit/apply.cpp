#include <algorithm>

#include "engine/edit/edit.h"
#include "engine/edit/mentions.h"
#include "engine/edit/names.h"
#include "engine/edit/state.h"
#include "engine/edit/structure.h"
#include "engine/job/read.h"
#include "engine/job/write.h"

namespace mullion::edit {
namespace {

// One edit after the other, each on what the one before left, and the sum of their changes.
class Editing {
 public:
  explicit Editing(const std::string& text) : sum_(text) {}

  Done make(const Edit& edit) {
    return std::visit([this](const auto& one) { return make_one(one); }, edit);
  }

  const Draft& sum() const { return sum_; }

 private:
  Done make_one(const State& edit) {
    return step([&](Draft& draft) { return state(draft, edit); });
  }
  Done make_one(const Add& edit) {
    return step([&](Draft& draft) { return add(draft, edit); });
  }
  Done make_one(const Remove& edit) {
    return step([&](Draft& draft) { return remove(draft, edit); });
  }
  Done make_one(const Copy& edit) {
    return step([&](Draft& draft) { return copy(draft, edit); });
  }
  Done make_one(const Move& edit) {
    return step([&](Draft& draft) { return move(draft, edit); });
  }
  Done make_one(const MakeGroup& edit) {
    return step([&](Draft& draft) { return group(draft, edit); });
  }
  Done make_one(const TurnGroup& edit) {
    return step([&](Draft& draft) { return turn(draft, edit); });
  }
  Done make_one(const Dissolve& edit) {
    return step([&](Draft& draft) { return dissolve(draft, edit); });
  }
  Done make_one(const Arrange& edit) {
    return step([&](Draft& draft) { return arrange(draft, edit); });
  }

  Done make_one(const Change& edit) {
    if (!with_changes(sum_.text(), edit.changes)) {
      return tl::unexpected(refusal("edit-changed-meanwhile",
                                    "the job file is no longer what the edit was made for"));
    }
    take(edit.changes);
    return {};
  }

  Done make_one(const Several& edit) {
    for (const Edit& one : edit.edits) {
      if (const Done done = make(one); !done) return done;
    }
    return {};
  }

  template <class Work>
  Done step(Work work) {
    Draft draft(sum_.text());
    if (const Done done = work(draft); !done) return done;
    tidy_arrangement(draft);
    if (const Done done = follow_names(draft); !done) return done;
    take(draft.changes());
    return {};
  }

  void take(const TextChanges& changes) {
    for (auto it = changes.rbegin(); it != changes.rend(); ++it) {
      sum_.replace({it->offset, it->offset + it->removed.size()}, it->inserted);
    }
  }

  Draft sum_;
};

// A file may have many faults already; those that an edit makes are told from them.
constexpr std::size_t most_faults = 500;

bool is_same_fault(const Problem& a, const Problem& b) {
  return a.code == b.code && a.message == b.message;
}

// What is wrong with the new text alone. Places are left out: nobody has that text.
Problems new_faults(const Problems& before, const Problems& after) {
  Problems out;
  for (const Problem& problem : after) {
    const bool known = std::any_of(before.begin(), before.end(),
                                   [&](const Problem& old) { return is_same_fault(old, problem); });
    if (known) continue;
    out.push_back(problem);
    out.back().place = {};
  }
  return out;
}

bool is_not_xml(const Problem& problem) {
  return problem.code == "job-xml" || problem.code == "job-encoding" ||
         problem.code == "job-doctype" || problem.code == "job-too-deep" ||
         problem.code == "job-too-large" || problem.code == "job-entity" ||
         problem.code == "job-repeated-attribute" || problem.code == "job-repeated-element";
}

}  // namespace

Result<EditedText> apply(const std::string& text, const Edit& edit, const std::string& file) {
  // What goes back may take the arrangement away again.
  Need need = std::holds_alternative<Change>(edit) ? Need::pictures : Need::arrangement;
  Result<Job> before = parse_job(text, file, need, most_faults);
  if (!before && need == Need::arrangement) {
    need = Need::pictures;
    before = parse_job(text, file, need, most_faults);
  }
  const Problems faults = before ? Problems() : before.error();
  // What has no elements to be found cannot be edited.
  if (std::any_of(faults.begin(), faults.end(), is_not_xml)) return tl::unexpected(faults);
  Editing editing(text);
  if (Done done = editing.make(edit); !done) {
    for (Problem& problem : done.error()) problem.file = file;
    return tl::unexpected(done.error());
  }
  EditedText out{editing.sum().text(), editing.sum().changes()};
  const Result<Job> after = parse_job(out.text, file, need, most_faults);
  if (after) return out;
  const Problems made = new_faults(faults, after.error());
  if (!made.empty()) return tl::unexpected(made);
  return out;
}

Edit inverse_of(const EditedText& edited) {
  return Change{inverse(edited.changes)};
}

Result<EditedText> apply_meanwhile(const std::string& base, const Edit& edit,
                                   const std::string& text, const std::string& file) {
  if (base == text) return apply(text, edit, file);
  const Result<EditedText> intended = apply(base, edit, file);
  if (!intended) return intended;
  const auto changes = placed(hunks_of(base, intended->changes), text);
  if (!changes) {
    Problems why = refusal("edit-changed-meanwhile",
                           "the job file was changed meanwhile where this edit belongs; look at "
                           "it and make the edit again");
    why.front().file = file;
    return tl::unexpected(why);
  }
  return apply(text, Change{*changes}, file);
}

}  // namespace mullion::edit
