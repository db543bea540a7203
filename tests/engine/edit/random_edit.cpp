#include "tests/engine/edit/random_edit.h"

#include <algorithm>

#include "engine/job/job_words.h"
#include "engine/job/parts.h"
#include "engine/job/sight.h"

namespace test {

using namespace mullion;
using Where = edit::Position::Where;
using edit::State;

namespace {

class Maker {
 public:
  Maker(std::mt19937& random, const Job& job) : random_(random), job_(job) {}

  RandomEdit make() {
    switch (pick(24)) {
      case 0:
      case 1:
        return border();
      case 2:
        return outer();
      case 3:
        return text();
      case 4:
      case 5:
        return picture_value();
      case 6:
        return layer_value();
      case 7:
        return opening_value();
      case 8:
        return group_value();
      case 9:
        return gap_value();
      case 10:
        return rename();
      case 11:
        return rule_value();
      case 12:
        return remove_part();
      case 13:
        return remove_other();
      case 14:
      case 15:
        return move_part();
      case 16:
        return move_layer();
      case 17:
        return add_part();
      case 18:
        return add_other();
      case 19:
        return copy();
      case 20:
        return regroup();
      case 21:
        return add_rule();
      case 22:
        return pick(2) == 0 ? outline() : reveal_of_a_side();
      default:
        return several();
    }
  }

 private:
  int pick(std::size_t choices) {
    return std::uniform_int_distribution<int>(0, static_cast<int>(choices) - 1)(random_);
  }
  template <class T>
  const T& any(const std::vector<T>& list) {
    return list[static_cast<std::size_t>(pick(list.size()))];
  }
  std::size_t index(std::size_t size) { return static_cast<std::size_t>(pick(size)); }

  struct Size {
    std::string text;
    Length length;
  };
  Size size(int from, int to) {
    const int steps = std::uniform_int_distribution<int>(from, to)(random_);
    if (pick(4) == 0) return {std::to_string(steps) + " mm", millimetres(steps)};
    return {std::to_string(steps) + "/16 in", sixty_fourths(steps * 4)};
  }

  template <class Set>
  static RandomEdit value(const std::string& name, const std::optional<std::string>& text,
                          Set set) {
    return {State{name, text}, [set](Model& model) {
              set(model.job());
              return true;
            }};
  }

  RandomEdit border() {
    for (const char* side : {"left", "top", "right", "bottom"}) {
      if (fixed(std::string("border.") + side)) return text();  // the rule follows: state_test
    }
    const bool frees = pick(3) == 0;
    const Size s = size(16, 64);
    const std::optional<Length> length = frees ? std::nullopt : std::optional(s.length);
    const std::string text = frees ? "free" : s.text;
    switch (pick(7)) {
      case 0:
        return value("border.left", text, [=](Job& job) { job.borders.left = length; });
      case 1:
        return value("border.top", text, [=](Job& job) { job.borders.top = length; });
      case 2:
        return value("border.right", text, [=](Job& job) { job.borders.right = length; });
      case 3:
        return value("border.sides", text,
                     [=](Job& job) { job.borders.left = job.borders.right = length; });
      case 4:
        return value("border.least", text, [=](Job& job) { job.borders.least = length; });
      case 5:
        return value("border.bottom-extra", text, [=](Job& job) {
          job.borders.bottom = frees ? Borders::Bottom::equal : Borders::Bottom::extra;
          job.borders.bottom_size = std::nullopt;
          job.borders.extra = length.value_or(Length());
        });
      default:
        return value("border.bottom", text, [=](Job& job) {
          job.borders.bottom = frees ? Borders::Bottom::equal : Borders::Bottom::given;
          job.borders.bottom_size = length;
        });
    }
  }

  RandomEdit outer() {
    if (fixed("outer.width") || fixed("outer.height")) return text();
    const bool frees = pick(3) == 0, wide = pick(2) == 0;
    const Size s = size(200, 600);
    return value(wide ? "outer.width" : "outer.height", frees ? "free" : s.text, [=](Job& job) {
      (wide ? job.outer_width : job.outer_height) = frees ? std::nullopt : std::optional(s.length);
    });
  }

