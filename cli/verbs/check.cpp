#include <algorithm>
#include <memory>

#include "cli/answer.h"
#include "cli/known_words.h"
#include "cli/verb.h"
#include "engine/cuts/refusal.h"
#include "engine/xml/source_text.h"

namespace mullion::cli {
namespace {

std::string rect_text(const Rect& rect, const Scale& scale) {
  return describe(rect.width(), scale) + " x " + describe(rect.height(), scale) + ", " +
         describe(rect.left, scale) + " from the left and " + describe(rect.top, scale) +
         " from the top";
}

// A name and what belongs to it, in two columns.
std::string line_text(std::string name, const std::string& text) {
  constexpr std::size_t column = 12;
  name.append(column - std::min(column, count_characters(name)), ' ');
  return "  " + name + " " + text + "\n";
}

std::string size_text(const Rect& rect, const Scale& scale) {
  return describe(rect.width(), scale) + " x " + describe(rect.height(), scale);
}

// "    layer 2: 7 1/4 in x 9 1/4 in"; nothing where the layer shows no edge of its own there.
std::string layer_text(const MatLayer& layer, int opening, const Scale& scale) {
  for (const Window& window : layer.windows) {
    if (!window.seen || window.openings != std::vector<int>{opening}) continue;
    return line_text(
        "", "layer " + std::to_string(layer.number) + ": " + size_text(window.back, scale));
  }
  return {};
}

std::string picture_text(const MatPicture& picture, const Scale& scale) {
  return line_text("", "of picture \"" + picture.picture.id + "\" " +
                           size_text(picture.sight, scale) + " is seen, of " +
                           size_text(picture.rect, scale));
}

// The gaps of every row and column and the sizes of rings, outermost last: "row 1 in, 1 in".
class Gaps {
 public:
  Gaps(const Layout& layout, const Scale& scale) : layout_(layout), scale_(scale) {}

  Rect in(const Node& node) {
    const auto* group = std::get_if<Group>(&node.what);
    if (group == nullptr) return layout_.openings[opening_++].rect;
    const PlacedGroup& placed = layout_.groups[group_++];
    std::vector<Rect> parts;
    for (const Node& child : group->children) parts.push_back(in(child));
    std::string gaps;
    const bool is_line = group->along == Along::row || group->along == Along::column;
    for (std::size_t i = 1; is_line && i < parts.size(); ++i) {
      const Length gap = group->along == Along::row ? parts[i].left - parts[i - 1].right
                                                    : parts[i].top - parts[i - 1].bottom;
      gaps += (gaps.empty() ? "" : ", ") + describe(gap, scale_);
    }
    if (!gaps.empty()) {
      const std::string name = group->along == Along::row ? "row" : "column";
      text += (text.empty() ? "" : "; ") + name + (group->id.empty() ? "" : " " + group->id) + " " +
              gaps;
    }
    if (placed.ring) {
      text += (text.empty() ? "" : "; ") + std::string("ring") +
              (group->id.empty() ? "" : " " + group->id) + " " +
              describe(placed.ring->across, scale_) + " across";
      if (placed.ring->down != placed.ring->across) {
        text += " and " + describe(placed.ring->down, scale_) + " high";
      }
    }
    return placed.rect;
  }

  std::string text;

 private:
  const Layout& layout_;
  const Scale& scale_;
  std::size_t opening_ = 0, group_ = 0;
};

std::string gaps_text(const Node& arrangement, const Layout& layout, const Scale& scale) {
  Gaps gaps(layout, scale);
  gaps.in(arrangement);
  return gaps.text;
}

// Nothing where no size had to move.
std::string increment_text(const Layout& layout, const Scale& scale) {
  if (layout.on_increment == OnIncrement::as_it_was) return {};
  const bool proved = layout.on_increment == OnIncrement::nearest;
  return line_text("steps", "of " + format_exact(scale.increment, scale.unit) +
                                (proved ? ": the nearest sizes that there are, proved"
                                        : ": sizes near by; nearer ones may exist"));
}

std::string summary(const Loaded& loaded) {
  const Scale& scale = loaded.job.scale;
  const Layout& layout = loaded.layout;
  const Sides& borders = layout.borders;
  std::string out = loaded.job.file + ": mat " + describe(layout.width, scale) + " x " +
                    describe(layout.height, scale) + "\n";
  if (const auto& frame = loaded.job.frame) {
    out += line_text("frame", "rabbet " + describe(frame->rabbet_width, scale) + " x " +
                                  describe(frame->rabbet_height, scale) + ", the mat " +
                                  describe(frame->allowance, scale) + " less");
  }
  out += line_text("borders", "left " + describe(borders.left, scale) + ", top " +
                                  describe(borders.top, scale) + ", right " +
                                  describe(borders.right, scale) + ", bottom " +
                                  describe(borders.bottom, scale));
  const std::string gaps = gaps_text(loaded.job.arrangement, layout, scale);
  if (!gaps.empty()) out += line_text("gaps", gaps);
  for (const PlacedOpening& opening : layout.openings) {
    out += line_text(std::to_string(opening.number) + " " + opening.id,
                     rect_text(opening.rect, scale));
    for (const MatLayer& layer : loaded.mat.layers) {
      if (layer.number > 1) out += layer_text(layer, opening.number, scale);
    }
    for (const MatPicture& picture : loaded.mat.pictures) {
      if (picture.opening == opening.number) out += picture_text(picture, scale);
    }
  }
  return out + increment_text(layout, scale);
}

struct Options {
  std::string job, cutter;
  Answer answer{"check"};
};

int check(const Options& options) {
  const Answer& answer = options.answer;
  const Result<Loaded> loaded = load(options.job);
  if (!loaded) return answer.fail(loaded.error());
  const Result<CutterProfile> cutter = cutter_for(options.cutter, loaded->job.scale.unit);
  if (!cutter) return answer.fail(cutter.error());
  Problems problems = told_notes(loaded->layout, loaded->job);
  for (Problem& found : check_mat(loaded->job, loaded->layout, loaded->mat)) {
    problems.push_back(std::move(found));
  }
  for (Problem& found :
       check_on_cutter(loaded->job, loaded->layout, cuts_of(loaded->mat, *cutter))) {
    problems.push_back(std::move(found));
  }
  const int status = status_of(problems);
  const int written =
      answer.give([&] { return summary(*loaded); },
                  [&] {
                    return check_json(loaded->job, loaded->layout, loaded->mat, {status, problems});
                  });
  if (!answer.is_json()) {
    report(problems);
    advise(problems);
  }
  return written == success ? status : written;
}

}  // namespace

void add_check(CommandLine& program) {
  const Verb verb =
      program.verb("check", "Read a job, lay it out, and say what is wrong or unwise about it");
  auto options = std::make_shared<Options>();
  verb.argument("JOB", Takes::job_file, options->job, "The job file").required();
  verb.option("--cutter", Takes::file, options->cutter,
              "bench, plain-bench, metric-bench or a cutter file; by the job's unit where not "
              "given")
      .known(cutter_names());
  options->answer.add_option(verb);
  verb.runs([options] { return check(*options); });
}

}  // namespace mullion::cli
