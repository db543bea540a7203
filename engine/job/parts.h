#pragma once

// The parts of a job file, one reader each. They report to the reading and go on.

#include <map>
#include <string>
#include <vector>

#include "engine/job/job_words.h"
#include "engine/job/usual.h"

namespace mullion {

inline constexpr const char* reveal_names[4] = {"reveal-left", "reveal-top", "reveal-right",
                                                "reveal-bottom"};
inline constexpr const char* side_names[4] = {"left", "top", "right", "bottom"};

// "Top mat" for the first of the layers, "Layer 2" and so on for the others.
std::string usual_layer_name(std::size_t number);

// The picture's id, else "opening-7" for the seventh opening of the file.
std::string usual_opening_id(std::string_view picture, std::size_t number);

// Everything of a job that other statements refer to by name.
struct Names {
  struct Mention {
    std::string id;
    std::size_t offset = 0;
  };
  std::map<std::string, const Picture*, std::less<>> pictures;
  std::map<std::string, std::size_t, std::less<>> taken;  // openings, groups, gaps: offsets
  std::vector<std::string> openings, groups, gaps;
  std::vector<Mention> mentioned;  // openings that layers speak of
};

// False when the file is of a version that is not known, so that the rest has no known meaning.
bool read_head(Element& job_element, Job& job);
std::vector<Picture> read_pictures(Element& pictures);
Frame read_frame(Element& frame);
void read_outer(Element& outer, Job& job);
Borders read_borders(Element& borders);
Sides read_sides(Element& element, std::string_view all, const char* const (&sides)[4],
                 const Sides& fallback);
std::vector<Groove> read_grooves(Reading& reading, const std::vector<pugi::xml_node>& nodes);
// Of that number from the top; `only` is left to read_layers.
Layer read_layer(Element& layer, std::size_t number);
void read_layers(Element& layers, Names& names, Job& job);
void check_mentioned(Reading& reading, const Names& names);
void read_arrangement(Element& arrange, Names& names, Job& job);
ShapeSpec read_shape(Element& element, Opening& opening, const Names& names);
std::vector<Rule> read_rules(Element& rules, const Names& names);

}  // namespace mullion