  RandomEdit text() {
    static const std::vector<std::string> words{"Two & two", "<none>", "It's \"so\"", "Ångström",
                                                "Plain words"};
    const std::string word = any(words);
    const bool out = pick(4) == 0;
    const std::optional<std::string> said = out ? std::nullopt : std::optional(word);
    const std::string kept = out ? "" : word;
    switch (pick(5)) {
      case 0:
        return value("title", said, [=](Job& job) { job.title = kept; });
      case 1:
        return value("note", said, [=](Job& job) { job.note = kept; });
      case 2:
        return value("reference", said, [=](Job& job) { job.reference = kept; });
      case 3:
        return value("customer", word, [=](Job& job) { job.customer = word; });
      default:
        return value("quantity", "7", [](Job& job) { job.quantity = 7; });
    }
  }

  RandomEdit picture_value() {
    if (job_.pictures.empty()) return text();
    const std::size_t i = index(job_.pictures.size());
    const std::string name = "picture." + job_.pictures[i].id + ".";
    const Size s = size(32, 160), small = size(1, 6);
    const bool square = job_.pictures[i].width == job_.pictures[i].height;
    switch (square ? 2 + pick(4) : pick(6)) {
      case 0:
        return value(name + "width", s.text, [=](Job& job) { job.pictures[i].width = s.length; });
      case 1:
        return value(name + "height", s.text, [=](Job& job) { job.pictures[i].height = s.length; });
      case 2:
        return value(name + "overlap", small.text, [=](Job& job) {
          job.pictures[i].overlap = small.length;
          job.pictures[i].float_gap = std::nullopt;
        });
      case 3:
        return value(name + "float", small.text, [=](Job& job) {
          job.pictures[i].float_gap = small.length;
          job.pictures[i].overlap = std::nullopt;
        });
      case 4:
        return value(name + "float", "free", [=](Job& job) {
          Picture& picture = job.pictures[i];
          if (!picture.float_gap) return;
          picture.float_gap = std::nullopt;
          picture.overlap = usual_for(job.scale.unit).overlap;
        });
      default:
        return value(name + "turn", "yes", [=](Job& job) { job.pictures[i].may_turn = true; });
    }
  }

  RandomEdit layer_value() {
    const std::size_t i = index(job_.layers.size());
    const std::string name = "layer." + std::to_string(i + 1) + ".";
    const Size s = size(2, 6);
    switch (pick(6)) {
      case 4:
        if (i == 0 || job_.layers[i].spacer || has_own_reveals()) return text();
        return value(name + "reveal", s.text, [=](Job& job) {
          job.layers[i].reveal = {s.length, s.length, s.length, s.length};
        });
      case 0:
        return value(name + "colour", "#102030", [=](Job& job) {
          job.layers[i].colour = {0x10, 0x20, 0x30};
        });
      case 1:
        return value(name + "board", "Slate \"2\"",
                     [=](Job& job) { job.layers[i].board = "Slate \"2\""; });
      case 2:
        return value(name + "thickness", s.text,
                     [=](Job& job) { job.layers[i].thickness = s.length; });
      case 3:
        return value(name + "grain", "yes", [=](Job& job) { job.layers[i].grain = true; });
      default:
        // An opening's own reveal takes the sides that it leaves out from the layer.
        if (has_own_reveals()) return text();
        return {State{name + "reveal-left", s.text}, [=](Model& model) {
                  Layer& layer = model.job().layers[i];
                  layer.reveal.left = s.length;
                  return i > 0 && !layer.spacer;
                }};
    }
  }

  bool has_own_reveals() {
    Job copy = job_;
    for (const Path& path : paths_of(copy)) {
      const auto* opening = std::get_if<Opening>(&node_at(copy, path).what);
      if (opening != nullptr && !opening->reveals.empty()) return true;
    }
    return false;
  }

