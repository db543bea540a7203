#include <cmath>
#include <set>

#include "engine/job/parts.h"
#include "engine/job/read.h"

namespace mullion {
namespace {

constexpr int thickest_ply = 64;

void read_reveal(Element& element, Layer& layer, std::size_t number) {
  const Length usual = usual_for(element.reading().scale.unit).reveal;
  layer.reveal = read_sides(element, "reveal", reveal_names, {usual, usual, usual, usual});
  if (number > 1 && !layer.spacer) return;
  layer.reveal = {};
  for (const char* name :
       {"reveal", reveal_names[0], reveal_names[1], reveal_names[2], reveal_names[3]}) {
    if (!element.has(name)) continue;
    element.problem_at(name, "job-reveal-unseen",
                       "found " + std::string(name) + " on " +
                           (number == 1 ? "the top layer; a reveal belongs to a layer below it"
                                        : "a spacer; a spacer shows no reveal"));
  }
}

void read_only(Element& element, Names& names, Layer& layer) {
  layer.only = element.list("only");
  if (element.has("only") && layer.only.empty()) {
    element.unexpected("only", "job-unknown-id", "ids of openings with blanks between them");
  }
  for (const std::string& id : layer.only) {
    names.mentioned.push_back({id, element.offset_of_attribute("only")});
  }
}

int read_bevel(Element& element) {
  constexpr double least = 30, most = 90, thousandths = 1000, rounding = 1e-6;
  const double scaled = element.decimal("bevel", least, most, 45) * thousandths;
  const double whole = std::round(scaled);
  if (std::abs(scaled - whole) > rounding) {
    element.unexpected("bevel", "job-bad-number", "at most three decimals");
  }
  return static_cast<int>(whole);
}

}  // namespace

Layer read_layer(Element& element, std::size_t number) {
  element.children({});
  Layer layer;
  layer.place = element.place();
  layer.name = element.line("name", usual_layer_name(number));
  layer.board = element.line("board");
  layer.states_colour = element.has("colour");
  element.colour("colour", layer.colour);
  element.colour("core", layer.core);
  layer.ply = element.integer("ply", 1, thickest_ply, 4);
  layer.thickness =
      element.measured_or("thickness", thickness_of(layer.ply, element.reading().scale.unit));
  layer.spacer = element.yes("spacer");
  layer.grain = element.yes("grain");
  read_reveal(element, layer, number);
  if (layer.spacer && number == 1) {
    element.problem_at("spacer", "job-spacer-on-top",
                       "found a spacer as the top layer; expected a layer above it");
  }
  return layer;
}

std::string usual_layer_name(std::size_t number) {
  return number == 1 ? "Top mat" : "Layer " + std::to_string(number);
}

void check_mentioned(Reading& reading, const Names& names) {
  const std::vector<std::string_view> openings(names.openings.begin(), names.openings.end());
  const std::set<std::string_view> known(openings.begin(), openings.end());
  for (const Names::Mention& mention : names.mentioned) {
    if (known.contains(mention.id)) continue;
    reading.problem(mention.offset, "job-unknown-id",
                    "found no opening " + quoted(mention.id) + reading.hint(mention.id, openings));
  }
}

void read_layers(Element& element, Names& names, Job& job) {
  job.bevel_millidegrees = read_bevel(element);
  job.reveal_reading = element.word("reveal-is", all_words<RevealReading>(), RevealReading::seen);
  for (const pugi::xml_node& node : element.children({"layer"})) {
    Element child(element.reading(), node);
    if (job.layers.size() == most_layers) {
      child.problem("job-too-many", "found more than " + std::to_string(most_layers) +
                                        " layers; that is the limit");
      child.ignore_attributes();
      break;
    }
    job.layers.push_back(read_layer(child, job.layers.size() + 1));
    read_only(child, names, job.layers.back());
  }
  if (job.layers.empty()) {
    element.problem("job-missing-element", "found no <layer> in <layers>; expected at least one");
  }
}

}  // namespace mullion
