#pragma once

// Who the shop is, for the head and foot of its papers and the sender of its mail, and the finishes
// that it keeps. A small XML file of its own, described by shop.xsd beside this header: a `shop`
// with version, name, email, phone and logo, in it an `address` and `finishes`.
//
// Problems come with line and column. Refused: what the job file's reader refuses (see
// engine/job/read.h), a shop without a name, a second address, a logo outside the file's folder, a
// finish that no job could take, two of one name.

#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "engine/length/format.h"
#include "engine/xml/problem.h"

namespace mullion {

// The boards of a mat from the top down, with their reveals, and a moulding, kept by name for other
// jobs. The words are those of a job file's layers and frame.
struct Finish {
  using Words = std::vector<std::pair<std::string, std::string>>;  // attributes and their values

  std::string name;
  Unit unit = Unit::inch;     // of lengths that name none
  std::vector<Words> layers;  // at least one
  Words frame;                // moulding, colour, face, lip; empty: none is kept
  Place place;
};

struct Shop {
  std::string name, phone, email;
  std::vector<std::string> address;  // lines
  std::string logo;                  // picture file, relative to the shop file; empty: none
  Place logo_place;
  std::vector<Finish> finishes;
  std::string file;
};

inline constexpr std::size_t most_finishes = 1000;

Result<Shop> read_shop(const std::string& path);
Result<Shop> parse_shop(std::string_view xml, const std::string& file);

}  // namespace mullion
