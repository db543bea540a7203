#include "render/contact/contact_sheet.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "render/paper/document.h"

namespace mullion {
namespace {

using paper::Anchor;
using paper::TextStyle;

constexpr double margin = 36, heading = 40, caption = 34, spacing = 14, foot = 22;
constexpr double legend_leading = 9.5;
constexpr double thumbnail_dpi = 200;

const TextStyle title_style{15, false, {0x20, 0x20, 0x20}, Anchor::left, 0};
const TextStyle number_style{12, true, {0x20, 0x20, 0x20}, Anchor::left, 0};
const TextStyle size_style{8.5, false, {0x20, 0x20, 0x20}, Anchor::left, 0};
const TextStyle criteria_style{6.5, false, {0x60, 0x60, 0x60}, Anchor::left, 0};
constexpr double smallest = 5;  // in points, to be read at arm's length

std::string percent(double share) {
  char text[8];
  std::snprintf(text, sizeof text, "%d", static_cast<int>(std::lround(share * 100)));
  return text;
}

std::string criteria_text(const suggest::Criteria& c, const Locale& locale) {
  return locale.say("area %1  borders %2  balance %3  alignment %4  symmetry %5  bars %6  shape %7",
                    percent(c.area), percent(c.borders), percent(c.balance), percent(c.alignment),
                    percent(c.symmetry), percent(c.bars), percent(c.shape));
}

// What the figures mean, at the foot of the page.
std::string legend(const Locale& locale) {
  return locale.say(
      "Figures of 0 to 100. Area: the openings fill the board. Borders: alike on all sides. "
      "Balance: "
      "the openings' weight lies a little above the middle. Alignment: edges lie in line. "
      "Symmetry: "
      "the halves mirror each other. Bars: alike between neighbours. Shape: the board is not long. "
      "The score is their weighted sum.");
}

// Of all numbers of columns the one that gives the largest cells for square pictures.
std::size_t columns_for(std::size_t count, double width, double height) {
  std::size_t best = 1;
  double largest = 0;
  for (std::size_t columns = 1; columns <= count; ++columns) {
    const double rows = std::ceil(static_cast<double>(count) / static_cast<double>(columns));
    const double side = std::min(width / static_cast<double>(columns), height / rows - caption);
    if (side > largest) {
      largest = side;
      best = columns;
    }
  }
  return best;
}

std::string width_of(const ContactPicture& picture, const Locale& locale) {
  return locale.described(picture.mat->outer.width(), picture.job->scale);
}

std::string height_of(const ContactPicture& picture, const Locale& locale) {
  return locale.described(picture.mat->outer.height(), picture.job->scale);
}

std::string score_of(const ContactPicture& picture) {
  return percent(suggest::score(picture.criteria));
}

// The style in which every one of the texts fits, or as small as it may become.
TextStyle fitting(const std::vector<std::string>& texts, double width, TextStyle style) {
  const double least = smallest / style.size;
  TextStyle narrowest = style;
  for (const std::string& text : texts) {
    const TextStyle narrow = paper::narrowed(text, width, style, least);
    if (narrow.size < narrowest.size) narrowest = narrow;
  }
  return narrowest;
}

// What stands below each picture: its size and score in one line or in two, and where there is room
// its criteria.
class Captions {
 public:
  Captions(const std::vector<ContactPicture>& pictures, double width, const Locale& locale)
      : width_(width) {
    number_ = paper::text_width(std::to_string(pictures.size()), number_style) + 7;
    for (const ContactPicture& picture : pictures) {
      first_.push_back(locale.say("%1 x %2   score %3", width_of(picture, locale),
                                  height_of(picture, locale), score_of(picture)));
      second_.push_back(criteria_text(picture.criteria, locale));
    }
    has_criteria_ = fit(second_, 0, criteria_style);
    if (!has_criteria_) shorten(pictures, locale);
    first_style_ = fitting(first_, width_ - number_, size_style);
    second_style_ = fitting(second_, width_, criteria_style);
  }

  bool has_criteria() const { return has_criteria_; }

