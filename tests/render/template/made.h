#pragma once

// Templates made by the program, and the mats they have to show.

#include <string>
#include <vector>

#include "engine/cuts/cuts.h"

namespace made {

// The job files of the gallery, and of the tests' data where shapes and odd sizes are.
std::vector<std::string> all_jobs();

// A few of them that differ much: for checks that take long.
std::vector<std::string> some_jobs();

// What the engine lays out. Throws std::runtime_error where it cannot.
mullion::Mat mat_of(const std::string& job);

// Runs `mullion template` on a job with these further words; returns the written file's path.
std::string template_of(const std::string& job, const std::string& output,
                        const std::vector<std::string>& words = {});

}  // namespace made
