#pragma once

// A language, perhaps with a territory, and all that differs with it on paper: words, decimal mark,
// which unit comes first, size of paper.
//
// A small value, cheap to copy, that is passed to what writes words. English is the language of the
// sources: its messages stand in the calls, and gettext's tools find them there:
//
//   locale.say("for %1", customer)                       the whole sentence, %1 ... %9 in any order
//   locale.plural(n, "%1 opening", "%1 openings")        %1 is n
//   locale.plural_in_words(n, "a gap of %2", "%1 gaps of %2", size)
//   locale.say_in("unit", "in")                          a word that means several things
//   constexpr const char* name = mark("Estimate");       found here, said later
//
// A sentence is translated whole, never put together of pieces.

#include <cstdint>
#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/length/format.h"
#include "engine/locale/catalogue.h"
#include "engine/locale/region.h"

namespace mullion {

constexpr const char* mark(const char* message) {
  return message;
}

// What stands for %1 ... %9 in a message.
class Argument {
 public:
  Argument(std::string text) : text_(std::move(text)) {}
  Argument(std::string_view text) : text_(text) {}
  Argument(const char* text) : text_(text) {}
  Argument(std::int64_t number) : text_(std::to_string(number)) {}
  Argument(int number) : Argument(std::int64_t{number}) {}
  Argument(std::size_t number) : text_(std::to_string(number)) {}
  const std::string& text() const { return text_; }

 private:
  std::string text_;
};

class Locale {
 public:
  Locale() = default;  // English, of no territory

  // By a name such as "de", "de-AT", "es_MX.UTF-8" or "C" (POSIX: English); nothing where the
  // language is not known.
  static std::optional<Locale> find(std::string_view name);
  static std::vector<std::string_view> languages();  // "de", "en", ...

  const std::string& language() const { return language_; }  // ISO 639-1
  std::string tag() const;                                   // BCP 47: "de-AT"

  template <class... Arguments>
  std::string say(const char* message, const Arguments&... arguments) const {
    return filled(translated(message, {}), {Argument(arguments)...});
  }
  template <class... Arguments>
  std::string say_in(const char* context, const char* message,
                     const Arguments&... arguments) const {
    return filled(translated(message, context), {Argument(arguments)...});
  }
  template <class Number, class... Arguments>
  std::string plural(Number n, const char* one, const char* several,
                     const Arguments&... arguments) const {
    return filled(plural_form(static_cast<std::int64_t>(n), one, several),
                  {Argument(n), Argument(arguments)...});
  }

  // As plural; from two to twelve %1 is the number in words.
  template <class... Arguments>
  std::string plural_in_words(int n, const char* one, const char* several,
                              const Arguments&... arguments) const {
    return filled(plural_form(n, one, several), {number_word(n), Argument(arguments)...});
  }

  std::string unit(Unit unit) const;
  // A decimal as our formatters write it, with this locale's mark.
  std::string number(std::string text) const;
  // As format_length and format_number of engine/length write it: "21,6 cm", "8 1/2 Zoll".
  std::string length(Length length, const Scale& scale) const;
  std::string length_number(Length length, const Scale& scale) const;
  // As describe, describe_number and describe_fine: "about 8 1/2 in".
  std::string described(Length length, const Scale& scale) const;
  std::string described_number(Length length, const Scale& scale) const;
  std::string described_fine(Length length, Unit unit) const;
  // As measured_number: "0,055 Zoll".
  std::string measured(Length length, Unit unit) const;
  // "a, b and c", "a, b or c".
  std::string all_of(const std::vector<std::string>& items) const;
  std::string one_of(const std::vector<std::string>& items) const;
  // As format_exact: "11,43 cm".
  std::string exact_length(Length length, Unit unit) const;
  // Width and height with one unit, as described: "21,6 × 27,9 cm"; and as length rounds them.
  std::string size(Length width, Length height, const Scale& scale) const;
  std::string rounded_size(Length width, Length height, const Scale& scale) const;

  // What a customer reads first, of a job that is measured in `own`: that, unless the territory, or
  // without one the language, measures in the other system; then centimetres or inches.
  Scale first_scale(const Scale& own) const;
  // The paper for a job that is measured in `own`: Letter, else A4.
  bool letter_paper(Unit own) const;
  Measure measure() const;

 private:
  std::string number_word(int n) const;
  std::string_view translated(const char* message, std::string_view context) const;
  std::string_view plural_form(std::int64_t n, const char* one, const char* several) const;
  static std::string filled(std::string_view message, const std::vector<Argument>& arguments);

  std::string language_ = "en", territory_;
  Catalogue catalogue_;
};

}  // namespace mullion
