#include "engine/xml/write_element.h"

#include <algorithm>
#include <iterator>
#include <sstream>

#include "engine/xml/colour.h"
#include "engine/xml/words.h"

namespace mullion {

void ElementWriter::content(const char* name, const std::string& text) {
  if (!text.empty()) node_.append_child(name).text().set(text.c_str());
}

void ElementWriter::attribute(const char* name, std::string_view text) {
  node_.append_attribute(name).set_value(std::string(text).c_str());
}

void ElementWriter::text(const char* name, std::string_view text) {
  if (!text.empty()) attribute(name, text);
}

void ElementWriter::list(const char* name, const std::vector<std::string>& words) {
  std::string joined;
  for (const std::string& word : words) joined += (joined.empty() ? "" : " ") + word;
  text(name, joined);
}

// In the job's unit without naming it; where that would take a fraction that no rule has, in
// millimetres when those say it shortly.
void ElementWriter::length(const char* name, Length length) {
  constexpr std::int64_t ticks_per_hundredth_mm = ticks_per_mm / 100;
  std::string text = exact_number(length, unit_);
  const bool odd_fraction =
      text.find('/') != std::string::npos && length.ticks() % sixty_fourths(1).ticks() != 0;
  if (odd_fraction && length.ticks() % ticks_per_hundredth_mm == 0) {
    text = format_exact(length, Unit::millimetre);
  }
  attribute(name, text);
}

// What most sides have is said once, and the odd one by itself.
void ElementWriter::sides(const char* all, const char* const (&names)[4], const Sides& sides,
                          const std::optional<Sides>& usual) {
  if (usual && sides == *usual) return;
  const Length lengths[4] = {sides.left, sides.top, sides.right, sides.bottom};
  for (const Length common : {lengths[0], lengths[1]}) {
    if (std::count(std::begin(lengths), std::end(lengths), common) < 3) continue;
    length(all, common);
    for (std::size_t i = 0; i < 4; ++i) length_unless(names[i], lengths[i], common);
    return;
  }
  for (std::size_t i = 0; i < 4; ++i) length(names[i], lengths[i]);
}

void ElementWriter::length_unless(const char* name, Length value, Length usual) {
  if (value != usual) length(name, value);
}

void ElementWriter::measured(const char* name, Length length) {
  attribute(name, measured_number(length, unit_));
}

void ElementWriter::measured_unless(const char* name, Length length, Length usual) {
  if (length != usual) measured(name, length);
}

void ElementWriter::length_or_free(const char* name, const std::optional<Length>& value) {
  if (value) {
    length(name, *value);
  } else {
    attribute(name, "free");
  }
}

void ElementWriter::integer(const char* name, int number) {
  attribute(name, std::to_string(number));
}

void ElementWriter::integer_unless(const char* name, int number, int usual) {
  if (number != usual) integer(name, number);
}

void ElementWriter::decimal_unless(const char* name, double number, double usual) {
  if (number != usual) attribute(name, format_decimal(number));
}

void ElementWriter::yes(const char* name, bool flag) {
  if (flag) attribute(name, "yes");
}

void ElementWriter::colour(const char* name, const Colour& value) {
  attribute(name, format_colour(value));
}

FileWriter::FileWriter(const char* root, Unit unit) : root_({}, unit) {
  pugi::xml_node declaration = document_.append_child(pugi::node_declaration);
  declaration.append_attribute("version") = "1.0";
  declaration.append_attribute("encoding") = "UTF-8";
  root_ = {document_.append_child(root), unit};
}

std::string FileWriter::text() const {
  std::ostringstream text;
  document_.save(text, "  ", pugi::format_default, pugi::encoding_utf8);
  return text.str();
}

}  // namespace mullion
