#include "engine/cuts/sheet/check_text.h"

#include "engine/cuts/sheet/scale_text.h"

namespace mullion {
namespace {

class TestSheet {
 public:
  TestSheet(const CutterProfile& cutter, Length thickness)
      : cutter_(cutter), test_(test_cut(cutter, thickness)) {}

  std::string write() {
    out_ = "Test cuts for " + cutter_.name + "\n";
    out_ += "  Scrap " + text(test_.scrap) + " square, " + exact(test_.thickness) +
            " thick, a backing sheet, a fresh blade. Measure on the back, twice.\n";
    if (test_.guide || test_.near_stop || test_.far_stop) scales();
    step(
        "On the scrap draw a line across the board. Cut toward it and stop with the head's mark "
        "on it.\n     Measure how far the cut went past the line                        --mark "
        "____");
    step("Draw a window and cut its four sides, each end with the mark " +
         past(over_cut(cutter_, test_.thickness) - cutter_.mark_lead) +
         ".\n     Measure on the face how far a cut goes past the corner; short of it\n     counts "
         "below zero                                             --corner ____");
    out_ +=
        "Then run the same command with what you measured and --thickness, and -o FILE.\n"
        "Keep your hand behind the blade. Where the maker of your cutter says otherwise, the "
        "maker is right.\n";
    return std::move(out_);
  }

 private:
  std::string text(Length length) const {
    return scale_text(length, Length(), cutter_.scale).all();
  }
  std::string exact(Length length) const { return format_exact(length, cutter_.scale.unit); }

  std::string past(Length by) const {
    if (by == Length()) return "on the line";
    return amount_text(by, cutter_.scale) +
           (by > Length() ? " past the line" : " short of the line");
  }

  void step(const std::string& what) {
    out_ += "  " + std::to_string(++step_) + ". " + what + "\n";
  }

  void scales() {
    std::string settings;
    const auto add = [&](const char* name, const std::optional<Length>& shown) {
      if (shown)
        settings += (settings.empty() ? "" : ", ") + std::string(name) + " " + text(*shown);
    };
    add("guide", test_.guide);
    add("near stop", test_.near_stop);
    add("far stop", test_.far_stop);
    step("Set by the scales: " + settings + ". Make one bevel cut, board face down.");
    if (test_.guide) {
      out_ +=
          "     Measure from the edge at the guide to the cut                     --line ____\n";
    }
    if (test_.near_stop) {
      out_ +=
          "     Measure from the edge at the arm to the cut's near end            --near-end "
          "____\n";
    }
    if (test_.far_stop) {
      out_ +=
          "     Measure from the edge at the arm to the cut's far end             --far-end ____\n";
    }
  }

  const CutterProfile& cutter_;
  TestCut test_;
  std::string out_;
  int step_ = 0;
};

}  // namespace

std::string test_cut_text(const CutterProfile& cutter, Length thickness) {
  return TestSheet(cutter, thickness).write();
}

std::string corrections_text(const MeasuredUp& measured) {
  const Unit unit = measured.cutter.scale.unit;
  std::string out;
  for (const CutterCorrection& c : measured.corrections) {
    out += c.what + ": was " + format_exact(c.was, unit) + ", becomes " +
           format_exact(c.becomes, unit) + " (" + c.reason + ")\n";
  }
  return out;
}

}  // namespace mullion
