#pragma once

// Random edits of a job, and what each of them makes of the job in memory.

#include <functional>
#include <random>

#include "engine/edit/edit.h"
#include "tests/engine/edit/model.h"

namespace test {

struct RandomEdit {
  mullion::edit::Edit edit;
  std::function<bool(Model&)> in_memory;  // false: it has to be refused
  bool takes_out = false;                 // comments may go with parts
  std::string kind = {};                  // empty: as the edit's JSON says
};

RandomEdit random_edit(std::mt19937& random, const mullion::Job& job);

}  // namespace test
