#include "engine/shop/stock_sizes.h"

#include <algorithm>
#include <array>
#include <pugixml.hpp>

#include "engine/file/input.h"
#include "engine/xml/source_text.h"

namespace mullion {
namespace {

constexpr std::size_t largest_list = 1 << 20;
constexpr std::size_t most_sizes = 2000;

constexpr std::array<std::pair<int, int>, 15> inch_sizes{{{5, 7},
                                                          {8, 10},
                                                          {9, 12},
                                                          {11, 14},
                                                          {12, 16},
                                                          {14, 18},
                                                          {16, 20},
                                                          {18, 24},
                                                          {20, 24},
                                                          {22, 28},
                                                          {24, 30},
                                                          {24, 36},
                                                          {28, 40},
                                                          {30, 40},
                                                          {40, 60}}};
constexpr std::array<std::pair<int, int>, 12> centimetre_sizes{{{13, 18},
                                                                {18, 24},
                                                                {20, 30},
                                                                {24, 30},
                                                                {30, 40},
                                                                {40, 50},
                                                                {40, 60},
                                                                {50, 60},
                                                                {50, 70},
                                                                {60, 80},
                                                                {70, 100},
                                                                {80, 120}}};

class ListReader {
 public:
  ListReader(std::string_view xml, const std::string& file)
      : xml_(xml), source_(xml), file_(file) {}

  Result<std::vector<StockSize>> read() {
    pugi::xml_document document;
    const auto parsed = document.load_buffer(xml_.data(), xml_.size());
    if (!parsed) {
      fail(parsed.offset, std::string("this is not well-formed XML: ") + parsed.description());
      return tl::unexpected(problems_);
    }
    const pugi::xml_node root = document.child("frame-sizes");
    if (!root) fail(0, "expected <frame-sizes> as the outermost element");
    const std::string unit = root.attribute("unit").as_string("in");
    if (unit != "in" && unit != "cm" && unit != "mm") {
      fail(root.offset_debug(), "found unit=\"" + unit + "\"; expected \"in\", \"cm\" or \"mm\"");
    }
    unit_ = unit == "cm" ? Unit::centimetre : unit == "mm" ? Unit::millimetre : Unit::inch;
    for (const pugi::xml_node& node : root.children()) add(node);
    if (!problems_.empty()) return tl::unexpected(problems_);
    return sizes_;
  }

 private:
  void add(const pugi::xml_node& node) {
    if (node.type() != pugi::node_element) return;
    if (std::string_view(node.name()) != "size") {
      return fail(node.offset_debug(), std::string("found <") + node.name() + ">; expected <size>");
    }
    if (sizes_.size() == most_sizes) return fail(node.offset_debug(), "more than 2000 sizes");
    const auto width = side(node, "width"), height = side(node, "height");
    if (width && height) sizes_.push_back({*width, *height});
  }

  std::optional<Length> side(const pugi::xml_node& node, const char* name) {
    const auto length = parse_length(node.attribute(name).as_string(), unit_);
    if (length && *length > Length()) return *length;
    fail(node.offset_debug(),
         std::string(name) + ": " + (length ? "a size must be more than nothing" : length.error()));
    return std::nullopt;
  }

  void fail(std::ptrdiff_t offset, std::string message) {
    if (problems_.size() >= 20) return;
    const Place place =
        source_.place(static_cast<std::size_t>(std::max<std::ptrdiff_t>(offset, 0)));
    problems_.push_back({Severity::error, "frame-sizes", std::move(message), place, file_});
  }

  std::string_view xml_;
  SourceText source_;
  const std::string& file_;
  Unit unit_ = Unit::inch;
  std::vector<StockSize> sizes_;
  Problems problems_;
};

}  // namespace

std::vector<StockSize> common_frame_sizes(Unit unit) {
  std::vector<StockSize> out;
  if (unit == Unit::inch) {
    for (const auto& [a, b] : inch_sizes) out.push_back({inches(a), inches(b)});
  } else {
    for (const auto& [a, b] : centimetre_sizes) {
      out.push_back({millimetres(10) * a, millimetres(10) * b});
    }
  }
  return out;
}

Result<std::vector<StockSize>> parse_frame_sizes(std::string_view xml, const std::string& file) {
  return ListReader(xml, file).read();
}

Result<std::vector<StockSize>> read_frame_sizes(const std::string& path) {
  const auto bytes = read_input(path, largest_list);
  if (!bytes) return tl::unexpected(bytes.error());
  return parse_frame_sizes(*bytes, path);
}

}  // namespace mullion
