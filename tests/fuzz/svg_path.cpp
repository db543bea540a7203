#include "engine/mat/svg_path.h"

#include "engine/mat/parallel.h"
#include "engine/mat/svg_file.h"
#include "tests/fuzz/fuzz.h"

namespace {

using namespace mullion;

const Rect window{Length{}, Length{}, inches(8), inches(10)};
constexpr std::size_t parts_offset = 60;  // a parallel of more takes long under a sanitizer

void use(const FreePath& path) {
  for (std::size_t i = 0; i < path.size(); ++i) {
    const Vector gap = path[(i + 1) % path.size()].curve.start - path[i].curve.end;
    fuzz::must(gap.x == 0 && gap.y == 0);
  }
  const auto outline = fill(path, window);
  if (!outline || path.size() > parts_offset) return;
  const auto face = parallel(*outline, sixty_fourths(4));
  fuzz::must(face || !face.error().empty());
}

}  // namespace

// The input once as the data of a path, once as a whole SVG file.
int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text = fuzz::text_of(data, size);
  if (const auto path = parse_path(text)) use(*path);
  if (const auto path = find_svg_path(std::string(text), "", "fuzz.svg")) use(*path);
  return 0;
}
