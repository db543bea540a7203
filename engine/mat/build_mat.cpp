
#include "engine/mat/mat.h"
#include "engine/mat/rect.h"
#include "engine/mat/shape.h"

namespace mullion {
namespace {

// By how much a window that is not to be seen stands back behind the edge above it. Our own figure.
constexpr Length hidden_margin = sixty_fourths(16);

void collect_openings(const Node& node, std::vector<const Opening*>& out) {
  if (const auto* opening = std::get_if<Opening>(&node.what)) {
    out.push_back(opening);
    return;
  }
  for (const Node& child : std::get<Group>(node.what).children) collect_openings(child, out);
}

bool same_on_all_sides(const Sides& sides) {
  return sides.left == sides.top && sides.left == sides.right && sides.left == sides.bottom;
}

class Builder {
 public:
  Builder(const Job& job, const Layout& layout) : job_(job), layout_(layout) {
    collect_openings(job.arrangement, openings_);
  }

  Result<Mat> build() {
    mat_.outer = {Length(), Length(), layout_.width, layout_.height};
    for (std::size_t i = 0; i < job_.layers.size(); ++i) add_layer(static_cast<int>(i) + 1);
    for (std::size_t i = 0; i < openings_.size(); ++i) add_opening(i);
    if (!problems_.empty()) return tl::unexpected(std::move(problems_));
    return std::move(mat_);
  }

 private:
  void add_layer(int number) {
    MatLayer layer;
    layer.number = number;
    layer.board = job_.layers[static_cast<std::size_t>(number) - 1];
    layer.run = bevel_run(layer.board.thickness, job_.bevel_millidegrees);
    layer.outer = mat_.outer;
    mat_.layers.push_back(std::move(layer));
  }

  void add_opening(std::size_t index) {
    const Opening& opening = *openings_[index];
    const Rect top = layout_.openings[index].rect;
    const Rect sight = inset(top, reveal_stack(job_, opening));
    if (sight.width() <= Length() || sight.height() <= Length()) {
      fail(opening.place, "mat-no-window",
           "the reveals leave nothing of opening \"" + opening.id + "\" to look through");
      return;
    }
    Rect back = top;
    for (MatLayer& layer : mat_.layers) {
      const Sides line = line_inset(job_, opening, layer.number);
      const bool seen = layer.number == 1 || line != Sides{};
      back = inset(back, line);
      const Rect edge = seen ? back : outset(back, hidden_margin);
      add_window(layer, opening, index, sight, edge);
    }
    add_grooves(opening, index, sight, top);
    add_picture(opening, index, sight);
  }

  void add_window(MatLayer& layer, const Opening& opening, std::size_t index, const Rect& sight,
                  const Rect& back) {
    Window window;
    window.openings = {layout_.openings[index].number};
    window.back = back;
    window.face = outset(back, layer.run);
    if (opening.shape.kind == ShapeKind::rectangle) {
      window.shape = opening.shape;
      window.back_edge = shape_outline({}, window.back, Length()).value();
      window.face_edge = shape_outline({}, window.face, Length()).value();
    } else {
      const Sides away{sight.left - back.left, sight.top - back.top, back.right - sight.right,
                       back.bottom - sight.bottom};
      if (!same_on_all_sides(away)) {
        fail(opening.place, "mat-uneven-reveal",
             "opening \"" + opening.id +
                 "\" is not a rectangle, so its reveals must be the same on "
                 "all sides");
        return;
      }
      window.shape = shape_at(opening.shape, sight, away.left);
      const auto back_edge = shape_outline(opening.shape, sight, away.left);
      const auto face_edge = shape_outline(opening.shape, sight, away.left + layer.run);
      if (!back_edge || !face_edge) {
        fail(opening.place, "mat-shape",
             "opening \"" + opening.id + "\": " + (back_edge ? face_edge : back_edge).error());
        return;
      }
      window.back_edge = *back_edge;
      window.face_edge = *face_edge;
    }
    layer.windows.push_back(std::move(window));
  }

  void add_grooves(const Opening& opening, std::size_t index, const Rect& sight, const Rect& top) {
    for (const Groove& groove : opening.grooves) {
      const bool curved = opening.shape.kind != ShapeKind::rectangle;
      const auto line =
          curved ? shape_outline(opening.shape, sight, sight.left - top.left + groove.distance)
                 : shape_outline({}, outset(top, groove.distance), Length());
      if (line) mat_.grooves.push_back({{layout_.openings[index].number}, *line, groove.width});
    }
  }

  void add_picture(const Opening& opening, std::size_t index, const Rect& sight) {
    for (const Picture& picture : job_.pictures) {
      if (picture.id != opening.picture) continue;
      const Length left = half_rounded_down(sight.left + sight.right - picture.width);
      const Length top = half_rounded_down(sight.top + sight.bottom - picture.height);
      mat_.pictures.push_back({layout_.openings[index].number,
                               picture,
                               {left, top, left + picture.width, top + picture.height}});
    }
  }

  void fail(Place place, const char* code, std::string message) {
    problems_.push_back({Severity::error, code, std::move(message), place, job_.file});
  }

  const Job& job_;
  const Layout& layout_;
  std::vector<const Opening*> openings_;
  Mat mat_;
  Problems problems_;
};

}  // namespace

Result<Mat> build_mat(const Job& job, const Layout& layout) {
  return Builder(job, layout).build();
}

}  // namespace mullion
