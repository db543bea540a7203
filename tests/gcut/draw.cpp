// Draws the best patterns of gcut1 to gcut13, with and without turning, on one page, to be looked
// at:
//   mullion_gcut OUT.pdf
// The instances and their published optima: tests/data/gcut/SOURCE.md.

#include <cstdio>

#include "render/paper/document.h"
#include "tests/engine/sheets/guillotine/gcut.h"

using namespace mullion;

namespace {

constexpr double margin = 28, caption = 12;
constexpr int columns = 4, rows = 7, last_instance = 13;

std::string caption_of(int number, bool may_turn, const GcutInstance& instance,
                       const BestPattern& best) {
  const double sheet =
      static_cast<double>(instance.width.ticks()) * static_cast<double>(instance.height.ticks());
  char text[80];
  std::snprintf(text, sizeof text, "gcut%d%s: %lld, %.2f %%", number, may_turn ? ", turning" : "",
                static_cast<long long>(best.value), 100 * static_cast<double>(best.value) / sheet);
  return text;
}

// Blanks are white, waste is grey.
void draw_pattern(paper::Drawing& page, const GcutInstance& instance, const Pattern& pattern,
                  const paper::Box& box) {
  const auto ticks = [](Length a) { return static_cast<double>(a.ticks()); };
  const double scale =
      std::min(box.width / ticks(instance.width), box.height / ticks(instance.height));
  const paper::Box sheet{box.x, box.y, ticks(instance.width) * scale,
                         ticks(instance.height) * scale};
  page.fill(paper::rectangle(sheet), {{0x9a, 0x9a, 0x9a}});
  for (const PlacedBlank& blank : blanks_in(pattern, Length())) {
    const paper::Box placed{box.x + ticks(blank.left) * scale, box.y + ticks(blank.top) * scale,
                            ticks(blank.width) * scale, ticks(blank.height) * scale};
    page.fill(paper::rectangle(placed), {{0xf1, 0xf4, 0xf8}});
    page.stroke(paper::rectangle(placed), {.width = 0.4, .dashes = {}});
    page.text(std::to_string(blank.blank + 1),
              {placed.x + placed.width / 2, placed.y + placed.height / 2 + 2},
              {.size = 5.5, .anchor = paper::Anchor::centre});
  }
  page.stroke(paper::rectangle(sheet), {.width = 0.8, .dashes = {}});
}

std::string contact_sheet() {
  const paper::PageSize page{millimetres(210), millimetres(297)};
  paper::Drawing drawing;
  const double wide = (paper::points(page.width) - 2 * margin) / columns;
  const double tall = (paper::points(page.height) - 2 * margin) / rows;
  int place = 0;
  for (int number = 1; number <= last_instance; ++number) {
    for (const bool may_turn : {false, true}) {
      const GcutInstance instance = read_gcut(number, may_turn);
      const BestPattern best =
          PatternSearch(instance.width, instance.height, {}, instance.blanks).find(instance.values);
      const paper::Box box{margin + wide * (place % columns), margin + tall * (place / columns),
                           wide - 10, tall - caption - 6};
      ++place;
      drawing.text(caption_of(number, may_turn, instance, best), {box.x, box.y + 8}, {.size = 7});
      draw_pattern(drawing, instance, best.pattern,
                   {box.x, box.y + caption, box.width, box.height});
    }
  }
  return paper::write_pdf({{page, "gcut1 to gcut13", drawing}}, {"gcut patterns", ""});
}

}  // namespace

int main(int count, char** words) {
  if (count != 2) {
    std::fputs("expected the name of the PDF to write\n", stderr);
    return 2;
  }
  oracle::write_file(words[1], contact_sheet());
  return 0;
}
