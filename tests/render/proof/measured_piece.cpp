#include "tests/render/proof/measured_piece.h"

#include <png.h>

#include <stdexcept>
#include <vector>

namespace measured {
namespace {

enum class Tone { board, core, other };

class Image {
 public:
  explicit Image(const std::string& path) {
    image_.version = PNG_IMAGE_VERSION;
    if (png_image_begin_read_from_file(&image_, path.c_str()) == 0) fail(path);
    image_.format = PNG_FORMAT_RGB;
    rgb_.resize(PNG_IMAGE_SIZE(image_));
    if (png_image_finish_read(&image_, nullptr, rgb_.data(), 0, nullptr) == 0) fail(path);
  }
  int width() const { return static_cast<int>(image_.width); }
  int height() const { return static_cast<int>(image_.height); }
  Tone at(int x, int y) const {
    const unsigned char* p =
        &rgb_[3 * (static_cast<std::size_t>(y) * image_.width + static_cast<std::size_t>(x))];
    if (p[2] > 128 && p[0] < 128 && p[1] < 128) return Tone::board;
    if (p[0] > 128 && p[1] < 100 && p[2] < 128) return Tone::core;
    return Tone::other;
  }

 private:
  [[noreturn]] static void fail(const std::string& path) {
    throw std::runtime_error("cannot read " + path);
  }
  png_image image_{};
  std::vector<unsigned char> rgb_;
};

struct Line {
  double start = 0, face_start = 0, back_start = 0, back_end = 0, face_end = 0, end = 0;
};

// Board, core, picture, core, board along a line of pixels.
template <class At>
Line walk(int begin, int count, At at) {
  Line line;
  int i = begin;
  const auto run = [&](Tone tone) {
    while (i < count && at(i) == tone) ++i;
    return static_cast<double>(i);
  };
  line.start = i;
  line.face_start = run(Tone::board);
  while (i < count && at(i) != Tone::core) ++i;
  line.back_start = run(Tone::core);
  while (i < count && at(i) != Tone::core) ++i;
  line.back_end = i;
  line.face_end = run(Tone::core);
  while (i < count && at(i) != Tone::board) ++i;
  line.end = run(Tone::board);
  return line;
}

}  // namespace

Piece measure_png(const std::string& path) {
  const Image image(path);
  constexpr int long_run = 100;
  int left = 0, top = 0;
  for (int y = 0; y < image.height() && left == 0; ++y) {
    for (int x = 0, run = 0; x < image.width(); ++x) {
      run = image.at(x, y) == Tone::board ? run + 1 : 0;
      if (run < long_run) continue;
      left = x - run + 1;
      top = y;
      break;
    }
  }
  if (left == 0) throw std::runtime_error("no mat in " + path);
  int right = left, bottom = top;
  while (image.at(right + 1, top + 2) == Tone::board) ++right;
  while (image.at(left + 2, bottom + 1) == Tone::board) ++bottom;
  const int across = (left + right) / 2, down = (top + bottom) / 2;
  const Line h = walk(left, image.width(), [&](int x) { return image.at(x, down); });
  const Line v = walk(top, image.height(), [&](int y) { return image.at(across, y); });
  return {h.start,      h.end,      v.start,      v.end,      h.face_start, h.face_end,
          v.face_start, v.face_end, h.back_start, h.back_end, v.back_start, v.back_end};
}

}  // namespace measured
