#include "printed_sheet.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <regex>
#include <stdexcept>

namespace printed {
namespace {

using oracle::DrawnPage;
using oracle::Label;
using oracle::Spot;

constexpr const char* white = "#ffffff";
constexpr const char* red = "#c02010";
constexpr const char* settings_ground = "#e6ecf1";

struct Box {
  double left = 1e9, top = 1e9, right = -1e9, bottom = -1e9;

  void add(Spot s) {
    left = std::min(left, s.x);
    right = std::max(right, s.x);
    top = std::min(top, s.y);
    bottom = std::max(bottom, s.y);
  }
  bool holds(Spot s) const { return s.x >= left && s.x <= right && s.y >= top && s.y <= bottom; }
};

Box box_of(const std::vector<Spot>& corners) {
  Box box;
  for (const Spot& corner : corners) box.add(corner);
  return box;
}

bool same(double a, double b) {
  return std::abs(a - b) < 0.05;
}

// Squares of one pen, each drawn in one go.
std::vector<Box> tick_boxes(const DrawnPage& page) {
  std::vector<Box> out;
  for (std::size_t i = 0; i + 3 < page.strokes.size(); ++i) {
    const auto* s = &page.strokes[i];
    const bool closed = same(s[0].from.x, s[3].to.x) && same(s[0].from.y, s[3].to.y);
    if (!closed || !same(s[0].width, 1)) continue;
    Box box;
    for (int k = 0; k < 4; ++k) box.add(s[k].from);
    const double wide = box.right - box.left;
    if (same(wide, box.bottom - box.top) && wide < 16) out.push_back(box);
  }
  return out;
}

class PageReader {
 public:
  PageReader(const DrawnPage& page, std::vector<Part>& parts)
      : page_(page), parts_(parts), ticks_(tick_boxes(page)) {}

  void read() {
    for (const Label& label : page_.labels) {
      if (label.at.y > page_.height - 24) continue;  // the foot
      take(label);
    }
    finish_placement();
  }

 private:
  void take(const Label& label) {
    static const std::regex set_up("Set-up [0-9]+"), lying("Edge [A-D]( at the guide|, freehand)"),
        in_picture("[A-D]|[0-9]+(,[0-9]+)*"), by_hand("^[0-9]+  openings? [0-9, ]+:");
    const std::optional<Box> tick = tick_of(label);
    const bool goes_on = follows(label) && !tick;
    if (label.colour == white) {
      goes_on&& last_is(Kind::bar) ? append(label) : start(Kind::bar, label);
    } else if (const auto ground = settings_at(label.at)) {
      if (std::regex_match(label.text, set_up)) {
        start_tile(Kind::settings, label, ground->left);
      } else {
        append(label);
      }
    } else if (std::regex_match(label.text, lying)) {
      start_tile(Kind::placement, label, label.at.x);
    } else if (tick && last_is(Kind::placement) && is_entry(*tick) &&
               !std::regex_search(label.text, by_hand)) {
      parts_.back().entries.push_back(label.text);
      before_ = label;
    } else if (tick) {
      start(Kind::item, label);
    } else if (last_is(Kind::placement) && !parts_.back().entries.empty() && goes_on) {
      parts_.back().entries.back() += " " + label.text;
      before_ = label;
    } else if (last_is(Kind::placement) && parts_.back().entries.empty() && goes_on) {
      parts_.back().turn += (parts_.back().turn.empty() ? "" : " ") + label.text;
      before_ = label;
    } else if (goes_on && last_is(Kind::item)) {
      append(label);
    } else if (std::regex_match(label.text, in_picture)) {
      if (last_is(Kind::placement) && parts_.back().entries.empty()) {
        add_to_picture(label);
      } else if (label.text[0] >= 'A') {
        add_to_back(label);
      }
    } else if (goes_on && last_is(Kind::text)) {
      append(label);
    } else {
      start(Kind::text, label);
    }
  }

  bool last_is(Kind kind) const { return !parts_.empty() && parts_.back().kind == kind && here_; }

  // Whether it stands below the one before, as lines of one text do.
  bool follows(const Label& label) const {
    if (!here_ || !before_) return false;
    const double down = label.at.y - before_->at.y;
    return std::abs(label.at.x - before_->at.x) < 0.5 && down > 0 && down < 1.75 * before_->size;
  }

  void start(Kind kind, const Label& label) {
    finish_placement();
    parts_.push_back({kind, label.text, {}, {}, {}});
    before_ = label;
    here_ = true;
  }
  void append(const Label& label) {
    // A word may be broken at its hyphen.
    parts_.back().text += (parts_.back().text.ends_with('-') ? "" : " ") + label.text;
    before_ = label;
  }

