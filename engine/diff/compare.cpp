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

std::string described(const Layer& layer) {
  return layer.name + (layer.board.empty() ? "" : " of " + layer.board);
}

void compare_reveals(Changes& changes, const std::string& what, const Sides& a, const Sides& b) {
  if (a == b) return;
  const bool even = a.left == a.top && a.left == a.right && a.left == a.bottom && b.left == b.top &&
                    b.left == b.right && b.left == b.bottom;
  if (even) {
    changes.length("the reveal of " + what, a.left, b.left);
    return;
  }
  changes.length("the left reveal of " + what, a.left, b.left);
  changes.length("the top reveal of " + what, a.top, b.top);
  changes.length("the right reveal of " + what, a.right, b.right);
  changes.length("the bottom reveal of " + what, a.bottom, b.bottom);
}

void compare_layer(Changes& changes, const Layer& a, const Layer& b) {
  const std::string what = "\"" + b.name + "\"";
  changes.word("the name of layer " + quoted(a.name), quoted(a.name), quoted(b.name));
  changes.word("the board of " + what, board_of(a), board_of(b));
  if (board_of(a) == board_of(b)) changes.colour("the colour of " + what, a.colour, b.colour);
  changes.colour("the core of " + what, a.core, b.core);
  if (a.ply != b.ply) {
    changes.number("the ply of " + what, a.ply, b.ply);
  } else {
    changes.length("the thickness of " + what, a.thickness, b.thickness);
  }
  compare_reveals(changes, what, a.reveal, b.reveal);
  if (a.spacer != b.spacer) {
    changes.say(what + (b.spacer ? " is now a spacer" : " is no longer a spacer"));
  }
  if (a.only != b.only) changes.say(what + " is cut for other openings than before");
}

// "1/2 in to the right and 1/4 in down"
std::string movement(const Changes& changes, Length right, Length down) {
  std::string out;
  const Length none;
  if (right != none) {
    out = changes.text(right > none ? right : -right) +
          (right > none ? " to the right" : " to the left");
  }
  if (down != none) {
    out += (out.empty() ? "" : " and ") + changes.text(down > none ? down : -down) +
           (down > none ? " down" : " up");
  }
  return out;
}

void compare_opening(Changes& changes, const PlacedOpening& a, const PlacedOpening& b) {
  const std::string what = "opening " + std::to_string(b.number) + " (" + b.id + ")";
  if (a.number != b.number) {
    changes.say(what + " was number " + std::to_string(a.number));
  }
  changes.length("the width of " + what, a.rect.width(), b.rect.width());
  changes.length("the height of " + what, a.rect.height(), b.rect.height());
  const Length right = b.rect.left - a.rect.left, down = b.rect.top - a.rect.top;
  if (right != Length() || down != Length()) {
    changes.say(what + " moved " + movement(changes, right, down) +
                " from the mat's upper left corner");
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
  const std::string what = "picture " + b.id;
  changes.length("the width of " + what, a.width, b.width);
  changes.length("the height of " + what, a.height, b.height);
  changes.word("the file of " + what, a.image, b.image);
  if (a.turned != b.turned) changes.say("the way in which " + what + " is turned changed");
  if (a.zoom != b.zoom || a.pan_x != b.pan_x || a.pan_y != b.pan_y) {
    changes.say("the crop of " + what + " changed");
  }
  if (a.float_gap.has_value() != b.float_gap.has_value()) {
    changes.say(what + (b.float_gap ? " now floats" : " is now held by the mat"));
  } else if (a.float_gap) {
    changes.length("the float of " + what, *a.float_gap, *b.float_gap);
  } else {
    changes.length("the overlap on " + what, a.overlap.value_or(default_overlap),
                   b.overlap.value_or(default_overlap));
  }
}

}  // namespace

void compare_words(Changes& changes, const Job& before, const Job& after) {
  changes.word("the reference", before.reference, after.reference);
  changes.word("the title", quoted(before.title), quoted(after.title));
  changes.word("the customer", before.customer, after.customer);
  changes.word("the address of the customer", before.email, after.email);
  changes.number("the revision", before.revision, after.revision);
  changes.word("the date", before.date, after.date);
  changes.number("the quantity", before.quantity, after.quantity);
  if (before.note != after.note) changes.say("the note changed");
}