  Path any_path(bool of_group) {
    Job copy = job_;
    std::vector<Path> paths;
    for (const Path& path : paths_of(job_)) {
      if (std::holds_alternative<mullion::Group>(node_at(copy, path).what) == of_group) {
        paths.push_back(path);
      }
    }
    return paths.empty() ? Path{9999} : any(paths);
  }
  static bool is_none(const Path& path) { return path == Path{9999}; }

  const Opening opening_at(const Path& path) {
    Job copy = job_;
    return std::get<Opening>(node_at(copy, path).what);
  }
  mullion::Group group_at(const Path& path) {
    Job copy = job_;
    return std::get<mullion::Group>(node_at(copy, path).what);
  }

  // By its place or by its name.
  std::string spoken_of(const Path& path) {
    Job copy = job_;
    const Node& node = node_at(copy, path);
    if (const auto* opening = std::get_if<Opening>(&node.what)) {
      if (pick(2) == 0) return "opening." + opening->id;
    }
    return name_of(path);
  }

  template <class Set>
  RandomEdit opening_at_path(const Path& path, const std::string& attribute,
                             const std::optional<std::string>& text, Set set) {
    return value(spoken_of(path) + "." + attribute, text,
                 [=](Job& job) { set(std::get<Opening>(node_at(job, path).what)); });
  }

  // Or a square: one side then says both, which a job in memory does not tell.
  bool may_be_a_circle(const Opening& opening) const {
    const Picture* picture = picture_of(job_, opening);
    const Sight sight = sight_of(opening, picture);
    return sight.width && sight.width == sight.height;
  }

  RandomEdit opening_value() {
    const Path path = any_path(false);
    const Opening opening = opening_at(path);
    const Size s = size(32, 120);
    const bool plain = opening.picture.empty();
    const bool is_fixed = fixed(opening.id + ".width") || fixed(opening.id + ".height");
    if (is_fixed || may_be_a_circle(opening)) return text();
    switch (pick(5)) {
      case 0:
        return opening_at_path(path, "width", s.text, [=](Opening& o) { o.width = s.length; });
      case 1:
        if (opening.width == opening.height) return text();
        return opening_at_path(path, "height", "free",
                               [=](Opening& o) { o.height = std::nullopt; });
      case 2:
        if (plain) return text();
        return opening_at_path(path, "shape", "ellipse", [](Opening& o) {
          o.shape = {};
          o.shape.kind = ShapeKind::ellipse;
        });
      case 3:
        return opening_at_path(path, "shape", "rectangle", [](Opening& o) { o.shape = {}; });
      default:
        if (job_.layers.size() < 2) return text();
        return opening_at_path(path, "reveal.2.all", s.text, [=](Opening& o) {
          o.reveals.erase(2);
          o.reveals[2] = {s.length, s.length, s.length, s.length};
        });
    }
  }

  // Of one opening, whose reveal of the layer comes to be its own.
  RandomEdit reveal_of_a_side() {
    const Path path = any_path(false);
    if (job_.layers.size() < 2 || job_.layers[1].spacer) return text();
    const Size s = size(2, 6);
    const Sides usual = job_.layers[1].reveal;
    RandomEdit out = opening_at_path(path, "reveal.2.top", s.text, [=](Opening& o) {
      o.reveals.try_emplace(2, usual).first->second.top = s.length;
    });
    out.kind = "state the reveal of a side";
    return out;
  }

