#include <algorithm>
#include <map>

#include "engine/job/standing.h"
#include "engine/job/usual.h"
#include "engine/mat/form.h"
#include "engine/mat/joined.h"
#include "engine/mat/mat.h"
#include "engine/mat/rect.h"

namespace mullion {
namespace {

// Which part of a narrow bar or border a window that is not to be seen takes, where it does not
// stand back by the usual margin behind the edge above it. Our own figure.
constexpr std::int64_t hidden_part = 4;

Length hidden_setback(const Layout& layout, const Rect& rect, Unit unit) {
  const Length hidden_margin = usual_for(unit).hidden_margin;
  Length space = std::min({rect.left, rect.top, layout.width - rect.right,
                           layout.height - rect.bottom, hidden_margin * hidden_part});
  for (const PlacedOpening& other : layout.openings) {
    const Length bar = gap_between(rect, other.rect);
    if (bar > Length()) space = std::min(space, bar);
  }
  return Length::from_ticks(std::max<std::int64_t>(space.ticks() / hidden_part, 0));
}

class Builder {
 public:
  Builder(const Job& job, const Layout& layout, const Locale& locale)
      : job_(job),
        layout_(layout),
        locale_(locale),
        standings_(standings_of(job.arrangement)),
        files_(job.file) {}

  Result<Mat> build() {
    mat_.unit = job_.scale.unit;
    mat_.outer = {Length(), Length(), layout_.width, layout_.height};
    for (std::size_t i = 0; i < job_.layers.size(); ++i) add_layer(static_cast<int>(i) + 1);
    for (std::size_t i = 0; i < standings_.size(); ++i) add_opening(i);
    for (const auto& [key, joined] : joined_) {
      finish(mat_.layers[static_cast<std::size_t>(key.first) - 1], joined);
    }
    std::size_t groups = 0;
    add_group_grooves(job_.arrangement, groups, false);
    add_grooves_around_all();
    for (std::size_t i = 0; i < standings_.size(); ++i) add_picture(i);
    if (!problems_.empty()) return tl::unexpected(std::move(problems_));
    return std::move(mat_);
  }

 private:
  void add_layer(int number) {
    MatLayer layer;
    layer.number = number;
    layer.board = job_.layers[static_cast<std::size_t>(number) - 1];
    layer.run = bevel_run(layer.board.thickness, job_.bevel_millidegrees);
    mat_.layers.push_back(std::move(layer));
  }

  void add_opening(std::size_t index) {
    const Opening& opening = *standings_[index].opening;
    const Rect top = layout_.openings[index].rect;
    const Rect sight = inset(top, reveal_stack(job_, opening));
    mat_.sights.push_back(sight);
    if (sight.width() <= Length() || sight.height() <= Length()) {
      fail("mat-no-window",
           locale_.say("the reveals leave nothing of opening \"%1\" to look through", opening.id),
           opening.place);
      return;
    }
    if (is_refused_below(index)) return;
    const Result<Form> form = Form::make(opening, sight, files_, job_.file, locale_);
    if (!form) return take(form.error());
    const std::size_t before = problems_.size();
    Rect back = top;
    for (MatLayer& layer : mat_.layers) {
      back = inset(back, line_inset(job_, standings_[index], layer.number));
      add_to_layer(layer, index, *form, back);
      if (problems_.size() > before) return;
    }
    add_opening_grooves(index, *form, top);
  }

  // A joined window has straight sides, so none that is curved can lie above it.
  bool is_refused_below(std::size_t index) {
    const Opening& opening = *standings_[index].opening;
    if (opening.shape.kind == ShapeKind::rectangle) return false;
    for (const JoinedGroup& group : standings_[index].joined) {
      if (group.layer == 1 || mat_.layers[static_cast<std::size_t>(group.layer) - 1].board.spacer) {
        continue;
      }
      fail("mat-joined-shape",
           locale_.say("opening \"%1\" is not a rectangle, and layer %2 has one window for its "
                       "whole group; expected rectangles above a joined window",
                       opening.id, group.layer),
           opening.place);
      return true;
    }
    return false;
  }

