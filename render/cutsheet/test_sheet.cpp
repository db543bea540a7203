#include "render/cutsheet/test_sheet.h"

#include "engine/cuts/sheet/scale_text.h"
#include "render/cutsheet/flow.h"
#include "render/paper/document.h"

namespace mullion {
namespace {

using cutsheet::Flow;
using cutsheet::Look;
using paper::Anchor;
using paper::Box;
using paper::Drawing;
using paper::Pen;
using paper::Spot;

constexpr const char* title = mark("Test cuts: %1");
constexpr const char* cautions = mark(
    "! Fresh blade, backing sheet under every cut. Keep the hand on the rail behind the blade; "
    "blade out before you let go. Where the maker of your cutter says otherwise, the maker is "
    "right.");

constexpr Colour black{0, 0, 0}, red{0xc0, 0x20, 0x10}, metal{0x55, 0x5b, 0x60};
constexpr Colour board{0xf4, 0xf2, 0xec};
constexpr double picture = 190, text = 11;

Pen solid(double width, Colour colour) {
  return {.width = width, .colour = colour, .dashes = {}};
}

void arrow_down(Drawing& page, Spot from, Spot to) {
  page.stroke(paper::line(from, {to.x, to.y - 6}), solid(2, red));
  page.fill(paper::polygon({{to.x - 3.5, to.y - 7}, {to.x + 3.5, to.y - 7}, to}), {red});
}

void measure(Drawing& page, Spot a, Spot b, const std::string& name, Spot label, Anchor anchor) {
  page.stroke(paper::line(a, b), solid(0.7, black));
  for (const Spot& end : {a, b}) {
    const bool level = a.y == b.y;
    page.stroke(paper::line({end.x - (level ? 0 : 3), end.y - (level ? 3 : 0)},
                            {end.x + (level ? 0 : 3), end.y + (level ? 3 : 0)}),
                solid(0.7, black));
  }
  page.text(name, label, {.size = 9, .bold = true, .anchor = anchor});
}

class TestSheet {
 public:
  TestSheet(const CutterProfile& cutter, Length thickness, const Locale& locale, Flow& flow)
      : cutter_(cutter), test_(test_cut(cutter, thickness)), locale_(locale), flow_(flow) {}

  void write() {
    flow_.text(locale_.say(title, cutter_.name), {.size = 15, .bold = true});
    flow_.text(
        locale_.say("Scrap %1 square, %2 thick. Measure on the back, twice.", scale(test_.scrap),
                    locale_.measured(test_.thickness, cutter_.scale.unit)),
        {.size = text});
    flow_.text(locale_.say(cautions), {.size = text});
    flow_.gap(6);
    add_bar();
    if (test_.guide || test_.near_stop || test_.far_stop) add_scales();
    add_mark();
    add_corner();
    add_rail();
    add_square();
    flow_.text(locale_.say("Then run the same command with what you measured, --thickness, and -o "
                           "with the file to write."),
               {.size = text, .bold = true});
  }

 private:
  std::string scale(Length length) const { return rule_text(length, cutter_.scale, locale_); }
  bool metric() const { return cutter_.scale.unit != Unit::inch; }
  bool on_left() const { return cutter_.side == GuideSide::left; }

  void add_bar() {
    const Length length = metric() ? millimetres(100) : inches(4);
    flow_.block(22, [&](Drawing& page, Spot at) {
      const double wide = paper::points(length);
      measure(page, {at.x, at.y + 8}, {at.x + wide, at.y + 8},
              locale_.say("Print at full size: this bar is %1", scale(length)),
              {at.x + wide + 8, at.y + 11}, Anchor::left);
    });
  }

  // A drawing on the left, words and lines to write on beside it.
  void section(const std::string& heading, const std::string& words,
               const std::vector<const char*>& measures, double drawing_width, double height,
               const std::function<void(Drawing&, Box)>& draw) {
    flow_.bar(heading, Look{}, height);
    flow_.block(height + 8, [&](Drawing& page, Spot at) {
      draw(page, {at.x, at.y, drawing_width, height});
      const double x = at.x + drawing_width + 16;
      double y = at.y + text;
      for (const std::string& line :
           paper::lines_of(words, at.x + flow_.width() - x, {.size = text})) {
        page.text(line, {x, y}, {.size = text});
        y += text * cutsheet::line_spacing;
      }
      for (const char* name : measures) {
        y += 16;
        page.text(name, {x, y}, {.size = text, .bold = true});
        page.stroke(paper::line({x + 85, y + 2}, {x + 200, y + 2}), solid(0.8, black));
        y += 6;
      }
    });
  }

