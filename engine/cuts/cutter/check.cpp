#include "engine/cuts/cutter/check.h"

#include <algorithm>
#include <cmath>

namespace mullion {
namespace {

// Further off than this is a slip of the rule or a wrong setting, not an error of a scale.
constexpr Length largest_error = inches(1);
// A reveal is seen to be uneven by a little more. Our own figure: 0.2 mm.
constexpr Length worth_turning = Length::from_ticks(320);
constexpr double largest_turn = 0.05;  // nearly three degrees

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
      : measures_(measures), test_(test_cut(cutter, measures.thickness)), out_{cutter, {}, {}} {}

  tl::expected<MeasuredUp, std::string> work() {
    const CutterProfile before = out_.cutter;
    correct_marks();
    correct_over_cut(before);
    correct_guide();
    correct_stops();
    correct_rail();
    correct_arm();
    look_at_diagonals();
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

  void correct_marks() {
    CutterProfile& cutter = out_.cutter;
    if (measures_.start_mark || (measures_.mark && measures_.start_corner)) {
      cutter.own_start_lead = start_lead(cutter);
    }
    if (measures_.mark) {
      correct("mark lead", cutter.mark_lead, *measures_.mark,
              "the blade went " + text(*measures_.mark) + " past the line under the mark");
    }
    if (measures_.start_mark) {
      correct("start lead", *cutter.own_start_lead, *measures_.start_mark,
              "the blade started " + text(*measures_.start_mark) + " past the line under the mark");
    }
  }

  void correct_guide() {
    if (!measures_.line && !measures_.line_far) return;
    if (!out_.cutter.guide) {
      error_ = "the profile has no guide to correct";
      return;
    }
    const Length near = measures_.line ? *measures_.line : *measures_.line_far;
    const Length far = measures_.line_far.value_or(near);
    const Length middle = half_rounded_down(near + far);
    correct("guide zero", out_.cutter.guide->zero, *test_.guide - middle,
            "the scale showed " + text(*test_.guide) + ", the cut is " + text(middle) +
                " from the edge");
    if (!measures_.line || !measures_.line_far) {
      out_.turn.push_back(
          "One reading of the cut cannot show whether the guide is parallel to the rail: measure "
          "at "
          "both of its ends.");
    } else if (far - near > worth_turning || near - far > worth_turning) {
      out_.turn.push_back("The guide is not parallel to the rail: at the cut's far end it stands " +
                          text(far > near ? far - near : near - far) +
                          (far > near ? " too far from the rail" : " too near the rail") +
                          ". Loosen it, turn it by that, and measure again.");
    }
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
    const CutterProfile& cutter = out_.cutter;
    const bool pulled = cutter.stroke == Stroke::pull;
    const Length near_lead = pulled ? cutter.mark_lead : start_lead(cutter);
    const Length far_lead = pulled ? start_lead(cutter) : cutter.mark_lead;
    if (measures_.near_end) {
      correct_stop("near stop", out_.cutter.near_stop, test_.near_stop,
                   *measures_.near_end + near_lead);
    }
    if (measures_.far_end) {
      correct_stop("far stop", out_.cutter.far_stop, test_.far_stop, *measures_.far_end - far_lead);
    }
  }

  // How far past the lines the blade must go for a clean corner: as far as it went, less what was
  // seen past the corner.
  void correct_over_cut(const CutterProfile& before) {
    if (!measures_.corner && !measures_.start_corner) return;
    CutterProfile& cutter = out_.cutter;
    const Length thickness = measures_.thickness;
    OverCut entry{thickness, over_cut(before, thickness, thickness)};
    const Length old_start = entry.distance + before.start_extra;
    if (measures_.corner) {
      const Length went = entry.distance - before.mark_lead + cutter.mark_lead;
      const Length needed = went - *measures_.corner;
      if (needed < Length()) {
        error_ = "a cut " + text(*measures_.corner) + " past the corner is more than the " +
                 text(went) + " that it went past the line; measure on the face again";
        return;
      }
      correct("over-cut of board " + text(thickness) + " thick", entry.distance, needed,
              "the cut ended " + text(went) + " past the line, and on the face " +
                  text(*measures_.corner) + " past the corner");
      set_over_cut(cutter, entry);
    }
    if (!measures_.start_corner) return;
    const Length went = old_start - start_lead(before) + start_lead(cutter);
    correct("extra at the start", cutter.start_extra,
            went - *measures_.start_corner - entry.distance,
            "the cut started " + text(went) + " past the line, and on the face " +
                text(*measures_.start_corner) + " past the corner");
  }

  void correct_rail() {
    if (!measures_.rail) return;
    CutterProfile& cutter = out_.cutter;
    if (!cutter.line_from_rail) cutter.line_from_rail = Length();
    correct("line from the rail's edge", *cutter.line_from_rail, *measures_.rail,
            "the cut lies " + text(*measures_.rail) + " from the line along the rail's edge");
  }

  void correct_arm() {
    if (!measures_.piece) return;
    CutterProfile& cutter = out_.cutter;
    const Length blade = *measures_.piece + half_rounded_down(cutter.kerf);
    correct("squaring arm's zero", cutter.arm_zero, test_.arm - blade,
            "its scale showed " + text(test_.arm) + ", the piece is " + text(*measures_.piece) +
                " wide");
  }

  // In a parallelogram with equal sides s the squares of the diagonals differ by 4 s s times the
  // sine of what its corners differ from a right angle, and their sum is 4 s s.
  void look_at_diagonals() {
    if (!measures_.diagonal_ab && !measures_.diagonal_bc) return;
    if (!measures_.diagonal_ab || !measures_.diagonal_bc) {
      out_.turn.push_back(
          "One diagonal cannot show whether the arm is square to the rail: measure both.");
      return;
    }
    const double ab = to_millimetres(*measures_.diagonal_ab);
    const double bc = to_millimetres(*measures_.diagonal_bc);
    const double off = (bc * bc - ab * ab) / (bc * bc + ab * ab);
    const Length at_end = Length::from_ticks(static_cast<std::int64_t>(
        std::lround(std::abs(off) * static_cast<double>(out_.cutter.arm_length.ticks()))));
    if (std::abs(off) > largest_turn) {
      error_ = "the diagonals differ by more than a square corner can be out; measure again";
      return;
    }
    if (at_end <= worth_turning) return;
    out_.turn.push_back(
        std::string("The squaring arm is not square to the rail: the corner between edges A and B "
                    "is ") +
        (off > 0 ? "wider" : "narrower") +
        " than a right angle. Loosen the arm and turn its outer "
        "end by " +
        text(to_finest_mark(at_end, out_.cutter.scale.unit)) +
        (off > 0 ? " so that the angle to the rail closes"
                 : " so that the angle to the rail opens") +
        ", cut a blank anew and measure again.");
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
  out.arm = metric ? millimetres(250) : inches(10);
  const Length past = over_cut(cutter, thickness, thickness);
  out.mark_past = past - cutter.mark_lead;
  out.start_mark_past = past + cutter.start_extra - start_lead(cutter);
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
