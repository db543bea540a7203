#pragma once

// The parts of a comparison. Each adds its sentences to the changes.

#include <map>
#include <string>
#include <vector>

#include "engine/diff/diff.h"
#include "engine/job/colour.h"

namespace mullion::diff {

class Changes {
 public:
  explicit Changes(const Scale& scale) : scale_(scale) {}

  void say(std::string sentence) { sentences_.push_back(std::move(sentence)); }
  // "the top border grew from 3 in to 4 in"
  void length(const std::string& what, Length before, Length after) {
    if (before == after) return;
    say(what + (after > before ? " grew from " : " shrank from ") + text(before) + " to " +
        text(after));
  }
  // "the moulding is now B instead of A"
  void word(const std::string& what, const std::string& before, const std::string& after) {
    if (before == after) return;
    if (before.empty()) {
      say(what + " is now " + after);
    } else if (after.empty()) {
      say(what + " " + before + " was taken away");
    } else {
      say(what + " is now " + after + " instead of " + before);
    }
  }
  void number(const std::string& what, int before, int after) {
    word(what, std::to_string(before), std::to_string(after));
  }
  void colour(const std::string& what, const Colour& before, const Colour& after) {
    word(what, format_colour(before), format_colour(after));
  }
  std::string text(Length length) const { return format_exact(length, scale_.unit); }
  std::vector<std::string> take() { return std::move(sentences_); }

 private:
  Scale scale_;
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
