#include "render/cutsheet/settings_tile.h"

#include <algorithm>

#include "engine/cuts/sheet/words.h"
#include "render/paper/drawing.h"

namespace mullion::cutsheet {
namespace {

using paper::Box;
using paper::Drawing;
using paper::Spot;
using paper::TextStyle;

constexpr int most_boxes = 60;
constexpr double padding = 5;
constexpr double least_stays =
    0.85;  // what stays is set smaller, down to this, before it is broken
constexpr Colour settings_colour{0xe6, 0xec, 0xf1};
constexpr Colour stays_colour{0x70, 0x70, 0x70};

// How the boxes of a tally stand.
struct Boxes {
  int count = 0, a_row = 1;
  double size = 0;

  int rows() const { return (count + a_row - 1) / a_row; }
  double height() const { return size * rows(); }
};

Boxes boxes_for(int quantity, const Look& look, double width) {
  Boxes out;
  out.count = quantity > most_boxes ? (quantity + 9) / 10 : quantity;
  out.size = look.small() * 1.25;
  out.a_row = std::clamp(static_cast<int>(width / out.size), 1, 10);
  return out;
}

std::string heading_of(const Tally& tally, const Locale& locale) {
  return tally.quantity > most_boxes ? locale.say("%1, a box for ten", tally.heading)
                                     : tally.heading;
}

// A settings box as it is drawn in a given width.
class Painter {
 public:
  Painter(const SettingsBox& box, const Look& look, double width)
      : box_(box), look_(look), inner_(width - tile_gap - 2 * padding) {
    if (!box.block.empty()) block_ = paper::lines_of(box.block, inner_, bold());
    for (const std::string& note : box.notes) {
      for (std::string& line : paper::lines_of(note, inner_, plain()))
        notes_.push_back(std::move(line));
    }
  }

  double height() const {
    double height = line() + 2;
    for (const Dial& dial : box_.dials) height += dial_height(dial);
    height += line() * static_cast<double>(block_.size() + notes_.size());
    for (const Tally& tally : box_.tallies) {
      height += line() + boxes_for(tally.quantity, look_, inner_).height() + 3;
    }
    return height + padding;
  }

  void draw(Drawing& page, const Box& at, double ground) {
    page.fill(paper::rectangle({at.x, at.y, at.width - tile_gap, ground}), {settings_colour});
    x_ = at.x + padding;
    y_ = at.y + 2;
    write(page, box_.title, tile_heading(look_));
    for (std::size_t i = 0; i < box_.dials.size(); ++i) {
      draw_dial(page, box_.dials[i]);
      if (i > 0) continue;
      for (const std::string& words : block_) write(page, words, bold());
    }
    for (const std::string& words : notes_) write(page, words, plain());
    for (const Tally& tally : box_.tallies) draw_tally(page, tally);
  }

 private:
  TextStyle plain() const { return {.size = look_.text()}; }
  TextStyle bold() const { return {.size = look_.text(), .bold = true}; }
  double line() const { return look_.text() * line_spacing; }

  void write(Drawing& page, const std::string& words, TextStyle style) {
    y_ += line();
    draw_fitted(page, words, {x_, y_ - look_.text() * 0.25}, inner_, style);
  }

  // What stays is said in one line, or in two where a tile is narrow.
  static bool stays(const Dial& dial) { return dial.set && !dial.moves; }
  std::vector<std::string> stays_text(const Dial& dial) const {
    const std::string value =
        dial.remainder.empty() ? dial.shows : dial.shows + " " + dial.remainder;
    const std::string all = box_.locale.say("%1 stays %2", dial.name, value);
    if (paper::text_width(all, plain()) <= inner_ / least_stays) return {all};
    return {box_.locale.say("%1 stays", dial.name), value};
  }
  double dial_height(const Dial& dial) const {
    if (stays(dial)) return line() * static_cast<double>(stays_text(dial).size());
    if (!dial.set) return line();
    return look_.small() * 1.4 + look_.value() * 1.06;
  }

  void draw_dial(Drawing& page, const Dial& dial) {
    if (!dial.set) return write(page, box_.locale.say("%1: %2", dial.name, dial.shows), plain());
    if (stays(dial)) {
      TextStyle grey = plain();
      grey.colour = stays_colour;
      for (const std::string& words : stays_text(dial)) write(page, words, grey);
      return;
    }
    page.text(dial.name, {x_, y_ + look_.small() * 1.1}, {.size = look_.small()});
    TextStyle value{.size = look_.value(), .bold = true};
    TextStyle rest = bold();
    const double wide = paper::text_width(dial.shows, value) +
                        (dial.remainder.empty() ? 0 : paper::text_width(dial.remainder, rest) + 5);
    if (wide > inner_) {
      value.size *= inner_ / wide;
      rest.size *= inner_ / wide;
    }
    const double base = y_ + look_.small() * 1.4 + look_.value() * 0.83;
    page.text(dial.shows, {x_, base}, value);
    if (!dial.remainder.empty()) {
      page.text(dial.remainder, {x_ + paper::text_width(dial.shows, value) + 5, base}, rest);
    }
    y_ += dial_height(dial);
  }

  void draw_tally(Drawing& page, const Tally& tally) {
    write(page, heading_of(tally, box_.locale), bold());
    const Boxes boxes = boxes_for(tally.quantity, look_, inner_);
    for (int i = 0; i < boxes.count; ++i) {
      const int row = i / boxes.a_row;
      tick_box(page, {x_ + boxes.size * (i % boxes.a_row), y_ + 1 + boxes.size * row},
               boxes.size * 0.8);
    }
    y_ += boxes.height() + 3;
  }

  const SettingsBox& box_;
  const Look& look_;
  double inner_;
  std::vector<std::string> block_, notes_;
  double x_ = 0, y_ = 0;
};

}  // namespace

SettingsBox settings_box(const ToldPlan& plan, const Settings& settings, const Settings& shown) {
  SettingsBox out;
  out.dials = dials_of(plan, settings, shown);
  out.locale = plan.locale;
  if (settings.block) out.block = plan.locale.say("with a %1", block_text(plan, *settings.block));
  return out;
}

Tile settings_tile(const SettingsBox& box, const Look& look, double width) {
  Tile tile;
  tile.leads = true;
  tile.height = Painter(box, look, width).height();
  tile.draw = [=](Drawing& page, const Box& at) {
    Painter(box, look, width).draw(page, at, at.height);
  };
  return tile;
}

Tile under_settings(const SettingsBox& box, const Tile& below, const Look& look, double width) {
  const double top = Painter(box, look, width).height();
  Tile tile;
  tile.height = top + 3 + below.height;
  tile.draw = [=](Drawing& page, const Box& at) {
    Painter(box, look, width).draw(page, at, top);
    below.draw(page, {at.x, at.y + top + 3, at.width, at.height - top - 3});
  };
  return tile;
}

}  // namespace mullion::cutsheet
