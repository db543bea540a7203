#pragma once

// What the verbs find, as JSON for other programs.
//
// Every document is one object that begins with "format" ("mullion check 1": the verb and the
// version of its shape; "usage" where there is no verb), "status" (the program's exit status) and
// "problems", an array of {severity, code, message, file, line, column}, where file, line and
// column are null if there are none. A document of a run that failed holds these three alone. Names
// are in lower case with underscores. A length is {"text": "8 1/2 in", "ticks": 345440}: exact, in
// the job's unit; a tick is 1/40640 in. Money is {"text": "12.50 EUR", "units": 1250}, in the
// currency's smallest unit. Bytes that are no UTF-8 become U+FFFD. New names may be added to a
// shape; what is there keeps its meaning as long as its number stays.

#include <string>
#include <string_view>

#include "engine/cuts/cutter/check.h"
#include "engine/edit/assignment.h"
#include "engine/mat/mat.h"
#include "engine/shop/estimate.h"
#include "engine/shop/printer_profile.h"
#include "engine/shop/stock_sizes.h"
#include "engine/suggest/suggest.h"
#include "engine/xml/explanation.h"

namespace mullion {

struct CuttingPlan;
struct CuttingRun;
struct LedgerLine;
struct SheetReport;
struct Stock;

struct Outcome {
  int status = 0;
  Problems problems;
};

// For any verb: the three names that every document has.
std::string outcome_json(std::string_view verb, const Outcome& outcome);

// job {file, reference, title, unit, increment}, on_increment ("as it was"; "nearest", which is
// proved; or "near"), width, height, borders {left, top, right, bottom},
// openings [{number, id, left, top, width, height}], layers [{number, name, board, thickness}].
// Openings as in Layout: the top mat's cut line, from the upper left corner seen from the front.
// Every layer's windows, with the box of their back and face edges, and every picture's place and
// what is seen of it, from the mat's upper left corner seen from the front.
std::string check_json(const Job& job, const Layout& layout, const Mat& mat,
                       const Outcome& outcome);

// least_borders, frames [{width, height, borders}].
std::string frames_json(const std::vector<FrameFit>& fits, const Sides& least, const Job& job);

// arrangements_looked_at, every_one, suggestions [{number, width, height, score, criteria}]; scores
// and criteria from 0 to 1.
std::string suggestions_json(const suggest::Suggestions& found, Unit unit,
                             const Outcome& outcome = {});

// currency {code, decimals}, lines [{kind, what, price}], total; with costs also how and cost in
// each line, cost and cost_known.
std::string estimate_json(const price::Estimate& estimate, bool with_costs);

// plan: the document that the verb writes to a .json file.
std::string cuts_json(const CuttingPlan& plan, const Outcome& outcome);
std::string cuts_json(const CuttingRun& run, const Outcome& outcome);
std::string sheets_json(const SheetReport& report, const Outcome& outcome);

// pieces [{id, kind, board, width, height, onHand}], onHand null of a sheet that is not counted;
// acts: lines of the ledger (engine/sheets/inventory/ledger.h).
std::string rack_json(std::string_view verb, const Stock& stock,
                      const std::vector<LedgerLine>& acts, const Outcome& outcome);

// codes [{code, severity, summary, reason, advice}].
std::string explanations_json(const std::vector<Explanation>& entries);

// What `watch` tells its page, on one line and without the three names: version (how many saves),
// job, problems (in the words of the terminal), failed (labels), outputs [{label, name}].
struct WatchState {
  struct Output {
    std::string label, name;
  };
  int version = 0;
  std::string job, problems;
  std::vector<std::string> failed;
  std::vector<Output> outputs;
};
std::string watch_json(const WatchState& state);

// changes [sentence].
std::string changes_json(const std::vector<std::string>& sentences);

// changes [{line, before [line], after [line]}]; line counts in the text after.
std::string changed_lines_json(const std::vector<edit::ChangedLines>& changes);

// name, unit, across, down, measured {across, down, falling, rising}, scale_across, scale_down
// (printed over true), skew (cosine of the angle between the axes).
std::string printer_json(const PrinterProfile& profile);

// The profile, in the words of cutter.xsd.
std::string cutter_json(std::string_view verb, const CutterProfile& cutter);

// test_cut {scrap, thickness, guide, near_stop, far_stop}: what the scales are set to.
std::string test_cut_json(const CutterProfile& cutter, Length thickness);

// corrections [{what, was, becomes, reason}] and the corrected cutter.
std::string corrections_json(const MeasuredUp& measured);

}  // namespace mullion
