#pragma once

// What a proof says of a piece in rows: its sizes and what it is made of; and, of several choices,
// what they have in common and what sets each apart.

#include <string>
#include <vector>

#include "render/proof/sheet.h"
#include "render/proof/sizes.h"

namespace mullion::proof {

struct SizeFact {
  std::string label, own, other;  // in the unit that comes first, and in the other
  friend bool operator==(const SizeFact&, const SizeFact&) = default;
};
SizeFact fact(const std::string& label, const SizeText& text);

struct Material {
  Colour colour;
  std::string name, detail;
  friend bool operator==(const Material&, const Material&) = default;
};

struct Facts {
  std::vector<SizeFact> sizes;
  std::vector<Material> materials;
};
Facts facts_of(const Piece& piece, const Locale& locale);

struct ToldApart {
  Facts common;
  std::vector<Facts> own;  // one a choice; empty where there is only one
};
ToldApart told_apart(const Sheet& sheet);

// The estimates of all choices in one table; an amount is empty where a choice has no such line,
// and so is a detail in which choices differ.
struct PriceRow {
  std::string text, detail;
  std::vector<std::string> amounts;  // one a choice
  bool is_total = false;
};
std::vector<PriceRow> price_rows(const Sheet& sheet);

// The amount of the total; empty without a price.
std::string total_of(const Choice& choice);

}  // namespace mullion::proof