  // A shape out of an SVG file.
  RandomEdit outline() {
    const Path path = any_path(false);
    const Opening opening = opening_at(path);
    const bool is_fixed = fixed(opening.id + ".width") || fixed(opening.id + ".height");
    if (is_fixed || may_be_a_circle(opening) || opening.picture.empty()) return text();
    const std::string name = spoken_of(path), file = "shapes/leaf-" + new_id() + ".svg";
    edit::Several both{{State{name + ".shape", "outline"}, State{name + ".file", file}}};
    if (pick(2) == 0) both.edits.push_back(State{name + ".path", "leaf"});
    const std::string leaf = both.edits.size() == 3 ? "leaf" : opening.shape.path_id;
    return {both,
            [=](Model& model) {
              ShapeSpec& shape = std::get<Opening>(node_at(model.job(), path).what).shape;
              shape = {};
              shape.kind = ShapeKind::outline;
              shape.file = file;
              shape.path_id = leaf;
              return true;
            },
            false, "state an outline"};
  }

  // Openings that rules can speak of by names that stay.
  std::vector<std::string> lasting_names() {
    Job copy = job_;
    std::vector<std::string> out;
    for (const Path& path : paths_of(job_)) {
      const auto* opening = std::get_if<Opening>(&node_at(copy, path).what);
      if (opening == nullptr || opening->id.starts_with("opening-")) continue;
      out.push_back(opening->id);
    }
    return out;
  }

  RandomEdit add_rule() {
    const std::vector<std::string> names = lasting_names();
    if (names.size() < 2) return add_other();
    const std::size_t first = index(names.size());
    const std::string a = names[first], b = names[(first + 1) % names.size()];
    const Size s = size(16, 80);
    Rule rule;
    rule.kind = any(rule_words()).value;
    edit::Attributes attributes;
    switch (rule.kind) {
      case Rule::Kind::same_size:
        rule.of = {a, b};
        rule.dimension = "width";
        attributes = {{"of", a + " " + b}, {"dimension", "width"}};
        break;
      case Rule::Kind::align:
        rule.of = {a, b};
        rule.edge = "top";
        attributes = {{"of", a + " " + b}, {"edge", "top"}};
        break;
      case Rule::Kind::equal:
        rule.of = {"border.left", a + ".left"};
        attributes = {{"of", "border.left " + a + ".left"}};
        break;
      case Rule::Kind::multiple:
        rule.of = {"border.bottom", "border.top"};
        rule.factor_numerator = 3;
        rule.factor_denominator = 2;
        attributes = {{"measure", "border.bottom"}, {"of", "border.top"}, {"times", "3/2"}};
        break;
      case Rule::Kind::fixed:
      case Rule::Kind::at_least:
      case Rule::Kind::at_most:
        rule.of = {a + ".left"};
        rule.value = s.length;
        attributes = {{"measure", a + ".left"}, {"length", s.text}};
        break;
      case Rule::Kind::centred:
        rule.of = {a};
        rule.on = pick(2) == 0 ? b : "mat";
        rule.dimension = "across";
        attributes = {{"what", a}, {"on", rule.on}, {"direction", "across"}};
        break;
    }
    return {edit::Add{std::string(word_for(rule.kind)), attributes, {}, {}}, [=](Model& model) {
              model.job().rules.push_back(rule);
              return true;
            }};
  }

  RandomEdit group_value() {
    const Path path = any_path(true);
    if (is_none(path)) return border();
    const Size s = size(8, 24);
    const auto group = group_at(path);
    if (group.along != Along::row && group.along != Along::column) return border();
    const bool own_gaps = std::any_of(group.gaps.begin(), group.gaps.end(), [&](const Gap& gap) {
      return !gap.id.empty() || gap.size != group.gap;
    });
    const auto set_gap = [path](Job& job, std::optional<Length> length) {
      auto& one = std::get<mullion::Group>(node_at(job, path).what);
      one.gap = length;
      for (Gap& gap : one.gaps) gap.size = length;
    };
    switch (pick(3)) {
      case 0:
        // A gap of its own may follow its row or not, which a job in memory does not tell.
        if (own_gaps) return border();
        return value(name_of(path) + ".gap", s.text, [=](Job& job) { set_gap(job, s.length); });
      case 1:
        if (own_gaps) return border();
        return value(name_of(path) + ".gap", "free", [=](Job& job) { set_gap(job, std::nullopt); });
      default:
        return value(name_of(path) + ".align", "stretch", [=](Job& job) {
          std::get<mullion::Group>(node_at(job, path).what).align = Align::stretch;
        });
    }
  }

