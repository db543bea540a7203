#include "engine/job/write_element.h"

#include "engine/job/colour.h"
#include "engine/job/words.h"

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

void ElementWriter::length(const char* name, Length length) {
  std::string text = format_exact(length, unit_);
  text.erase(text.rfind(' '));  // the unit is the job's
  attribute(name, text);
}

void ElementWriter::length_unless(const char* name, Length value, Length usual) {
  if (value != usual) length(name, value);
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

}  // namespace mullion
