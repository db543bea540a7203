#pragma once

// Who the shop is, for the head and foot of its papers and the sender of its mail. A small XML file
// of its own, described by shop.xsd beside this header: a `shop` with version, name, email, phone
// and logo, and an `address` in it.
//
// Problems come with line and column. Refused: what the job file's reader refuses (see
// engine/job/read.h), a shop without a name, a second address, a logo outside the file's folder.

#include <string>
#include <string_view>
#include <vector>

#include "engine/xml/problem.h"

namespace mullion {

struct Shop {
  std::string name, phone, email;
  std::vector<std::string> address;  // lines
  std::string logo;                  // picture file, relative to the shop file; empty: none
  Place logo_place;
  std::string file;
};

Result<Shop> read_shop(const std::string& path);
Result<Shop> parse_shop(std::string_view xml, const std::string& file);

}  // namespace mullion
