#pragma once

// Drawings that many pages of a PDF repeat as they are, such as check rules: the file holds each
// once, and its pages refer to it (form XObjects: ISO 32000-1, 8.10).

#include <map>
#include <memory>

typedef struct _cairo_surface cairo_surface_t;

namespace mullion::paper {

class Drawing;

class Stamps {
 public:
  Stamps() = default;
  Stamps(const Stamps&) = delete;
  Stamps& operator=(const Stamps&) = delete;
  ~Stamps();

  // What Cairo paints on each page; made when first asked for, it lives as long as this.
  cairo_surface_t* stamp_of(const std::shared_ptr<const Drawing>& drawing);

 private:
  std::map<std::shared_ptr<const Drawing>, cairo_surface_t*> stamps_;
};

}  // namespace mullion::paper
