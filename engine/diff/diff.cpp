#include "engine/diff/diff.h"

#include "engine/diff/parts.h"

namespace mullion {

std::vector<std::string> differences(const Version& before, const Version& after,
                                     const Locale& locale) {
  diff::Changes changes(after.job.scale, locale);
  diff::compare_words(changes, before.job, after.job);
  diff::compare_sizes(changes, before.layout, after.layout);
  diff::compare_openings(changes, before, after);
  diff::compare_shapes(changes, before.job, after.job);
  diff::compare_layers(changes, before.job, after.job);
  diff::compare_pictures(changes, before.job, after.job);
  diff::compare_frame(changes, before.job, after.job);
  return changes.take();
}

std::vector<std::string> differences_in_look(const Job& before, const Job& after,
                                             const Locale& locale) {
  diff::Changes changes(after.scale, locale);
  diff::compare_shapes(changes, before, after);
  diff::compare_pictures(changes, before, after);
  return changes.take();
}

}  // namespace mullion
