#pragma once

// The form of one opening's windows: its sight edge, and the true parallels of it.

#include <map>

#include "engine/locale/locale.h"
#include "engine/mat/shape.h"
#include "engine/mat/svg_file.h"

namespace mullion {

// Reads each SVG file once.
class OutlineFiles {
 public:
  explicit OutlineFiles(std::string job_file) : job_file_(std::move(job_file)) {}
  const Result<FreePath>& path(const ShapeSpec& shape);

 private:
  std::string job_file_;
  std::map<std::pair<std::string, std::string>, Result<FreePath>> paths_;
};

struct FormEdge {
  Rect
      box;  // nominal: the sight rectangle moved outward; a free outline's mitres may reach farther
  ShapeSpec shape;
  Outline outline;
};

class Form {
 public:
  // `file` is the job file, for problems, which are in the locale's language. That one is kept by
  // reference.
  static Result<Form> make(const Opening& opening, const Rect& sight, OutlineFiles& files,
                           const std::string& file, const Locale& locale);

  // The edge whose rectangle is `rect`: the sight rectangle moved outward, by the same distance on
  // all sides unless the shape moves side by side; the foot of an arch, which is straight, may move
  // by itself.
  Result<FormEdge> edge(const Rect& rect) const;

 private:
  Form(const Opening& opening, const Rect& sight, std::string file, const Locale& locale)
      : opening_(&opening), sight_(sight), file_(std::move(file)), locale_(&locale) {}
  Problems problem(const char* code, const std::string& message) const;

  const Opening* opening_;
  Rect sight_;
  std::string file_;
  const Locale* locale_;
  Outline free_;  // the sight edge of a free outline
};

}  // namespace mullion