  RandomEdit gap_value() {
    const Path path = any_path(true);
    if (is_none(path)) return border();
    const auto group = group_at(path);
    if (group.gaps.empty()) return border();
    const std::size_t i = index(group.gaps.size());
    if (fixed(group.gaps[i].id)) return border();
    const Size s = size(31, 47);  // never that of its row
    const bool frees = pick(3) == 0;
    return value(name_of(path) + ".gap." + std::to_string(i + 1), frees ? "free" : s.text,
                 [=](Job& job) {
                   std::get<mullion::Group>(node_at(job, path).what).gaps[i].size =
                       frees ? std::nullopt : std::optional(s.length);
                 });
  }

  bool fixed(const std::string& measure) const {
    return std::any_of(job_.rules.begin(), job_.rules.end(), [&](const Rule& rule) {
      return rule.kind == Rule::Kind::fixed && rule.of.front() == measure;
    });
  }

  RandomEdit rename() {
    const std::string id = "new-" + std::to_string(pick(100000));
    if (pick(2) == 0 && !job_.pictures.empty()) {
      const std::size_t i = index(job_.pictures.size());
      return value("picture." + job_.pictures[i].id + ".id", id,
                   [=](Job& job) { job.pictures[i].id = id; });
    }
    const Path path = any_path(pick(2) == 0);
    if (is_none(path)) return text();
    return {State{spoken_of(path) + ".id", id}, [=](Model& model) {
              Node& node = node_at(model.job(), path);
              if (auto* opening = std::get_if<Opening>(&node.what)) {
                model.name_opening(opening->place.line);
                opening->id = id;
              } else {
                std::get<mullion::Group>(node.what).id = id;
              }
              return true;
            }};
  }

  RandomEdit rule_value() {
    if (job_.rules.empty()) return border();
    const std::size_t i = index(job_.rules.size());
    const std::string name = "rule." + std::to_string(i + 1) + ".";
    const Rule& rule = job_.rules[i];
    const Size s = size(16, 80);
    const bool has_length = rule.kind == Rule::Kind::fixed || rule.kind == Rule::Kind::at_least ||
                            rule.kind == Rule::Kind::at_most;
    if (has_length && pick(2) == 0) {
      return value(name + "length", s.text, [=](Job& job) { job.rules[i].value = s.length; });
    }
    return value(name + "strength", "weak",
                 [=](Job& job) { job.rules[i].strength = Strength::weak; });
  }

  // --- structure -------------------------------------------------------------------------------

  static std::size_t openings_in(const Node& node) {
    const auto* group = std::get_if<mullion::Group>(&node.what);
    if (group == nullptr) return 1;
    std::size_t count = 0;
    for (const Node& child : group->children) count += openings_in(child);
    return count;
  }

  bool is_all(const Path& path) {
    Job copy = job_;
    return openings_in(node_at(copy, path)) == openings_in(job_.arrangement);
  }

  RandomEdit remove_part() {
    if (has_places(job_.arrangement)) return border();
    const Path path = any(paths_of(job_));
    const bool all = is_all(path);
    const bool with_picture = pick(2) == 0;
    Job copy = job_;
    const auto* opening = std::get_if<Opening>(&node_at(copy, path).what);
    std::string name = spoken_of(path), picture;
    if (with_picture && opening != nullptr && !opening->picture.empty()) {
      picture = opening->picture;
      name = "picture." + picture;
    }
    return {edit::Remove{name},
            [=](Model& model) {
              if (all) return false;
              model.remove_part(path);
              auto& pictures = model.job().pictures;
              std::erase_if(pictures, [&](const Picture& one) { return one.id == picture; });
              return true;
            },
            true};
  }