  void add_scales() {
    std::string settings;
    std::vector<const char*> measures;
    const auto add = [&](const char* name, const std::optional<Length>& shown, const char* option) {
      if (!shown) return;
      settings += (settings.empty() ? "" : ", ") + locale_.say(name, scale(*shown));
      measures.push_back(option);
    };
    add(mark("guide %1"), test_.guide, "--line");
    if (test_.guide) measures.push_back("--line-far");
    add(mark("near stop %1"), test_.near_stop, "--near-end");
    add(mark("far stop %1"), test_.far_stop, "--far-end");
    section(locale_.say("1  Guide and stops"),
            locale_.say(
                "Set by the scales: %1. Make one bevel cut, board face down, edges against "
                "guide and squaring arm. Measure from the edges to the cut, at both of its ends.",
                settings),
            measures, picture, 150, [&](Drawing& page, Box box) { draw_scales(page, box); });
  }

  void draw_scales(Drawing& page, Box box) {
    const double side = box.height - 24;
    const Box b{box.x + 32, box.y + 6, side, side};
    page.fill(paper::rectangle(b), {board});
    page.stroke(paper::rectangle(b), solid(0.8, black));
    if (test_.guide) {
      page.fill(paper::rectangle({on_left() ? b.x - 5 : b.x + side, b.y, 5, side}), {metal});
    }
    page.fill(paper::rectangle({b.x - 5, b.y + side, side + 10, 5}), {metal});
    const auto part = [&](const std::optional<Length>& length, double otherwise) {
      return length ? side * paper::points(*length) / paper::points(test_.scrap) : otherwise;
    };
    const double across = part(test_.guide, side / 4);
    const double x = on_left() ? b.x + across : b.x + side - across;
    const double near = b.y + side - part(test_.near_stop, side / 4);
    const double far = b.y + side - part(test_.far_stop, side * 3 / 4);
    arrow_down(page, {x, far}, {x, near});
    const double edge = on_left() ? b.x : b.x + side;
    const double out = on_left() ? 1 : -1;
    if (test_.guide) {
      const double y = (near + far) / 2;
      measure(page, {edge, y}, {x, y}, "line", {(edge + x) / 2, y - 4}, Anchor::centre);
    }
    const auto upright = [&](double at, double y, const char* name) {
      measure(page, {at, b.y + side}, {at, y}, name, {at + 4, (b.y + side + y) / 2}, Anchor::left);
    };
    if (test_.near_stop) upright(x + out * side * 0.1, near, "near-end");
    if (test_.far_stop) upright(x + out * side * 0.28, far, "far-end");
  }

  void add_mark() {
    section(locale_.say("2  The head's mark"),
            locale_.say(
                "Draw a line across the scrap. Cut toward it and stop with the head's mark on "
                "it; start another cut with the mark on it. Measure how far the blade went past "
                "the line; short of it counts below zero."),
            {"--mark", "--start-mark"}, picture, 112, [&](Drawing& page, Box box) {
              const Box b{box.x + 32, box.y + 4, 126, 68};
              page.fill(paper::rectangle(b), {board});
              page.stroke(paper::rectangle(b), solid(0.8, black));
              const double line = b.y + 40, end = b.y + 56, x = b.x + 44;
              page.stroke(paper::line({b.x + 8, line}, {b.x + b.width - 8, line}),
                          {.width = 0.8, .colour = metal, .dashes = {4, 2}});
              arrow_down(page, {x, b.y + 6}, {x, end});
              measure(page, {x + 14, line}, {x + 14, end}, "mark", {x + 20, end - 4}, Anchor::left);
            });
  }

  std::string mark_at(Length past) const {
    if (past == Length()) return locale_.say("on the crossing line");
    return locale_.say(
        past > Length() ? mark("%1 past the crossing line") : mark("%1 short of the crossing line"),
        amount_text(past, cutter_.scale, locale_));
  }

  std::string corner_words() const {
    return locale_.say(
        "Lay this square on the back, prick its corners through, and draw the four lines. Cut "
        "them: "
        "each start with the mark %1, each end with the mark %2. Then look at the face: measure "
        "how "
        "far the cuts go past the corners; short of one counts below zero.",
        mark_at(test_.start_mark_past), mark_at(test_.mark_past));
  }

