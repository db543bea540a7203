#include "engine/job/parts.h"
#include "engine/job/write_parts.h"
#include "engine/xml/words.h"

namespace mullion {
namespace {

template <class T>
std::string_view word_of(const std::vector<Word<T>>& words, T value) {
  for (const Word<T>& word : words) {
    if (word.value == value) return word.text;
  }
  return {};
}

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
      write_opening(out.child("opening"), *opening);
    } else {
      const Group& group = std::get<Group>(node.what);
      write_group(out.child(group.along == Along::row ? "row" : "column"), group);
    }
  }

 private:
  void write_opening(ElementWriter out, const Opening& opening) {
    if (opening.id != usual_opening_id(opening.picture, ++openings_)) {
      out.attribute("id", opening.id);
    }
    out.text("picture", opening.picture);
    if (opening.width || opening.picture.empty()) out.length_or_free("width", opening.width);
    if (opening.height || opening.picture.empty()) out.length_or_free("height", opening.height);
    write_shape(out, opening.shape);
    write_reveals(out, opening);
    write_grooves(out, opening.grooves);
  }

  static void write_shape(ElementWriter& out, const ShapeSpec& shape) {
    if (shape.kind == ShapeKind::rectangle) return;
    out.text("shape", word_of(shape_words(), shape.kind));
    out.length_unless("corner", shape.corner, {});
    out.length_unless("rise", shape.rise, {});
    out.text("file", shape.file);
    out.text("path", shape.path_id);
  }

  void write_group(ElementWriter out, const Group& group) {
    out.text("id", group.id);
    if (group.gap) out.length("gap", *group.gap);
    if (group.align != Align::centre) {
      out.text("align", word_of(align_words(group.along), group.align));
    }
    if (group.joined_layer > 0) out.integer("window", group.joined_layer);
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

const char* name_of(Rule::Kind kind) {
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
  return "";
}

void write_rule(ElementWriter out, const Rule& rule) {
  switch (rule.kind) {
    case Rule::Kind::same_size:
      out.list("of", rule.of);
      out.text("dimension", rule.dimension);
      break;
    case Rule::Kind::align:
      out.list("of", rule.of);
      out.text("edge", rule.edge);
      break;
    case Rule::Kind::equal:
      out.list("of", rule.of);
      break;
    case Rule::Kind::multiple:
      out.text("measure", rule.of.at(0));
      out.text("of", rule.of.at(1));
      out.text("times", format_fraction({rule.factor_numerator, rule.factor_denominator}));
      break;
    case Rule::Kind::fixed:
    case Rule::Kind::at_least:
    case Rule::Kind::at_most:
      out.text("measure", rule.of.at(0));
      out.length("length", rule.value);
      break;
    case Rule::Kind::centred:
      out.list("what", rule.of);
      out.text("on", rule.on);
      out.text("direction", rule.dimension);
      break;
  }
  switch (rule.strength) {
    case Strength::required:
      break;
    case Strength::strong:
      out.text("strength", "strong");
      break;
    case Strength::medium:
      out.text("strength", "medium");
      break;
    case Strength::weak:
      out.text("strength", "weak");
      break;
  }
}

}  // namespace

void write_arrangement(ElementWriter out, const Job& job) {
  if (job.least_bar) out.length("least-bar", *job.least_bar);
  ArrangementWriter().write(out, job.arrangement);
  write_grooves(out, job.grooves);
}

void write_rules(ElementWriter out, const std::vector<Rule>& rules) {
  for (const Rule& rule : rules) write_rule(out.child(name_of(rule.kind)), rule);
}

}  // namespace mullion
