#include "render/cutsheet/head.h"

namespace mullion::cutsheet {
namespace {

constexpr const char* how_boards_lie = mark(
    "Boards lie face down; letter the back's edges clockwise: A top, B, C, D. Red: cut now, "
    "pulled toward you.");
constexpr const char* blanks_title =
    mark("Blanks: straight blade, no backing sheet, guide and stops off");

}  // namespace

void add_head(Flow& flow, const std::string& title, const std::string& summary,
              const std::vector<std::string>& cautions, const Locale& locale, const Look& look) {
  flow.text(title, {.size = look.title(), .bold = true});
  flow.text(summary, {.size = look.text()});
  flow.text(locale.say(how_boards_lie), {.size = look.text()});
  add_sentences(flow, cautions, "!", {.size = look.small()});
  flow.gap(4);
}

void add_blanks(Flow& flow, const std::vector<std::string>& blanks, const Locale& locale,
                const Look& look) {
  flow.bar(locale.say(blanks_title), look, look.text() * 2);
  add_list(flow, blanks, {.size = look.text()});
}

}  // namespace mullion::cutsheet
