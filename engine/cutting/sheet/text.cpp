#include "engine/cutting/sheet/text.h"

#include <algorithm>

#include "engine/cutting/sheet/cautions.h"
#include "engine/cutting/sheet/scale_text.h"
#include "engine/cutting/sheet/words.h"

namespace mullion {
namespace {

constexpr std::size_t columns = 100;

class TextWriter {
 public:
  explicit TextWriter(const CuttingPlan& plan) : plan_(plan) {}

  std::string write() {
    head();
    blanks();
    for (const Stage& stage : plan_.stages) write_stage(stage);
    line("");
    for (const std::string& caution : cautions(plan_)) wrapped("  ! ", caution);
    return std::move(out_);
  }

 private:
  void line(const std::string& text) { out_ += text + "\n"; }

  // Further lines are set in below the first one's text.
  void wrapped(const std::string& lead, const std::string& text) {
    const std::string blank(lead.size(), ' ');
    std::string row = lead;
    for (std::size_t at = 0; at < text.size();) {
      const std::size_t end = std::min(text.find(' ', at), text.size());
      const std::string word = text.substr(at, end - at);
      if (row.size() > lead.size() && row.size() + 1 + word.size() > columns) {
        line(row);
        row = blank;
      }
      row += (row.size() > lead.size() ? " " : "") + word;
      at = end + 1;
    }
    line(row);
  }

  std::string copies() const {
    return plan_.quantity == 1 ? "1 mat" : std::to_string(plan_.quantity) + " mats alike";
  }

  void head() {
    const Scale& scale = plan_.cutter.scale;
    std::string name = plan_.reference;
    if (!plan_.title.empty()) name += (name.empty() ? "" : ", ") + plan_.title;
    line("Cutting plan" + (name.empty() ? "" : ": " + name));
    line("  " + copies() + ", " + describe(plan_.outer.width(), scale) + " x " +
         describe(plan_.outer.height(), scale) + "; " + plan_.cutter.name);
    std::string ways;
    for (const WayTime& way : plan_.ways) {
      ways += (ways.empty() ? "" : ", ") + std::string(name_of(way.way)) + " " +
              duration_text(way.seconds);
    }
    line("  Cut with " + std::string(name_of(plan_.way)) + " (" + ways + ")");
    if (plan_.bound < plan_.seconds) {
      line("  No order of the cuts takes less than " + duration_text(plan_.bound));
    }
    line("  Boards lie face down. Letter the back's edges clockwise: A top, B, C, D.");
  }

  void blanks() {
    line("");
    line("BLANKS  straight blade, no backing sheet, guide and stops off");
    for (const StraightCut& side : plan_.blanks) wrapped("  [ ] ", blank_text(plan_, side));
  }

  void write_stage(const Stage& stage) {
    line("");
    line(stage_text(plan_, stage));
    if (const std::string prepare = prepare_text(plan_, stage); !prepare.empty()) {
      wrapped("  ", prepare);
    }
    if (const std::string shift = shift_text(plan_, stage); !shift.empty()) {
      wrapped("  >>> ", "SAME EDGES, SAME ORDER, EVERY SETTING BY ONE AMOUNT: " + shift);
    }
    for (const PencilLine& pencil : stage.pencil_lines) {
      wrapped("  draw ", pencil_text(plan_, pencil));
    }
    for (const SetUp& set_up : stage.set_ups) write_set_up(set_up);
    for (const SkewCut& cut : stage.skew_cuts) {
      wrapped("  [ ] cut " + std::to_string(cut.number) + "  ", skew_text(plan_, cut));
    }
    for (const CurveCut& curve : stage.curves) wrapped("  [ ] ", curve_text(plan_, curve));
    for (const GrooveTrim& trim : stage.trims) wrapped("  [ ] ", trim_text(plan_, trim));
  }

  void write_set_up(const SetUp& set_up) {
    const Settings& s = set_up.settings;
    std::string head =
        "Set-up " + std::to_string(set_up.number) + ": guide " + guide_text(plan_, s);
    if (s.block) head += ", " + block_text(plan_, *s.block);
    if (plan_.way != Way::pencilled) {
      head += " | near stop " + near_stop_text(plan_, s) + " | far stop " + far_stop_text(plan_, s);
    }
    if (plan_.quantity > 1) head += " | all " + std::to_string(plan_.quantity) + " blanks";
    wrapped("  ", head);
    for (const Placement& placement : set_up.placements) {
      line("    edge " + edge_text(placement.edge) + " at the guide, " +
           std::string(1, letter(near_edge(placement.edge, plan_.cutter.side))) + " at the arm; " +
           turn_text(placement.turns));
      for (const BevelCut& cut : placement.cuts) write_cut(cut);
    }
  }

  void write_cut(const BevelCut& cut) {
    std::string text = line_text(cut) + ": " + ends_text(plan_, cut);
    if (const std::string freehand = freehand_text(plan_, cut); !freehand.empty()) {
      text += "; " + freehand;
    }
    wrapped("    [ ] cut " + std::to_string(cut.number) + "  ", text);
  }

  const CuttingPlan& plan_;
  std::string out_;
};

}  // namespace

std::string plan_to_text(const CuttingPlan& plan) {
  return TextWriter(plan).write();
}

}  // namespace mullion
