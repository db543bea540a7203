#pragma once

// The lines of a plan in plain text, at most 100 columns where lengths allow: what the texts of
// one plan and of a run have in common.

#include <string>

#include "engine/cuts/sheet/told.h"

namespace mullion {

class TextLines {
 public:
  void line(const std::string& text) { out_ += text + "\n"; }
  // Further lines are set in below the first one's text.
  void wrapped(const std::string& lead, const std::string& text);
  std::string take() { return std::move(out_); }

 private:
  std::string out_;
};

// What is to be done before a stage's first cut: taping, the one amount, pencil lines.
void write_before(TextLines& out, const ToldPlan& plan, const Stage& stage);
// How the board lies, and its cuts.
void write_placements(TextLines& out, const ToldPlan& plan, const Stage& stage,
                      const SetUp& set_up);
// What is cut after a stage's last set-up: slanting lines, curves, panels.
void write_after(TextLines& out, const ToldPlan& plan, const Stage& stage);
void write_cautions(TextLines& out, const std::vector<std::string>& cautions);

}  // namespace mullion
