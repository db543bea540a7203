#include <algorithm>
#include <cstdio>
#include <set>

#include "render/template/plot.h"

namespace mullion {
namespace {

using paper::Spot;

constexpr double letter_height = 5;  // mm

const char* word_of(PlotLine::Kind kind) {
  switch (kind) {
    case PlotLine::Kind::opening:
      return "CUT";
    case PlotLine::Kind::groove:
      return "GROOVE";
    case PlotLine::Kind::outer_edge:
      return "OUTLINE";
  }
  return "";
}

std::string name_of(int layer, const char* word) {
  return "LAYER_" + std::to_string(layer) + "_" + word;
}

// DXF holds the signs beyond ASCII as \U+XXXX, four digits (DXF Reference, release 2000).
std::string in_ascii(const std::string& text) {
  std::string out;
  for (std::size_t i = 0; i < text.size();) {
    const auto byte = [&](std::size_t k) { return static_cast<unsigned char>(text[k]); };
    const unsigned char first = byte(i);
    const std::size_t more = first < 0x80 ? 0 : first < 0xe0 ? 1 : first < 0xf0 ? 2 : 3;
    if (more == 0) {
      out += text[i++];
      continue;
    }
    unsigned code = first & (0x3fU >> more);
    for (std::size_t k = 1; k <= more && i + k < text.size(); ++k) {
      code = code << 6 | (byte(i + k) & 0x3fU);
    }
    char escaped[16];
    std::snprintf(escaped, sizeof escaped, "\\U+%04X", std::min(code, 0xffffU));
    out += code > 0xffff ? "?" : escaped;
    i += more + 1;
  }
  return out;
}

// Sections, tables and entities with their handles, as the DXF Reference of release 2000 asks for.
class Dxf {
 public:
  // The page is as much larger than the board above it as below it.
  explicit Dxf(const Plot& plot)
      : plot_(plot), height_(to_millimetres(plot.page.top + plot.page.bottom)) {}

  std::string text() {
    const std::string rest = tables() + blocks() + entities() + objects();
    return header() + rest + "0\nEOF\n";
  }

 private:
  // Those that others refer to; the rest are counted on from here.
  static constexpr unsigned layers_table = 0x2, blocks_table = 0x9, model_space = 0x1f,
                            paper_space = 0x1b, dictionary = 0xc, groups = 0xd, first_free = 0x40;

  static std::string pair(int code, const std::string& value) {
    return std::to_string(code) + "\n" + value + "\n";
  }
  static std::string handle(int code, unsigned value) {
    char text[16];
    std::snprintf(text, sizeof text, "%X", value);
    return pair(code, text);
  }
  static std::string number(int code, double value) {
    char text[48];
    std::snprintf(text, sizeof text, "%.6f", value == 0 ? 0 : value);
    return pair(code, text);
  }
  static std::string section(const char* name, const std::string& content) {
    return pair(0, "SECTION") + pair(2, name) + content + pair(0, "ENDSEC");
  }

  std::string header() const {
    return pair(999, "millimetres; lengths from the board's lower left corner") +
           section("HEADER", pair(9, "$ACADVER") + pair(1, "AC1015") + pair(9, "$DWGCODEPAGE") +
                                 pair(3, "ANSI_1252") + pair(9, "$INSUNITS") + pair(70, "4") +
                                 pair(9, "$MEASUREMENT") + pair(70, "1") + pair(9, "$HANDSEED") +
                                 handle(5, next_));
  }

  static std::string table(const char* name, unsigned own, int count, const std::string& entries) {
    return pair(0, "TABLE") + pair(2, name) + handle(5, own) + pair(330, "0") +
           pair(100, "AcDbSymbolTable") + pair(70, std::to_string(count)) + entries +
           pair(0, "ENDTAB");
  }

  static std::string entry(const char* kind, unsigned own, unsigned table, const char* record,
                           const std::string& name, int handle_code = 5) {
    return pair(0, kind) + handle(handle_code, own) + handle(330, table) +
           pair(100, "AcDbSymbolTableRecord") + pair(100, record) + pair(2, name);
  }

  static std::string line_type(const char* name, unsigned own, const char* description) {
    return entry("LTYPE", own, 0x5, "AcDbLinetypeTableRecord", name) + pair(70, "0") +
           pair(3, description) + pair(72, "65") + pair(73, "0") + number(40, 0);
  }

  std::string layer_entry(const std::string& name, int colour) {
    return entry("LAYER", next_++, layers_table, "AcDbLayerTableRecord", name) + pair(70, "0") +
           pair(62, std::to_string(colour)) + pair(6, "Continuous");
  }

