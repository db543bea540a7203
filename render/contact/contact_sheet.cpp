#include "render/contact/contact_sheet.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "render/paper/usual_page.h"

namespace mullion {
namespace {

using paper::Anchor;
using paper::TextStyle;

constexpr double margin = 36, heading = 40, caption = 34, spacing = 14;
constexpr double thumbnail_dpi = 200;

const TextStyle title_style{15, false, {0x20, 0x20, 0x20}, Anchor::left, 0};
const TextStyle number_style{12, true, {0x20, 0x20, 0x20}, Anchor::left, 0};
const TextStyle size_style{8.5, false, {0x20, 0x20, 0x20}, Anchor::left, 0};
const TextStyle criteria_style{6.5, false, {0x60, 0x60, 0x60}, Anchor::left, 0};

std::string percent(double share) {
  char text[8];
  std::snprintf(text, sizeof text, "%d", static_cast<int>(std::lround(share * 100)));
  return text;
}

std::string criteria_text(const suggest::Criteria& c, const Locale& locale) {
  return locale.say("board %1  borders %2  balance %3  lines %4  symmetry %5  bars %6",
                    percent(c.area), percent(c.borders), percent(c.balance), percent(c.alignment),
                    percent(c.symmetry), percent(c.bars));
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

Result<void> draw_cell(paper::Canvas& canvas, paper::Format format, const ContactPicture& picture,
                       std::size_t number, const Locale& locale, const paper::Box& cell) {
  const Rect extent = proof::seen_extent(*picture.job, *picture.mat);
  const double room = cell.height - caption;
  const double scale =
      std::min(cell.width / paper::points(extent.width()), room / paper::points(extent.height()));
  proof::View view;
  view.scale = scale;
  view.origin = {cell.x - paper::points(extent.left) * scale +
                     (cell.width - paper::points(extent.width()) * scale) / 2,
                 cell.y - paper::points(extent.top) * scale +
                     (room - paper::points(extent.height()) * scale) / 2};
  const proof::Piece piece{picture.job, picture.mat, picture.photographs};
  proof::PieceStyle style;
  style.resolution = {thumbnail_dpi, false};
  if (auto drawn = proof::draw_piece(canvas, format, piece, view, style); !drawn) return drawn;

  const double base = cell.y + room + 15;
  canvas.text(std::to_string(number), {cell.x, base}, number_style);
  const std::string size = locale.say(
      "%1 x %2   score %3", locale.described(picture.mat->outer.width(), picture.job->scale),
      locale.described(picture.mat->outer.height(), picture.job->scale),
      percent(suggest::score(picture.criteria)));
  canvas.text(canvas.fitted(size, cell.width - 18, size_style), {cell.x + 18, base}, size_style);
  canvas.text(canvas.fitted(criteria_text(picture.criteria, locale), cell.width, criteria_style),
              {cell.x, base + 11}, criteria_style);
  return {};
}

}  // namespace

Result<std::string> render_contact_sheet(const std::vector<ContactPicture>& pictures,
                                         paper::Format format, const Locale& locale) {
  const Job& job = *pictures.at(0).job;
  const paper::PageSize size = paper::usual_page(job.scale.unit, locale);
  const double width = paper::points(size.width) - 2 * margin;
  const double height = paper::points(size.height) - 2 * margin - heading;
  paper::Document document(format, {locale.say("Suggestions %1", job.reference), job.date, 150});
  paper::Canvas& canvas = document.add_page(size, locale.say("Suggestions"));
  const std::string title = job.title.empty() ? job.reference : job.title;
  canvas.text(canvas.fitted(title, width, title_style), {margin, margin + 16}, title_style);

  const std::size_t columns = columns_for(pictures.size(), width, height);
  const std::size_t rows = (pictures.size() + columns - 1) / columns;
  const double cell_width = width / static_cast<double>(columns);
  const double cell_height = height / static_cast<double>(rows);
  for (std::size_t i = 0; i < pictures.size(); ++i) {
    const paper::Box cell{margin + cell_width * static_cast<double>(i % columns),
                          margin + heading + cell_height * static_cast<double>(i / columns),
                          cell_width - spacing, cell_height - spacing};
    if (auto drawn = draw_cell(canvas, format, pictures[i], i + 1, locale, cell); !drawn) {
      return tl::unexpected(std::move(drawn.error()));
    }
  }
  return document.finish();
}

}  // namespace mullion
