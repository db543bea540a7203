#include "picture.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "by_hand.h"
#include "shown_page.h"

namespace bench_test {

using mullion::Length;
using nlohmann::json;
using simulator::length_of;

namespace {

constexpr double near_enough = 2;  // of the picture's units, of which a board has about 800

double ticks(const json& text) {
  return static_cast<double>(length_of(text).ticks());
}

class Pictures {
 public:
  explicit Pictures(const json& plan)
      : plan_(plan), guide_on_left_(plan.at("cutter").at("guide_side") == "left") {
    for (const json& stage : plan.at("stages")) {
      int first = 0, last = 0;
      for (const json& set_up : stage.at("set_ups")) {
        for (const json& placement : set_up.at("placements")) {
          for (const json& cut : placement.at("cuts")) {
            const int number = cut.at("number");
            if (first == 0) first = number;
            last = number;
            cuts_[number] = {set_up, placement, cut, first, 0};
          }
        }
      }
      for (const json& cut : stage.at("freehand")) last = cut.at("number");
      for (auto& [number, cut] : cuts_) {
        if (first > 0 && number >= first) cut.last = last;
      }
    }
  }

  void look_at(const ShownStep& step) {
    if (!step.heading.starts_with("Cut ") || step.text("skew") != nullptr) return;
    const int number = std::atoi(step.heading.c_str() + 4);
    if (cuts_.count(number) == 0) return;
    step_ = &step;
    number_ = number;
    const Cut& cut = cuts_.at(number);
    const ShownPath* board = step.path("board");
    if (board == nullptr) return wrong("no board");
    left_ = board->numbers[0];
    top_ = board->numbers[1];
    right_ = board->numbers[2];
    bottom_ = board->numbers[3];
    const std::string near = cut.placement.at("edge_at_arm");
    const bool level = near == "A" || near == "C";
    across_ = ticks(plan_.at(level ? "width" : "height"));
    along_ = ticks(plan_.at(level ? "height" : "width"));
    scale_ = (right_ - left_) / across_;
    if (std::abs((bottom_ - top_) / along_ - scale_) > 0.01 * scale_) wrong("a board out of shape");
    letters(cut);
    line(cut);
    stops(cut);
    others(cut);
  }

  std::vector<std::string> take() { return std::move(out_); }

 private:
  struct Cut {
    json set_up, placement, cut;
    int first = 0, last = 0;  // of the stage
  };

  void wrong(const std::string& what) {
    out_.push_back("the picture of cut " + std::to_string(number_) + ": " + what);
  }
  bool off(double found, double wanted) const { return std::abs(found - wanted) > near_enough; }

  void letters(const Cut& cut) {
    for (const ShownLetter& letter : step_->letters) {
      if (letter.name != "edge") continue;
      const std::string side = letter.y < top_                        ? "edge_away"
                               : letter.y > bottom_                   ? "edge_at_arm"
                               : (letter.x < left_) == guide_on_left_ ? "edge_at_guide"
                                                                      : "opposite";
      std::string wanted = cut.placement.value(side, "");
      if (side == "opposite") {
        wanted = "CDAB"[cut.placement.at("edge_at_guide").get<std::string>()[0] - 'A'];
      }
      if (wanted != letter.text) wrong("a wrong letter, " + side);
    }
  }

  void line(const Cut& cut) {
    const double in = ticks(cut.cut.at("distance")) * scale_;
    const double x = guide_on_left_ ? left_ + in : right_ - in;
    const auto y = [&](const char* end) {
      return bottom_ - ticks(cut.cut.at(end).at("line_from_arm")) * (bottom_ - top_) / along_;
    };
    const ShownPath* start = step_->path("start");
    const ShownPath* tip = step_->path("tip");
    const ShownPath* now = step_->path("now");
    const ShownPath* rail = step_->path("rail");
    if (start == nullptr || tip == nullptr || now == nullptr || rail == nullptr) {
      return wrong("no arrow");
    }
    const double start_x = (start->numbers[0] + start->numbers[2]) / 2;
    if (off(start_x, x) || off(tip->numbers[0], x) || off(now->numbers[0], x)) wrong("the line");
    if (off(rail->numbers[0], x)) wrong("the rail");
    if (off(start->numbers[1], y("start")) || off(now->numbers[1], y("start"))) wrong("its start");
    if (off(tip->numbers[1], y("end"))) wrong("its end");
  }

  void stops(const Cut& cut) {
    std::vector<double> found;
    for (const ShownPath& path : step_->paths) {
      if (path.name == "stop") found.push_back((path.numbers[1] + path.numbers[3]) / 2);
    }
    std::vector<bool> wanted = {!cut.set_up.at("near_stop").is_null(),
                                !cut.set_up.at("far_stop").is_null()};
    if (static_cast<std::ptrdiff_t>(found.size()) <
        std::count(wanted.begin(), wanted.end(), true)) {
      return wrong("a stop is not drawn");
    }
    // Beyond the line's ends, not between them.
    const ShownPath* start = step_->path("start");
    const ShownPath* tip = step_->path("tip");
    if (start == nullptr || tip == nullptr) return;
    const double middle = (start->numbers[1] + tip->numbers[1]) / 2;
    const auto below =
        std::count_if(found.begin(), found.end(), [&](double y) { return y > middle; });
    if (wanted[0] && below < 1) wrong("no near stop");
    if (wanted[1] && static_cast<std::ptrdiff_t>(found.size()) - below < 1) wrong("no far stop");
    const bool metal_at_guide =
        std::count_if(step_->paths.begin(), step_->paths.end(),
                      [](const ShownPath& path) { return path.name == "metal"; }) == 2;
    if (metal_at_guide != !cut.set_up.at("guide").is_null()) wrong("the guide");
  }

  // Lines that are cut, and those that are not.
  void others(const Cut& cut) {
    const auto moves = [&](const char* name) {
      const ShownPath* path = step_->path(name);
      return path == nullptr
                 ? 0
                 : static_cast<int>(std::count(path->data.begin(), path->data.end(), 'M'));
    };
    if (moves("cut") != number_ - cut.first) wrong("what is cut already");
  }

  const json& plan_;
  bool guide_on_left_;
  std::map<int, Cut> cuts_;
  const ShownStep* step_ = nullptr;
  int number_ = 0;
  double left_ = 0, top_ = 0, right_ = 0, bottom_ = 0, across_ = 1, along_ = 1, scale_ = 1;
  std::vector<std::string> out_;
};

}  // namespace

std::vector<std::string> untrue_pictures(const std::string& html, const json& plan, int kind) {
  Pictures pictures(plan);
  const std::string name = "Kind " + std::to_string(kind) + ":";
  for (const ShownStep& step : shown_steps(html)) {
    if (kind > 0 && (step.where.empty() || !step.where.front().starts_with(name))) continue;
    pictures.look_at(step);
  }
  return pictures.take();
}

}  // namespace bench_test