  std::string tables() {
    std::string layers = layer_entry("0", 7);
    int count = 1;
    std::set<std::string> known;
    const auto add = [&](const std::string& name, int colour) {
      if (!known.insert(name).second) return;
      layers += layer_entry(name, colour);
      ++count;
    };
    for (const PlotLine& line : plot_.lines) {
      add(name_of(line.layer, word_of(line.kind)), line.kind == PlotLine::Kind::opening  ? 1
                                                   : line.kind == PlotLine::Kind::groove ? 5
                                                                                         : 7);
      add(name_of(line.layer, "TEXT"), 8);
    }
    const std::string style = entry("STYLE", 0x11, 0x3, "AcDbTextStyleTableRecord", "Standard") +
                              pair(70, "0") + number(40, 0) + number(41, 1) + number(50, 0) +
                              pair(71, "0") + number(42, letter_height) + pair(3, "txt") +
                              pair(4, "");
    const std::string dimension_style =
        entry("DIMSTYLE", 0x27, 0xa, "AcDbDimStyleTableRecord", "Standard", 105) + pair(70, "0");
    const auto block = [](const char* name, unsigned own) {
      return entry("BLOCK_RECORD", own, blocks_table, "AcDbBlockTableRecord", name) +
             handle(340, 0);
    };
    return section(
        "TABLES",
        table("VPORT", 0x8, 0, "") +
            table("LTYPE", 0x5, 3,
                  line_type("ByBlock", 0x14, "") + line_type("ByLayer", 0x15, "") +
                      line_type("Continuous", 0x16, "Solid line")) +
            table("LAYER", layers_table, count, layers) + table("STYLE", 0x3, 1, style) +
            table("VIEW", 0x6, 0, "") + table("UCS", 0x7, 0, "") +
            table("APPID", 0x4, 1,
                  entry("APPID", 0x12, 0x4, "AcDbRegAppTableRecord", "ACAD") + pair(70, "0")) +
            pair(0, "TABLE") + pair(2, "DIMSTYLE") + handle(5, 0xa) + pair(330, "0") +
            pair(100, "AcDbSymbolTable") + pair(70, "1") + pair(100, "AcDbDimStyleTable") +
            dimension_style + pair(0, "ENDTAB") +
            table("BLOCK_RECORD", blocks_table, 2,
                  block("*Model_Space", model_space) + block("*Paper_Space", paper_space)));
  }

  static std::string block(const char* name, unsigned record, unsigned begin, unsigned end) {
    const auto common = [&](unsigned own) {
      return handle(5, own) + handle(330, record) + pair(100, "AcDbEntity") + pair(8, "0");
    };
    return pair(0, "BLOCK") + common(begin) + pair(100, "AcDbBlockBegin") + pair(2, name) +
           pair(70, "0") + number(10, 0) + number(20, 0) + number(30, 0) + pair(3, name) +
           pair(1, "") + pair(0, "ENDBLK") + common(end) + pair(100, "AcDbBlockEnd");
  }

  static std::string blocks() {
    return section("BLOCKS", block("*Model_Space", model_space, 0x20, 0x21) +
                                 block("*Paper_Space", paper_space, 0x1c, 0x1d));
  }

  std::string entity(const char* kind, const std::string& layer, const char* subclass) {
    return pair(0, kind) + handle(5, next_++) + handle(330, model_space) + pair(100, "AcDbEntity") +
           pair(8, layer) + pair(100, subclass);
  }

  std::string place(const Spot& at) const { return number(10, at.x) + number(20, height_ - at.y); }

  // y points upward, so that what turns clockwise on paper turns the other way here.
  std::string line(const PlotLine& line) {
    const std::string layer = name_of(line.layer, word_of(line.kind));
    if (const auto circle = circle_of(line.path)) {
      return entity("CIRCLE", layer, "AcDbCircle") + place(circle->centre) + number(30, 0) +
             number(40, circle->radius);
    }
    std::string text = entity("LWPOLYLINE", layer, "AcDbPolyline") +
                       pair(90, std::to_string(line.path.corners.size())) +
                       pair(70, line.path.closed ? "1" : "0") + number(43, 0);
    for (const ToolPath::Corner& corner : line.path.corners) {
      text += place(corner.at);
      if (corner.bulge != 0) text += number(42, -corner.bulge);
    }
    return text;
  }

  std::string entities() {
    std::string all;
    for (const PlotLine& each : plot_.lines) all += line(each);
    int last = 0;
    std::size_t title = 0;
    for (const PlotLine& each : plot_.lines) {
      if (each.layer == last) continue;
      last = each.layer;
      const double below = to_millimetres(plot_.page.bottom) +
                           letter_height * (1.6 * static_cast<double>(title) + 2);
      all += entity("TEXT", name_of(last, "TEXT"), "AcDbText") + place({0, below}) + number(30, 0) +
             number(40, letter_height) + pair(1, in_ascii(plot_.titles[title++])) +
             pair(100, "AcDbText");
    }
    return section("ENTITIES", all);
  }

  static std::string objects() {
    const std::string root = pair(0, "DICTIONARY") + handle(5, dictionary) + pair(330, "0") +
                             pair(100, "AcDbDictionary") + pair(281, "1") + pair(3, "ACAD_GROUP") +
                             handle(350, groups);
    return section("OBJECTS", root + pair(0, "DICTIONARY") + handle(5, groups) +
                                  handle(330, dictionary) + pair(100, "AcDbDictionary") +
                                  pair(281, "1"));
  }

  const Plot& plot_;
  double height_;
  unsigned next_ = first_free;
};

}  // namespace

std::string write_dxf(const Plot& plot) {
  return Dxf(plot).text();
}

}  // namespace mullion