  void add_rail() {
    section(
        locale_.say("4  The rail's edge"),
        locale_.say("Draw a line along the rail's edge and make a cut without moving the board. "
                    "Measure from the line to the cut, away from the guide's side; toward it "
                    "counts below zero."),
        {"--rail"}, picture, 66, [&](Drawing& page, Box box) {
          const Box b{box.x + 32, box.y + 2, 126, 60};
          page.fill(paper::rectangle(b), {board});
          const double edge = on_left() ? b.x + 50 : b.x + b.width - 50;
          const double cut = on_left() ? edge + 16 : edge - 16;
          page.fill(
              paper::rectangle({std::min(edge, on_left() ? edge - 24 : edge), b.y, 24, b.height}),
              {metal});
          page.stroke(paper::rectangle(b), solid(0.8, black));
          arrow_down(page, {cut, b.y + 6}, {cut, b.y + 54});
          measure(page, {edge, b.y + 30}, {cut, b.y + 30}, "rail",
                  {cut + (on_left() ? 6 : -6), b.y + 33}, on_left() ? Anchor::left : Anchor::right);
        });
  }

  void add_square() {
    section(
        locale_.say("5  Arm and square"),
        locale_.say("With the straight blade and the arm's stop at %1 cut a piece off, and "
                    "measure its width. Square a blank on this cutter, its sides alike, letter "
                    "its back A, B, C, D clockwise, and measure both diagonals.",
                    scale(test_.arm)),
        {"--piece", "--diagonal-ab", "--diagonal-bc"}, picture, 130, [&](Drawing& page, Box box) {
          const Box b{box.x + 54, box.y + 12, 76, 76};
          page.fill(paper::rectangle(b), {board});
          page.stroke(paper::rectangle(b), solid(0.8, black));
          page.stroke(paper::line({b.x + b.width, b.y}, {b.x, b.y + b.height}), solid(0.7, black));
          page.stroke(paper::line({b.x, b.y}, {b.x + b.width, b.y + b.height}),
                      {.width = 0.7, .colour = black, .dashes = {3, 2}});
          const auto name = [&](const char* edge, double x, double y) {
            page.text(edge, {x, y}, {.size = 9, .bold = true, .anchor = Anchor::centre});
          };
          name("A", b.x + 38, b.y - 3);
          name("B", b.x + 84, b.y + 41);
          name("C", b.x + 38, b.y + 86);
          name("D", b.x - 8, b.y + 41);
          page.text("diagonal-ab", {b.x + b.width + 6, b.y + 8}, {.size = 8, .bold = true});
          page.text("diagonal-bc", {b.x + b.width + 6, b.y + 74}, {.size = 8, .bold = true});
        });
  }

  void add_corner() {
    const double side = paper::points(metric() ? millimetres(75) : inches(3));
    section(locale_.say("3  The over-cut"), corner_words(), {"--corner", "--start-corner"},
            side + 24, side + 24, [&](Drawing& page, Box box) {
              const Box b{box.x + 12, box.y + 12, side, side};
              for (const double y : {b.y, b.y + side}) {
                page.stroke(paper::line({b.x - 10, y}, {b.x + side + 10, y}), solid(0.6, black));
              }
              for (const double x : {b.x, b.x + side}) {
                page.stroke(paper::line({x, b.y - 10}, {x, b.y + side + 10}), solid(0.6, black));
              }
              page.text(locale_.say("%1 square, full size",
                                    scale(metric() ? millimetres(75) : inches(3))),
                        {b.x + side / 2, b.y + side / 2}, {.size = 9, .anchor = Anchor::centre});
              draw_corner(page, {box.x + box.width + 96, box.y + 158});
            });
  }

  // A corner seen from the front, much enlarged: one cut too long, one too short.
  void draw_corner(Drawing& page, Spot corner) {
    page.stroke(paper::line({corner.x - 80, corner.y}, {corner.x + 26, corner.y}), solid(1.6, red));
    page.stroke(paper::line({corner.x, corner.y + 20}, {corner.x, corner.y + 84}), solid(1.6, red));
    page.stroke(paper::line({corner.x, corner.y}, {corner.x, corner.y + 20}),
                {.width = 0.7, .colour = metal, .dashes = {2, 2}});
    measure(page, {corner.x, corner.y - 7}, {corner.x + 26, corner.y - 7},
            locale_.say("past: above zero"), {corner.x + 32, corner.y - 4}, Anchor::left);
    measure(page, {corner.x + 8, corner.y}, {corner.x + 8, corner.y + 20},
            locale_.say("short: below zero"), {corner.x + 14, corner.y + 14}, Anchor::left);
  }

  const CutterProfile& cutter_;
  TestCut test_;
  Locale locale_;
  Flow& flow_;
};

}  // namespace

std::string render_test_sheet(const CutterProfile& cutter, Length thickness, const Locale& locale) {
  const std::string name = locale.say(title, cutter.name);
  std::vector<paper::Page> document;
  Flow flow(paper::usual_page(cutter.scale.unit, locale), name, &document, locale);
  TestSheet(cutter, thickness, locale, flow).write();
  return paper::write_pdf(document, {name, ""});
}

}  // namespace mullion
