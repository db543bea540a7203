#include "render/proof/page.h"

#include <map>

#include "engine/job/layer_name.h"
#include "engine/xml/colour.h"
#include "render/proof/facts.h"
#include "render/proof/markup.h"
#include "render/proof/page_text.h"
#include "render/proof/stage.h"
#include "render/proof/words.h"

namespace mullion::proof {
namespace {

std::string element(const std::string& name, const std::string& text) {
  return text.empty() ? "" : "<" + name + ">" + escaped(text) + "</" + name + ">\n";
}

std::string page_head(const std::string& title, const Locale& locale) {
  return "<!DOCTYPE html>\n<html lang=\"" + locale.tag() +
         "\">\n<head>\n<meta charset=\"utf-8\">\n"
         "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
         "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src "
         "'unsafe-inline'; script-src 'unsafe-inline'; img-src data:\">\n"
         "<title>" +
         escaped(locale.say(words::proof_of, title)) + "</title>\n<style>" + page_style +
         "</style>\n</head>\n<body>\n";
}

std::string heading(const Sheet& sheet, const Job& job, const std::string& title) {
  const Locale& locale = sheet.locale;
  const std::string separator = " \xC2\xB7 ";
  std::string facts = locale.say("Proof");
  if (!job.reference.empty()) facts += separator + locale.say("reference %1", job.reference);
  facts += separator + locale.say("revision %1", job.revision);
  if (!job.date.empty()) facts += separator + job.date;
  std::string out = "<header>\n";
  if (sheet.head) out += "<p class=\"shop\">" + escaped(sheet.head->shop.name) + "</p>\n";
  out += element("h1", title);
  if (!job.customer.empty()) out += element("p", locale.say(words::for_customer, job.customer));
  return out + "<p class=\"facts\">" + escaped(facts) + "</p>\n</header>\n";
}

std::string check_box(const std::string& key, const std::string& label) {
  return "<label><input type=\"checkbox\" checked data-shows=\"" + key + "\">" + escaped(label) +
         "</label>\n";
}

std::string part_label(const PiecePart& part, const Piece& piece, const Locale& locale) {
  switch (part.kind) {
    case PiecePart::Kind::layer: {
      const Layer& board = piece.mat->layers[static_cast<std::size_t>(part.layer - 1)].board;
      return name_on_paper(board.name, part.layer, locale);
    }
    case PiecePart::Kind::grooves:
      return locale.say("Grooves");
    case PiecePart::Kind::glass:
      return locale.say("Light on the glass");
    case PiecePart::Kind::frame:
      return locale.say("Frame");
    case PiecePart::Kind::pictures:
      return locale.say("Pictures");
    case PiecePart::Kind::wall_shadow:
      break;
  }
  return {};
}

std::string tools(const Sheet& sheet) {
  const auto word = [&](const char* text) { return escaped(sheet.locale.say(text)); };
  std::string out =
      "<div class=\"tools\" role=\"group\" aria-label=\"" + word(mark("Zoom")) +
      "\"><button type=\"button\" id=\"zoom-out\" aria-label=\"" + word(mark("Zoom out")) +
      "\">\xE2\x88\x92</button><output id=\"zoom-now\">100 %</output>"
      "<button type=\"button\" id=\"zoom-in\" aria-label=\"" +
      word(mark("Zoom in")) + "\">+</button><button type=\"button\" id=\"zoom-fit\">" +
      word(mark("Fit")) + "</button></div>\n<div class=\"tools\" role=\"group\" aria-label=\"" +
      word(mark("What is shown")) + "\">\n";
  for (std::size_t i = 0; sheet.choices.size() > 1 && i < sheet.choices.size(); ++i) {
    out += check_box("choice-" + letter_of(i), sheet.locale.say("Choice %1", letter_of(i)));
  }
  std::map<std::string, std::string> seen;
  for (const Choice& choice : sheet.choices) {
    for (const PiecePart& part : parts_of(choice.piece, sheet.style)) {
      const std::string key = part_key(part), label = part_label(part, choice.piece, sheet.locale);
      if (!label.empty() && seen.emplace(key, label).second) out += check_box(key, label);
    }
  }
  return out + "</div>\n";
}

std::string size_table(const std::vector<SizeFact>& facts) {
  if (facts.empty()) return {};
  std::string out = "<table class=\"sizes\">\n";
  for (const SizeFact& fact : facts) {
    out += "<tr><th scope=\"row\">" + escaped(fact.label) + "</th><td><span>" + escaped(fact.own) +
           "</span> <span class=\"quiet\">" + escaped(fact.other) + "</span></td></tr>\n";
  }
  return out + "</table>\n";
}

std::string material_list(const std::vector<Material>& materials) {
  if (materials.empty()) return {};
  std::string out = "<ul class=\"materials\">\n";
  for (const Material& material : materials) {
    out += "<li><span class=\"chip\" style=\"background:" + format_colour(material.colour) +
           "\"></span><span>" + escaped(material.name) + "<br><small>" + escaped(material.detail) +
           "</small></span></li>\n";
  }
  return out + "</ul>\n";
}

std::string common_facts(const Facts& facts, const Locale& locale) {
  std::string out;
  if (!facts.sizes.empty())
    out += element("h2", locale.say(words::sizes)) + size_table(facts.sizes);
  if (!facts.materials.empty()) {
    out += element("h2", locale.say(words::materials)) + material_list(facts.materials);
  }
  return out;
}

// What sets a choice apart, below its picture.
std::string caption(const Choice& choice, const std::string& letter, const Facts& own,
                    const Locale& locale) {
  std::string out = "<figcaption>\n<p><b class=\"letter\">" + letter + "</b> " +
                    escaped(choice.caption) + "</p>\n" + material_list(own.materials) +
                    size_table(own.sizes);
  for (const std::string& note : choice.notes) out += "<p>" + escaped(note) + "</p>\n";
  const std::string total = total_of(choice);
  if (!total.empty()) out += "<p><b>" + escaped(locale.say("Total %1", total)) + "</b></p>\n";
  return out + "</figcaption>";
}

std::string prices(const Sheet& sheet) {
  const auto rows = price_rows(sheet);
  if (rows.empty()) return {};
  std::string out =
      element("h2", sheet.locale.say(words::estimate)) + "<div class=\"wide\"><table>\n";
  if (sheet.choices.size() > 1) {
    out += "<tr><td></td>";
    for (std::size_t i = 0; i < sheet.choices.size(); ++i) {
      out += "<th scope=\"col\" class=\"amount\">" + letter_of(i) + "</th>";
    }
    out += "</tr>\n";
  }
  for (const PriceRow& row : rows) {
    out += std::string(row.is_total ? "<tr class=\"total\">" : "<tr>") + "<th scope=\"row\">" +
           escaped(row.text);
    if (!row.detail.empty()) out += " <small>" + escaped(row.detail) + "</small>";
    out += "</th>";
    for (const std::string& amount : row.amounts) {
      out += "<td class=\"amount\">" + escaped(amount) + "</td>";
    }
    out += "</tr>\n";
  }
  return out + "</table></div>\n";
}

Result<std::string> figures(const Sheet& sheet, const ToldApart& facts) {
  const bool several = sheet.choices.size() > 1;
  std::string out = "<div class=\"choices\">\n";
  for (std::size_t i = 0; i < sheet.choices.size(); ++i) {
    const auto stage = stage_markup(sheet, i);
    if (!stage) return tl::unexpected(stage.error());
    out += "<figure class=\"choice\" data-part=\"choice-" + letter_of(i) +
           "\"><div class=\"stage\" tabindex=\"0\" role=\"region\" aria-label=\"" +
           escaped(stage_label(sheet, i)) +
           "\" style=\"background:" + format_colour(sheet.choices[i].piece.job->wall) + "\">" +
           *stage + "</div>";
    if (several) out += caption(sheet.choices[i], letter_of(i), facts.own[i], sheet.locale);
    out += "</figure>\n";
  }
  return out + "</div>\n";
}

std::string approval(const Sheet& sheet) {
  const Job& job = *sheet.choices.front().piece.job;
  std::string out = element("h2", sheet.locale.say(words::please_check)) +
                    element("p", sheet.locale.say(words::what_to_check));
  if (sheet.choices.size() == 1) {
    out += element("p", words::approval(job, job_mark(job), sheet.locale));
  } else {
    out += element("p", sheet.locale.say(words::approval_of_choice)) + "<ul class=\"ticks\">\n";
    for (std::size_t i = 0; i < sheet.choices.size(); ++i) {
      const Job& own = *sheet.choices[i].piece.job;
      out += "<li><b>" + letter_of(i) + "</b> " +
             escaped(words::version(own, job_mark(own), sheet.locale)) + "</li>\n";
    }
    out += "</ul>\n";
  }
  return out + "<div class=\"sign\"><span>" + escaped(sheet.locale.say(words::signature)) +
         "</span><span>" + escaped(sheet.locale.say(words::date)) + "</span></div>\n";
}

std::string page_foot(const Sheet& sheet) {
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
  const std::string title = words::title_of(job);
  const ToldApart facts = told_apart(sheet);
  const auto pictures = figures(sheet, facts);
  if (!pictures) return tl::unexpected(pictures.error());
  return page_head(title, sheet.locale) + heading(sheet, job, title) + "<main>\n" + tools(sheet) +
         "<p id=\"told\" class=\"told\" aria-live=\"polite\">" +
         escaped(sheet.locale.say("Point at an opening, or tap it, to read its size.")) + "</p>\n" +
         *pictures + common_facts(facts.common, sheet.locale) + prices(sheet) + approval(sheet) +
         "</main>\n" + page_foot(sheet) + "<script>" + page_script +
         "</script>\n</body>\n</html>\n";
}

}  // namespace mullion::proof