  RandomEdit remove_other() {
    switch (pick(4)) {
      case 0: {
        const std::size_t i = index(job_.layers.size());
        return {edit::Remove{"layer." + std::to_string(i + 1)}, [=](Model& model) {
                  auto& layers = model.job().layers;
                  if (layers.size() == 1 || (i == 0 && layers[1].spacer)) return false;
                  layers.erase(layers.begin() + static_cast<std::ptrdiff_t>(i));
                  return true;
                }};
      }
      case 1: {
        if (job_.rules.empty()) return border();
        const std::size_t i = index(job_.rules.size());
        return {edit::Remove{"rule." + std::to_string(i + 1)}, [=](Model& model) {
                  auto& rules = model.job().rules;
                  rules.erase(rules.begin() + static_cast<std::ptrdiff_t>(i));
                  return true;
                }};
      }
      case 2:
        if (!job_.frame) return border();
        return {edit::Remove{"frame"}, [](Model& model) {
                  model.job().frame = std::nullopt;
                  return true;
                }};
      default:
        if (job_.grooves.empty()) return outer();
        return {edit::Remove{"arrange.groove.1"}, [](Model& model) {
                  model.job().grooves.erase(model.job().grooves.begin());
                  return true;
                }};
    }
  }

  Where any_where(bool group) {
    static const std::vector<Where> beside{Where::before, Where::after, Where::left,
                                           Where::right,  Where::above, Where::below};
    if (group && pick(3) == 0) return pick(2) == 0 ? Where::first_in : Where::last_in;
    return any(beside);
  }

  // Whether places of parts would have to be taken along or left; part_place_test.cpp looks at
  // that.
  static bool has_places(const Node& node) {
    const auto* group = std::get_if<mullion::Group>(&node.what);
    if (!node.shift.is_none() || node.is_centre) return true;
    if (group == nullptr) return false;
    return (group->along != Along::row && group->along != Along::column) ||
           std::any_of(group->children.begin(), group->children.end(), has_places);
  }

  RandomEdit move_part() {
    if (has_places(job_.arrangement)) return border();
    const Path path = any(paths_of(job_)), to = any(paths_of(job_));
    const bool inside =
        to.size() >= path.size() && std::equal(path.begin(), path.end(), to.begin());
    Job copy = job_;
    const Where where = any_where(std::holds_alternative<mullion::Group>(node_at(copy, to).what));
    const auto* group = std::get_if<mullion::Group>(&node_at(copy, path).what);
    const std::string what(group == nullptr ? "opening" : word_for(group->along));
    return {edit::Move{spoken_of(path), {where, spoken_of(to)}},
            [=](Model& model) {
              if (inside) return false;
              model.move_part(path, where, to);
              return true;
            },
            false, what == "opening" ? "move an opening" : "move a " + what};
  }

  RandomEdit move_layer() {
    if (job_.layers.size() < 2) return border();
    const std::size_t from = index(job_.layers.size());
    const std::size_t to = (from + 1 + index(job_.layers.size() - 1)) % job_.layers.size();
    const bool before = pick(2) == 0;
    const bool own = has_own_reveals();
    if (own) return border();
    return {edit::Move{"layer." + std::to_string(from + 1),
                       {before ? Where::before : Where::after, "layer." + std::to_string(to + 1)}},
            [=](Model& model) {
              auto& layers = model.job().layers;
              const Layer top = layers.front(), moved = layers[from];
              layers.erase(layers.begin() + static_cast<std::ptrdiff_t>(from));
              const std::size_t place = to - (to > from ? 1 : 0) + (before ? 0 : 1);
              layers.insert(layers.begin() + static_cast<std::ptrdiff_t>(place), moved);
              if (layers.front().spacer) return false;
              for (std::size_t i = 1; i < layers.size(); ++i) {
                if (layers[i].place.line != top.place.line || layers[i].spacer) continue;
                const Length usual = usual_for(model.job().scale.unit).reveal;
                layers[i].reveal = {usual, usual, usual, usual};
              }
              return true;
            }};
  }

