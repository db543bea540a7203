#include "engine/layout/model.h"

namespace mullion::layout {
namespace {

FoundMeasure part_of(const Box& box, std::string_view part) {
  const Span& x = box.span[across];
  const Span& y = box.span[down];
  const auto middle = [](const Span& span) { return (span.start + span.end) / 2; };
  if (part == "left") return {x.start, true};
  if (part == "right") return {x.end, true};
  if (part == "top") return {y.start, true};
  if (part == "bottom") return {y.end, true};
  if (part == "centre") return {middle(x), true};
  if (part == "middle") return {middle(y), true};
  if (part == "width") return {x.size(), true};
  if (part == "height") return {y.size(), true};
  return {};
}

}  // namespace

const NamedBox* find_box(const Model& model, std::string_view id) {
  for (const NamedBox& opening : model.openings) {
    if (opening.id == id) return &opening;
  }
  for (const NamedBox& group : model.groups) {
    if (!group.id.empty() && group.id == id) return &group;
  }
  return nullptr;
}

FoundMeasure find_measure(const Model& model, std::string_view name) {
  if (const auto gap = model.gaps.find(name); gap != model.gaps.end()) return {gap->second, true};
  const std::size_t dot = name.rfind('.');
  if (dot == std::string_view::npos) return {};
  const std::string_view owner = name.substr(0, dot), part = name.substr(dot + 1);
  if (owner == "outer") {
    if (part == "width") return {model.outer[across], true};
    if (part == "height") return {model.outer[down], true};
  }
  if (owner == "border") {
    if (part == "left") return {model.border[across].start, true};
    if (part == "right") return {model.border[across].end, true};
    if (part == "top") return {model.border[down].start, true};
    if (part == "bottom") return {model.border[down].end, true};
  }
  const NamedBox* box = find_box(model, owner);
  return box == nullptr ? FoundMeasure{} : part_of(box->box, part);
}

}  // namespace mullion::layout
