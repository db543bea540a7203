#include "engine/job/parts.h"
#include "engine/job/read.h"
#include "engine/xml/document.h"

namespace mullion {
namespace {

void read_edge(Element& element, Picture& picture) {
  const bool floats = element.has("float");
  picture.float_gap = element.length("float", Least::above_zero);
  picture.overlap = element.length("overlap", Least::zero);
  if (floats && element.has("overlap")) {
    element.problem_at("float", "job-overlap-and-float",
                       "found overlap and float in one <picture>; expected one of them: the mat "
                       "covers its edge, or board shows all around it");
    return;
  }
  if (floats) return;
  if (!picture.overlap) picture.overlap = usual_for(element.reading().scale.unit).overlap;
  const Length covered = *picture.overlap * 2;
  if (covered < picture.width && covered < picture.height) return;
  const Scale& scale = element.reading().scale;
  element.problem_at("overlap", "job-overlap-too-large",
                     "found an overlap of " + format_exact(*picture.overlap, scale.unit) +
                         " on each side of a picture " + format_exact(picture.width, scale.unit) +
                         " x " + format_exact(picture.height, scale.unit) +
                         "; expected less than half of the picture");
}

Picture read_picture(Element& element) {
  element.children({});
  Picture picture;
  picture.place = element.place();
  element.required("id", "a name");
  picture.id = element.id();
  picture.width = element.required_length("width", Least::above_zero);
  picture.height = element.required_length("height", Least::above_zero);
  picture.image = element.path("image");
  read_edge(element, picture);
  picture.may_turn = element.yes("turn");
  picture.group = element.id("group");
  picture.order = element.integer("order", 1, static_cast<int>(most_pictures), 0);
  picture.turned = element.word("turned", turn_words(), Turn::none);
  picture.zoom = element.decimal("zoom", 1, largest_zoom, 1);
  picture.pan_x = element.decimal("pan-x", -1, 1, 0);
  picture.pan_y = element.decimal("pan-y", -1, 1, 0);
  return picture;
}

}  // namespace

std::vector<Picture> read_pictures(Element& element) {
  std::vector<Picture> pictures;
  std::map<std::string, Place> places;
  std::map<int, Place> orders;
  for (const pugi::xml_node& node : element.children({"picture"})) {
    Element child(element.reading(), node);
    if (pictures.size() == most_pictures) {
      child.problem("job-too-many", "found more than " + std::to_string(most_pictures) +
                                        " pictures; that is the limit");
      child.ignore_attributes();
      break;
    }
    Picture picture = read_picture(child);
    const auto [earlier, is_new] = places.emplace(picture.id, picture.place);
    if (!is_new && !picture.id.empty()) {
      child.problem_at("id", "job-repeated-id",
                       "found a second picture with the id " + quoted(picture.id) +
                           "; the first is on line " + std::to_string(earlier->second.line));
    }
    const auto [before, is_own] = orders.emplace(picture.order, picture.place);
    if (!is_own && picture.order > 0) {
      child.problem_at("order", "job-repeated-order",
                       "found a second picture with the order " + std::to_string(picture.order) +
                           "; the first is on line " + std::to_string(before->second.line) +
                           "; expected a number of its own");
    }
    pictures.push_back(std::move(picture));
  }
  return pictures;
}

}  // namespace mullion
