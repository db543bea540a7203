#include "engine/cuts/cutter/check.h"

#include <algorithm>

namespace mullion {
namespace {

// Further off than this is a slip of the rule or a wrong setting, not an error of a scale.
constexpr Length largest_error = inches(1);

Length round_figure(Length least, Length most, Length wanted) {
  return std::clamp(wanted, least, most);
}

void set_over_cut(CutterProfile& cutter, const OverCut& entry) {
  auto at = std::find_if(cutter.over_cuts.begin(), cutter.over_cuts.end(),
                         [&](const OverCut& o) { return o.thickness >= entry.thickness; });
  if (at != cutter.over_cuts.end() && at->thickness == entry.thickness) {
    *at = entry;
  } else {
    cutter.over_cuts.insert(at, entry);
  }
}

class MeasuringUp {
 public:
  MeasuringUp(const CutterProfile& cutter, const TestMeasures& measures)
      : measures_(measures), test_(test_cut(cutter, measures.thickness)), out_{cutter, {}} {}

  tl::expected<MeasuredUp, std::string> work() {
    correct_mark();
    correct_guide();
    correct_stops();
    correct_over_cut();
    if (!error_.empty()) return tl::unexpected(error_);
    return std::move(out_);
  }

 private:
  void correct(const std::string& what, Length& value, Length becomes, std::string reason) {
    const Length change = becomes - value;
    if (change > largest_error || change < -largest_error) {
      error_ = what + " would change by " + format_exact(change, out_.cutter.scale.unit) +
               "; that is no error of a scale: measure and set again";
      return;
    }
    out_.corrections.push_back({what, value, becomes, std::move(reason)});
    value = becomes;
  }
  std::string text(Length length) const { return format_exact(length, out_.cutter.scale.unit); }

  void correct_mark() {
    if (!measures_.mark) return;
    correct("mark lead", out_.cutter.mark_lead, *measures_.mark,
            "the blade went " + text(*measures_.mark) + " past the line under the mark");
  }

  void correct_guide() {
    if (!measures_.line) return;
    if (!out_.cutter.guide) {
      error_ = "the profile has no guide to correct";
      return;
    }
    correct("guide zero", out_.cutter.guide->zero, *test_.guide - *measures_.line,
            "the scale showed " + text(*test_.guide) + ", the cut is " + text(*measures_.line) +
                " from the edge");
  }

  void correct_stop(const char* what, std::optional<StopScale>& stop,
                    const std::optional<Length>& shown, Length mark_place) {
    if (!stop) {
      error_ = std::string("the profile has no ") + what + " to correct";
      return;
    }
    correct(std::string(what) + " zero", stop->zero, *shown - mark_place,
            "the scale showed " + text(*shown) + ", the mark stood at " + text(mark_place));
  }

  void correct_stops() {
    const Length lead = out_.cutter.mark_lead;
    if (measures_.near_end) {
      correct_stop("near stop", out_.cutter.near_stop, test_.near_stop, *measures_.near_end + lead);
    }
    if (measures_.far_end) {
      correct_stop("far stop", out_.cutter.far_stop, test_.far_stop, *measures_.far_end - lead);
    }
  }

  void correct_over_cut() {
    if (!measures_.corner) return;
    OverCut entry{measures_.thickness, over_cut(out_.cutter, measures_.thickness)};
    const Length becomes = entry.distance - *measures_.corner;
    if (becomes < Length()) {
      error_ = "a cut " + text(*measures_.corner) +
               " past the corner is more than the over-cut of " + text(entry.distance) +
               "; measure on the face again";
      return;
    }
    correct("over-cut of board " + text(entry.thickness) + " thick", entry.distance, becomes,
            "on the face the cut ended " + text(*measures_.corner) + " past the corner");
    set_over_cut(out_.cutter, entry);
  }

  const TestMeasures& measures_;
  TestCut test_;
  MeasuredUp out_;
  std::string error_;
};

}  // namespace

TestCut test_cut(const CutterProfile& cutter, Length thickness) {
  const bool metric = cutter.scale.unit != Unit::inch;
  TestCut out;
  out.thickness = thickness;
  out.scrap = metric ? millimetres(300) : inches(12);
  if (const auto& guide = cutter.guide) {
    out.guide = round_figure(guide->least, guide->most, metric ? millimetres(80) : inches(3));
  }
  if (const auto& stop = cutter.near_stop) {
    out.near_stop = round_figure(stop->least, stop->most, metric ? millimetres(80) : inches(3));
  }
  if (const auto& stop = cutter.far_stop) {
    out.far_stop = round_figure(stop->least, stop->most, metric ? millimetres(220) : inches(9));
  }
  return out;
}

tl::expected<MeasuredUp, std::string> measure_up(const CutterProfile& cutter,
                                                 const TestMeasures& measures) {
  if (measures.thickness <= Length())
    return tl::unexpected(std::string("the board's thickness must be above 0"));
  return MeasuringUp(cutter, measures).work();
}

}  // namespace mullion
