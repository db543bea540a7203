#pragma once

// Plans and the pages that their sheets are printed on.

#include <functional>

#include "engine/cuts/sheet/json.h"
#include "mats.h"
#include "printed_plan.h"

namespace printed {

std::vector<oracle::DrawnPage> pages_of(const mullion::CuttingPlan& plan);

struct Sheet {
  const mullion::Mat& mat;
  simulator::Cutter cutter;
  nlohmann::json templates;
  std::vector<oracle::DrawnPage> pages;
  mullion::Length slack;  // from rounding

  Sheet(const mullion::Mat& of, const mullion::CuttingPlan& plan);

  // What is wrong with the mat that comes of it; empty: nothing.
  std::string outcome(unsigned lie) const { return outcome(pages, lie); }
  std::string outcome(const std::vector<oracle::DrawnPage>& shown, unsigned lie) const;
};

// Any mat, any job, any cutter and any way to work that are possible, from a fixed seed; `lie` is
// how the boards lie at first.
struct RandomPlan {
  std::string name;
  mullion::Mat mat;
  mullion::CuttingPlan plan;
  unsigned lie = 0;
};
int each_random_plan(unsigned seed, int count, const std::function<void(const RandomPlan&)>& take);

struct GalleryPlan {
  std::string name;
  mullion::Mat mat;
  mullion::CuttingPlan plan;
};
int each_gallery_plan(const std::function<void(const GalleryPlan&)>& take);

}  // namespace printed
