#include "render/template/sticks.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "engine/mat/rect.h"
#include "render/template/corrected.h"
#include "render/template/running_dimensions.h"
#include "render/template/sheet_frame.h"
#include "render/template/sheet_furniture.h"

namespace mullion {
namespace {

using paper::Anchor;
using paper::Drawing;
using paper::TextStyle;

constexpr Length lap = millimetres(12);  // of a piece over the next
constexpr double stick_gap = 10;         // points, between pieces
constexpr double above_pieces = 24, stick_tick = 16, foot_of_words = 11;
constexpr Length least_piece = inches(3);

const paper::Pen cut_out{0.5, {0, 0, 0}, {}, 1}, line_pen{0.6, {0, 0, 0}, {}, 1},
    join_pen{0.4, {0x40, 0x40, 0x40}, {7, 2, 1.5, 2}, 1};

const TextStyle label_style{8, false, {0, 0, 0}, Anchor::left, 0};
constexpr double beside_label = 16;  // a running dimension's own tick, leader and gap

struct Stick {
  const BoardView* view = nullptr;
  std::string name;        // "Layer 1 of 2: Top mat, across"
  std::string start, end;  // what lies at its ends
  Length length;
  std::vector<DimensionMark> marks;  // distances from its start; places are set where it is drawn
  double height = 0;                 // points: its ticks, the longest label, and its name
};

// One label for all lines at a place: "1, 4: 2 13/16".
std::vector<DimensionMark> gathered(const std::map<Length, std::vector<std::string>>& lines) {
  std::vector<DimensionMark> marks;
  for (const auto& [distance, names] : lines) {
    std::string before = names.front();
    if (names.size() > 3) {
      before += " .. " + names.back();
    } else {
      for (std::size_t i = 1; i < names.size(); ++i) before += ", " + names[i];
    }
    marks.push_back({distance, 0, before + ": "});
  }
  return marks;
}

Stick stick_of(const BoardView& view, bool across) {
  const BoardCuts& board = *view.layers.front();
  const Rect blank = mirrored(board.blank, view.width());
  std::map<Length, std::vector<std::string>> lines;
  const auto add = [&](const std::vector<Window>& windows, const std::string& before) {
    for (const Window& window : windows) {
      const Rect box = mirrored(window.back, view.width());
      for (const Length at : {across ? box.left - blank.left : box.top - blank.top,
                              across ? box.right - blank.left : box.bottom - blank.top}) {
        lines[at].push_back(before + numbers_of(window, "+"));
      }
    }
  };
  add(board.windows(), "");
  if (const BoardCuts* grooves = view.grooves()) add(grooves->panels, "V");
  const Locale& locale = view.locale;
  Stick stick{&view,
              layer_title(view, board) + middle_dot +
                  (across ? locale.say("across, from behind") : locale.say("down, from behind")),
              across ? locale.say("left edge") : locale.say("top edge"),
              across ? locale.say("right edge") : locale.say("bottom edge"),
              across ? blank.width() : blank.height(),
              gathered(lines),
              0};
  double longest = 0;
  for (const DimensionMark& mark : stick.marks) {
    const std::string label = mark.before + dimension_text(mark.distance, view.job->scale, locale);
    longest = std::max(longest, paper::text_width(label, label_style));
  }
  stick.height = foot_of_words + 6 + longest + beside_label + stick_tick;
  return stick;
}

struct Piece {
  const Stick* stick = nullptr;
  Length from, to;  // of its own part; it shows the lap beyond it too
  std::size_t number = 1, count = 1;
};

std::vector<Piece> pieces_of(const Stick& stick, Length longest) {
  std::vector<Piece> pieces;
  const Length own = longest - lap;
  const auto count = static_cast<std::size_t>(
      stick.length <= longest
          ? 1
          : 1 + ((stick.length - longest).ticks() + own.ticks() - 1) / own.ticks());
  for (std::size_t i = 0; i < count; ++i) {
    const Length from = own * static_cast<std::int64_t>(i);
    const Length to = i + 1 == count ? stick.length : from + own;
    pieces.push_back({&stick, from, to, i + 1, count});
  }
  return pieces;
}

// From the upper left corner of the piece; its lower edge is laid on the board's.
Drawing drawn(const Piece& piece) {
  const Stick& stick = *piece.stick;
  const Locale& locale = stick.view->locale;
  const bool last = piece.number == piece.count;
  const Length shown = last ? piece.to : std::min(stick.length, piece.to + lap);
  const auto at = [&](Length place) { return paper::points(place - piece.from); };
  const double wide = at(shown), high = stick.height;
  Drawing drawing;
  drawing.stroke(paper::rectangle({0, 0, wide, high}), cut_out);
  std::vector<DimensionMark> marks;
  paper::Path ticks;
  for (DimensionMark mark : stick.marks) {
    if (mark.distance < piece.from || mark.distance > shown) continue;
    mark.place = at(mark.distance);
    ticks.append(paper::line({mark.place, high}, {mark.place, high - stick_tick}));
    if (mark.distance <= piece.to) marks.push_back(mark);
  }
  if (!ticks.empty()) drawing.stroke(std::move(ticks), line_pen);
  draw_running_dimensions(drawing, marks, DimensionSide::above, high - stick_tick + 1, 4, wide - 4,
                          label_style.size, stick.view->job->scale, locale);
  for (const Length join : {piece.from, piece.to}) {
    if (join == Length() || join == stick.length) continue;
    drawing.stroke(paper::line({at(join), 0}, {at(join), high}), join_pen);
  }
  const TextStyle strong{8, true, {0, 0, 0}, Anchor::left, 0};
  std::string name = stick.name;
  if (piece.count > 1) name += middle_dot + locale.say("piece %1 of %2", piece.number, piece.count);
  if (!stick.view->job->reference.empty()) name = stick.view->job->reference + middle_dot + name;
  TextStyle right = strong;
  right.anchor = Anchor::right;
  double room = wide - 12;
  if (last) {
    drawing.text(stick.end, {wide - 5, foot_of_words}, right);
    room -= paper::text_width(stick.end, strong) + 10;
  }
  if (piece.number == 1) name = stick.start + middle_dot + name;
  drawing.text(paper::fitted(name, room, strong), {5, foot_of_words}, strong);
  return drawing;
}

Drawing instructions(const Locale& locale, const SheetFrame& frame) {
  Drawing drawing;
  draw_lines(drawing,
             locale.say("Cut out the sticks; lay pieces over one another, dash-dotted line on "
                        "dash-dotted line. Board face down: the stick's lower edge along the "
                        "board's edge, its end at the corner. Tick off every line there, and at "
                        "the opposite edge; join the marks with a straightedge."),
             {frame.content.x, frame.content.y + 8}, frame.content.width,
             {7.5, false, {0, 0, 0}, Anchor::left, 0}, 9.5);
  return drawing;
}

}  // namespace

Result<Pages> stick_pages(const std::vector<BoardView>& views, const TemplateOptions& asked) {
  const BoardView& first = views.front();
  const TemplateOptions options = with_sheet(asked, first.job->scale);
  const auto [shorter, longer] = std::minmax(options.sheet->width, options.sheet->height);
  const SheetFrame frame = sheet_frame(options, {longer, shorter});
  const Length longest = Length::from_ticks(
      static_cast<std::int64_t>(std::floor((frame.content.width - 1) * 40640 / 72)));
  std::vector<Stick> sticks;
  for (const BoardView& view : views) {
    sticks.push_back(stick_of(view, true));
    sticks.push_back(stick_of(view, false));
  }
  const double room = frame.content.height - above_pieces;
  const bool fits = std::all_of(sticks.begin(), sticks.end(),
                                [&](const Stick& stick) { return stick.height <= room; });
  if (longest < least_piece || !fits) {
    return tl::unexpected(Problems{template_problem(
        "template-paper", "the paper \"" + options.sheet->name + "\" is too small for sticks")});
  }
  const SheetFoot foot(frame, first, options);
  std::vector<Drawing> sheets;
  double y = room;
  for (const Stick& stick : sticks) {
    for (const Piece& piece : pieces_of(stick, longest)) {
      if (sheets.empty() || y + stick.height > room) {
        sheets.push_back(instructions(first.locale, frame));
        y = 0;
      }
      sheets.back().place(
          drawn(piece), paper::shifted(frame.content.x + 0.5, frame.content.y + above_pieces + y));
      y += stick.height + stick_gap;
    }
  }
  Pages pages;
  for (std::size_t i = 0; i < sheets.size(); ++i) {
    const std::string name = first.locale.say("Marking sticks %1", i + 1);
    foot.draw_rules(sheets[i]);
    foot.draw_words(sheets[i], name);
    SheetPage page{frame.size, name, {}};
    page.drawing.place(std::move(sheets[i]), undoing(options, frame.size));
    pages.push_back(std::move(page));
  }
  return pages;
}

}  // namespace mullion
