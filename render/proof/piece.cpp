#include "render/proof/piece.h"

#include <algorithm>
#include <filesystem>

#include "engine/mat/rect.h"
#include "render/proof/frame.h"
#include "render/proof/shadow.h"
#include "render/proof/tone.h"
#include "render/proof/windows.h"

namespace mullion::proof {
namespace {

constexpr Colour mount_board{0xfb, 0xfa, 0xf6};  // behind floats and plain openings
constexpr Colour placeholder{0xe3, 0xe0, 0xd9}, placeholder_ink{0x6b, 0x66, 0x5d};
constexpr const char* family = "Lato, DejaVu Sans";

constexpr double least_shadow = 1.3, most_shadow = 9;  // points
constexpr Length lip_depth =
    sixty_fourths(24);  // of a moulding's lip above the mat; our own figure
constexpr Length hidden_step =
    sixty_fourths(4);  // by which boards below the top mat are drawn less

double shadow_reach(Length depth, const View& view) {
  return std::clamp(view.size(depth) * 2, least_shadow, most_shadow);
}

// How high the layer's face stands above what shows in its windows: spacers below it lift it.
Length depth_of(const Mat& mat, std::size_t index) {
  Length depth = mat.layers[index].board.thickness;
  for (std::size_t i = index + 1; i < mat.layers.size() && mat.layers[i].board.spacer; ++i) {
    depth += mat.layers[i].board.thickness;
  }
  return depth;
}

void draw_placeholder(paper::Drawing& page, const MatPicture& placed, const View& view) {
  const paper::Box box = view.box(placed.rect);
  page.fill(paper::rectangle(box), {placeholder});
  const double size = std::clamp(std::min(box.width / 9, box.height / 5), 3.0, 10.0);
  paper::Drawing name;
  name.text(
      placed.picture.id, {box.x + box.width / 2, box.y + box.height / 2 + size / 3},
      {.size = size, .colour = placeholder_ink, .anchor = paper::Anchor::centre, .family = family});
  page.clipped(std::move(name), box);
}

Problem unreadable(const Job& job, const Picture& picture, const std::string& why) {
  return {Severity::error, "picture-unreadable", why, picture.place, job.file};
}

Result<void> draw_pictures(paper::Drawing& page, paper::Format format, const Piece& piece,
                           const View& view, const PieceStyle& style) {
  page.fill(paper::rectangle(view.box(outset(piece.mat->outer, -hidden_step))), {mount_board});
  Problems problems;
  for (const MatPicture& placed : piece.mat->pictures) {
    const Picture& picture = placed.picture;
    const auto photograph = piece.photographs->find(picture.image);
    if (photograph == piece.photographs->end()) {
      draw_placeholder(page, placed, view);
      continue;
    }
    const picture::Photograph hung{
        photograph->second.header.turned(static_cast<int>(picture.turned)),
        photograph->second.bytes};
    const auto drawn =
        paper::draw_photograph(page, format, hung, view.box(placed.rect),
                               {picture.zoom, picture.pan_x, picture.pan_y}, style.resolution);
    if (!drawn) {
      problems.push_back(unreadable(*piece.job, picture, picture.image + ": " + drawn.error()));
    }
    if (picture.float_gap) {
      page.stroke(paper::rectangle(view.box(placed.rect)), {0.25, black, {}, 0.25});
    }
  }
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  return {};
}

void draw_layer(paper::Drawing& page, const Mat& mat, int number, const View& view) {
  const auto index = static_cast<std::size_t>(number - 1);
  const MatLayer& layer = mat.layers[index];
  if (layer.board.spacer) return;
  const double reach = shadow_reach(depth_of(mat, index), view);
  for (const Window& window : layer.windows) {
    shadow_inside(page, window.back_edge, view, reach, 0.5);
  }
  draw_board(page, layer, index == 0 ? mat.outer : outset(mat.outer, -hidden_step), view);
  for (const Window& window : layer.windows) {
    draw_bevel(page, window, layer.board.core, view);
    page.stroke(view.path(window.face_edge), {0.2, black, {}, 0.16});
  }
}

// A V cut into the face: its upper left slope in shade, its core in the light.
void draw_groove(paper::Drawing& page, const MatGroove& groove, const Layer& top,
                 const View& view) {
  const double width = std::max(view.size(groove.width), 0.6);
  const paper::Path line = view.path(groove.line);
  page.stroke(line, {width, lit(top.core, -0.05), {}, 1});
  const double shift = -width / 4;
  page.stroke(transformed(line, paper::shifted(shift, shift)),
              {width / 2, lit(top.core, -0.28), {}, 1});
}

void draw_glare(paper::Drawing& page, const paper::Box& box) {
  paper::Drawing glare;
  const double slope = box.height * 0.6, bottom = box.y + box.height;
  for (const auto& [at, width] : {std::pair{0.12, 0.16}, std::pair{0.34, 0.05}}) {
    const double x = box.x + box.width * at + slope, w = box.width * width;
    glare.shade(
        paper::polygon({{x, box.y}, {x + w, box.y}, {x + w - slope, bottom}, {x - slope, bottom}}),
        {{box.x, box.y}, {box.x, bottom}, {{0, white, 0.30}, {0.8, white, 0.02}}});
  }
  page.clipped(std::move(glare), box);
}

}  // namespace

Outline outline_of(const Rect& r) {
  return polygon({{r.left, r.top}, {r.right, r.top}, {r.right, r.bottom}, {r.left, r.bottom}});
}

Result<Photographs> open_photographs(const Job& job) {
  const std::filesystem::path folder = std::filesystem::path(job.file).parent_path();
  Photographs out;
  Problems problems;
  for (const Picture& picture : job.pictures) {
    if (picture.image.empty() || out.contains(picture.image)) continue;
    auto photograph = picture::open_photograph((folder / picture.image).string());
    if (photograph) {
      out.emplace(picture.image, std::move(*photograph));
    } else {
      problems.push_back(unreadable(job, picture, photograph.error()));
    }
  }
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  return out;
}

Rect frame_sight(const Job& job, const Mat& mat) {
  if (!job.frame) return mat.outer;
  const Frame& frame = *job.frame;
  const Length width = frame.rabbet_width - 2 * frame.lip;
  const Length height = frame.rabbet_height - 2 * frame.lip;
  const Length left = half_rounded_down(mat.outer.width() - width);
  const Length top = half_rounded_down(mat.outer.height() - height);
  return {left, top, left + width, top + height};
}

Rect seen_extent(const Job& job, const Mat& mat) {
  return job.frame ? outset(frame_sight(job, mat), job.frame->face_width) : mat.outer;
}

std::vector<PiecePart> parts_of(const Piece& piece, const PieceStyle& style) {
  using Kind = PiecePart::Kind;
  std::vector<PiecePart> parts{{Kind::wall_shadow, 0}, {Kind::pictures, 0}};
  const auto& layers = piece.mat->layers;
  for (std::size_t i = layers.size(); i-- > 0;) {
    if (!layers[i].board.spacer) parts.push_back({Kind::layer, layers[i].number});
  }
  if (!piece.mat->grooves.empty()) parts.push_back({Kind::grooves, 0});
  if (style.glare) parts.push_back({Kind::glass, 0});
  if (piece.job->frame) parts.push_back({Kind::frame, 0});
  return parts;
}

Result<void> draw_part(paper::Drawing& page, paper::Format format, const Piece& piece,
                       const PiecePart& part, const View& view, const PieceStyle& style) {
  const Mat& mat = *piece.mat;
  switch (part.kind) {
    case PiecePart::Kind::wall_shadow:
      shadow_below(page, view.box(seen_extent(*piece.job, mat)), piece.job->frame ? 10 : 6, 0.24);
      break;
    case PiecePart::Kind::pictures:
      return draw_pictures(page, format, piece, view, style);
    case PiecePart::Kind::layer:
      draw_layer(page, mat, part.layer, view);
      break;
    case PiecePart::Kind::grooves:
      for (const MatGroove& groove : mat.grooves) {
        draw_groove(page, groove, mat.layers.front().board, view);
      }
      break;
    case PiecePart::Kind::glass:
      draw_glare(page, view.box(frame_sight(*piece.job, mat)));
      break;
    case PiecePart::Kind::frame: {
      const Rect sight = frame_sight(*piece.job, mat);
      shadow_inside(page, outline_of(sight), view, shadow_reach(lip_depth, view), 0.45);
      draw_frame(page, sight, seen_extent(*piece.job, mat), piece.job->frame->colour, view);
      break;
    }
  }
  return {};
}

Result<void> draw_piece(paper::Drawing& page, paper::Format format, const Piece& piece,
                        const View& view, const PieceStyle& style) {
  Problems problems;
  for (const PiecePart& part : parts_of(piece, style)) {
    const auto drawn = draw_part(page, format, piece, part, view, style);
    if (!drawn) problems.insert(problems.end(), drawn.error().begin(), drawn.error().end());
  }
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  return {};
}

}  // namespace mullion::proof
