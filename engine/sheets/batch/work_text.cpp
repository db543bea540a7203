#include "engine/cuts/sheet/plan_lines.h"
#include "engine/cuts/sheet/run_text.h"
#include "engine/sheets/batch/work_order.h"

namespace mullion {

std::string sheets_text(const WorkPart& part, const Locale& locale) {
  const std::string numbers = numbers_text(part.sheets);
  return part.stage == 1
             ? locale.plural(part.sheets.size(), "Sheet %2: cut it into blanks first.",
                             "Sheets %2: cut them into blanks first.", numbers)
             : locale.plural(part.sheets.size(),
                             "Sheet %2, a fallout that was set aside: cut it into blanks first.",
                             "Sheets %2, fallouts that were set aside: cut them into blanks first.",
                             numbers);
}

std::string set_aside_text(const SetAside& fallout, const Locale& locale) {
  return locale.say("%1, %2, mat %3, opening %4: sheet %5", fallout.order, fallout.layer,
                    fallout.copy, fallout.opening, fallout.sheet);
}

std::string work_to_text(const std::vector<WorkPart>& work) {
  TextLines out;
  for (std::size_t i = 0; i < work.size(); ++i) {
    const WorkPart& part = work[i];
    if (i > 0) out.line("");
    if (work.size() > 1) {
      out.line("PART " + std::to_string(i + 1) + " of " + std::to_string(work.size()));
    }
    out.wrapped("  [ ] ", sheets_text(part, {}));
    if (!part.run.kinds.empty()) write_run(out, part.run);
    if (part.set_aside.empty()) continue;
    out.line("");
    out.line("SET ASIDE when these mats are finished; until then the fallouts stay in");
    for (const SetAside& fallout : part.set_aside) {
      out.wrapped("  [ ] ", set_aside_text(fallout, {}));
    }
  }
  return out.take();
}

}  // namespace mullion
