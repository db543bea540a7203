#include "engine/shop/printer_profile.h"

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

void read_measures(Element& root, PrinterProfile& profile) {
  profile.name = root.line("name");
  root.integer("version", 1, 1, 1);
  profile.unit = root.word("unit", unit_words(), Unit::inch);
  root.reading().scale.unit = profile.unit;
  profile.across = root.required_length("across", Least::above_zero);
  profile.down = root.required_length("down", Least::above_zero);
  const auto nodes = root.children({"measured"});
  if (nodes.size() != 1) {
    root.problem("printer-missing-element",
                 "found " + std::to_string(nodes.size()) +
                     " <measured> in <printer>; expected one, with what was measured");
    return;
  }
  Element measured(root.reading(), nodes.front());
  measured.children({});
  profile.measured.across = reading_of(measured, "across", profile.unit);
  profile.measured.down = reading_of(measured, "down", profile.unit);
  profile.measured.falling = reading_of(measured, "falling", profile.unit);
  profile.measured.rising = reading_of(measured, "rising", profile.unit);
  if (!root.reading().good()) return;
  const auto correction =
      correction_from(nominal_reading(profile.across, profile.down), profile.measured);
  if (correction) {
    profile.correction = *correction;
  } else {
    measured.problem("printer-reading", correction.error());
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

CalibrationSides calibration_sides(Unit unit) {
  if (unit == Unit::inch) return {inches(7), inches(9)};
  return {millimetres(170), millimetres(230)};
}

tl::expected<Length, std::string> parse_reading(std::string_view text, Unit unit) {
  const auto exact = parse_length(text, unit);
  if (exact) return exact;
  const std::string trimmed = tidy(text);
  const std::size_t end = trimmed.find_first_not_of("0123456789.");
  const std::string number = trimmed.substr(0, end);
  const std::string named = end == std::string::npos ? "" : tidy(trimmed.substr(end));
  const auto value = parse_decimal(number);
  const auto named_unit = [&]() -> std::optional<Unit> {
    if (named.empty()) return unit;
    if (named == "in" || named == "\"") return Unit::inch;
    if (named == "mm") return Unit::millimetre;
    if (named == "cm") return Unit::centimetre;
    return std::nullopt;
  }();
  if (!value || !named_unit || !(*value < 1000)) return tl::unexpected(exact.error());
  return Length::from_ticks(std::llround(*value * ticks_per(*named_unit)));
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
  root.append_attribute("unit") = std::string(word_of(profile.unit)).c_str();
  put(root, "across", profile.across);
  put(root, "down", profile.down);
  pugi::xml_node measured = root.append_child("measured");
  put(measured, "across", profile.measured.across);
  put(measured, "down", profile.measured.down);
  put(measured, "falling", profile.measured.falling);
  put(measured, "rising", profile.measured.rising);
  std::ostringstream out;
  document.save(out, "  ", pugi::format_default, pugi::encoding_utf8);
  return out.str();
}

}  // namespace mullion