  void add_to_layer(MatLayer& layer, std::size_t index, const Form& form, const Rect& back) {
    const Standing& standing = standings_[index];
    const JoinedGroup* group = joined_in(standing, layer.number);
    const bool seen = !layer.board.spacer && (group || is_cut_for(layer.board, *standing.opening));
    if (layer.number == 1 && !seen) {
      fail("mat-top-skips",
           locale_.say("the top layer has no window for opening \"%1\"; every opening is cut in "
                       "the top layer",
                       standing.opening->id),
           layer.board.place);
      return;
    }
    if (!seen && group == nullptr) group = joined_above(job_, standing, layer.number);
    const Rect edge =
        seen ? back
             : outset(back, hidden_setback(layout_, layout_.openings[index].rect, mat_.unit));
    if (group == nullptr) return add_window(layer, index, form, edge, seen);
    if (seen && !is_cut_for(layer.board, *standing.opening)) {
      fail("mat-part-of-window",
           group->what->along == Along::row
               ? locale_.say("layer %1 leaves out opening \"%2\", but it has one window for the "
                             "row of it; expected every opening of that in `only`, or no one "
                             "window",
                             layer.number, standing.opening->id)
               : locale_.say("layer %1 leaves out opening \"%2\", but it has one window for the "
                             "column of it; expected every opening of that in `only`, or no one "
                             "window",
                             layer.number, standing.opening->id),
           layer.board.place);
      return;
    }
    if (!seen && is_cut_for_part(layer, *group)) {
      fail("mat-part-of-window",
           locale_.say("layer %1 has no window for opening \"%2\", but it has one for another "
                       "that is seen through the same window above; expected it for both or for "
                       "neither",
                       layer.number, standing.opening->id),
           layer.board.place);
      return;
    }
    join(layer, *group, index, edge, seen);
  }

  bool is_cut_for_part(const MatLayer& layer, const JoinedGroup& group) const {
    if (layer.board.spacer) return false;
    const std::vector<int>& members = layout_.groups[group.group].openings;
    return std::any_of(members.begin(), members.end(), [&](int number) {
      return is_cut_for(layer.board, *standings_[static_cast<std::size_t>(number) - 1].opening);
    });
  }

  void add_window(MatLayer& layer, std::size_t index, const Form& form, const Rect& edge,
                  bool seen) {
    const Result<FormEdge> back = form.edge(edge);
    if (!back) return take(back.error());
    const Result<FormEdge> face = form.edge(outset(edge, layer.run));
    if (!face) return take(face.error());
    layer.windows.push_back({{layout_.openings[index].number},
                             seen,
                             back->shape,
                             back->box,
                             face->box,
                             back->outline,
                             face->outline});
  }

  struct Joined {
    std::size_t window = 0;  // index in the layer
    JoinedGroup group;
    std::vector<JoinedPart> parts;
  };

  void join(MatLayer& layer, const JoinedGroup& group, std::size_t index, const Rect& edge,
            bool seen) {
    const int number = layout_.openings[index].number;
    const auto [at, is_new] = joined_.emplace(std::make_pair(layer.number, group.group),
                                              Joined{layer.windows.size(), group, {}});
    if (is_new) layer.windows.push_back({{}, seen, {}, {}, {}, {}, {}});
    layer.windows[at->second.window].openings.push_back(number);
    at->second.parts.push_back({edge, shared_above(layer, group, index, seen)});
  }

  // Nothing hides the steps of a window in the top mat, and a window out of sight needs none.
  std::optional<std::size_t> shared_above(const MatLayer& layer, const JoinedGroup& group,
                                          std::size_t index, bool seen) const {
    if (layer.number == 1 || !seen) return group.group;
    const JoinedGroup* above = joined_above(job_, standings_[index], layer.number);
    return above == nullptr ? std::nullopt : std::optional(above->group);
  }

