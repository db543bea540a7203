#include "cli/terminal.h"

#include <unistd.h>

#include <clocale>
#include <cstdlib>
#include <cwchar>

#include "engine/xml/source_text.h"

namespace mullion::cli {
namespace {

// Select Graphic Rendition (ECMA-48, 8.3.117): bold, and bold in a colour.
const char* code_of(Ink ink) {
  switch (ink) {
    case Ink::strong:
      return "1";
    case Ink::error:
      return "1;31";
    case Ink::warning:
      return "1;33";
    case Ink::note:
      return "1;36";
  }
  return "0";
}

bool is_control(char32_t c) {
  return (c < 0x20 && c != '\t' && c != '\n') || (c >= 0x7F && c < 0xA0);
}

std::string_view variable(const char* name) {
  const char* value = std::getenv(name);
  return value == nullptr ? std::string_view() : value;
}

// The widths of characters by Unicode, whatever the user's locale is.
class UnicodeWidths {
 public:
  UnicodeWidths() : unicode_(::newlocale(LC_CTYPE_MASK, "C.UTF-8", nullptr)) {
    if (unicode_ != nullptr) before_ = ::uselocale(unicode_);
  }
  ~UnicodeWidths() {
    if (unicode_ == nullptr) return;
    ::uselocale(before_);
    ::freelocale(unicode_);
  }
  UnicodeWidths(const UnicodeWidths&) = delete;
  UnicodeWidths& operator=(const UnicodeWidths&) = delete;

 private:
  locale_t unicode_, before_ = nullptr;
};

}  // namespace

std::string Paint::operator()(Ink ink, std::string_view text) const {
  if (!coloured_) return std::string(text);
  return "\x1b[" + std::string(code_of(ink)) + "m" + std::string(text) + "\x1b[0m";
}

bool wants_colour(int descriptor) {
  const std::string_view terminal = variable("TERM");
  return variable("NO_COLOR").empty() && !terminal.empty() && terminal != "dumb" &&
         ::isatty(descriptor) != 0;
}

std::string printable(std::string_view text) {
  constexpr std::string_view replacement = "\xEF\xBF\xBD";
  std::string out;
  out.reserve(text.size());
  while (!text.empty()) {
    const auto c = first_code_point(text);
    const std::size_t bytes = c ? c->bytes : 1;
    out += !c || is_control(c->value) ? replacement : text.substr(0, bytes);
    text.remove_prefix(bytes);
  }
  return out;
}

int columns_of(char32_t character) {
  if (character < 0x7F) return 1;
  const UnicodeWidths widths;
  const int columns = ::wcwidth(static_cast<wchar_t>(character));
  return columns < 0 ? 1 : columns;
}

}  // namespace mullion::cli
