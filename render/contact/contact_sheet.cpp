#include "render/contact/contact_sheet.h"

#include <algorithm>
#include <cmath>

#include "render/paper/document.h"

namespace mullion {
namespace {

using paper::Anchor;
using paper::TextStyle;

constexpr double margin = 36, heading = 40, caption = 34, spacing = 14;
constexpr double thumbnail_dpi = 200;

const TextStyle title_style{15, false, {0x20, 0x20, 0x20}, Anchor::left, 0};
const TextStyle number_style{12, true, {0x20, 0x20, 0x20}, Anchor::left, 0};
const TextStyle size_style{8.5, false, {0x20, 0x20, 0x20}, Anchor::left, 0};
const TextStyle composition_style{8, false, {0x60, 0x60, 0x60}, Anchor::left, 0};
constexpr double smallest = 5;  // in points, to be read at arm's length

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

// What stands below each picture: its size, and what its composition is called.
class Captions {
 public:
  Captions(const std::vector<ContactPicture>& pictures, double width, const Locale& locale)
      : width_(width) {
    number_ = paper::text_width(std::to_string(pictures.size()), number_style) + 7;
    for (const ContactPicture& picture : pictures) {
      const auto described = [&](Length side) {
        return locale.described(side, picture.job->scale);
      };
      sizes_.push_back(locale.say("%1 x %2", described(picture.mat->outer.width()),
                                  described(picture.mat->outer.height())));
      names_.push_back(locale.say(suggest::name_of(picture.composition)));
    }
    size_style_ = fitting(sizes_, width_ - number_, size_style);
    name_style_ = fitting(names_, width_, composition_style);
  }

  void draw(paper::Drawing& page, std::size_t i, paper::Spot base) const {
    page.text(std::to_string(i + 1), base, number_style);
    page.text(paper::fitted(sizes_[i], width_ - number_, size_style_), {base.x + number_, base.y},
              size_style_);
    page.text(paper::fitted(names_[i], width_, name_style_), {base.x, base.y + 11}, name_style_);
  }

 private:
  double width_, number_ = 0;  // the room that a number takes
  std::vector<std::string> sizes_, names_;
  TextStyle size_style_, name_style_;
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
  const double height = paper::points(size.height) - 2 * margin - heading;
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
  return paper::write(format, {{size, locale.say("Suggestions"), std::move(page)}},
                      {locale.say("Suggestions %1", job.reference), job.date, 150});
}

}  // namespace mullion