void compare_sizes(Changes& changes, const Layout& before, const Layout& after) {
  changes.length("the width of the mat", before.width, after.width);
  changes.length("the height of the mat", before.height, after.height);
  changes.length("the left border", before.borders.left, after.borders.left);
  changes.length("the top border", before.borders.top, after.borders.top);
  changes.length("the right border", before.borders.right, after.borders.right);
  changes.length("the bottom border", before.borders.bottom, after.borders.bottom);
}

void compare_openings(Changes& changes, const Version& before, const Version& after) {
  const auto old = by_id(before.layout.openings), now = by_id(after.layout.openings);
  for (const PlacedOpening& opening : before.layout.openings) {
    if (!now.contains(opening.id)) changes.say("opening " + opening.id + " was taken out");
  }
  for (const PlacedOpening& opening : after.layout.openings) {
    const auto was = old.find(opening.id);
    if (was == old.end()) {
      changes.say("opening " + std::to_string(opening.number) + " (" + opening.id + ") is new: " +
                  changes.text(opening.rect.width()) + " x " + changes.text(opening.rect.height()));
    } else {
      compare_opening(changes, *was->second, opening);
    }
  }
}

void compare_shapes(Changes& changes, const Job& before, const Job& after) {
  std::map<std::string, const Opening*> old, now;
  collect(before.arrangement, old);
  collect(after.arrangement, now);
  for (const auto& [id, opening] : now) {
    const auto was = old.find(id);
    if (was == old.end()) continue;
    if (!same_shape(was->second->shape, opening->shape)) {
      changes.say("the shape of opening " + id + " changed");
    }
    const auto grooves = [](const Opening& o) { return static_cast<int>(o.grooves.size()); };
    changes.number("the number of grooves around opening " + id, grooves(*was->second),
                   grooves(*opening));
    changes.word("the picture in opening " + id, was->second->picture, opening->picture);
  }
}

void compare_layers(Changes& changes, const Job& before, const Job& after) {
  const std::size_t both = std::min(before.layers.size(), after.layers.size());
  for (std::size_t i = 0; i < both; ++i) {
    compare_layer(changes, before.layers[i], after.layers[i]);
  }
  for (std::size_t i = both; i < before.layers.size(); ++i) {
    changes.say("the layer " + described(before.layers[i]) + " was taken away");
  }
  for (std::size_t i = both; i < after.layers.size(); ++i) {
    changes.say("a layer was added: " + described(after.layers[i]));
  }
  if (before.bevel_millidegrees != after.bevel_millidegrees) {
    changes.say("the angle of the bevel changed");
  }
  if (before.reveal_reading != after.reveal_reading) {
    changes.say(after.reveal_reading == RevealReading::seen
                    ? "reveals are now what the eye sees instead of the distance of cut lines"
                    : "reveals are now the distance of cut lines instead of what the eye sees");
  }
}

void compare_pictures(Changes& changes, const Job& before, const Job& after) {
  const auto old = by_id(before.pictures), now = by_id(after.pictures);
  for (const Picture& picture : before.pictures) {
    if (!now.contains(picture.id)) changes.say("picture " + picture.id + " was taken out");
  }
  for (const Picture& picture : after.pictures) {
    const auto was = old.find(picture.id);
    if (was == old.end()) {
      changes.say("picture " + picture.id + " is new");
    } else {
      compare_picture(changes, *was->second, picture);
    }
  }
}

void compare_frame(Changes& changes, const Job& before, const Job& after) {
  if (before.frame.has_value() != after.frame.has_value()) {
    changes.say(after.frame ? "there is now a frame" : "there is no frame any more");
  } else if (after.frame) {
    const Frame &a = *before.frame, &b = *after.frame;
    changes.word("the moulding", a.moulding, b.moulding);
    if (a.moulding == b.moulding) changes.colour("the colour of the moulding", a.colour, b.colour);
    changes.length("the width of the moulding", a.face_width, b.face_width);
    changes.length("the lip of the rabbet", a.lip, b.lip);
    changes.length("the width of the rabbet", a.rabbet_width, b.rabbet_width);
    changes.length("the height of the rabbet", a.rabbet_height, b.rabbet_height);
    changes.length("the allowance in the rabbet", a.allowance, b.allowance);
  }
  changes.colour("the colour of the wall", before.wall, after.wall);
  changes.number("the number of grooves around all openings",
                 static_cast<int>(before.grooves.size()), static_cast<int>(after.grooves.size()));
}

}  // namespace mullion::diff
