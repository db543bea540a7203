#pragma once

// A job edited in memory, written anew for the tests: what the file says after an edit of its text
// is compared with this. It knows nothing of the text.

#include <set>
#include <string>
#include <vector>

#include "engine/edit/edit.h"
#include "engine/job/job.h"

namespace test {

// From the outermost part: indices of children.
using Path = std::vector<std::size_t>;

mullion::Node& node_at(mullion::Job& job, const Path& path);
std::vector<Path> paths_of(const mullion::Job& job);  // every part, the outermost first
std::string name_of(const Path& path);                // "arrange.1.2"

class Model {
 public:
  explicit Model(mullion::Job before);

  mullion::Job& job() { return job_; }

  void remove_part(const Path& path);
  void move_part(const Path& path, mullion::edit::Position::Where where, const Path& to);
  void add_part(mullion::Node part, mullion::edit::Position::Where where, const Path& to);
  void group(mullion::Along along, const Path& first, std::size_t count);
  void turn(const Path& path);
  void dissolve(const Path& path);

  // That the opening has a name of its own from now on.
  void name_opening(int mark) { named_.insert(mark); }

  // Brings mentions to the names that parts and layers have now. False where a layer would be left
  // without an opening.
  bool finish();

 private:
  static bool is_line(const mullion::Group& group);  // with gaps between its parts
  mullion::Node cut(const Path& path);
  void put(mullion::Node part, mullion::edit::Position::Where where, int target);
  void mark(mullion::Node& node);

  mullion::Job before_, job_;
  std::set<int> named_;
  int marks_ = 0;  // every part, gap, layer and picture is known by a mark in its place
};

// What two jobs that say the same are both written as: groups of one part, and names and gaps that
// nobody sees, do not tell them apart.
std::string said(mullion::Job job);

}  // namespace test
