#include <algorithm>

#include "engine/diff/parts.h"

namespace mullion::diff {
namespace {

std::string quoted(const std::string& text) {
  return text.empty() ? text : "\"" + text + "\"";
}

std::string board_of(const Layer& layer) {
  return layer.board.empty() ? layer.name : layer.board;
}

std::string described(const Layer& layer, const Locale& locale) {
  return layer.board.empty() ? layer.name : locale.say("%1 of %2", layer.name, layer.board);
}

void compare_reveals(Changes& changes, const std::string& what, const Sides& a, const Sides& b) {
  const Locale& locale = changes.locale();
  if (a == b) return;
  const bool even = a.left == a.top && a.left == a.right && a.left == a.bottom && b.left == b.top &&
                    b.left == b.right && b.left == b.bottom;
  if (even) {
    changes.length(locale.say("the reveal of %1", what), a.left, b.left);
    return;
  }
  changes.length(locale.say("the left reveal of %1", what), a.left, b.left);
  changes.length(locale.say("the top reveal of %1", what), a.top, b.top);
  changes.length(locale.say("the right reveal of %1", what), a.right, b.right);
  changes.length(locale.say("the bottom reveal of %1", what), a.bottom, b.bottom);
}

void compare_layer(Changes& changes, const Layer& a, const Layer& b) {
  const Locale& locale = changes.locale();
  const std::string what = "\"" + b.name + "\"";
  changes.word(locale.say("the name of layer %1", quoted(a.name)), quoted(a.name), quoted(b.name));
  changes.word(locale.say("the board of %1", what), board_of(a), board_of(b));
  if (board_of(a) == board_of(b))
    changes.colour(locale.say("the colour of %1", what), a.colour, b.colour);
  changes.colour(locale.say("the core of %1", what), a.core, b.core);
  if (a.ply != b.ply) {
    changes.number(locale.say("the ply of %1", what), a.ply, b.ply);
  } else {
    changes.length(locale.say("the thickness of %1", what), a.thickness, b.thickness);
  }
  compare_reveals(changes, what, a.reveal, b.reveal);
  if (a.spacer != b.spacer) {
    changes.say(b.spacer ? mark("%1 is now a spacer") : mark("%1 is no longer a spacer"), what);
  }
  if (a.only != b.only) changes.say("%1 is cut for other openings than before", what);
}

// "1/2 in to the right and 1/4 in down"
std::string movement(const Changes& changes, Length right, Length down) {
  const Length none;
  const Locale& locale = changes.locale();
  const std::string across = changes.text(right > none ? right : -right);
  const std::string along = changes.text(down > none ? down : -down);
  const std::string sideways =
      right > none ? locale.say("%1 to the right", across) : locale.say("%1 to the left", across);
  const std::string upright =
      down > none ? locale.say("%1 down", along) : locale.say("%1 up", along);
  if (down == none) return sideways;
  return right == none ? upright : locale.say("%1 and %2", sideways, upright);
}

void compare_opening(Changes& changes, const PlacedOpening& a, const PlacedOpening& b) {
  const Locale& locale = changes.locale();
  const std::string what = locale.say("opening %1 (%2)", b.number, b.id);
  if (a.number != b.number) {
    changes.say("%1 was number %2", what, a.number);
  }
  changes.length(locale.say("the width of %1", what), a.rect.width(), b.rect.width());
  changes.length(locale.say("the height of %1", what), a.rect.height(), b.rect.height());
  const Length right = b.rect.left - a.rect.left, down = b.rect.top - a.rect.top;
  if (right != Length() || down != Length()) {
    changes.say("%1 moved %2 from the mat's upper left corner", what,
                movement(changes, right, down));
  }
}

void collect(const Node& node, std::map<std::string, const Opening*>& out) {
  if (const auto* opening = std::get_if<Opening>(&node.what)) {
    out.emplace(opening->id, opening);
    return;
  }
  for (const Node& child : std::get<Group>(node.what).children) collect(child, out);
}

bool same_shape(const ShapeSpec& a, const ShapeSpec& b) {
  return a.kind == b.kind && a.corner == b.corner && a.rise == b.rise && a.file == b.file &&
         a.path_id == b.path_id;
}

void compare_picture(Changes& changes, const Picture& a, const Picture& b) {
  const Locale& locale = changes.locale();
  const std::string what = locale.say("picture %1", b.id);
  changes.length(locale.say("the width of %1", what), a.width, b.width);
  changes.length(locale.say("the height of %1", what), a.height, b.height);
  changes.word(locale.say("the file of %1", what), a.image, b.image);
  if (a.turned != b.turned) changes.say("the way in which %1 is turned changed", what);
  if (a.zoom != b.zoom || a.pan_x != b.pan_x || a.pan_y != b.pan_y) {
    changes.say("the crop of %1 changed", what);
  }
  if (a.float_gap.has_value() != b.float_gap.has_value()) {
    changes.say(b.float_gap ? mark("%1 now floats") : mark("%1 is now held by the mat"), what);
  } else if (a.float_gap) {
    changes.length(locale.say("the float of %1", what), *a.float_gap, *b.float_gap);
  } else {
    changes.length(locale.say("the overlap on %1", what), a.overlap.value_or(default_overlap),
                   b.overlap.value_or(default_overlap));
  }
}

}  // namespace

void compare_words(Changes& changes, const Job& before, const Job& after) {
  const Locale& locale = changes.locale();
  changes.word(locale.say("the reference"), before.reference, after.reference);
  changes.word(locale.say("the title"), quoted(before.title), quoted(after.title));
  changes.word(locale.say("the customer"), before.customer, after.customer);
  changes.word(locale.say("the address of the customer"), before.email, after.email);
  changes.number(locale.say("the revision"), before.revision, after.revision);
  changes.word(locale.say("the date"), before.date, after.date);
  changes.number(locale.say("the quantity"), before.quantity, after.quantity);
  if (before.note != after.note) changes.say("the note changed");
}

void compare_sizes(Changes& changes, const Layout& before, const Layout& after) {
  const Locale& locale = changes.locale();
  changes.length(locale.say("the width of the mat"), before.width, after.width);
  changes.length(locale.say("the height of the mat"), before.height, after.height);
  changes.length(locale.say("the left border"), before.borders.left, after.borders.left);
  changes.length(locale.say("the top border"), before.borders.top, after.borders.top);
  changes.length(locale.say("the right border"), before.borders.right, after.borders.right);
  changes.length(locale.say("the bottom border"), before.borders.bottom, after.borders.bottom);
}

void compare_openings(Changes& changes, const Version& before, const Version& after) {
  const auto old = by_id(before.layout.openings), now = by_id(after.layout.openings);
  for (const PlacedOpening& opening : before.layout.openings) {
    if (!now.contains(opening.id)) changes.say("opening %1 was taken out", opening.id);
  }
  for (const PlacedOpening& opening : after.layout.openings) {
    const auto was = old.find(opening.id);
    if (was == old.end()) {
      changes.say("opening %1 (%2) is new: %3 x %4", opening.number, opening.id,
                  changes.text(opening.rect.width()), changes.text(opening.rect.height()));
    } else {
      compare_opening(changes, *was->second, opening);
    }
  }
}

void compare_shapes(Changes& changes, const Job& before, const Job& after) {
  const Locale& locale = changes.locale();
  std::map<std::string, const Opening*> old, now;
  collect(before.arrangement, old);
  collect(after.arrangement, now);
  for (const auto& [id, opening] : now) {
    const auto was = old.find(id);
    if (was == old.end()) continue;
    if (!same_shape(was->second->shape, opening->shape)) {
      changes.say("the shape of opening %1 changed", id);
    }
    const auto grooves = [](const Opening& o) { return static_cast<int>(o.grooves.size()); };
    changes.number(locale.say("the number of grooves around opening %1", id), grooves(*was->second),
                   grooves(*opening));
    changes.word(locale.say("the picture in opening %1", id), was->second->picture,
                 opening->picture);
  }
}

void compare_layers(Changes& changes, const Job& before, const Job& after) {
  const std::size_t both = std::min(before.layers.size(), after.layers.size());
  for (std::size_t i = 0; i < both; ++i) {
    compare_layer(changes, before.layers[i], after.layers[i]);
  }
  for (std::size_t i = both; i < before.layers.size(); ++i) {
    changes.say("the layer %1 was taken away", described(before.layers[i], changes.locale()));
  }
  for (std::size_t i = both; i < after.layers.size(); ++i) {
    changes.say("a layer was added: %1", described(after.layers[i], changes.locale()));
  }
  if (before.bevel_millidegrees != after.bevel_millidegrees) {
    changes.say("the angle of the bevel changed");
  }
  if (before.reveal_reading != after.reveal_reading) {
    changes.say(
        after.reveal_reading == RevealReading::seen
            ? mark("reveals are now what the eye sees instead of the distance of cut lines")
            : mark("reveals are now the distance of cut lines instead of what the eye sees"));
  }
}

void compare_pictures(Changes& changes, const Job& before, const Job& after) {
  const auto old = by_id(before.pictures), now = by_id(after.pictures);
  for (const Picture& picture : before.pictures) {
    if (!now.contains(picture.id)) changes.say("picture %1 was taken out", picture.id);
  }
  for (const Picture& picture : after.pictures) {
    const auto was = old.find(picture.id);
    if (was == old.end()) {
      changes.say("picture %1 is new", picture.id);
    } else {
      compare_picture(changes, *was->second, picture);
    }
  }
}

void compare_frame(Changes& changes, const Job& before, const Job& after) {
  const Locale& locale = changes.locale();
  if (before.frame.has_value() != after.frame.has_value()) {
    changes.say(after.frame ? mark("there is now a frame") : mark("there is no frame any more"));
  } else if (after.frame) {
    const Frame &a = *before.frame, &b = *after.frame;
    changes.word(locale.say("the moulding"), a.moulding, b.moulding);
    if (a.moulding == b.moulding)
      changes.colour(locale.say("the colour of the moulding"), a.colour, b.colour);
    changes.length(locale.say("the width of the moulding"), a.face_width, b.face_width);
    changes.length(locale.say("the lip of the rabbet"), a.lip, b.lip);
    changes.length(locale.say("the width of the rabbet"), a.rabbet_width, b.rabbet_width);
    changes.length(locale.say("the height of the rabbet"), a.rabbet_height, b.rabbet_height);
    changes.length(locale.say("the allowance in the rabbet"), a.allowance, b.allowance);
  }
  changes.colour(locale.say("the colour of the wall"), before.wall, after.wall);
  changes.number(locale.say("the number of grooves around all openings"),
                 static_cast<int>(before.grooves.size()), static_cast<int>(after.grooves.size()));
}

}  // namespace mullion::diff
