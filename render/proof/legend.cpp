#include <algorithm>

#include "render/proof/blocks.h"
#include "render/proof/sizes.h"
#include "render/proof/tone.h"
#include "render/proof/type.h"

namespace mullion::proof {
namespace {

constexpr double key_width = 132, key_height = 108, gap = 22, materials_width = 118;
constexpr double column_gap = 10, head = 15, swatch = 9, material_row = 24;

struct Row {
  std::string label, own, other;
};

Row row_of(const std::string& label, const SizeText& text) {
  return {label, text.own, text.other};
}

std::vector<Row> border_rows(const Job& job, const Mat& mat) {
  Rect all = mat.layers.front().windows.empty() ? mat.outer : mat.layers.front().windows[0].back;
  for (const Window& window : mat.layers.front().windows) {
    all = {std::min(all.left, window.back.left), std::min(all.top, window.back.top),
           std::max(all.right, window.back.right), std::max(all.bottom, window.back.bottom)};
  }
  const Length left = all.left - mat.outer.left, right = mat.outer.right - all.right;
  const Length top = all.top - mat.outer.top, bottom = mat.outer.bottom - all.bottom;
  const auto text = [&](Length length) { return length_text(length, job.scale); };
  if (left == right && top == bottom && left == top) return {row_of("Borders", text(left))};
  std::vector<Row> rows;
  if (left == right && left == top) {
    return {row_of("Borders", text(left)), row_of("Bottom border", text(bottom))};
  }
  if (left == right) {
    rows.push_back(row_of("Side borders", text(left)));
  } else {
    rows = {row_of("Left border", text(left)), row_of("Right border", text(right))};
  }
  if (top == bottom) {
    rows.push_back(row_of("Top, bottom", text(top)));
  } else {
    rows.push_back(row_of("Top border", text(top)));
    rows.push_back(row_of("Bottom border", text(bottom)));
  }
  return rows;
}

std::vector<Row> size_rows(const Piece& piece) {
  const Job& job = *piece.job;
  std::vector<Row> rows;
  if (job.frame) {
    const Rect extent = seen_extent(job, *piece.mat);
    rows.push_back(
        row_of("Outside of frame", size_text(extent.width(), extent.height(), job.scale)));
  }
  const Rect& outer = piece.mat->outer;
  rows.push_back(row_of("Mat", size_text(outer.width(), outer.height(), job.scale)));
  for (Row& row : border_rows(job, *piece.mat)) rows.push_back(std::move(row));
  const auto groups = group_by_size(*piece.mat);
  for (const SizeGroup& group : groups) {
    std::string label =
        (group.numbers.find_first_of(",\xE2") == std::string::npos ? "Opening " : "Openings ") +
        group.numbers;
    if (!group.shape.empty()) label += ", " + group.shape;
    rows.push_back(row_of(label, size_text(group.sight.width(), group.sight.height(), job.scale)));
  }
  return rows;
}

struct Material {
  Colour colour;
  std::string name, detail;
};

std::vector<Material> materials_of(const Job& job) {
  std::vector<Material> out;
  for (const Layer& layer : job.layers) {
    if (layer.spacer) continue;
    out.push_back({layer.colour, layer.board.empty() ? layer.name : layer.board,
                   (layer.board.empty() ? "" : layer.name + ", ") + std::to_string(layer.ply) +
                       "-ply board"});
  }
  if (job.frame) {
    const std::string& name = job.frame->moulding;
    out.push_back({job.frame->colour, name.empty() ? "Moulding" : name,
                   "Moulding, " + format_length(job.frame->face_width, job.scale).text + " wide"});
  }
  return out;
}

void draw_sizes(paper::Canvas& canvas, const std::vector<Row>& rows, const paper::Box& box) {
  canvas.text("SIZES", {box.x, box.y}, type::heading());
  double own_width = 0, other_width = 0;
  for (const Row& row : rows) {
    own_width = std::max(own_width, canvas.text_width(row.own, type::body()));
    other_width = std::max(other_width, canvas.text_width(row.other, type::faint()));
  }
  const double other = box.x + box.width, own = other - other_width - column_gap;
  const double room = own - own_width - column_gap - box.x;
  double y = box.y + head;
  for (const Row& row : rows) {
    canvas.text(canvas.fitted(row.label, room, type::faint()), {box.x, y}, type::faint());
    canvas.text(row.own, {own, y}, type::right(type::body()));
    canvas.text(row.other, {other, y}, type::right(type::faint()));
    y += type::row;
  }
}

void draw_materials(paper::Canvas& canvas, const std::vector<Material>& materials,
                    const paper::Box& box) {
  canvas.text("MATERIALS", {box.x, box.y}, type::heading());
  double y = box.y + head;
  for (const Material& material : materials) {
    const paper::Box chip{box.x, y - swatch + 2.5, swatch + 6, swatch + 6};
    canvas.fill(chip, {material.colour});
    canvas.rectangle(chip, {0.4, type::quiet, {}, 0.7});
    const double x = box.x + swatch + 14, room = box.width - swatch - 14;
    canvas.text(canvas.fitted(material.name, room, type::body()), {x, y}, type::body());
    canvas.text(canvas.fitted(material.detail, room, type::faint(7)), {x, y + 9}, type::faint(7));
    y += material_row;
  }
}

}  // namespace

double legend_height(const Sheet& sheet) {
  const Piece& piece = sheet.choices.front().piece;
  const double sizes = head + type::row * static_cast<double>(size_rows(piece).size());
  const double materials =
      head + material_row * static_cast<double>(materials_of(*piece.job).size());
  return std::max({key_height + 6, sizes, materials});
}

void draw_legend(paper::Canvas& canvas, const Sheet& sheet, const paper::Box& box) {
  const Piece& piece = sheet.choices.front().piece;
  draw_key(canvas, piece, {box.x, box.y - 5, key_width, key_height});
  const double sizes_x = box.x + key_width + gap;
  const double materials_x = box.x + box.width - materials_width;
  draw_sizes(canvas, size_rows(piece), {sizes_x, box.y, materials_x - gap - sizes_x, box.height});
  draw_materials(canvas, materials_of(*piece.job),
                 {materials_x, box.y, materials_width, box.height});
}

}  // namespace mullion::proof
