#include "cli/verbs/label_sheet.h"

namespace mullion::cli {

void add_label_sheet_options(const Verb& verb, LabelSheetWords& words) {
  std::vector<std::string> names;
  for (const LabelSheet& sheet : label_sheets()) names.emplace_back(sheet.name);
  verb.option("--label-sheet", Takes::word, words.sheet, "The sheet of labels to print on")
      .among(names);
  verb.option("--skip-labels", words.skip, "Labels of the first sheet that are gone already")
      .between(0, 1000);
}

const LabelSheet& label_sheet(const LabelSheetWords& words, Unit unit) {
  const std::string usual = unit == Unit::inch ? "letter-30" : "a4-24";
  return *find_label_sheet(words.sheet.empty() ? usual : words.sheet);
}

}  // namespace mullion::cli
