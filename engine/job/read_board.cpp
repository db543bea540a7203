#include "engine/job/parts.h"
#include "engine/job/read.h"

namespace mullion {

Frame read_frame(Element& element) {
  element.children({});
  const Unit unit = element.reading().scale.unit;
  const Usual& usual = usual_for(unit);
  Frame frame;
  frame.place = element.place();
  frame.rabbet_width = element.required_length("rabbet-width", Least::above_zero);
  frame.rabbet_height = element.required_length("rabbet-height", Least::above_zero);
  frame.allowance = element.length_or("allowance", Least::zero, usual.allowance);
  frame.lip = element.length_or("lip", Least::zero, usual.lip);
  frame.face_width = element.length_or("face", Least::above_zero, usual.face);
  frame.moulding = element.line("moulding");
  element.colour("colour", frame.colour);
  if (frame.allowance >= frame.rabbet_width || frame.allowance >= frame.rabbet_height) {
    element.problem_at("allowance", "job-out-of-range",
                       "found an allowance of " + format_exact(frame.allowance, unit) +
                           "; expected less than the rabbet's width and height");
  }
  return frame;
}

void read_outer(Element& element, Job& job) {
  element.children({});
  job.outer_place = element.place();
  job.outer_width = element.length_or_free("width");
  job.outer_height = element.length_or_free("height");
  if (!job.frame) return;
  const auto check = [&](const char* side, const std::optional<Length>& stated, Length rabbet) {
    if (!stated || *stated <= rabbet) return;
    const Unit unit = job.scale.unit;
    element.problem_at(side, "job-outer-beyond-frame",
                       "found an outer " + std::string(side) + " of " +
                           format_exact(*stated, unit) + " for a frame with a rabbet of " +
                           format_exact(rabbet, unit) + "; expected at most the rabbet");
  };
  check("width", job.outer_width, job.frame->rabbet_width);
  check("height", job.outer_height, job.frame->rabbet_height);
}

Sides read_sides(Element& element, std::string_view all, const char* const (&sides)[4],
                 const Sides& fallback) {
  Sides out = fallback;
  if (const auto length = element.length(all, Least::zero)) {
    out = {*length, *length, *length, *length};
  }
  out.left = element.length_or(sides[0], Least::zero, out.left);
  out.top = element.length_or(sides[1], Least::zero, out.top);
  out.right = element.length_or(sides[2], Least::zero, out.right);
  out.bottom = element.length_or(sides[3], Least::zero, out.bottom);
  return out;
}

std::vector<Groove> read_grooves(Reading& reading, const std::vector<pugi::xml_node>& nodes) {
  std::vector<Groove> grooves;
  for (const pugi::xml_node& node : nodes) {
    Element element(reading, node);
    element.children({});
    Groove groove;
    groove.place = element.place();
    groove.distance = element.required_length("distance", Least::above_zero);
    groove.width = element.required_length("width", Least::above_zero);
    grooves.push_back(groove);
    if (grooves.size() <= most_grooves) continue;
    element.problem("job-too-many", "found more than " + std::to_string(most_grooves) +
                                        " grooves around one thing; that is the limit");
    break;
  }
  return grooves;
}

}  // namespace mullion
