// Nothing in a picture of the board lies on anything else.

#include <catch2/catch.hpp>
#include <regex>

#include "printed_job.h"
#include "tests/how_many.h"

using namespace mullion;

namespace {

using oracle::DrawnPage;
using oracle::Label;
using oracle::Stroke;

struct Box {
  double left, top, right, bottom;
};

// Of the ink: capitals and digits are 0.73 of a font's size tall.
Box ink_of(const Label& label) {
  return {label.at.x + 0.2, label.at.y - label.size * 0.72, label.at.x + label.length - 0.2,
          label.at.y};
}

bool is_in_picture(const Label& label) {
  static const std::regex what("[A-D]|[0-9]+(,[0-9]+)*");
  return std::regex_match(label.text, what);
}

bool meet(const Box& a, const Box& b) {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

// What lies under a label in a picture, if anything does.
std::string under(const DrawnPage& page, const Label& label) {
  const Box box = ink_of(label);
  for (Stroke stroke : page.strokes) {
    if (oracle::clip_to_box(stroke, {box.left, box.top}, {box.right, box.bottom})) return "a line";
  }
  for (std::size_t i = 0; i < page.fills.size(); ++i) {
    const bool ink = page.fill_colours[i] == "#c02010" || page.fill_colours[i] == "#555b60";
    if (!ink || page.fills[i].size() < 3) continue;
    for (std::size_t k = 1; k < page.fills[i].size(); ++k) {
      Stroke side{page.fills[i][k - 1], page.fills[i][k], 0, false, ""};
      if (oracle::clip_to_box(side, {box.left, box.top}, {box.right, box.bottom})) {
        return "an arrow's head, the guide or the arm";
      }
    }
  }
  for (const Label& other : page.labels) {
    if (&other != &label && meet(box, ink_of(other))) return other.text;
  }
  return "";
}

int labels_clear_of_all(const CuttingPlan& plan) {
  int labels = 0;
  for (const DrawnPage& page : printed::pages_of(plan)) {
    for (const Label& label : page.labels) {
      if (!is_in_picture(label)) continue;
      ++labels;
      const std::string what = under(page, label);
      if (!what.empty()) FAIL_CHECK(label.text << " lies on " << what << " in " << plan.title);
    }
  }
  return labels;
}

}  // namespace

TEST_CASE("no number or letter in a picture of the gallery's sheets touches anything") {
  int labels = 0;
  printed::each_gallery_plan([&](const printed::GalleryPlan& one) {
    INFO(one.name);
    labels += labels_clear_of_all(one.plan);
  });
  CHECK(labels > 1000);
}

TEST_CASE("no number or letter in a picture of a random job's sheet touches anything") {
  printed::each_random_plan(418, test::how_many(12, 600), [](const printed::RandomPlan& one) {
    INFO(one.name);
    labels_clear_of_all(one.plan);
  });
}

TEST_CASE("arrows in the gallery's pictures have their numbers beside them") {
  int arrows = 0, numbered = 0;
  printed::each_gallery_plan([&](const printed::GalleryPlan& one) {
    for (const printed::Part& part : printed::parts_of(printed::pages_of(one.plan))) {
      if (part.picture.arrows.size() < 2) continue;  // one alone needs none
      arrows += static_cast<int>(part.picture.arrows.size());
      numbered += static_cast<int>(part.picture.numbers.size());
    }
  });
  INFO(numbered << " of " << arrows);
  CHECK(arrows > 20);
  CHECK(numbered * 10 >= arrows * 7);
}
