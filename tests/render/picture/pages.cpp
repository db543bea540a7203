#include "tests/render/picture/pages.h"

#include <png.h>

#include <stdexcept>

#include "tests/oracle/program.h"

namespace pages {
namespace {

using namespace mullion;

void run(const std::vector<std::string>& words) {
  const auto result = oracle::run(words);
  if (result.status != 0) throw std::runtime_error(words.front() + ": " + result.err);
}

void rasterise(const std::string& by, const std::string& folder) {
  const std::string pdf = folder + "/p.pdf", png = folder + "/" + by + ".png";
  if (by == "poppler")
    run({"pdftoppm", "-r", "144", "-png", "-singlefile", pdf, folder + "/poppler"});
  if (by == "mupdf") run({"mutool", "draw", "-r", "144", "-o", png, pdf});
  if (by == "ghostscript") {
    run({"gs", "-q", "-dNOPAUSE", "-dBATCH", "-dSAFER", "-sDEVICE=png16m", "-r144",
         "-sOutputFile=" + png, pdf});
  }
}

}  // namespace

Tone Page::at(double across, double down) const {
  const auto x = static_cast<std::size_t>(across * width);
  const auto y = static_cast<std::size_t>(down * height);
  const unsigned char* p = &rgb[3 * (y * static_cast<std::size_t>(width) + x)];
  return {p[0], p[1], p[2]};
}

Page read_png(const std::string& path) {
  png_image image{};
  image.version = PNG_IMAGE_VERSION;
  if (png_image_begin_read_from_file(&image, path.c_str()) == 0) {
    throw std::runtime_error("cannot read " + path);
  }
  image.format = PNG_FORMAT_RGB;
  Page page;
  page.rgb.resize(PNG_IMAGE_SIZE(image));
  if (png_image_finish_read(&image, nullptr, page.rgb.data(), 0, nullptr) == 0) {
    throw std::runtime_error("cannot read " + path);
  }
  page.width = static_cast<int>(image.width);
  page.height = static_cast<int>(image.height);
  return page;
}

std::string drawn(const std::string& bytes, paper::Format format, const picture::Crop& crop,
                  const picture::Resolution& resolution) {
  const std::string path = oracle::scratch_folder("picture") + "/source";
  oracle::write_file(path, bytes);
  const auto photograph = picture::open_photograph(path);
  if (!photograph) throw std::runtime_error(photograph.error());
  paper::Drawing drawing;
  const auto done =
      paper::draw_photograph(drawing, format, *photograph, {0, 0, 72, 72}, crop, resolution);
  if (!done) throw std::runtime_error(done.error());
  return paper::write(format, {{{inches(1), inches(1)}, "", drawing}}, {"picture", "", 144});
}

Page page_of(const std::string& bytes, paper::Format format) {
  const std::string made = drawn(bytes, format), folder = oracle::scratch_folder("page");
  if (format == paper::Format::png) {
    oracle::write_file(folder + "/p.png", made);
    return read_png(folder + "/p.png");
  }
  if (format == paper::Format::pdf) {
    oracle::write_file(folder + "/p.pdf", made);
    rasterise("poppler", folder);
    return read_png(folder + "/poppler.png");
  }
  oracle::write_file(folder + "/p.svg", made);
  run({"rsvg-convert", "-o", folder + "/p.png", folder + "/p.svg"});
  return read_png(folder + "/p.png");
}

std::vector<Rendering> renderings(const std::string& pdf) {
  const std::string folder = oracle::scratch_folder("renderings");
  oracle::write_file(folder + "/p.pdf", pdf);
  std::vector<Rendering> out;
  for (const std::string by : {"poppler", "mupdf", "ghostscript"}) {
    rasterise(by, folder);
    out.push_back({by, read_png(folder + "/" + by + ".png")});
  }
  return out;
}

}  // namespace pages
