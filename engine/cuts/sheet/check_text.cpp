#include "engine/cuts/sheet/check_text.h"

#include <algorithm>

#include "engine/cuts/sheet/scale_text.h"
#include "engine/xml/words.h"

namespace mullion {
namespace {

class TestSheet {
 public:
  TestSheet(const CutterProfile& cutter, Length thickness)
      : cutter_(cutter), test_(test_cut(cutter, thickness)) {}

  std::string write() {
    out_ = "Test cuts for " + cutter_.name + "\n";
    out_ += "  Scrap " + text(test_.scrap) + " square, " +
            measured_number(test_.thickness, cutter_.scale.unit) + " " +
            word_for(cutter_.scale.unit) +
            " thick, a backing sheet, a fresh blade. Measure on the back, twice.\n";
    if (test_.guide || test_.near_stop || test_.far_stop) scales();
    step(
        "On the scrap draw a line across the board. Cut toward it and stop with the head's mark on "
        "it; start\n     another cut with the mark on it. Short of the line counts below zero.");
    measure("How far the cut ended past the line", "--mark");
    measure("How far the other started past the line", "--start-mark");
    step("Draw a window and cut its four sides, each start with the mark " +
         past(test_.start_mark_past) + ",\n     each end with the mark " + past(test_.mark_past) +
         ". Measure on the face; short of the corner\n     counts below zero.");
    measure("How far a cut ends past the corner", "--corner");
    measure("How far a cut starts past the corner", "--start-corner");
    step("Draw a line along the rail's edge and make a cut without moving the board.");
    measure("From the line to the cut, away from the guide's side", "--rail");
    step("With the straight blade and the arm's stop at " + text(test_.arm) + " cut a piece off.");
    measure("How wide the piece is", "--piece");
    step("Square a blank on this cutter, its sides alike, lettered A, B, C, D clockwise.");
    measure("Its diagonal from the corner of A and B", "--diagonal-ab");
    measure("Its diagonal from the corner of B and C", "--diagonal-bc");
    out_ +=
        "Then run the same command with what you measured and --thickness, and -o FILE.\n"
        "Keep your hand behind the blade. Where the maker of your cutter says otherwise, the "
        "maker is right.\n";
    return std::move(out_);
  }

 private:
  std::string text(Length length) const { return rule_text(length, cutter_.scale); }
  std::string exact(Length length) const { return format_exact(length, cutter_.scale.unit); }

  std::string past(Length by) const {
    if (by == Length()) return "on the line";
    return amount_text(by, cutter_.scale) +
           (by > Length() ? " past the line" : " short of the line");
  }

  void step(const std::string& what) {
    out_ += "  " + std::to_string(++step_) + ". " + what + "\n";
  }

  void measure(const std::string& what, const char* option) {
    constexpr std::size_t column = 66;
    std::string line = "     " + what;
    line.resize(std::max(column, line.size() + 2), ' ');
    out_ += line + option + " ____\n";
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
      measure("From the edge at the guide to the cut, at its near end", "--line");
      measure("From the edge at the guide to the cut, at its far end", "--line-far");
    }
    if (test_.near_stop) measure("From the edge at the arm to the cut's near end", "--near-end");
    if (test_.far_stop) measure("From the edge at the arm to the cut's far end", "--far-end");
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
  for (const std::string& turn : measured.turn) out += turn + "\n";
  return out;
}

}  // namespace mullion
