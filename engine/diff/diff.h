#pragma once

// What changed from one version of a job to the next, in a framer's words: "the bottom border grew
// from 3 in to 3 1/2 in".
//
// Jobs are compared by what comes of them (sizes, borders, places of openings) and by what they
// state (boards, pictures, frame, words). Lengths are written in the later job's unit. Openings,
// pictures and layers that are in both are found by their ids and, for layers, by their place.

#include <string>
#include <vector>

#include "engine/layout/layout.h"
#include "engine/locale/locale.h"

namespace mullion {

struct Version {
  const Job& job;
  const Layout& layout;
};

// Sentences without a full stop, in the order in which a framer looks; none where all is the same.
std::vector<std::string> differences(const Version& before, const Version& after,
                                     const Locale& locale = {});

// Of these sentences only what sizes and boards do not tell: shapes, grooves, and what is done with
// the pictures.
std::vector<std::string> differences_in_look(const Job& before, const Job& after,
                                             const Locale& locale = {});

}  // namespace mullion