  void start_tile(Kind kind, const Label& label, double left) {
    start(kind, label);
    // To the right of the tile before, below its settings, or in a row of its own below all.
    const bool in_column = tile_ && std::abs(left - *tile_) < 1;
    const double least = !tile_ || left > *tile_ + 1 ? 0 : in_column ? tile_top_ : lowest_tile_;
    if (label.at.y <= least) {
      throw std::runtime_error("\"" + label.text + "\" does not follow what was printed before");
    }
    lowest_tile_ = std::max(lowest_tile_, label.at.y);
    tile_top_ = label.at.y;
    tile_ = left;
    left_ = left;
  }

  std::optional<Box> settings_at(Spot spot) const {
    for (std::size_t i = 0; i < page_.fills.size(); ++i) {
      if (page_.fill_colours[i] != settings_ground) continue;
      const Box box = box_of(page_.fills[i]);
      if (box.holds(spot)) return box;
    }
    return std::nullopt;
  }

  std::optional<Box> tick_of(const Label& label) const {
    for (const Box& tick : ticks_) {
      const double size = tick.right - tick.left;
      const double right = (label.at.x - tick.left) / size, down = (label.at.y - tick.top) / size;
      if (right > 1.5 && right < 1.95 && down > 0.7 && down < 1.1) return tick;
    }
    return std::nullopt;
  }

  bool is_entry(const Box& tick) const {
    if (std::abs(tick.left - left_) > 0.5) return false;
    if (parts_.back().entries.empty()) return true;
    return tick.top - before_->at.y < 0.6 * (tick.bottom - tick.top) + 6;
  }

  static Spot middle_of(const Label& label) {
    return {label.at.x + label.length / 2, label.at.y - label.size * 0.36};
  }

  void add_to_picture(const Label& label) {
    const Spot middle = middle_of(label);
    if (label.colour == red) {
      parts_.back().picture.numbers.push_back({std::stoi(label.text), middle});
    } else if (label.text.size() == 1 && label.text[0] >= 'A') {
      parts_.back().picture.letters[label.text[0]] = middle;
    }
  }

  // The back with its top edge up: lettered clockwise.
  void add_to_back(const Label& label) {
    back_.push_back({label.text[0], middle_of(label)});
    if (back_.size() < 4) return;
    std::map<char, Spot> at(back_.begin(), back_.end());
    back_.clear();
    if (at.size() == 4 && at['A'].y < at['B'].y && at['B'].y < at['C'].y && at['D'].x < at['A'].x &&
        at['A'].x < at['B'].x) {
      return;
    }
    throw std::runtime_error("the edges of a board's back are not lettered clockwise");
  }

  // The board lies within its letters.
  void finish_placement() {
    if (!last_is(Kind::placement) || parts_.back().picture.letters.size() != 4) return;
    Picture& picture = parts_.back().picture;
    Box letters, board;
    for (const auto& [letter, at] : picture.letters) letters.add(at);
    for (const oracle::Stroke& stroke : page_.strokes) {
      if (stroke.colour != "#000000" || !same(stroke.width, 0.8)) continue;
      if (letters.holds(stroke.from) && letters.holds(stroke.to)) {
        board.add(stroke.from);
        board.add(stroke.to);
      }
    }
    picture.upper_left = {board.left, board.top};
    picture.lower_right = {board.right, board.bottom};
    for (std::size_t i = 0; i < page_.fills.size(); ++i) {
      if (page_.fill_colours[i] != red || page_.fills[i].size() < 3) continue;
      if (letters.holds(page_.fills[i].front())) {
        picture.arrows.push_back(arrow_of(page_.fills[i]));
      }
    }
  }

  // The head's base is level, since the rail is drawn upright; a shaft ends at its middle.
  Arrow arrow_of(const std::vector<Spot>& head) const {
    const Spot neck{(head[0].x + head[1].x) / 2, (head[0].y + head[1].y) / 2};
    Arrow arrow{neck, head[2]};
    for (const oracle::Stroke& stroke : page_.strokes) {
      if (stroke.colour != red || !same(stroke.width, 2)) continue;
      if (same(stroke.to.x, neck.x) && same(stroke.to.y, neck.y)) arrow.from = stroke.from;
    }
    return arrow;
  }

  const DrawnPage& page_;
  std::vector<Part>& parts_;
  std::vector<Box> ticks_;
  bool here_ = false;  // a part has begun on this page
  std::optional<Label> before_;
  std::vector<std::pair<char, Spot>> back_;  // letters of a picture of the back
  std::optional<double> tile_;               // left edge of the tile before
  double lowest_tile_ = 0;                   // where the lowest heading on the page stands
  double tile_top_ = 0;                      // where the one before does
  double left_ = 0;
};

}  // namespace

std::vector<Part> parts_of(const std::vector<DrawnPage>& pages) {
  std::vector<Part> out;
  for (const DrawnPage& page : pages) PageReader(page, out).read();
  return out;
}

}  // namespace printed
