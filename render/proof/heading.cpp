#include <algorithm>
#include <filesystem>

#include "render/proof/blocks.h"
#include "render/proof/type.h"
#include "render/proof/words.h"

namespace mullion::proof {
namespace {

constexpr double logo_height = 20, widest_logo = 160, beside_logo = 8;

// The whole logo, as large as its place allows.
paper::Box logo_box(const picture::Photograph& logo, paper::Spot corner) {
  const double w = logo.header.shown_width(), h = logo.header.shown_height();
  const double scale = std::min(logo_height / h, widest_logo / w);
  return {corner.x, corner.y + (logo_height - h * scale) / 2, w * scale, h * scale};
}

void draw_facts(paper::Drawing& page, const Job& job, const Locale& locale, const paper::Box& box) {
  const std::pair<const char*, std::string> facts[] = {
      {mark("Reference"), job.reference},
      {mark("Revision"), std::to_string(job.revision)},
      {words::date, job.date}};
  double y = box.y + 30;
  const double x = box.x + box.width;
  for (const auto& [name, value] : facts) {
    if (value.empty()) continue;
    page.text(value, {x, y}, type::right(type::body(9)));
    page.text(locale.say(name), {x - 74, y}, type::right(type::faint(8)));
    y += type::row;
  }
}

// A long title becomes smaller, then two lines: its spelling is to be approved.
void draw_title(paper::Drawing& page, const std::string& title, paper::Spot spot, double room) {
  constexpr double largest = 23, least_on_one_line = 15;
  const double size =
      largest * std::min(1.0, room / paper::text_width(title, type::title(largest)));
  if (size >= least_on_one_line) {
    page.text(title, spot, type::title(size));
    return;
  }
  for (const double smaller : {15.0, 12.0, 9.0}) {
    const paper::TextStyle style = type::title(smaller);
    auto lines = paper::lines_of(title, room, style);
    if (lines.size() > 2 && smaller > 9) continue;
    if (lines.size() > 2) lines[1] = paper::fitted(lines[1] + " " + lines[2], room, style);
    page.text(lines[0], {spot.x, spot.y - smaller - 2}, style);
    page.text(lines[1], spot, style);
    return;
  }
}

}  // namespace

Result<Letterhead> open_letterhead(const Shop& shop) {
  Letterhead out{shop, std::nullopt};
  if (shop.logo.empty()) return out;
  const auto folder = std::filesystem::path(shop.file).parent_path();
  auto logo = picture::open_photograph((folder / shop.logo).string());
  const auto fault = logo ? picture::fault_of(*logo) : logo.error();
  if (!fault.empty()) {
    return tl::unexpected(
        Problems{{Severity::error, "picture-unreadable", fault, shop.logo_place, shop.file}});
  }
  out.logo = std::move(*logo);
  return out;
}

void draw_heading(paper::Drawing& page, paper::Format format, const Sheet& sheet,
                  const paper::Box& box) {
  const Job& job = *sheet.choices.front().piece.job;
  double x = box.x;
  if (sheet.head) {
    if (sheet.head->logo) {
      const paper::Box logo = logo_box(*sheet.head->logo, {box.x, box.y - 10});
      // A logo that cannot be decoded was refused when the shop file was read.
      (void)paper::draw_photograph(page, format, *sheet.head->logo, logo, {}, {600, true});
      x += logo.width + beside_logo;
    }
    page.text(sheet.head->shop.name, {x, box.y + 5}, type::strong(10));
  }
  page.text(upper_case(sheet.locale.say("Proof")), {box.x + box.width, box.y + 5},
            type::right(type::heading()));
  const double room = box.width - 150;
  draw_title(page, words::title_of(job), {box.x, box.y + 42}, room);
  if (!job.customer.empty()) {
    page.text(
        paper::fitted(sheet.locale.say(words::for_customer, job.customer), room, type::body(10)),
        {box.x, box.y + 59}, type::body(10));
  }
  draw_facts(page, job, sheet.locale, box);
}

}  // namespace mullion::proof