  std::string new_id() { return "n" + std::to_string(pick(1000000)); }

  RandomEdit add_part() {
    if (has_places(job_.arrangement)) return border();
    const Path to = any(paths_of(job_));
    Job copy = job_;
    const Where where = any_where(std::holds_alternative<mullion::Group>(node_at(copy, to).what));
    const Size w = size(32, 120), h = size(32, 120);
    const edit::Position at{where, spoken_of(to)};
    Opening opening;
    if (pick(2) == 0) {
      opening.width = w.length;
      opening.height = h.length;
      opening.id = pick(2) == 0 ? new_id() : "";
      edit::Attributes attributes{{"width", w.text}, {"height", h.text}};
      if (!opening.id.empty()) attributes.insert(attributes.begin(), {"id", opening.id});
      return {edit::Add{"opening", attributes, {}, at}, [=](Model& model) {
                model.add_part({opening}, where, to);
                return true;
              }};
    }
    Picture picture;
    picture.id = opening.picture = new_id();
    picture.width = w.length;
    picture.height = h.length;
    picture.overlap = usual_for(job_.scale.unit).overlap;
    opening.shape.kind = ShapeKind::ellipse;
    return {edit::Add{"picture",
                      {{"id", picture.id}, {"width", w.text}, {"height", h.text}},
                      {{"shape", "ellipse"}},
                      at},
            [=](Model& model) {
              model.job().pictures.push_back(picture);
              model.add_part({opening}, where, to);
              return true;
            }};
  }

  RandomEdit add_other() {
    const Size a = size(4, 12), b = size(1, 3);
    switch (pick(4)) {
      case 0: {
        Layer layer;
        layer.board = "Clay";
        layer.reveal = {a.length, a.length, a.length, a.length};
        layer.thickness = thickness_of(4, job_.scale.unit);
        layer.name = "Layer 9";
        return {edit::Add{"layer", {{"board", "Clay"}, {"reveal", a.text}}, {}, std::nullopt},
                [=](Model& model) {
                  model.job().layers.push_back(layer);
                  return true;
                }};
      }
      case 1: {
        if (job_.frame) return outer();
        Frame frame;
        const Usual usual = usual_for(job_.scale.unit);
        frame.rabbet_width = frame.rabbet_height = inches(200);
        frame.allowance = usual.allowance;
        frame.lip = usual.lip;
        frame.face_width = usual.face;
        return {edit::Add{"frame",
                          {{"rabbet-width", "200 in"}, {"rabbet-height", "200 in"}},
                          {},
                          std::nullopt},
                [=](Model& model) {
                  model.job().frame = frame;
                  return true;
                }};
      }
      case 2: {
        Rule rule;
        rule.kind = Rule::Kind::at_least;
        rule.of = {"border.left"};
        rule.value = a.length;
        return {edit::Add{"at-least", {{"measure", "border.left"}, {"length", a.text}}, {}, {}},
                [=](Model& model) {
                  model.job().rules.push_back(rule);
                  return true;
                }};
      }
      default: {
        const Groove groove{a.length, b.length, {}};
        const edit::Attributes attributes{{"distance", a.text}, {"width", b.text}};
        if (pick(2) == 0) {
          return {edit::Add{"groove", attributes, {}, std::nullopt}, [=](Model& model) {
                    model.job().grooves.push_back(groove);
                    return true;
                  }};
        }
        const Path path = any_path(pick(2) == 0);
        if (is_none(path)) return outer();
        return {edit::Add{"groove", attributes, {}, edit::Position{Where::last_in, name_of(path)}},
                [=](Model& model) {
                  Node& node = node_at(model.job(), path);
                  if (auto* opening = std::get_if<Opening>(&node.what)) {
                    opening->grooves.push_back(groove);
                  } else {
                    std::get<mullion::Group>(node.what).grooves.push_back(groove);
                  }
                  return true;
                }};
      }
    }
  }

