#pragma once

// The steps of a stage: what is done before its first set-up, its set-ups, and what comes after.

#include "render/bench/step.h"
#include "render/cutsheet/board_view.h"

namespace mullion::bench {

class Steps {
 public:
  Step& add(Step step) {
    step.group = group_;
    return all_.emplace_back(std::move(step));
  }
  void begin_group() { ++group_; }
  std::vector<Step> take() { return std::move(all_); }

 private:
  std::vector<Step> all_;
  int group_ = 0;
};

// Refers to the plan, the stage and the steps.
class StageSteps {
 public:
  // `kind`: of mats, in a run.
  StageSteps(const ToldPlan& plan, const Stage& stage, const std::string& kind, Steps& steps);

  // `shown` is what the scales show, and is brought up to date.
  void before(Settings& shown);
  void set_up(const SetUp& set_up, const std::string& name, const Settings& settings,
              Settings& shown);
  void after(const Settings& shown);

 private:
  Step step(Step::Kind kind, const std::string& heading) const;
  void prepare();
  void check(const std::string& text, const Picture& picture);
  void lines_by_rule();
  void lines_by_guide(Settings& shown);
  // Without stops.
  std::vector<Dial> guide_dials(const Settings& settings, const Settings& shown) const;
  void cut(const std::string& name, const Placement& placement, const BevelCut& cut,
           const Settings& settings, const Settings& shown);
  void two_passes(Step& step) const;
  void skew_cuts();
  void curves();
  void panels(const Settings& shown);
  void spacer();

  const ToldPlan& plan_;
  const Stage& stage_;
  cutsheet::BoardPicture board_;
  std::vector<std::string> where_;
  Steps& steps_;
};

}  // namespace mullion::bench
