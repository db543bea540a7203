#include "engine/job/job_words.h"

namespace mullion {

std::string_view word_for(Along along) {
  switch (along) {
    case Along::row:
      return "row";
    case Along::column:
      return "column";
    case Along::ring:
      return "ring";
    case Along::places:
      return "places";
  }
  return {};
}

std::string_view word_for(Rule::Kind kind) {
  switch (kind) {
    case Rule::Kind::same_size:
      return "same-size";
    case Rule::Kind::align:
      return "align";
    case Rule::Kind::equal:
      return "equal";
    case Rule::Kind::multiple:
      return "multiple";
    case Rule::Kind::fixed:
      return "fixed";
    case Rule::Kind::at_least:
      return "at-least";
    case Rule::Kind::at_most:
      return "at-most";
    case Rule::Kind::centred:
      return "centred";
  }
  return {};
}

std::string_view word_for(Strength strength) {
  switch (strength) {
    case Strength::required:
      return "required";
    case Strength::strong:
      return "strong";
    case Strength::medium:
      return "medium";
    case Strength::weak:
      return "weak";
  }
  return {};
}

std::string_view word_for(RevealReading reading) {
  switch (reading) {
    case RevealReading::seen:
      return "seen";
    case RevealReading::lines:
      return "lines";
  }
  return {};
}

std::string_view word_for(ShapeKind kind) {
  switch (kind) {
    case ShapeKind::rectangle:
      return "rectangle";
    case ShapeKind::ellipse:
      return "ellipse";
    case ShapeKind::arch:
      return "arch";
    case ShapeKind::rounded:
      return "rounded";
    case ShapeKind::stepped:
      return "stepped";
    case ShapeKind::octagon:
      return "octagon";
    case ShapeKind::outline:
      return "outline";
  }
  return {};
}

// By a quarter, a half and three quarters clockwise.
std::string_view word_for(Turn turn) {
  switch (turn) {
    case Turn::none:
      return {};
    case Turn::right:
      return "right";
    case Turn::over:
      return "over";
    case Turn::left:
      return "left";
  }
  return {};
}

std::string_view word_for(Align align, Along along) {
  switch (align) {
    case Align::start:
      return along == Along::row ? "top" : "left";
    case Align::centre:
      return "centre";
    case Align::end:
      return along == Along::row ? "bottom" : "right";
    case Align::stretch:
      return "stretch";
  }
  return {};
}

const std::vector<Word<Align>>& align_words(Along along) {
  const auto words_in = [](Along direction) {
    return all_words<Align>([=](Align align) { return word_for(align, direction); });
  };
  static const auto in_row = words_in(Along::row), in_column = words_in(Along::column);
  return along == Along::row ? in_row : in_column;
}

const std::vector<Word<Rule::Kind>>& rule_words() {
  static const auto words = all_words<Rule::Kind>();
  return words;
}

const std::vector<Word<Turn>>& turn_words() {
  static const auto words = all_words<Turn>();
  return words;
}

const std::vector<Word<ShapeKind>>& shape_words() {
  static const auto words = [] {
    auto out = all_words<ShapeKind>();
    out.push_back({"circle", ShapeKind::ellipse});
    out.push_back({"square", ShapeKind::rectangle});
    return out;
  }();
  return words;
}

}  // namespace mullion
