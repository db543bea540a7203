#include "tests/oracle/pdf.h"

#include <algorithm>
#include <cmath>
#include <pugixml.hpp>
#include <sstream>
#include <stdexcept>

#include "tests/oracle/program.h"

namespace oracle {
namespace {

struct Matrix {
  double a = 1, b = 0, c = 0, d = 1, e = 0, f = 0;
};

Matrix matrix_of(const pugi::xml_node& node) {
  Matrix m;
  std::istringstream in(node.attribute("transform").as_string("1 0 0 1 0 0"));
  in >> m.a >> m.b >> m.c >> m.d >> m.e >> m.f;
  return m;
}

struct Corner {
  double x = 0, y = 0;
};

Corner placed(const Matrix& m, double x, double y) {
  return {m.a * x + m.c * y + m.e, m.b * x + m.d * y + m.f};
}

double mean_of(const char* numbers) {
  std::istringstream in(numbers);
  double sum = 0, value = 0;
  int count = 0;
  while (in >> value) {
    sum += value;
    ++count;
  }
  return count == 0 ? 0 : sum / count;
}

PdfStroke path_of(const pugi::xml_node& node) {
  PdfStroke out;
  const Matrix m = matrix_of(node);
  out.width = node.attribute("linewidth").as_double() * std::sqrt(std::abs(m.a * m.d - m.b * m.c));
  out.grey = mean_of(node.attribute("color").as_string());
  Corner start, here;
  const auto go = [&](Corner to) {
    out.lines.push_back({here.x, here.y, to.x, to.y});
    here = to;
  };
  for (const pugi::xml_node& step : node.children()) {
    const std::string name = step.name();
    if (name == "moveto") {
      start = here = placed(m, step.attribute("x").as_double(), step.attribute("y").as_double());
    } else if (name == "lineto") {
      go(placed(m, step.attribute("x").as_double(), step.attribute("y").as_double()));
    } else if (name == "curveto") {
      go(placed(m, step.attribute("x3").as_double(), step.attribute("y3").as_double()));
    } else if (name == "closepath") {
      go(start);
      out.closed = true;
    }
  }
  return out;
}

PdfLine bounds_of(const PdfStroke& path) {
  PdfLine box{1e9, 1e9, -1e9, -1e9};
  for (const PdfLine& line : path.lines) {
    box.x1 = std::min({box.x1, line.x1, line.x2});
    box.y1 = std::min({box.y1, line.y1, line.y2});
    box.x2 = std::max({box.x2, line.x1, line.x2});
    box.y2 = std::max({box.y2, line.y1, line.y2});
  }
  return box;
}

PdfLine common_part(const PdfLine& a, const PdfLine& b) {
  return {std::max(a.x1, b.x1), std::max(a.y1, b.y1), std::min(a.x2, b.x2), std::min(a.y2, b.y2)};
}

void collect(const pugi::xml_node& parent, PdfPage& page, std::vector<PdfLine> clips) {
  for (const pugi::xml_node& node : parent.children()) {
    const std::string name = node.name();
    if (name == "clip_path") {
      clips.push_back(common_part(clips.back(), bounds_of(path_of(node))));
    } else if (name == "pop_clip") {
      if (clips.size() > 1) clips.pop_back();
    } else if (name == "stroke_path") {
      page.strokes.push_back(path_of(node));
    } else if (name == "fill_path") {
      const bool solid = node.attribute("alpha").as_double(1) == 1;
      if (solid) page.fills.push_back(bounds_of(path_of(node)));
    } else if (name == "fill_image") {
      const Matrix m = matrix_of(node);
      page.images.push_back(common_part(clips.back(), {m.e, m.f, m.e + m.a, m.f + m.d}));
    } else {
      collect(node, page, clips);
    }
  }
}

}  // namespace

double PdfLine::length() const {
  return std::hypot(x2 - x1, y2 - y1);
}

std::vector<PdfPage> read_pdf(const std::string& path) {
  const Run run = oracle::run({"mutool", "trace", path});
  pugi::xml_document document;
  const auto parsed = document.load_buffer(run.out.data(), run.out.size());
  if (run.status != 0 || !parsed) throw std::runtime_error("cannot read " + path + ": " + run.err);
  std::vector<PdfPage> pages;
  for (const pugi::xml_node& node : document.child("document").children("page")) {
    PdfPage page;
    double left = 0, top = 0;
    std::istringstream box(node.attribute("mediabox").as_string());
    box >> left >> top >> page.width >> page.height;
    collect(node, page, {{0, 0, page.width, page.height}});
    pages.push_back(std::move(page));
  }
  return pages;
}

std::string pdf_text(const std::string& path) {
  const Run run = oracle::run({"pdftotext", "-layout", path, "-"});
  if (run.status != 0) throw std::runtime_error("cannot read " + path + ": " + run.err);
  return run.out;
}

}  // namespace oracle
