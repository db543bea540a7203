#pragma once

// The parts of a comparison. Each adds its sentences to the changes.

#include <map>
#include <string>
#include <vector>

#include "engine/diff/diff.h"
#include "engine/xml/colour.h"

namespace mullion::diff {

// What changed is a label, such as "the top border", that opens its sentence; translations set it
// before a colon.
class Changes {
 public:
  Changes(const Scale& scale, const Locale& locale) : scale_(scale), locale_(locale) {}

  template <class... Arguments>
  void say(const char* message, const Arguments&... arguments) {
    sentences_.push_back(locale_.say(message, arguments...));
  }
  // "the top border grew from 3 in to 4 in"
  void length(const std::string& what, Length before, Length after) {
    if (before == after) return;
    say(after > before ? mark("%1 grew from %2 to %3") : mark("%1 shrank from %2 to %3"), what,
        text(before), text(after));
  }
  // "the moulding is now B instead of A"
  void word(const std::string& what, const std::string& before, const std::string& after) {
    if (before == after) return;
    if (before.empty()) {
      say("%1 is now %2", what, after);
    } else if (after.empty()) {
      say("%1 %2 was taken away", what, before);
    } else {
      say("%1 is now %2 instead of %3", what, after, before);
    }
  }
  void number(const std::string& what, int before, int after) {
    word(what, std::to_string(before), std::to_string(after));
  }
  void colour(const std::string& what, const Colour& before, const Colour& after) {
    word(what, format_colour(before), format_colour(after));
  }
  std::string text(Length length) const { return locale_.exact_length(length, scale_.unit); }
  const Locale& locale() const { return locale_; }
  std::vector<std::string> take() { return std::move(sentences_); }

 private:
  Scale scale_;
  Locale locale_;
  std::vector<std::string> sentences_;
};

template <class T>
std::map<std::string, const T*> by_id(const std::vector<T>& items) {
  std::map<std::string, const T*> out;
  for (const T& item : items) out.emplace(item.id, &item);
  return out;
}

void compare_words(Changes& changes, const Job& before, const Job& after);
void compare_sizes(Changes& changes, const Layout& before, const Layout& after);
void compare_openings(Changes& changes, const Version& before, const Version& after);
void compare_shapes(Changes& changes, const Job& before, const Job& after);
void compare_layers(Changes& changes, const Job& before, const Job& after);
void compare_pictures(Changes& changes, const Job& before, const Job& after);
void compare_frame(Changes& changes, const Job& before, const Job& after);

}  // namespace mullion::diff