  void finish(MatLayer& layer, const Joined& joined) {
    Window& window = layer.windows[joined.window];
    const Group& group = *joined.group.what;
    if (joined.parts.size() < layout_.groups[joined.group.group].openings.size())
      return;  // refused
    const auto edges = joined_edges(group, layout_, window.openings.front(), joined.parts,
                                    job_.scale.increment, layer.run);
    if (!edges) {
      return fail(
          "mat-joined-apart",
          group.along == Along::row
              ? locale_.say("the openings of the row do not lie beside each other, so that layer "
                            "%1 can have no one window for them; expected windows of their own",
                            layer.number)
              : locale_.say("the openings of the column do not lie beside each other, so that "
                            "layer %1 can have no one window for them; expected windows of their "
                            "own",
                            layer.number),
          group.place);
    }
    window.back_edge = edges->back;
    window.face_edge = edges->face;
    window.back = bounding_box(window.back_edge);
    window.face = bounding_box(window.face_edge);
    if (window.back_edge != rectangle(window.back)) window.shape.kind = ShapeKind::stepped;
  }

  void add_opening_grooves(std::size_t index, const Form& form, const Rect& top) {
    const Opening& opening = *standings_[index].opening;
    for (const Groove& groove : opening.grooves) {
      if (joined_in(standings_[index], 1) != nullptr) return refuse_groove(groove, opening.id);
      add_groove(form, outset(top, groove.distance), groove, {layout_.openings[index].number});
    }
    if (standings_.size() > 1) return;
    for (const Groove& groove : job_.grooves) {
      add_groove(form, outset(top, groove.distance), groove, {layout_.openings[index].number});
    }
  }

  void add_groove(const Form& form, const Rect& rect, const Groove& groove,
                  std::vector<int> openings) {
    const Result<FormEdge> edge = form.edge(rect);
    if (!edge) return take(edge.error());
    mat_.grooves.push_back(
        {std::move(openings), edge->outline, groove.width, groove.place, edge->shape.kind});
  }

  void refuse_groove(const Groove& groove, const std::string& id) {
    fail("mat-groove-in-window",
         locale_.say("the groove around \"%1\" lies in a window of the top mat; expected it "
                     "around the group of that window",
                     id),
         groove.place);
  }

  // Rectangles around the openings of a group, and around all of them.
  void add_group_grooves(const Node& node, std::size_t& count, bool in_window) {
    const auto* group = std::get_if<Group>(&node.what);
    if (group == nullptr) return;
    const PlacedGroup& placed = layout_.groups[count++];
    for (const Groove& groove : group->grooves) {
      if (in_window) {
        refuse_groove(groove, group->id);
      } else {
        add_rectangle(placed.rect, placed.openings, groove);
      }
    }
    for (const Node& child : group->children) {
      add_group_grooves(child, count, in_window || group->joined_layer == 1);
    }
  }

  void add_grooves_around_all() {
    if (standings_.size() < 2) return;  // one opening: its own shape, add_opening_grooves
    const PlacedGroup& all = layout_.groups.front();
    for (const Groove& groove : job_.grooves) add_rectangle(all.rect, all.openings, groove);
  }

  void add_rectangle(const Rect& around, const std::vector<int>& openings, const Groove& groove) {
    mat_.grooves.push_back(
        {openings, rectangle(outset(around, groove.distance)), groove.width, groove.place});
  }

  void add_picture(std::size_t index) {
    const int number = layout_.openings[index].number;
    const Rect& sight = mat_.sights[index];
    for (const Picture& picture : job_.pictures) {
      if (picture.id != standings_[index].opening->picture) continue;
      const Length left = half_rounded_down(sight.left + sight.right - picture.width);
      const Length top = half_rounded_down(sight.top + sight.bottom - picture.height);
      mat_.pictures.push_back(
          {number, picture, {left, top, left + picture.width, top + picture.height}, sight});
      return;
    }
  }

  void fail(const char* code, std::string message, Place place) {
    problems_.push_back({Severity::error, code, std::move(message), place, job_.file});
  }
  void take(const Problems& problems) {
    problems_.insert(problems_.end(), problems.begin(), problems.end());
  }

  const Job& job_;
  const Layout& layout_;
  const Locale& locale_;
  std::vector<Standing> standings_;
  OutlineFiles files_;
  std::map<std::pair<int, std::size_t>, Joined> joined_;  // by layer and group
  Mat mat_;
  Problems problems_;
};

}  // namespace

bool serves(const Window& window, int opening) {
  return std::find(window.openings.begin(), window.openings.end(), opening) !=
         window.openings.end();
}

Result<Mat> build_mat(const Job& job, const Layout& layout, const Locale& locale) {
  return Builder(job, layout, locale).build();
}

}  // namespace mullion