  void draw(paper::Drawing& page, std::size_t i, paper::Spot base) const {
    page.text(std::to_string(i + 1), base, number_style);
    page.text(paper::fitted(first_[i], width_ - number_, first_style_), {base.x + number_, base.y},
              first_style_);
    page.text(paper::fitted(second_[i], width_, second_style_), {base.x, base.y + 11},
              second_style_);
  }

 private:
  void shorten(const std::vector<ContactPicture>& pictures, const Locale& locale) {
    const bool in_one_line = fit(first_, number_, size_style);
    for (std::size_t i = 0; i < pictures.size(); ++i) {
      second_[i] = in_one_line ? "" : locale.say("score %1", score_of(pictures[i]));
      if (in_one_line) continue;
      first_[i] =
          locale.say("%1 x %2", width_of(pictures[i], locale), height_of(pictures[i], locale));
    }
  }

  bool fit(const std::vector<std::string>& texts, double before, const TextStyle& style) const {
    const TextStyle least = fitting(texts, width_ - before, style);
    return std::all_of(texts.begin(), texts.end(), [&](const std::string& text) {
      return paper::text_width(text, least) <= width_ - before;
    });
  }

  double width_, number_ = 0;  // the room that a number takes
  std::vector<std::string> first_, second_;
  TextStyle first_style_, second_style_;
  bool has_criteria_ = false;
};

Result<void> draw_piece(paper::Drawing& page, paper::Format format, const ContactPicture& picture,
                        const paper::Box& room) {
  const Rect extent = proof::seen_extent(*picture.job, *picture.mat);
  const double scale = std::min(room.width / paper::points(extent.width()),
                                room.height / paper::points(extent.height()));
  proof::View view;
  view.scale = scale;
  view.origin = {room.x - paper::points(extent.left) * scale +
                     (room.width - paper::points(extent.width()) * scale) / 2,
                 room.y - paper::points(extent.top) * scale +
                     (room.height - paper::points(extent.height()) * scale) / 2};
  const proof::Piece piece{picture.job, picture.mat, picture.photographs};
  proof::PieceStyle style;
  style.resolution = {thumbnail_dpi, false};
  return proof::draw_piece(page, format, piece, view, style);
}

}  // namespace

Result<std::string> render_contact_sheet(const std::vector<ContactPicture>& pictures,
                                         paper::Format format, const Locale& locale) {
  const Job& job = *pictures.at(0).job;
  const paper::PageSize size = paper::usual_page(job.scale.unit, locale);
  const double width = paper::points(size.width) - 2 * margin;
  const double height = paper::points(size.height) - 2 * margin - heading - foot;
  paper::Drawing page;
  const std::string title = job.title.empty() ? job.reference : job.title;
  page.text(paper::fitted(title, width, title_style), {margin, margin + 16}, title_style);

  const std::size_t columns = columns_for(pictures.size(), width, height);
  const std::size_t rows = (pictures.size() + columns - 1) / columns;
  const double cell_width = width / static_cast<double>(columns);
  const double cell_height = height / static_cast<double>(rows);
  const Captions captions(pictures, cell_width - spacing, locale);
  for (std::size_t i = 0; i < pictures.size(); ++i) {
    const std::size_t row = i / columns;
    const paper::Box room{margin + cell_width * static_cast<double>(i % columns),
                          margin + heading + cell_height * static_cast<double>(row),
                          cell_width - spacing, cell_height - spacing - caption};
    if (auto drawn = draw_piece(page, format, pictures[i], room); !drawn) {
      return tl::unexpected(std::move(drawn.error()));
    }
    captions.draw(page, i, {room.x, room.y + room.height + 15});
  }
  if (captions.has_criteria()) {
    paper::draw_lines(page, legend(locale),
                      {margin, margin + heading + height + criteria_style.size}, width,
                      criteria_style, legend_leading);
  }
  return paper::write(format, {{size, locale.say("Suggestions"), std::move(page)}},
                      {locale.say("Suggestions %1", job.reference), job.date, 150});
}

}  // namespace mullion
