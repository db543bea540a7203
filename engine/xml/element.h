#pragma once

// One element of a job file as its reader sees it: attributes by name, as values of the right
// type. Whatever is wrong with an attribute is reported at the attribute, and its fallback stands
// in for it, so that reading goes on. When the element goes out of scope, attributes that nobody
// asked for are reported as unknown.

#include <optional>
#include <pugixml.hpp>
#include <string>
#include <string_view>
#include <vector>

#include "engine/xml/colour.h"
#include "engine/xml/reading.h"
#include "engine/xml/words.h"

namespace mullion {

enum class Least { zero, above_zero };

template <class T>
struct Word {
  std::string_view text;
  T value;
};

template <class T>
struct LengthOrWord {
  std::optional<Length> length;
  std::optional<T> word;
};

class Element {
 public:
  Element(Reading& reading, pugi::xml_node node);
  Element(const Element&) = delete;
  Element& operator=(const Element&) = delete;
  ~Element();

  std::string_view name() const { return node_.name(); }
  std::size_t offset() const { return offset_; }
  std::size_t offset_of_attribute(std::string_view attribute) const;
  Place place() const { return reading_.source.place(offset_); }
  Reading& reading() const { return reading_; }

  // Child elements of these names; others, and text, are reported.
  std::vector<pugi::xml_node> children(const std::vector<std::string_view>& names);
  // Reports child elements and returns the text, blanks trimmed.
  std::string content(std::size_t longest);

  bool has(std::string_view attribute) { return find(attribute) != nullptr; }
  // The value with blanks trimmed at its ends and single within; nothing when not stated.
  std::optional<std::string> value(std::string_view attribute);
  std::optional<std::string> required(std::string_view attribute, std::string_view expected);

  std::string line(std::string_view attribute, std::string_view fallback = {});
  std::string email(std::string_view attribute);
  std::string id(std::string_view attribute = "id");
  std::vector<std::string> list(std::string_view attribute);  // divided by blanks
  std::string path(std::string_view attribute);               // within the job file's folder
  std::optional<Length> length(std::string_view attribute, Least least);
  Length length_or(std::string_view attribute, Least least, Length fallback);
  Length required_length(std::string_view attribute, Least least);
  // Above zero, and measured: to the nearest tick, which a note says where it is not exact.
  std::optional<Length> measured(std::string_view attribute);
  Length measured_or(std::string_view attribute, Length fallback);
  // A length above zero or one of the words; nothing when not stated or not right.
  template <class T>
  std::optional<LengthOrWord<T>> length_or_word(std::string_view attribute,
                                                const std::vector<Word<T>>& words) {
    const auto found = value(attribute);
    if (!found) return std::nullopt;
    std::vector<std::string_view> texts;
    for (const Word<T>& word : words) {
      if (word.text == *found) return LengthOrWord<T>{std::nullopt, word.value};
      texts.push_back(word.text);
    }
    if (begins_with_letter(*found)) {
      unknown_word(attribute, *found, texts);
      return std::nullopt;
    }
    const auto size = length(attribute, Least::above_zero);
    if (!size) return std::nullopt;
    return LengthOrWord<T>{size, std::nullopt};
  }
  // The word "free" gives nothing, and so does an attribute that is not stated.
  std::optional<Length> length_or_free(std::string_view attribute);
  int integer(std::string_view attribute, int least, int most, int fallback);
  double decimal(std::string_view attribute, double least, double most, double fallback);
  Fraction fraction(std::string_view attribute);
  bool yes(std::string_view attribute);
  void colour(std::string_view attribute, Colour& colour);

  template <class T>
  T word(std::string_view attribute, const std::vector<Word<T>>& words, T fallback) {
    const auto found = value(attribute);
    if (!found) return fallback;
    std::vector<std::string_view> texts;
    for (const Word<T>& word : words) {
      if (word.text == *found) return word.value;
      texts.push_back(word.text);
    }
    unknown_word(attribute, *found, texts);
    return fallback;
  }

  // For an element that is passed over: its attributes are not reported.
  void ignore_attributes();

  // A problem with the element as a whole, or with one of its attributes: "found X, expected Y".
  void problem(std::string code, std::string message) const;
  void problem_at(std::string_view attribute, std::string code, std::string message) const;
  void unexpected(std::string_view attribute, std::string code, std::string_view expected) const;

 private:
  struct Attribute {
    std::string_view name;
    std::string value;
    std::size_t offset = 0;
    bool asked = false;
  };

  const Attribute* find(std::string_view attribute);
  std::optional<Length> in_range(std::string_view attribute, Length length, Least least) const;
  void bad_length(std::string_view attribute, const std::string& why) const;
  const Attribute* stated(std::string_view attribute) const;
  void read_attributes();
  void unknown_word(std::string_view attribute, std::string_view found,
                    const std::vector<std::string_view>& words) const;
  void limit_length(std::string_view attribute, std::string_view text, std::size_t longest) const;
  std::string tag() const { return "<" + std::string(name()) + ">"; }

  Reading& reading_;
  pugi::xml_node node_;
  std::size_t offset_;
  std::vector<Attribute> attributes_;
  std::vector<std::string_view> asked_;
};

}  // namespace mullion
