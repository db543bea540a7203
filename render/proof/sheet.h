#pragma once

// The customer's page: the finished piece, or several choices side by side, on its wall; what it
// measures and is made of; what an estimate says; and the line that the customer signs.
//
// On Letter paper (ANSI/ASME Y14.1, size A) or A4 (ISO 216) as is usual in the territory; without
// one, Letter for a job in inches and A4 for a metric one. What one page does not hold goes on the
// next; an image grows downward instead. Everything in the pictures is to one scale, which each
// page states.

#include <optional>
#include <string>
#include <vector>

#include "engine/locale/locale.h"
#include "engine/shop/shop.h"
#include "render/paper/document.h"
#include "render/proof/piece.h"

namespace mullion::proof {

struct Letterhead {
  Shop shop;
  std::optional<picture::Photograph> logo;
};

// Opens the logo too. A problem with it stands at its place in the shop file.
Result<Letterhead> open_letterhead(const Shop& shop);

struct PriceLine {
  std::string text, detail, amount;
  bool is_total = false;
};

// What the customer chooses from, lettered from A where there are several.
struct Choice {
  Piece piece;
  std::string caption;             // its boards in words; may be empty
  std::vector<std::string> notes;  // what else sets it apart from the first, in sentences
  std::vector<PriceLine> prices;   // none without a price book
};

struct Sheet {
  std::vector<Choice> choices;  // at least one; its job gives title, paper and unit
  std::optional<Letterhead> head;
  PieceStyle style;
  Locale locale;
};

inline constexpr std::size_t most_choices = 6;

// Errors are picture files that cannot be decoded.
Result<std::string> render_sheet(const Sheet& sheet, paper::Format format, double png_dpi);

// "A" for the first.
std::string letter_of(std::size_t choice);

// SHA-256 (FIPS 180-4) of the job as its file would be written, in hexadecimal digits.
std::string job_hash(const Job& job);
// Its first eight digits, so that a signed proof belongs to one version of one job.
std::string job_mark(const Job& job);

}  // namespace mullion::proof
