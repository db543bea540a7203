#include "render/proof/page.h"

#include <map>

#include "engine/job/colour.h"
#include "render/proof/markup.h"
#include "render/proof/page_text.h"
#include "render/proof/sizes.h"
#include "render/proof/stage.h"

namespace mullion::proof {
namespace {

std::string element(const std::string& name, const std::string& text) {
  return text.empty() ? "" : "<" + name + ">" + escaped(text) + "</" + name + ">\n";
}

std::string head(const Sheet& sheet, const std::string& title) {
  return "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
         "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
         "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src "
         "'unsafe-inline'; script-src 'unsafe-inline'; img-src data:\">\n"
         "<title>" +
         escaped(title) + ", proof</title>\n<style>" + page_style +
         ".stage{background:" + format_colour(sheet.choices.front().piece.job->wall) +
         "}</style>\n</head>\n<body>\n";
}

std::string heading(const Sheet& sheet, const Job& job, const std::string& title) {
  std::string facts = "Proof";
  if (!job.reference.empty()) facts += " \xC2\xB7 reference " + job.reference;
  facts += " \xC2\xB7 revision " + std::to_string(job.revision);
  if (!job.date.empty()) facts += " \xC2\xB7 " + job.date;
  std::string out = "<header>\n";
  if (sheet.head) out += "<p class=\"shop\">" + escaped(sheet.head->shop.name) + "</p>\n";
  out += element("h1", title);
  if (!job.customer.empty()) out += element("p", "for " + job.customer);
  return out + "<p class=\"facts\">" + escaped(facts) + "</p>\n</header>\n";
}

std::string check_box(const std::string& key, const std::string& label) {
  return "<label><input type=\"checkbox\" checked data-shows=\"" + key + "\">" + escaped(label) +
         "</label>\n";
}

std::string part_label(const PiecePart& part, const Piece& piece) {
  switch (part.kind) {
    case PiecePart::Kind::layer: {
      const Layer& board = piece.mat->layers[static_cast<std::size_t>(part.layer - 1)].board;
      return board.name;
    }
    case PiecePart::Kind::grooves:
      return "Grooves";
    case PiecePart::Kind::glass:
      return "Light on the glass";
    case PiecePart::Kind::frame:
      return "Frame";
    case PiecePart::Kind::pictures:
      return "Pictures";
    case PiecePart::Kind::wall_shadow:
      break;
  }
  return {};
}

std::string tools(const Sheet& sheet) {
  std::string out =
      "<div class=\"tools\" role=\"group\" aria-label=\"Zoom\">"
      "<button type=\"button\" id=\"zoom-out\" aria-label=\"Zoom out\">\xE2\x88\x92</button>"
      "<output id=\"zoom-now\">100 %</output>"
      "<button type=\"button\" id=\"zoom-in\" aria-label=\"Zoom in\">+</button>"
      "<button type=\"button\" id=\"zoom-fit\">Fit</button></div>\n"
      "<div class=\"tools\" role=\"group\" aria-label=\"What is shown\">\n";
  std::map<std::string, std::string> seen;
  for (const Choice& choice : sheet.choices) {
    for (const PiecePart& part : parts_of(choice.piece, sheet.style)) {
      const std::string key = part_key(part), label = part_label(part, choice.piece);
      if (!label.empty() && seen.emplace(key, label).second) out += check_box(key, label);
    }
  }
  for (std::size_t i = 0; sheet.choices.size() > 1 && i < sheet.choices.size(); ++i) {
    out += check_box("choice-" + letter_of(i), "Choice " + letter_of(i));
  }
  return out + "</div>\n";
}

Result<std::string> figures(const Sheet& sheet) {
  std::string out = "<div class=\"choices\">\n";
  for (std::size_t i = 0; i < sheet.choices.size(); ++i) {
    const auto stage = stage_markup(sheet, i);
    if (!stage) return tl::unexpected(stage.error());
    out += "<figure class=\"choice\" data-part=\"choice-" + letter_of(i) +
           "\"><div class=\"stage\">" + *stage + "</div>";
    if (sheet.choices.size() > 1) {
      out += "<figcaption><b>" + letter_of(i) + "</b> " + escaped(sheet.choices[i].caption) +
             "</figcaption>";
    }
    out += "</figure>\n";
  }
  return out + "</div>\n";
}

std::string size_row(const std::string& what, const SizeText& text) {
  return "<tr><th scope=\"row\">" + escaped(what) + "</th><td>" + escaped(text.own) + "</td><td>" +
         escaped(text.other) + "</td></tr>\n";
}

std::string sizes(const Sheet& sheet) {
  const Piece& piece = sheet.choices.front().piece;
  const Scale& scale = piece.job->scale;
  std::string out = "<h2>Sizes</h2>\n<table>\n";
  if (piece.job->frame) {
    const Rect extent = seen_extent(*piece.job, *piece.mat);
    out += size_row("Outside of frame", size_text(extent.width(), extent.height(), scale));
  }
  const Rect& outer = piece.mat->outer;
  out += size_row("Mat", size_text(outer.width(), outer.height(), scale));
  for (const SizeGroup& group : group_by_size(*piece.mat)) {
    out += size_row("Opening " + group.numbers + (group.shape.empty() ? "" : ", " + group.shape),
                    size_text(group.sight.width(), group.sight.height(), scale));
  }
  return out + "</table>\n";
}

std::string prices(const Sheet& sheet) {
  if (sheet.prices.empty()) return {};
  std::string out = "<h2>Estimate</h2>\n<table>\n";
  for (const PriceLine& line : sheet.prices) {
    out += std::string(line.is_total ? "<tr class=\"total\">" : "<tr>") + "<th scope=\"row\">" +
           escaped(line.text) + "</th><td class=\"amount\">" + escaped(line.amount) +
           "</td></tr>\n";
  }
  return out + "</table>\n";
}

std::string approval(const Job& job) {
  return "<h2>Before you sign, please check</h2>\n<p>The spelling of every name and title. The "
         "crop of every picture. Sizes, borders and the boards chosen. Colours on a screen or in "
         "print differ from the board and the moulding themselves: ask to see the samples.</p>\n"
         "<p>I approve revision " +
         std::to_string(job.revision) + " (" + job_mark(job) +
         ") as shown.</p>\n<div class=\"sign\"><span>Signature</span><span>Date</span></div>\n";
}

std::string foot(const Sheet& sheet) {
  if (!sheet.head) return {};
  std::string line = sheet.head->shop.name;
  for (const std::string& part : sheet.head->shop.address) line += " \xC2\xB7 " + part;
  for (const std::string& part : {sheet.head->shop.phone, sheet.head->shop.email}) {
    if (!part.empty()) line += " \xC2\xB7 " + part;
  }
  return "<footer>" + escaped(line) + "</footer>\n";
}

}  // namespace

Result<std::string> render_page(const Sheet& sheet) {
  const Job& job = *sheet.choices.front().piece.job;
  const std::string title = job.title.empty() ? job.reference : job.title;
  const auto pictures = figures(sheet);
  if (!pictures) return tl::unexpected(pictures.error());
  return head(sheet, title) + heading(sheet, job, title) + "<main>\n" + tools(sheet) +
         "<p id=\"told\" class=\"told\" aria-live=\"polite\">Point at an opening, or tap it, to "
         "read its size.</p>\n" +
         *pictures + sizes(sheet) + prices(sheet) + approval(job) + "</main>\n" + foot(sheet) +
         "<script>" + page_script + "</script>\n</body>\n</html>\n";
}

}  // namespace mullion::proof
