#include <algorithm>

#include "engine/job/parts.h"
#include "engine/job/sight.h"

namespace mullion {
namespace {

Sight known_sight(const Opening& opening, const Names& names) {
  const auto found = names.pictures.find(opening.picture);
  return sight_of(opening, found == names.pictures.end() ? nullptr : found->second);
}

// A circle or a square: one stated side is enough.
void make_equal_sided(Element& element, Opening& opening, const Names& names) {
  if (opening.width.has_value() != opening.height.has_value()) {
    const char* const other = opening.width ? "height" : "width";
    if (element.value(other) != "free") {
      opening.width = opening.height = opening.width ? opening.width : opening.height;
      return;
    }
  }
  const Sight sight = known_sight(opening, names);
  if (sight.width && sight.width == sight.height) return;
  const auto text = [&](const std::optional<Length>& length) {
    return length ? format_exact(*length, element.reading().scale.unit) : std::string("free");
  };
  element.unexpected("shape", "job-not-equal-sided",
                     "a stated width, or width and height alike (they are " + text(sight.width) +
                         " and " + text(sight.height) + ")");
}

void require_stated_size(Element& element, const Opening& opening) {
  for (const char* side : {"width", "height"}) {
    const bool stated = element.has(side);
    if (opening.picture.empty() && !stated) {
      element.problem(
          "job-missing-attribute",
          "found no " + std::string(side) +
              " in <opening>; expected a length or \"free\", since it shows no picture");
    } else if (!opening.picture.empty() && element.value(side) == "free") {
      element.unexpected(side, "job-free-picture",
                         "a length, or nothing: then the window fits the picture");
    }
  }
}

// Attributes that only some shapes have.
void refuse_foreign(Element& element, const char* attribute, std::initializer_list<ShapeKind> kinds,
                    ShapeKind kind) {
  if (!element.has(attribute) || std::find(kinds.begin(), kinds.end(), kind) != kinds.end()) return;
  std::vector<std::string_view> shapes;
  for (const Word<ShapeKind>& word : shape_words()) {
    if (std::find(kinds.begin(), kinds.end(), word.value) != kinds.end()) {
      shapes.push_back(word.text);
    }
  }
  element.problem_at(attribute, "job-not-of-this-shape",
                     "found " + std::string(attribute) +
                         " on an opening of another shape; expected it with shape " +
                         alternatives(shapes));
}

void check_corner(Element& element, Length corner, const Sight& sight) {
  const auto fits = [&](const std::optional<Length>& side) { return !side || corner * 2 < *side; };
  if (fits(sight.width) && fits(sight.height)) return;
  element.unexpected("corner", "job-out-of-range",
                     "less than half of the opening's width and height");
}

void check_rise(Element& element, Length rise, const Sight& sight) {
  if (sight.width && rise * 2 > *sight.width) {
    element.unexpected("rise", "job-out-of-range",
                       "at most half of the opening's width, which is a half round");
  } else if (sight.height && rise >= *sight.height) {
    element.unexpected("rise", "job-out-of-range", "less than the opening's height");
  }
}

// Words that somebody who wants a name or a year cut into the mat would try.
bool asks_for_letters(std::string_view word) {
  return word == "text" || word == "letters" || word == "letter" || word == "lettering" ||
         word == "word";
}

}  // namespace

ShapeSpec read_shape(Element& element, Opening& opening, const Names& names) {
  using enum ShapeKind;
  ShapeSpec shape;
  if (asks_for_letters(element.value("shape").value_or(""))) {
    element.unexpected("shape", "job-letters",
                       "another shape: letters are not cut as openings, but an \"outline\" may be "
                       "one letter, drawn as a path in an SVG file");
    for (const char* other : {"corner", "rise", "file", "path"}) element.value(other);
    return shape;
  }
  shape.kind = element.word<ShapeKind>("shape", shape_words(), rectangle);
  const std::string word = element.value("shape").value_or("");
  if (word == "circle" || word == "square") {
    make_equal_sided(element, opening, names);
  } else {
    require_stated_size(element, opening);
  }
  refuse_foreign(element, "corner", {rounded, stepped, octagon}, shape.kind);
  refuse_foreign(element, "rise", {arch}, shape.kind);
  refuse_foreign(element, "file", {outline}, shape.kind);
  refuse_foreign(element, "path", {outline}, shape.kind);

  const Sight sight = known_sight(opening, names);
  if (shape.kind == rounded || shape.kind == stepped || shape.kind == octagon) {
    shape.corner = element.required_length("corner", Least::above_zero);
    check_corner(element, shape.corner, sight);
  }
  if (shape.kind == arch) {
    if (const auto rise = element.length("rise", Least::above_zero)) {
      shape.rise = *rise;
      check_rise(element, shape.rise, sight);
    }
  }
  if (shape.kind == outline) {
    element.required("file", "an SVG file");
    shape.file = element.path("file");
    shape.path_id = element.line("path");
  }
  return shape;
}

}  // namespace mullion
