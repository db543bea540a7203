#pragma once

// Whether a job passes: it can be laid out, its mat can be built, and what errors its checks find.
// A conflict asks this of what it proposes; it is answered in engine/mat/sound.cpp, since the
// layout knows nothing of mats.

#include <optional>
#include <set>
#include <string>
#include <tuple>

#include "engine/job/job.h"

namespace mullion {

// An error by its code and its place in the job file.
using Fault = std::tuple<std::string, int, int>;

// Nothing where the job cannot be laid out or its mat cannot be built.
std::optional<std::set<Fault>> faults_of(const Job& job);

}  // namespace mullion
