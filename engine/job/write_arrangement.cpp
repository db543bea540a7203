#include "engine/job/parts.h"
#include "engine/job/write_parts.h"
#include "engine/xml/words.h"

namespace mullion {
namespace {

void write_grooves(ElementWriter& out, const std::vector<Groove>& grooves) {
  for (const Groove& groove : grooves) {
    ElementWriter element = out.child("groove");
    element.length("distance", groove.distance);
    element.length("width", groove.width);
  }
}

void write_reveals(ElementWriter& out, const Opening& opening) {
  for (const auto& [layer, sides] : opening.reveals) {
    ElementWriter element = out.child("reveal");
    element.integer("layer", layer);
    element.sides("all", side_names, sides);
  }
}

class ArrangementWriter {
 public:
  void write(ElementWriter& out, const Node& node) {
    if (const auto* opening = std::get_if<Opening>(&node.what)) {
      write_opening(out.child("opening"), *opening, node);
    } else {
      const Group& group = std::get<Group>(node.what);
      write_group(out.child(word_for(group.along)), group, node);
    }
  }

 private:
  static void write_place(ElementWriter& out, const Node& node) {
    const auto moved = [&](const char* forth, const char* back, Length by) {
      if (by > Length()) out.length(forth, by);
      if (by < Length()) out.length(back, -by);
    };
    moved("move-right", "move-left", node.shift.right);
    moved("move-down", "move-up", node.shift.down);
    const auto stated = [&](const char* name, const std::optional<Length>& length) {
      if (length) out.length(name, *length);
    };
    stated("left", node.spot.left);
    stated("top", node.spot.top);
    stated("right", node.spot.right);
    stated("bottom", node.spot.bottom);
    out.yes("centre", node.is_centre);
  }

  void write_opening(ElementWriter out, const Opening& opening, const Node& node) {
    if (opening.id != usual_opening_id(opening.picture, ++openings_)) {
      out.attribute("id", opening.id);
    }
    out.text("picture", opening.picture);
    if (opening.width || opening.picture.empty()) out.length_or_free("width", opening.width);
    if (opening.height || opening.picture.empty()) out.length_or_free("height", opening.height);
    write_shape(out, opening.shape);
    write_place(out, node);
    write_reveals(out, opening);
    write_grooves(out, opening.grooves);
  }

  static void write_shape(ElementWriter& out, const ShapeSpec& shape) {
    if (shape.kind == ShapeKind::rectangle) return;
    out.text("shape", word_for(shape.kind));
    out.length_unless("corner", shape.corner, {});
    out.length_unless("rise", shape.rise, {});
    out.text("file", shape.file);
    out.text("path", shape.path_id);
  }

  static void write_ring(ElementWriter& out, const Ring& ring) {
    if (ring.across) out.length("across", *ring.across);
    if (ring.down) out.length("down", *ring.down);
    if (!ring.first_on_top) out.text("first", "beside");
  }

  void write_group(ElementWriter out, const Group& group, const Node& node) {
    out.text("id", group.id);
    if (group.along == Along::ring) write_ring(out, group.ring);
    if (group.gap) out.length("gap", *group.gap);
    if (group.align != Align::centre) {
      out.text("align", word_for(group.align, group.along));
    }
    if (group.joined_layer > 0) out.integer("window", group.joined_layer);
    write_place(out, node);
    for (std::size_t i = 0; i < group.children.size(); ++i) {
      if (i > 0 && i <= group.gaps.size()) write_gap(out, group.gaps[i - 1], group);
      write(out, group.children[i]);
    }
    write_grooves(out, group.grooves);
  }

  static void write_gap(ElementWriter& out, const Gap& gap, const Group& group) {
    if (gap.id.empty() && gap.size == group.gap) return;
    ElementWriter element = out.child("gap");
    element.text("id", gap.id);
    if (gap.size != group.gap) element.length_or_free("size", gap.size);
  }

  std::size_t openings_ = 0;
};

// Writes what rule_attributes lists.
struct RuleWriter {
  ElementWriter& out;

  void boxes(const char* name, std::size_t, const std::vector<std::string>& ids) {
    out.list(name, ids);
  }
  void measures(const char* name, const std::vector<std::string>& names) { out.list(name, names); }
  void measure(const char* name, std::size_t index, const std::vector<std::string>& names) {
    out.text(name, names.at(index));
  }
  using Words = std::initializer_list<std::string_view>;
  void word(const char* name, Words, const std::string& word) { out.text(name, word); }
  void needed_word(const char* name, Words, const std::string& word) { out.text(name, word); }
  void box_or_mat(const char* name, const std::string& id) { out.text(name, id); }
  void length(const char* name, Length value) { out.length(name, value); }
  void factor(const char* name, const Rule& rule) {
    out.text(name, format_fraction({rule.factor_numerator, rule.factor_denominator}));
  }
};

void write_rule(ElementWriter out, const Rule& rule) {
  RuleWriter writer{out};
  rule_attributes(writer, rule);
  if (rule.strength != Strength::required) out.text("strength", word_for(rule.strength));
}

}  // namespace

void write_arrangement(ElementWriter out, const Job& job) {
  if (job.least_bar) out.length("least-bar", *job.least_bar);
  ArrangementWriter().write(out, job.arrangement);
  write_grooves(out, job.grooves);
}

void write_rules(ElementWriter out, const std::vector<Rule>& rules) {
  for (const Rule& rule : rules) write_rule(out.child(word_for(rule.kind)), rule);
}

}  // namespace mullion
