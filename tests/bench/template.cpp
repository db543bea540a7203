#include "tests/bench/template.h"

#include <cairo-pdf.h>
#include <cairo.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cstdio>
#include <string>
#include <vector>

#include "engine/job/read.h"
#include "render/template/template.h"
#include "tests/bench/grid_job.h"
#include "tests/bench/stopwatch.h"
#include "tests/oracle/drawn_page.h"
#include "tests/oracle/program.h"

namespace bench {
namespace {

using namespace mullion;

// A collage of 40 x 60 in with 24 openings in two layers.
std::string large_job() {
  std::string job = grid_job(24);
  return job.insert(job.find("<arrange>"), "<outer width=\"60\" height=\"40\"/>");
}

// What is timed of a job's template on Letter sheets.
struct Sample {
  std::string what, job;
  double goal_ms;
};

cairo_status_t append(void* bytes, const unsigned char* data, unsigned int count) {
  static_cast<std::string*>(bytes)->append(reinterpret_cast<const char*>(data), count);
  return CAIRO_STATUS_SUCCESS;
}

bool same_pen(const oracle::Stroke& a, const oracle::Stroke& b) {
  return a.width == b.width && a.dashed == b.dashed && a.colour == b.colour;
}

// Strokes of one pen that follow one another are one path, which is how Cairo is fastest.
void draw_bare(cairo_t* cairo, const oracle::DrawnPage& page) {
  const double dashes[] = {4, 2};
  for (std::size_t i = 0; i < page.strokes.size(); ++i) {
    const oracle::Stroke& stroke = page.strokes[i];
    cairo_move_to(cairo, stroke.from.x, stroke.from.y);
    cairo_line_to(cairo, stroke.to.x, stroke.to.y);
    if (i + 1 < page.strokes.size() && same_pen(stroke, page.strokes[i + 1])) continue;
    cairo_set_line_width(cairo, stroke.width);
    cairo_set_dash(cairo, dashes, stroke.dashed ? 2 : 0, 0);
    cairo_stroke(cairo);
  }
  for (const oracle::Label& label : page.labels) {
    cairo_save(cairo);
    cairo_translate(cairo, label.at.x, label.at.y);
    cairo_rotate(cairo, label.turn / 180 * 3.14159265358979);
    cairo_set_font_size(cairo, label.size);
    cairo_move_to(cairo, 0, 0);
    cairo_show_text(cairo, label.text.c_str());
    cairo_restore(cairo);
  }
}

// The strokes and texts of those pages as a PDF, with nothing but Cairo: all strokes of a page,
// then all its texts in one face; no white behind texts, no clips, layers, bookmarks or finishing.
std::string bare_cairo(const std::vector<oracle::DrawnPage>& pages) {
  std::string bytes;
  cairo_surface_t* surface = cairo_pdf_surface_create_for_stream(append, &bytes, 612, 792);
  cairo_t* cairo = cairo_create(surface);
  cairo_select_font_face(cairo, "DejaVu Sans", CAIRO_FONT_SLANT_NORMAL, CAIRO_FONT_WEIGHT_NORMAL);
  for (const oracle::DrawnPage& page : pages) {
    cairo_pdf_surface_set_size(surface, page.width, page.height);
    draw_bare(cairo, page);
    cairo_show_page(cairo);
  }
  cairo_destroy(cairo);
  cairo_surface_finish(surface);
  cairo_surface_destroy(surface);
  return bytes;
}

// The most memory that the program takes for it, in MB, in a process of its own.
double memory_of_program(const std::string& job, const std::string& pdf) {
  const pid_t child = ::fork();
  if (child == 0) {
    ::execl(MULLION_PROGRAM, "mullion", "template", job.c_str(), "--paper", "letter", "-o",
            pdf.c_str(), static_cast<char*>(nullptr));
    ::_exit(127);
  }
  int status = 0;
  rusage usage{};
  ::wait4(child, &status, 0, &usage);
  if (status != 0) std::printf("  the program failed; its memory means nothing\n");
  return static_cast<double>(usage.ru_maxrss) / 1024;
}

void time_template(const Sample& sample) {
  const std::string folder = oracle::scratch_folder("bench-template");
  const std::string path = folder + "/large.xml", pdf = folder + "/large.pdf";
  oracle::write_file(path, sample.job);
  const double memory = memory_of_program(path, pdf);
  const Job job = read_job(path).value();
  const Mat mat = build_mat(job, lay_out(job).value()).value();
  TemplateOptions options;
  options.sheet = paper::parse_sheet_size("letter", Unit::inch).value();
  const auto draw = [&] { render_template(job, cuts_of(mat), options).value(); };
  const Timing ours = time_of(draw, 5);
  const std::vector<oracle::DrawnPage> pages = oracle::drawn_pages(pdf);
  const double ours_busy = processor_time_of(draw).best;
  const double bare_busy = processor_time_of([&] { bare_cairo(pages); }).best;
  std::printf("%-52s %9.2f ms  (median %9.2f)  goal %.0f ms\n", sample.what.c_str(), ours.best,
              ours.median, sample.goal_ms);
  std::printf("  %zu pages; memory of the program %.0f MB (goal 100)\n", pages.size(), memory);
  std::printf(
      "  processor time %.1f ms; bare Cairo, the same strokes and texts, %.1f ms: ratio %.2f\n",
      ours_busy, bare_busy, ours_busy / bare_busy);
}

}  // namespace

void tiled_template() {
  time_template({"template of 24 openings, 40 x 60 in, on Letter", large_job(), 300});
  time_template({"template of 200 openings on Letter", grid_job(200), 1500});
}

}  // namespace bench
