#include "render/proof/stage.h"

#include <algorithm>
#include <sstream>

#include "engine/mat/rect.h"
#include "render/proof/markup.h"
#include "render/proof/sizes.h"
#include "render/proof/words.h"

namespace mullion::proof {
namespace {

constexpr double longest_side = 680, around = 34;  // points
constexpr picture::Resolution for_screens{200, false};

struct Stage {
  View view;
  double width = 0, height = 0;
};

// All choices are drawn at one scale, on stages of one size, the piece in the middle.
Stage stage_of(const Sheet& sheet, const Piece& piece) {
  Length width, height;
  for (const Choice& choice : sheet.choices) {
    const Rect extent = seen_extent(*choice.piece.job, *choice.piece.mat);
    width = std::max(width, extent.width());
    height = std::max(height, extent.height());
  }
  Stage stage;
  stage.view.scale = std::min(1.0, longest_side / paper::points(std::max(width, height)));
  stage.width = 2 * around + stage.view.size(width);
  stage.height = 2 * around + stage.view.size(height);
  const Rect extent = seen_extent(*piece.job, *piece.mat);
  stage.view.origin = {
      (stage.width - stage.view.size(extent.width())) / 2 - stage.view.size(extent.left),
      (stage.height - stage.view.size(extent.height())) / 2 - stage.view.size(extent.top)};
  return stage;
}

Result<std::string> part_markup(const Sheet& sheet, std::size_t choice, const Stage& stage,
                                const PiecePart& part) {
  const Piece& piece = sheet.choices[choice].piece;
  PieceStyle style = sheet.style;
  style.resolution = for_screens;
  paper::Drawing drawing;
  const auto drawn = draw_part(drawing, paper::Format::svg, piece, part, stage.view, style);
  if (!drawn) return tl::unexpected(drawn.error());
  const std::string key = part_key(part);
  return "<g data-part=\"" + key + "\">\n" +
         paper::svg_elements(drawing, letter_of(choice) + key + "-") + "</g>\n";
}

std::string number(double value) {
  std::ostringstream out;
  out.imbue(std::locale::classic());
  out.precision(8);
  out << value;
  return out.str();
}

std::string opening_markup(const Job& job, const SeenOpening& opening, const View& view,
                           const Locale& locale) {
  const SizeText text = size_text(opening.sight.width(), opening.sight.height(), job.scale, locale);
  const paper::Box box = view.box(opening.sight);
  const std::string label = locale.say("Opening %1: %2 (%3)", opening.number, text.own, text.other);
  return "<rect class=\"opening\" tabindex=\"0\" role=\"button\" aria-label=\"" + escaped(label) +
         "\" x=\"" + number(box.x) + "\" y=\"" + number(box.y) + "\" width=\"" + number(box.width) +
         "\" height=\"" + number(box.height) + "\"><title>" + escaped(label) + "</title></rect>\n";
}

}  // namespace

std::string part_key(const PiecePart& part) {
  switch (part.kind) {
    case PiecePart::Kind::wall_shadow:
      return "shadow";
    case PiecePart::Kind::pictures:
      return "pictures";
    case PiecePart::Kind::layer:
      return "layer-" + std::to_string(part.layer);
    case PiecePart::Kind::grooves:
      return "grooves";
    case PiecePart::Kind::glass:
      return "glass";
    case PiecePart::Kind::frame:
      return "frame";
  }
  return {};
}

std::string stage_label(const Sheet& sheet, std::size_t choice) {
  const std::string title = words::title_of(*sheet.choices[choice].piece.job);
  if (sheet.choices.size() == 1) return sheet.locale.say("Picture of %1", title);
  return sheet.locale.say("Picture of %1, choice %2", title, letter_of(choice));
}

Result<std::string> stage_markup(const Sheet& sheet, std::size_t choice) {
  const Piece& piece = sheet.choices[choice].piece;
  const Stage stage = stage_of(sheet, piece);
  std::string out =
      "<svg xmlns=\"http://www.w3.org/2000/svg\" "
      "xmlns:xlink=\"http://www.w3.org/1999/xlink\" role=\"group\" aria-label=\"" +
      escaped(stage_label(sheet, choice)) + "\" viewBox=\"0 0 " + number(stage.width) + " " +
      number(stage.height) + "\">\n";
  for (const PiecePart& part : parts_of(piece, sheet.style)) {
    const auto markup = part_markup(sheet, choice, stage, part);
    if (!markup) return tl::unexpected(markup.error());
    out += *markup;
  }
  for (const SeenOpening& opening : seen_openings(*piece.mat)) {
    out += opening_markup(*piece.job, opening, stage.view, sheet.locale);
  }
  return out + "</svg>";
}

}  // namespace mullion::proof
