#pragma once

// Suggests collages: given pictures alone, and a frame, a list of stock sizes or nothing, finds
// arrangements whose rows, columns and borders are even, and gives the best of each composition
// (composition.h), then others that are different.
//
// Up to six pictures every slicing arrangement is looked at (every_arrangement.h). Up to 48 those
// are that a beam search with several tastes finds (growing.h), lines of nearly equal length and
// others around a larger picture (lines.h), and symmetric patterns (patterns.h); on a given board
// also some that are sure to fit (fitting.h). The best of them are then improved (improving.h) and
// hung with gaps that make them flush (hanging.h). Pictures of a
// group stay together and those with an order keep their sequence (bonds.h). What is good is in
// criteria.h, what is different in difference.h. The result does not depend on the number of
// threads.

#include "engine/suggest/composition.h"
#include "engine/suggest/search.h"

namespace mullion::suggest {

// Between neighbours: 1 in, in metric jobs 25 mm. Common practice, no source.
Length usual_gap(Unit unit);

struct Wishes {
  std::size_t count = 6;
  Length gap = inches(1);        // at least the job's least bar
  Length border = inches(2);     // the least one
  std::vector<Board> stock;      // sizes to choose from, either way round; empty: any size
  int threads = 2;               // 1 to 8
  Progress* progress = nullptr;  // is kept up to date where there is one
};

struct Suggestion {
  Ranked ranked;
  Job job;  // the whole job, arranged
  Composition composition = Composition::collage;
  Length least_gap, widest_gap;  // stated ones; nothing for a single picture
};

struct Suggestions {
  std::vector<Suggestion> best;  // by falling score
  std::uint64_t looked_at = 0;   // arrangements
  bool every_one = false;
};

// The job's outer size or frame, where it has one, is the board; its arrangement and rules are not
// looked at, and of its borders only how the bottom is weighted.
// Problems: no pictures, more than 48, a group that the sequence tears apart, or nothing that fits:
// proved for every arrangement of rows and columns, or none found among so many; then what would.
Result<Suggestions> suggest_collages(const Job& job, const Wishes& wishes);

// Notes on what the job states and no suggestion keeps: borders, of which the least alone is asked
// for, and rules, which speak of another arrangement.
Problems left_aside(const Job& job, const Wishes& wishes);

}  // namespace mullion::suggest
