#include "engine/cuts/refusal.h"

#include "engine/mat/findings.h"

namespace mullion {
namespace {

using Why = Refusal::Why;

const char* code_of(Why why) {
  switch (why) {
    case Why::no_layer:
      return "cutter-no-layer";
    case Why::trim:
      return "cutter-trim";
    case Why::board_too_wide:
      return "cutter-board-too-wide";
    case Why::cut_too_long:
      return "cutter-cut-too-long";
    case Why::beyond_rail:
      return "cutter-beyond-rail";
    case Why::board_too_thick:
      return "cutter-board-too-thick";
    case Why::cut_too_deep:
      return "cutter-cut-too-deep";
    case Why::groove:
      return "cutter-groove";
  }
  return "";
}

std::string message_of(const Refusal& refusal, const Cuts& cuts) {
  const auto text = [&](Length length) { return format_exact(length, cuts.cutter.scale.unit); };
  const std::string cutter = "the cutter \"" + cuts.cutter.id + "\" ";
  const std::string layer = "layer " + std::to_string(refusal.layer);
  switch (refusal.why) {
    case Why::no_layer:
      return "the mat has no layer to cut";
    case Why::trim:
      if (refusal.openings.empty()) return "the trim of the under-mats leaves no blank";
      return "a trim of " + text(refusal.found) + " on each side cuts into the window of opening " +
             std::to_string(refusal.openings.front()) + " in " + layer + "; expected less than " +
             text(refusal.limit);
    case Why::board_too_wide:
      return "the mat is " + text(refusal.found) + " across the rail; " + cutter + "takes " +
             text(refusal.limit);
    case Why::cut_too_long:
      return layer + " needs a cut of " + text(refusal.found) + ", over-cuts included; " + cutter +
             "cuts at most " + text(refusal.limit);
    case Why::beyond_rail:
      return layer + " needs a cut that lies " + text(refusal.found) +
             " from the squaring arm, over-cut included; " + cutter + "reaches " +
             text(refusal.limit);
    case Why::board_too_thick:
      return layer + " is " + text(refusal.found) + " thick; under the rail of " + cutter +
             "goes board of " + text(refusal.limit);
    case Why::cut_too_deep:
      return layer + " is " + text(refusal.found) + " thick; " + cutter + "bevels board of " +
             text(refusal.limit) + " at 45 degrees at most";
    case Why::groove:
      return "the panel of a V-groove cannot be cut: " + refusal.detail;
  }
  return "";
}

void add_finding(Findings& f, const Refusal& refusal, const Cuts& cuts) {
  const std::string& cutter = cuts.cutter.id;
  const auto layer = [&] {
    return f.name(f.mat.layers[static_cast<std::size_t>(refusal.layer) - 1]);
  };
  const auto exact = [&](Length length) { return f.locale.described(length, f.job.scale); };
  switch (refusal.why) {
    case Why::no_layer:
      return;  // a job has a layer
    case Why::trim:
      f.add("check-cutter-trim",
            refusal.openings.empty()
                ? f.say("the trim of the under-mats leaves no blank")
                : f.say("the trim of %1 on each side of %2, taped behind, cuts into the window of "
                        "%3, %4 from the edge",
                        f.text(refusal.found), layer(), f.name(refusal.openings.front()),
                        f.text(refusal.limit)),
            refusal.place);
      return;
    case Why::board_too_wide:
      f.add("check-cutter-wide",
            f.say("the board is %1 across the rail; the cutter \"%2\" takes %3",
                  f.text(refusal.found), cutter, f.text(refusal.limit)),
            f.job.outer_place);
      return;
    case Why::cut_too_long:
      f.add("check-cutter-long",
            f.say("%1 needs a cut of %2, over-cuts included; the cutter \"%3\" cuts at most %4",
                  layer(), f.text(refusal.found), cutter, f.text(refusal.limit)),
            f.job.outer_place);
      return;
    case Why::beyond_rail:
      f.add(
          "check-cutter-reach",
          f.say("%1 needs a cut that lies %2 from the squaring arm, over-cut included; the cutter "
                "\"%3\" reaches %4",
                layer(), f.text(refusal.found), cutter, f.text(refusal.limit)),
          f.job.outer_place);
      return;
    case Why::board_too_thick:
      f.add("check-cutter-thick",
            f.say("%1 is %2 thick; under the rail of the cutter \"%3\" goes board of %4", layer(),
                  exact(refusal.found), cutter, exact(refusal.limit)),
            refusal.place);
      return;
    case Why::cut_too_deep:
      f.add("check-cutter-deep",
            f.say("%1 is %2 thick; the cutter \"%3\" bevels board of %4 at 45 degrees at most",
                  layer(), exact(refusal.found), cutter, exact(refusal.limit)),
            refusal.place);
      return;
    case Why::groove:
      f.add("check-cutter-groove",
            f.say("the panel of a V-groove cannot be cut: %1", f.say(refusal.detail.c_str())),
            refusal.place);
      return;
  }
}

}  // namespace

Problem problem_of(const Refusal& refusal, const Cuts& cuts) {
  return {Severity::error, code_of(refusal.why), message_of(refusal, cuts), {}, {}};
}

Problems problems_of(const Cuts& cuts) {
  Problems out;
  for (const Refusal& refusal : cuts.refusals) out.push_back(problem_of(refusal, cuts));
  return out;
}

Problems check_on_cutter(const Job& job, const Layout& layout, const Cuts& cuts,
                         const Locale& locale) {
  Findings findings(job, layout, *cuts.mat, locale);
  for (const Refusal& refusal : cuts.refusals) add_finding(findings, refusal, cuts);
  return findings.take();
}

}  // namespace mullion
