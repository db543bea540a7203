#include "render/cutsheet/settings_tile.h"

#include <algorithm>

#include "engine/cuts/sheet/scale_text.h"
#include "engine/cuts/sheet/words.h"
#include "render/paper/drawing.h"

namespace mullion::cutsheet {
namespace {

using paper::Box;
using paper::Drawing;
using paper::Spot;
using paper::TextStyle;

constexpr int most_boxes = 60;
constexpr double padding = 4;
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
    const bool dense = look.dense;
    for (const std::string& block :
         {dense ? box.block_in_short : box.block, dense ? box.arm_block_in_short : box.arm_block}) {
      if (block.empty()) continue;
      for (std::string& line : paper::lines_of(block, inner_, bold())) {
        block_.push_back(std::move(line));
      }
    }
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
  double line() const { return (look_.dense ? look_.text() * 1.15 : look_.text()) * line_spacing; }

  void write(Drawing& page, const std::string& words, TextStyle style) {
    y_ += line();
    draw_fitted(page, words, {x_, y_ - look_.text() * 0.25}, inner_, style);
  }

  // What stays is said in one line, or in two where a tile is narrow.
  static bool stays(const Dial& dial) { return dial.set && !dial.moves; }
  std::vector<std::string> stays_text(const Dial& dial) const {
    const std::string all = box_.locale.say("%1 stays %2", dial.name, dial.shows);
    if (paper::text_width(all, plain()) <= inner_ / least_stays) return {all};
    return {box_.locale.say("%1 stays", dial.name), dial.shows};
  }
  double dial_height(const Dial& dial) const {
    if (look_.dense && !stays(dial)) return line();
    if (stays(dial)) return line() * static_cast<double>(stays_text(dial).size());
    if (!dial.set) return line();
    return look_.small() * 1.4 + look_.value() * 1.06;
  }

  // Name and value on one line.
  void draw_dense(Drawing& page, const Dial& dial) {
    y_ += line();
    TextStyle value = bold();
    value.size = look_.value();
    const std::string name = dial.name + " ";
    const double wide = paper::text_width(name, {.size = look_.small()});
    const double base = y_ - look_.text() * 0.25;
    page.text(name, {x_, base}, {.size = look_.small()});
    draw_fitted(page, dial.shows, {x_ + wide, base}, inner_ - wide, value);
  }

  void draw_dial(Drawing& page, const Dial& dial) {
    if (look_.dense && !stays(dial)) return draw_dense(page, dial);
    if (!dial.set) return write(page, box_.locale.say("%1: %2", dial.name, dial.shows), plain());
    if (stays(dial)) {
      TextStyle grey = plain();
      grey.colour = stays_colour;
      for (const std::string& words : stays_text(dial)) write(page, words, grey);
      return;
    }
    page.text(dial.name, {x_, y_ + look_.small() * 1.1}, {.size = look_.small()});
    TextStyle value{.size = look_.value(), .bold = true};
    value.size = std::min(value.size, value.size * inner_ / paper::text_width(dial.shows, value));
    page.text(dial.shows, {x_, y_ + look_.small() * 1.4 + look_.value() * 0.83}, value);
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
  const auto width = [&](Length length) {
    return rule_text(length, plan.cutter.scale, plan.locale);
  };
  const Locale& locale = plan.locale;
  if (settings.block) {
    out.block = locale.say("with a %1", block_text(plan, *settings.block));
    out.block_in_short = locale.say(settings.block->outside ? mark("block %1 outside the guide")
                                                            : mark("block %1 at the guide"),
                                    width(settings.block->width));
  } else if (shown.block) {
    out.block = out.block_in_short = locale.say("no block at the guide");
  }
  if (settings.arm_block) {
    out.arm_block = locale.say("with a %1", arm_block_text(plan, *settings.arm_block));
    out.arm_block_in_short = locale.say("block %1 at the arm", width(*settings.arm_block));
  } else if (shown.arm_block) {
    out.arm_block = out.arm_block_in_short = locale.say("no block at the arm");
  }
  return out;
}

std::string changed_settings(const ToldPlan& plan, const Settings& settings,
                             const Settings& shown) {
  const SettingsBox box = settings_box(plan, settings, shown);
  std::string out;
  const auto add = [&](const std::string& text) { out += (out.empty() ? "" : ", ") + text; };
  for (const Dial& dial : box.dials) {
    if (dial.moves) add(dial.name + " " + dial.shows);
  }
  if (settings.block != shown.block) add(box.block_in_short);
  if (settings.arm_block != shown.arm_block) add(box.arm_block_in_short);
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
