#pragma once

// The words of a job file for what a job can say, each once: the reader knows a word because the
// writer would write it. A value without a word does not compile, since each function below is a
// switch over all values.

#include "engine/job/job.h"
#include "engine/xml/element.h"

namespace mullion {

std::string_view word_for(Along along);      // the element: row, column, ring, places
std::string_view word_for(Rule::Kind kind);  // the element: same-size, align, ...
std::string_view word_for(Strength strength);
std::string_view word_for(RevealReading reading);
std::string_view word_for(ShapeKind kind);
std::string_view word_for(Turn turn);                 // none: empty, since it is not stated
std::string_view word_for(Align align, Along along);  // top in a row is left in a column

// Every value of an enumeration with its word, in order. The first value may have none.
template <class T, class WordFor>
std::vector<Word<T>> all_words(const WordFor& word_of) {
  std::vector<Word<T>> out;
  for (int i = 0;; ++i) {
    const T value = static_cast<T>(i);
    const std::string_view word = word_of(value);
    if (!word.empty()) out.push_back({word, value});
    if (word.empty() && i > 0) return out;
  }
}
template <class T>
std::vector<Word<T>> all_words() {
  return all_words<T>([](T value) { return word_for(value); });
}

const std::vector<Word<Align>>& align_words(Along along);
const std::vector<Word<Rule::Kind>>& rule_words();
const std::vector<Word<Turn>>& turn_words();
// "circle" and "square" too, which are an ellipse and a rectangle of equal sides.
const std::vector<Word<ShapeKind>>& shape_words();

// The attributes of a rule by its kind, said once. `io` reads each into the rule, or writes each
// from it: of openings, rows or columns (`boxes`, so many at least), of `measures` (two at least)
// or one `measure`; one of some words, where the first may be left out or all are needed; a length;
// a factor; a name of an opening, row or column, or "mat".
template <class Io, class SomeRule>
void rule_attributes(Io& io, SomeRule& rule) {
  switch (rule.kind) {
    case Rule::Kind::same_size:
      io.boxes("of", 2, rule.of);
      io.word("dimension", {"both", "width", "height"}, rule.dimension);
      return;
    case Rule::Kind::align:
      io.boxes("of", 2, rule.of);
      io.needed_word("edge", {"left", "top", "right", "bottom", "centre", "middle"}, rule.edge);
      return;
    case Rule::Kind::equal:
      io.measures("of", rule.of);
      return;
    case Rule::Kind::multiple:
      io.measure("measure", 0, rule.of);
      io.measure("of", 1, rule.of);
      io.factor("times", rule);
      return;
    case Rule::Kind::fixed:
    case Rule::Kind::at_least:
    case Rule::Kind::at_most:
      io.measure("measure", 0, rule.of);
      io.length("length", rule.value);
      return;
    case Rule::Kind::centred:
      io.boxes("what", 1, rule.of);
      io.box_or_mat("on", rule.on);
      io.word("direction", {"both", "across", "down"}, rule.dimension);
      return;
  }
}

}  // namespace mullion
