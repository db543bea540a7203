#include "render/proof/lines.h"

#include "render/paper/characters.h"

namespace mullion::proof {
namespace {

// How many bytes of the text fit; at least one character.
std::size_t bytes_that_fit(paper::Canvas& canvas, const std::string& text, double width,
                           const paper::TextStyle& style) {
  std::size_t end = text.size();
  while (canvas.text_width(text.substr(0, end), style) > width) {
    const std::size_t shorter = paper::character_before(text, end);
    if (shorter == 0) break;
    end = shorter;
  }
  return end;
}

std::string without_end_blanks(std::string line) {
  line.erase(line.find_last_not_of(' ') + 1);
  return line;
}

}  // namespace

std::vector<std::string> lines_of(paper::Canvas& canvas, const std::string& text, double width,
                                  const paper::TextStyle& style) {
  std::vector<std::string> lines;
  std::string rest = text;
  while (!rest.empty()) {
    std::size_t end = bytes_that_fit(canvas, rest, width, style);
    if (end < rest.size()) {
      const std::size_t blank = rest.rfind(' ', end);
      if (blank != std::string::npos && blank > 0) end = blank;
    }
    lines.push_back(without_end_blanks(rest.substr(0, end)));
    const std::size_t next = rest.find_first_not_of(' ', end);
    rest = next == std::string::npos ? std::string() : rest.substr(next);
  }
  return lines;
}

std::size_t draw_lines(paper::Canvas& canvas, const std::string& text, paper::Spot spot,
                       double width, const paper::TextStyle& style, double leading) {
  const auto lines = lines_of(canvas, text, width, style);
  for (const std::string& line : lines) {
    canvas.text(line, spot, style);
    spot.y += leading;
  }
  return lines.size();
}

}  // namespace mullion::proof
