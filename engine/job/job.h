#pragma once

// A job: what the framer said, unchanged, with the place of every statement for messages.
//
// All lengths are exact. Names of measures ("border.left", "dune.width") are kept as text and are
// given a meaning by the layout. Nothing here is computed.

#include <map>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "engine/length/format.h"
#include "engine/xml/colour.h"
#include "engine/xml/problem.h"

namespace mullion {

// How a picture hangs, from the way its image file shows it: by quarters to the right (clockwise).
enum class Turn { none, right, over, left };

struct Picture {
  std::string id;
  Length width, height;             // as it hangs, turned
  std::string image;                // file, relative to the job file; empty: none
  std::optional<Length> overlap;    // mat over the picture's edge on each side; default below
  std::optional<Length> float_gap;  // instead: board seen all around the picture
  bool may_turn = false;            // for suggestions
  std::string group;                // for suggestions: these stay together; empty: none
  int order = 0;                    // for suggestions: keeps this sequence; 0: anywhere
  Turn turned = Turn::none;
  double zoom = 1.0;                // crop of the image for the proof: >= 1
  double pan_x = 0.0, pan_y = 0.0;  // -1 .. 1, part of what the crop leaves over, as it hangs
  Place place;
};

// Common practice, no source: the mat covers the picture by 1/8 in on each side.
inline constexpr Length default_overlap = sixty_fourths(8);

inline constexpr Length default_reveal = sixty_fourths(16);  // as seen; common practice, no source

// One board of the package, top to bottom.
struct Layer {
  std::string name;   // "Top mat"
  std::string board;  // "Oat"
  Colour colour{0xf2, 0xee, 0xe3};
  bool states_colour = true;  // else it is any board of that name
  Colour core{0xff, 0xff, 0xff};
  Length thickness = sixty_fourths(4);  // 4-ply: 1/16 in; measure your own board
  int ply = 4;
  Sides reveal;                   // unused on the first layer
  bool spacer = false;            // lifts the layer above it; shows no window edge
  bool grain = false;             // a blank of it may not be turned on the sheet
  std::vector<std::string> only;  // openings cut in it; empty: all
  Place place;
};

// How a reveal is understood.
enum class RevealReading {
  seen,   // what the eye sees: upper layer's back edge to this layer's face edge
  lines,  // from cut line to cut line on the backs, the bevel's run neglected
};

enum class ShapeKind {
  rectangle,
  ellipse /* circle too */,
  arch /* segmental; rise = half width: half round */,
  rounded,
  stepped,
  octagon,
  outline
};

struct ShapeSpec {
  ShapeKind kind = ShapeKind::rectangle;
  Length corner;        // radius (rounded), step (stepped), cut-off leg (octagon)
  Length rise;          // arch: height of the arc; zero: half round
  std::string file;     // outline: SVG file, relative to the job file
  std::string path_id;  // outline: id of the path in it; empty: the only path
  friend bool operator==(const ShapeSpec&, const ShapeSpec&) = default;
};

struct Groove {
  Length distance;  // from the opening's back edge outward to the groove's middle
  Length width;     // as seen
  Place place;
};

// --- arrangement -----------------------------------------------------------------------------

enum class Along {
  row,
  column,
  ring,    // on a circle or an oval
  places,  // each at its own place on the mat
};
enum class Align { start, centre, end, stretch };  // start: top of a row, left of a column

struct Opening {
  std::string id;
  std::string picture;           // id; empty: a plain opening (a title, for one)
  std::optional<Length> width;   // window in which the picture shows; nothing: from the picture,
  std::optional<Length> height;  // or free
  ShapeSpec shape;
  std::vector<Groove> grooves;
  std::map<int, Sides> reveals;  // layer index (from 1) to a reveal of its own
  Place place;
};

struct Node;

// A stated gap between two neighbours in a row or column; a name lets rules speak of it.
struct Gap {
  std::string id;
  std::optional<Length> size;  // nothing: free
  Place place;
};

// Of a group that is a ring: the circle or oval on which the middles of its parts lie, at equal
// angles, from its top clockwise. On an oval the places of a circle are drawn out with it.
struct Ring {
  std::optional<Length> across;  // nothing: the least that leaves the group's gap between the parts
  std::optional<Length> down;    // nothing: as across
  bool first_on_top = true;      // else its top lies between the last part and the first one
};

struct Group {
  std::string id;
  Along along = Along::row;
  Align align = Align::centre;
  std::optional<Length> gap;  // between all neighbours that have no Gap of their own; nothing: free
  std::vector<Node> children;  // at least one
  std::vector<Gap> gaps;       // of a row or column children.size() - 1, filled in by the reader
  Ring ring;
  std::vector<Groove> grooves;  // around the whole group
  int joined_layer = 0;         // from 1: this layer has one window for the whole group; 0: none
  Place place;
};

// By how much a part lies beside the place that its row, column or ring gives it; all others stay
// where they are. Negative: to the left, up.
struct Shift {
  Length right, down;
  bool is_none() const { return right == Length() && down == Length(); }
  friend bool operator==(const Shift&, const Shift&) = default;
};

// Of a part of a group of places: from the mat's edge to the part's. What is not stated is found,
// with the part in the middle of the mat where nothing else says where it is.
struct OnMat {
  std::optional<Length> left, top, right, bottom;
  friend bool operator==(const OnMat&, const OnMat&) = default;
};

struct Node {
  std::variant<Opening, Group> what;
  Shift shift = {};
  OnMat spot = {};
  bool is_centre = false;  // in the middle of its ring, and not on it
};

// --- rules -----------------------------------------------------------------------------------

enum class Strength { required, strong, medium, weak };

// Measures are named: outer.width, outer.height, border.left|top|right|bottom,
// ID.left|top|right|bottom|centre|middle (from the mat's left or top edge), ID.width, ID.height of
// an opening or a group, and the id of a gap.
struct Rule {
  enum class Kind {
    same_size,  // of: openings; dimension: width, height or both
    align,      // of: openings; edge
    equal,      // of: measures
    multiple,   // of[0] = factor * of[1]
    fixed,      // of[0] = value
    at_least,   // of[0] >= value
    at_most,    // of[0] <= value
    centred,    // of: openings or groups, together or singly centred on `on`
  };
  Kind kind = Kind::equal;
  std::vector<std::string> of;
  std::string edge;       // align: left, top, right, bottom, centre (x) or middle (y)
  std::string dimension;  // same_size: width, height, both; centred: across, down, both
  std::string on;         // centred: an opening, a group or "mat"
  Length value;
  std::int64_t factor_numerator = 1, factor_denominator = 1;
  Strength strength = Strength::required;
  Place place;
};

// --- borders, outer size ---------------------------------------------------------------------

struct Borders {
  enum class Bottom { equal, extra, ratio, optical, given };
  std::optional<Length> left, right, top, bottom_size;  // stated ones are required
  Bottom bottom = Bottom::equal;
  Length extra;                                             // bottom = top + extra
  std::int64_t ratio_numerator = 1, ratio_denominator = 1;  // bottom = top * ratio
  std::optional<Length> least;                              // every border at least this
  Place place;
};

struct Frame {
  Length rabbet_width, rabbet_height;
  Length allowance =
      sixty_fourths(8);            // common practice, no source: 1/8 in between rabbet and blank
  Length lip = sixty_fourths(16);  // of the rabbet over the mat's edge
  Length face_width = inches(1);   // of the moulding, seen from the front
  std::string moulding;
  Colour colour{0x3a, 0x2e, 0x26};
  Place place;
};

struct Job {
  int version = 1;
  std::string reference, title, customer, email, date, note;
  int revision = 1;
  int quantity = 1;
  Scale scale;
  std::vector<Picture> pictures;
  std::vector<Layer> layers;  // at least one
  RevealReading reveal_reading = RevealReading::seen;
  // Bevel angle from the board's surface as the run per unit of thickness, kept as the angle in
  // thousandths of a degree (45000 = 45 degrees, where the run is the thickness exactly).
  int bevel_millidegrees = 45'000;
  std::optional<Length> outer_width, outer_height;  // nothing: free, or from the frame
  Place outer_place;
  std::optional<Frame> frame;
  Borders borders;
  std::optional<Length> least_bar;  // stated minimum between neighbouring openings: required
  Node arrangement;
  std::vector<Rule> rules;
  std::vector<Groove> grooves;  // around all openings together
  Colour wall{0xe8, 0xe6, 0xe1};
  std::string file;  // as given, for messages and for relative paths
  Problems remarks;  // notes on what the file says and was taken a little otherwise
};

}  // namespace mullion
