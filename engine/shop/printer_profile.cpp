#include "engine/shop/printer_profile.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <pugixml.hpp>
#include <sstream>

#include "engine/file/file.h"
#include "engine/xml/root.h"

namespace mullion {
namespace {

constexpr std::size_t largest_file = std::size_t{64} * 1024;

const std::vector<Word<Unit>>& unit_words() {
  static const std::vector<Word<Unit>> words{
      {"in", Unit::inch}, {"mm", Unit::millimetre}, {"cm", Unit::centimetre}};
  return words;
}

std::string_view word_of(Unit unit) {
  for (const Word<Unit>& word : unit_words()) {
    if (word.value == unit) return word.text;
  }
  return "in";
}

double ticks_per(Unit unit) {
  return unit == Unit::inch         ? static_cast<double>(ticks_per_inch)
         : unit == Unit::millimetre ? static_cast<double>(ticks_per_mm)
                                    : 10.0 * static_cast<double>(ticks_per_mm);
}

Length reading_of(Element& element, std::string_view attribute, Unit unit) {
  const auto text = element.required(attribute, "a length");
  if (!text) return {};
  const auto length = parse_reading(*text, unit);
  if (!length) element.problem_at(attribute, "printer-bad-length", length.error());
  return length.value_or(Length());
}

CalibrationReading reading_in(Element& element, Unit unit) {
  return {reading_of(element, "across", unit), reading_of(element, "down", unit),
          reading_of(element, "falling", unit), reading_of(element, "rising", unit)};
}

void read_measures(Element& root, PrinterProfile& profile) {
  profile.name = root.line("name");
  profile.paper = root.line("paper");
  root.integer("version", 1, 1, 1);
  profile.unit = root.word("unit", unit_words(), Unit::inch);
  root.reading().scale.unit = profile.unit;
  profile.across = root.required_length("across", Least::above_zero);
  profile.down = root.required_length("down", Least::above_zero);
  for (const pugi::xml_node& node : root.children({"measured", "assembled"})) {
    Element element(root.reading(), node);
    element.children({});
    if (std::string_view(node.name()) == "measured") {
      profile.measured.push_back(reading_in(element, profile.unit));
      continue;
    }
    AssembledTemplate assembled;
    assembled.width = element.required_length("width", Least::above_zero);
    assembled.height = element.required_length("height", Least::above_zero);
    assembled.measured = reading_in(element, profile.unit);
    assembled.turned = element.yes("turned");
    profile.assembled.push_back(assembled);
  }
  if (profile.measured.empty() || profile.measured.size() > 2) {
    root.problem("printer-missing-element",
                 "found " + std::to_string(profile.measured.size()) +
                     " <measured> in <printer>; expected one or two, with what was measured");
    return;
  }
  if (!root.reading().good()) return;
  const auto correction = correction_of(profile);
  if (correction) {
    profile.correction = *correction;
  } else {
    root.problem("printer-reading", correction.error());
  }
}

// A reading in decimals of the unit, as fine as a tick.
std::string format_reading(Length length, Unit unit) {
  char text[48];
  std::snprintf(text, sizeof text, "%.4f", static_cast<double>(length.ticks()) / ticks_per(unit));
  std::string decimal = text;
  while (decimal.back() == '0') decimal.pop_back();
  if (decimal.back() == '.') decimal.pop_back();
  return decimal;
}

}  // namespace

tl::expected<Correction, std::string> correction_of(const PrinterProfile& profile) {
  CalibrationReading reading = profile.measured.front();
  if (profile.measured.size() > 1) {
    const auto mean = mean_of(reading, profile.measured[1]);
    if (!mean) return tl::unexpected(mean.error());
    reading = *mean;
  }
  auto found = correction_from(nominal_reading(profile.across, profile.down), reading);
  if (found && profile.measured.size() == 1 && std::abs(found->skew) > plausible_skew) {
    return tl::unexpected("the print would be " + words_for(*found) +
                          ", which hardly any printer is: measure each length a second time, and "
                          "give both");
  }
  for (const AssembledTemplate& assembled : profile.assembled) {
    if (!found) break;
    const auto left =
        correction_from(nominal_reading(assembled.width, assembled.height), assembled.measured);
    if (!left) return left;
    if (std::abs(left->skew) > plausible_skew) {
      return tl::unexpected("the assembled template would be " + words_for(*left) +
                            ": a sheet lies askew, or a diagonal was read wrongly");
    }
    found = together(*found, *left, assembled.turned);
  }
  return found;
}

CalibrationSides calibration_sides(Length paper_width, Length paper_height, Unit unit) {
  const bool inch = unit == Unit::inch;
  const Length step = inch ? inches(1) : millimetres(10);
  const auto side = [&](Length paper, Length around) {
    return step *
           static_cast<int>(std::max<std::int64_t>(1, (paper - around).ticks() / step.ticks()));
  };
  return {side(paper_width, inch ? sixty_fourths(96) : millimetres(40)),
          side(paper_height, inch ? inches(2) : millimetres(60))};
}

tl::expected<Length, std::string> parse_reading(std::string_view text, Unit unit) {
  return parse_measured(text, unit).map([](const Measured& read) { return read.length; });
}

Result<PrinterProfile> read_printer_text(std::string_view text, const std::string& file) {
  return parse_root(text, file, "printer", PrinterProfile(), read_measures);
}

Result<PrinterProfile> read_printer(const std::string& path) {
  const auto text = read_file(path, largest_file);
  if (!text) {
    return tl::unexpected(Problems{{Severity::error, "file-read", text.error(), {}, path}});
  }
  return read_printer_text(*text, path);
}

std::string write_printer(const PrinterProfile& profile) {
  pugi::xml_document document;
  pugi::xml_node root = document.append_child("printer");
  const auto put = [&](pugi::xml_node node, const char* name, Length length) {
    node.append_attribute(name) = format_reading(length, profile.unit).c_str();
  };
  root.append_attribute("version") = 1;
  root.append_attribute("name") = profile.name.c_str();
  if (!profile.paper.empty()) root.append_attribute("paper") = profile.paper.c_str();
  root.append_attribute("unit") = std::string(word_of(profile.unit)).c_str();
  put(root, "across", profile.across);
  put(root, "down", profile.down);
  const auto put_reading = [&](pugi::xml_node node, const CalibrationReading& reading) {
    put(node, "across", reading.across);
    put(node, "down", reading.down);
    put(node, "falling", reading.falling);
    put(node, "rising", reading.rising);
  };
  for (const CalibrationReading& reading : profile.measured) {
    put_reading(root.append_child("measured"), reading);
  }
  for (const AssembledTemplate& assembled : profile.assembled) {
    pugi::xml_node node = root.append_child("assembled");
    put(node, "width", assembled.width);
    put(node, "height", assembled.height);
    put_reading(node, assembled.measured);
    if (assembled.turned) node.append_attribute("turned") = "yes";
  }
  std::ostringstream out;
  document.save(out, "  ", pugi::format_default, pugi::encoding_utf8);
  return out.str();
}

}  // namespace mullion
