#pragma once

// Suggests collages: given pictures alone, and a frame, a list of stock sizes or nothing, finds
// arrangements with equal gaps and balanced borders and gives the best that look different.
//
// Up to six pictures every slicing arrangement is looked at; up to 24 a beam search with several
// tastes is used. The result does not depend on the number of threads.

#include <string>
#include <vector>

#include "engine/suggest/criteria.h"

namespace mullion::suggest {

struct Wishes {
  std::size_t count = 6;
  Length gap = inches(1);
  Length border = inches(2);  // the least one
  std::vector<Board> stock;   // sizes to choose from, either way round; empty: any size
  int threads = 2;
};

struct Suggestion {
  Block block;
  Board board;
  Criteria criteria;
  double score = 0;
  Job job;  // the whole job, arranged
};

struct Suggestions {
  std::vector<Suggestion> best;  // by falling score
  std::uint64_t looked_at = 0;   // arrangements
  bool every_one = false;
};

// The job's outer size or frame, where it has one, is the board; its arrangement is not looked at.
// Problems: no pictures, more than 24, or nothing that fits.
Result<Suggestions> suggest_collages(const Job& job, const Wishes& wishes);

}  // namespace mullion::suggest
