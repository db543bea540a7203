#include "engine/mat/checks.h"

#include <algorithm>

#include "engine/mat/rect.h"

namespace mullion {
namespace {

constexpr Length least_overlap = sixty_fourths(4);
constexpr Length least_float = sixty_fourths(8);
constexpr std::int64_t bar_thicknesses = 6;
constexpr Length oversize_short = inches(40), oversize_long = inches(60);
constexpr Length small_border = inches(2), large_border = inches(3);
constexpr Length small_board_short = inches(11), small_board_long = inches(14);

class Checker {
 public:
  Checker(const Job& job, const Layout& layout, const Mat& mat)
      : job_(job), layout_(layout), mat_(mat) {
    collect(job.arrangement);
  }

  Problems run() {
    beyond_board();
    bars();
    pictures();
    borders();
    board();
    return std::move(found_);
  }

 private:
  void collect(const Node& node) {
    if (const auto* opening = std::get_if<Opening>(&node.what)) {
      places_.push_back(opening->place);
      return;
    }
    for (const Node& child : std::get<Group>(node.what).children) collect(child);
  }

  std::string text(Length length) const { return describe(length, job_.scale); }
  Place place_of(int number) const { return places_.at(static_cast<std::size_t>(number) - 1); }
  std::string name(int number) const {
    return "opening " + std::to_string(number) + " \"" +
           layout_.openings[static_cast<std::size_t>(number) - 1].id + "\"";
  }

  void add(std::string_view code, std::string message, Place place) {
    const auto& table = check_table();
    const auto info = std::find_if(table.begin(), table.end(),
                                   [&](const CheckInfo& entry) { return entry.code == code; });
    found_.push_back({info->severity, std::string(code), std::move(message), place, job_.file});
  }

  void beyond_board() {
    for (const MatLayer& layer : mat_.layers) {
      for (const Window& window : layer.windows) {
        const int number = window.openings.front();
        if (!contains(layer.outer, outset(window.back, layer.run))) {
          const bool outside = !contains(layer.outer, window.back);
          add(outside ? "check-beyond-board" : "check-border-stack",
              name(number) +
                  (outside ? " lies beyond the edge of layer "
                           : " leaves no room for its bevel at the edge of layer ") +
                  std::to_string(layer.number),
              place_of(number));
        }
      }
    }
  }

  void bars() {
    const Length thickness = mat_.layers.front().board.thickness;
    for (std::size_t i = 0; i < layout_.openings.size(); ++i) {
      for (std::size_t j = i + 1; j < layout_.openings.size(); ++j) {
        const PlacedOpening &a = layout_.openings[i], &b = layout_.openings[j];
        const Length across = std::max(b.rect.left - a.rect.right, a.rect.left - b.rect.right);
        const Length down = std::max(b.rect.top - a.rect.bottom, a.rect.top - b.rect.bottom);
        const Length bar = std::max(across, down);
        const std::string both = name(a.number) + " and " + name(b.number);
        if (bar < Length()) {
          add("check-overlapping", both + " overlap by " + text(-bar), place_of(b.number));
        } else if (bar <= thickness * 2) {
          add("check-overcuts-meet",
              "the bar between " + both + " is " + text(bar) + " wide; the over-cuts take " +
                  text(thickness * 2),
              place_of(b.number));
        } else if (bar < thickness * bar_thicknesses) {
          add("check-bar-thin",
              "the bar between " + both + " is " + text(bar) + " wide on board " + text(thickness) +
                  " thick",
              place_of(b.number));
        }
      }
    }
  }

  void pictures() {
    for (const MatPicture& picture : mat_.pictures) {
      const Window* lowest = lowest_window(picture.opening);
      if (lowest == nullptr) continue;
      if (picture.picture.float_gap) {
        if (*picture.picture.float_gap < least_float) {
          add("check-float-small",
              "the board around the floated picture \"" + picture.picture.id + "\" is only " +
                  text(*picture.picture.float_gap),
              picture.picture.place);
        }
        continue;
      }
      const Rect &held = lowest->back, &edge = picture.rect;
      const Length overlap = std::min({held.left - edge.left, held.top - edge.top,
                                       edge.right - held.right, edge.bottom - held.bottom});
      if (overlap <= Length()) {
        add("check-not-held",
            "the picture \"" + picture.picture.id + "\" is not held in " + name(picture.opening) +
                ": the mat covers its edge by " + text(overlap),
            picture.picture.place);
      } else if (overlap < least_overlap) {
        add("check-overlap-small",
            "the mat covers the edge of \"" + picture.picture.id + "\" by only " + text(overlap),
            picture.picture.place);
      }
    }
  }

  const Window* lowest_window(int opening) const {
    const Window* lowest = nullptr;
    for (const MatLayer& layer : mat_.layers) {
      for (const Window& window : layer.windows) {
        if (std::find(window.openings.begin(), window.openings.end(), opening) ==
            window.openings.end()) {
          continue;
        }
        if (lowest == nullptr || contains(lowest->back, window.back)) lowest = &window;
      }
    }
    return lowest;
  }

  void borders() {
    const Sides& sides = layout_.borders;
    const Length least = std::min({sides.left, sides.top, sides.right, sides.bottom});
    if (job_.frame && job_.frame->lip * 2 > least) {
      add("check-under-lip",
          "the frame's lip of " + text(job_.frame->lip) + " hides half or more of a border of " +
              text(least),
          job_.frame->place);
    }
    if (sides.bottom < sides.top) {
      add("check-bottom-light",
          "the bottom border is " + text(sides.bottom) + ", the top one " + text(sides.top),
          job_.borders.place);
    }
    const bool small = std::min(layout_.width, layout_.height) <= small_board_short &&
                       std::max(layout_.width, layout_.height) <= small_board_long;
    const Length wanted = small ? small_border : large_border;
    if (least < wanted) {
      add("check-borders-least",
          "the narrowest border is " + text(least) + "; a course sheet asks for " + text(wanted) +
              " on a board of this size",
          job_.borders.place);
    }
  }

  void board() {
    if (std::min(layout_.width, layout_.height) > oversize_short ||
        std::max(layout_.width, layout_.height) > oversize_long) {
      add("check-board-large",
          "the board is " + text(layout_.width) + " x " + text(layout_.height) +
              ", larger than a sheet of 40 x 60 in",
          job_.outer_place);
    }
  }

  const Job& job_;
  const Layout& layout_;
  const Mat& mat_;
  std::vector<Place> places_;
  Problems found_;
};

}  // namespace

Problems check_mat(const Job& job, const Layout& layout, const Mat& mat) {
  return Checker(job, layout, mat).run();
}

}  // namespace mullion
