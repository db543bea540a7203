#include <algorithm>

#include "engine/job/parts.h"
#include "engine/job/read.h"

namespace mullion {
namespace {

struct Increment {
  Length length;
  const char* text;
};

// What a rule is read off to.
const Increment increments[] = {
    {sixty_fourths(4), "1/16 in"}, {sixty_fourths(2), "1/32 in"},
    {sixty_fourths(1), "1/64 in"}, {Length::from_ticks(ticks_per_mm / 2), "0.5 mm"},
    {millimetres(1), "1 mm"},
};

void read_increment(Element& element, Scale& scale) {
  scale.increment = usual_for(scale.unit).increment;
  const auto length = element.length("increment", Least::above_zero);
  if (!length) return;
  for (const Increment& known : increments) {
    if (*length == known.length) {
      scale.increment = *length;
      return;
    }
  }
  element.unexpected("increment", "job-bad-increment", "1/16 in, 1/32 in, 1/64 in, 0.5 mm or 1 mm");
}

bool read_version(Element& element) {
  const auto version = element.required("version", "\"1\"");
  if (!version || *version == "1") return true;
  element.unexpected("version", "job-version", "\"1\", the only version that this program reads");
  return false;
}

}  // namespace

bool read_head(Element& element, Job& job) {
  // How an XML editor is told of the schema (XML Schema Part 1, 2.6).
  element.has("xmlns:xsi");
  element.has("xsi:noNamespaceSchemaLocation");
  const bool known_version = read_version(element);
  job.reference = element.line("reference");
  job.revision = element.integer("revision", 1, most_revisions, 1);
  job.quantity = element.integer("quantity", 1, most_copies, 1);
  job.date = element.line("date");
  if (element.has("date") && !is_date(job.date)) {
    element.unexpected("date", "job-bad-date", "a day as year-month-day, such as 2026-03-02");
  }
  element.required("unit", "\"in\", \"mm\" or \"cm\"");
  job.scale.unit = element.word<Unit>(
      "unit", {{"in", Unit::inch}, {"mm", Unit::millimetre}, {"cm", Unit::centimetre}}, Unit::inch);
  element.reading().scale.unit = job.scale.unit;
  read_increment(element, job.scale);
  element.reading().scale = job.scale;
  return known_version;
}

}  // namespace mullion