  RandomEdit copy() {
    if (has_places(job_.arrangement)) return border();
    if (pick(3) == 0) {
      const std::size_t i = index(job_.layers.size());
      if (has_own_reveals()) return border();
      return {edit::Copy{"layer." + std::to_string(i + 1), ""}, [=](Model& model) {
                auto& layers = model.job().layers;
                Layer layer = layers[i];
                layer.place.line = 0;
                const Length usual = usual_for(model.job().scale.unit).reveal;
                if (i == 0) layer.reveal = {usual, usual, usual, usual};
                layers.insert(layers.begin() + static_cast<std::ptrdiff_t>(i) + 1, layer);
                return true;
              }};
    }
    const Path path = any_path(false);
    const Opening opening = opening_at(path);
    const std::string id = new_id();
    if (opening.picture.empty()) {
      return {edit::Copy{"opening." + opening.id, id}, [=](Model& model) {
                Opening other = opening;
                other.id = id;
                other.place.line = 0;
                model.add_part({other}, Where::after, path);
                cut_for_copy(model, opening.id, id);
                return true;
              }};
    }
    return {edit::Copy{"picture." + opening.picture, id}, [=](Model& model) {
              auto& pictures = model.job().pictures;
              const auto old =
                  std::find_if(pictures.begin(), pictures.end(),
                               [&](const Picture& p) { return p.id == opening.picture; });
              Picture picture = *old;
              picture.id = id;
              picture.order = 0;
              picture.place.line = 0;
              pictures.insert(old + 1, picture);
              Opening other = opening;
              other.picture = id;
              other.id.clear();
              other.place.line = 0;
              model.add_part({other}, Where::after, path);
              cut_for_copy(model, opening.id, id);
              return true;
            }};
  }

  // What is cut for the one is cut for the other.
  static void cut_for_copy(Model& model, const std::string& old, const std::string& id) {
    for (Layer& layer : model.job().layers) {
      auto& only = layer.only;
      if (std::find(only.begin(), only.end(), old) != only.end()) only.push_back(id);
    }
  }

  RandomEdit regroup() {
    if (has_places(job_.arrangement)) return border();
    switch (pick(3)) {
      case 0: {
        const Path path = any_path(true);
        if (is_none(path)) return border();
        return {edit::TurnGroup{name_of(path)}, [=](Model& model) {
                  model.turn(path);
                  return true;
                }};
      }
      case 1: {
        const Path path = any_path(true);
        if (is_none(path)) return border();
        const auto group = group_at(path);
        const bool refused = path.empty() && group.children.size() > 1;
        return {edit::Dissolve{name_of(path)},
                [=](Model& model) {
                  if (refused) return false;
                  model.dissolve(path);
                  return true;
                },
                true};
      }
      default: {
        const Path first = any(paths_of(job_));
        std::size_t count = 1;
        if (!first.empty()) {
          Path above = first;
          above.pop_back();
          count = 1 + index(group_at(above).children.size() - first.back());
        }
        edit::MakeGroup made{pick(2) == 0 ? Along::row : Along::column, {}, {}};
        Path path = first;
        for (std::size_t i = 0; i < count; ++i) {
          made.parts.push_back(name_of(path));
          if (!path.empty()) ++path.back();
        }
        return {made, [=](Model& model) {
                  model.group(made.along, first, count);
                  return true;
                }};
      }
    }
  }

  RandomEdit several() {
    RandomEdit one = border(), two = picture_value(), three = outer();
    return {edit::Several{{one.edit, two.edit, three.edit}}, [=](Model& model) {
              return one.in_memory(model) && two.in_memory(model) && three.in_memory(model);
            }};
  }

  std::mt19937& random_;
  const Job& job_;
};

}  // namespace

RandomEdit random_edit(std::mt19937& random, const Job& job) {
  return Maker(random, job).make();
}

}  // namespace test
