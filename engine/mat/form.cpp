#include "engine/mat/form.h"

#include <filesystem>

#include "engine/mat/parallel.h"
#include "engine/mat/rect.h"

namespace mullion {
namespace {

// Each side of the nominal box, unless the outline strays from it by more than rounding: the
// mitres of a free outline's points do.
Rect box_of(const Outline& outline, const Rect& nominal) {
  const Rect found = bounding_box(outline);
  const auto side = [](Length measured, Length stated) {
    const Length off = measured - stated;
    return off <= outline_tolerance && -off <= outline_tolerance ? stated : measured;
  };
  return {side(found.left, nominal.left), side(found.top, nominal.top),
          side(found.right, nominal.right), side(found.bottom, nominal.bottom)};
}

}  // namespace

const Result<FreePath>& OutlineFiles::path(const ShapeSpec& shape) {
  const auto key = std::make_pair(shape.file, shape.path_id);
  if (const auto known = paths_.find(key); known != paths_.end()) return known->second;
  const std::filesystem::path file = std::filesystem::path(job_file_).parent_path() / shape.file;
  return paths_.emplace(key, read_svg_path(file.string(), shape.path_id)).first->second;
}

Result<Form> Form::make(const Opening& opening, const Rect& sight, OutlineFiles& files,
                        const std::string& file, const Locale& locale) {
  Form form(opening, sight, file, locale);
  if (opening.shape.kind != ShapeKind::outline) return form;
  const Result<FreePath>& path = files.path(opening.shape);
  if (!path) {
    Problems problems = path.error();
    problems.push_back({Severity::note, "mat-outline-file",
                        locale.say("that file has the outline of opening \"%1\"", opening.id),
                        opening.place, file});
    return tl::unexpected(std::move(problems));
  }
  const auto outline = fill(*path, sight);
  if (!outline) return tl::unexpected(form.problem("mat-shape", outline.error()));
  if (const std::string flaw = flaw_of(*outline); !flaw.empty()) {
    return tl::unexpected(form.problem("mat-shape", flaw));
  }
  form.free_ = *outline;
  return form;
}

Result<FormEdge> Form::edge(const Rect& rect) const {
  const ShapeSpec& shape = opening_->shape;
  const Length outward = sight_.left - rect.left;
  Rect sight = sight_;
  if (shape.kind == ShapeKind::arch) sight.bottom = rect.bottom - outward;
  const bool even = outset(sight, outward) == rect;
  if (!even && !moves_side_by_side(shape.kind)) {
    return tl::unexpected(
        problem("mat-uneven-reveal", mark("the shape has curves or slanting edges, so each of its "
                                          "reveals must be the same on all sides; only the foot of "
                                          "an arch may have one of its own")));
  }
  const auto outline = shape.kind == ShapeKind::outline ? parallel(free_, outward)
                       : even                           ? shape_outline(shape, sight, outward)
                                                        : shape_outline(shape, rect, Length());
  if (!outline) return tl::unexpected(problem("mat-shape", outline.error()));
  if (shape.kind == ShapeKind::outline) return FormEdge{box_of(*outline, rect), shape, *outline};
  return FormEdge{rect, even ? shape_at(shape, sight, outward) : shape, *outline};
}

Problems Form::problem(const char* code, const std::string& message) const {
  return {{Severity::error, code,
           locale_->say("opening \"%1\": %2", opening_->id, locale_->say(message.c_str())),
           opening_->place, file_}};
}

}  // namespace mullion
