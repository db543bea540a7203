#include "render/paper/stamps.h"

#include <cairo.h>

#include "render/paper/drawing.h"

namespace mullion::paper {

Stamps::~Stamps() {
  for (const auto& [drawing, surface] : stamps_) cairo_surface_destroy(surface);
}

cairo_surface_t* Stamps::stamp_of(const std::shared_ptr<const Drawing>& drawing) {
  const auto [place, made] = stamps_.try_emplace(drawing, nullptr);
  if (!made) return place->second;
  const Box box = bounds_of(*drawing);
  const cairo_rectangle_t extents{box.x, box.y, box.width, box.height};
  place->second = cairo_recording_surface_create(CAIRO_CONTENT_COLOR_ALPHA, &extents);
  cairo_t* context = cairo_create(place->second);
  Canvas canvas(context);
  draw(*drawing, canvas);
  cairo_destroy(context);
  return place->second;
}

}  // namespace mullion::paper
