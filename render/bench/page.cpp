#include <glib.h>

#include <algorithm>
#include <array>
#include <map>

#include "engine/cuts/sheet/json.h"
#include "engine/cuts/sheet/run_json.h"
#include "render/bench/bench.h"
#include "render/bench/page_files.h"
#include "render/bench/plan_steps.h"
#include "render/cutsheet/headings.h"
#include "render/proof/markup.h"

namespace mullion {
namespace bench {
namespace {

using proof::escaped;
using Weight = Sentence::Weight;

// Script and style stand in the page as they are for a reader of HTML, and as character data for
// one of XML.
std::string file_called(std::string_view name, const char* open, const char* close) {
  for (const PageFile& file : page_files()) {
    if (file.name == name) return open + std::string(file.text) + close;
  }
  return {};
}

std::array<guint8, 32> sha256(const std::string& text) {
  std::array<guint8, 32> out{};
  gsize size = out.size();
  GChecksum* sum = g_checksum_new(G_CHECKSUM_SHA256);
  g_checksum_update(sum, reinterpret_cast<const guchar*>(text.data()),
                    static_cast<gssize>(text.size()));
  g_checksum_get_digest(sum, out.data(), &size);
  g_checksum_free(sum);
  return out;
}

// As a content security policy names what it lets run (CSP level 3, 2.3.1).
std::string source_of(const std::string& text) {
  const auto digest = sha256(text);
  gchar* base64 = g_base64_encode(digest.data(), digest.size());
  std::string out = std::string("'sha256-") + base64 + "'";
  g_free(base64);
  return out;
}

// What ticks are kept under: 64 bits of the digest tell plans apart.
std::string mark_of(const std::string& json) {
  constexpr char digits[] = "0123456789abcdef";
  const auto digest = sha256(json);
  std::string out;
  for (std::size_t i = 0; i < 8; ++i) {
    out += digits[digest[i] >> 4];
    out += digits[digest[i] & 15];
  }
  return out;
}

// So many letters stand beside their dial's name; more stand below it.
constexpr std::size_t most_beside = 12;

std::string class_of(const Dial& dial) {
  const std::string out = !dial.set    ? (dial.moves ? "unset moves" : "unset")
                          : dial.moves ? "moves"
                                       : "stays";
  return dial.shows.size() > most_beside ? out + " long" : out;
}

std::string dial_markup(const Dial& dial, const Locale& locale) {
  const bool stays = dial.set && !dial.moves;
  return "<div class=\"" + class_of(dial) + "\"><dt>" +
         escaped(stays ? locale.say("%1 stays", dial.name) : dial.name) + "</dt><dd>" +
         escaped(dial.shows) + "</dd></div>";
}

std::string sentence_markup(const Sentence& sentence) {
  constexpr const char* weights[] = {"", " strong", " quiet", " large"};
  return std::string("<p class=\"") + sentence.name + weights[static_cast<int>(sentence.weight)] +
         "\">" + escaped(sentence.text) + "</p>";
}

class PageWriter {
 public:
  PageWriter(const std::vector<Step>& steps, const Locale& locale)
      : steps_(steps), locale_(locale) {}

  std::string write(const std::string& title, const std::string& mark) {
    const std::string style = file_called("page.css", "/*<![CDATA[*/\n", "/*]]>*/");
    const std::string script = file_called("page.js", "//<![CDATA[\n", "//]]>\n");
    out_ =
        "<!DOCTYPE html>\n<html lang=\"" + locale_.tag() +
        "\">\n<head>\n<meta charset=\"utf-8\"/>\n"
        "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n"
        "<meta name=\"color-scheme\" content=\"light dark\"/>\n"
        "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; script-src " +
        source_of(script) + "; style-src " + source_of(style) +
        "; base-uri 'none'; form-action 'none'\"/>\n<title>" + escaped(title) +
        "</title>\n<style>" + style + "</style>\n</head>\n<body data-plan=\"" + mark +
        "\" data-piece=\"" + escaped(locale_.say_in("batch", "piece %1 of %2", "%1", "%2")) +
        "\" data-ticks=\"" + escaped(locale_.say("%1 of %2 ticked", "%1", "%2")) + "\">\n<main>\n";
    for (std::size_t i = 0; i < steps_.size(); ++i) add(steps_[i], i);
    out_ += "</main>\n";
    add_parts();
    add_buttons();
    out_ += "<script>" + script + "</script>\n</body>\n</html>\n";
    return std::move(out_);
  }

 private:
  void add(const Step& step, std::size_t index) {
    constexpr const char* kinds[] = {"read", "work", "check"};
    const std::string number = std::to_string(index + 1);
    out_ += "<section class=\"" + std::string(kinds[static_cast<int>(step.kind)]) +
            (step.picture.empty() ? "" : " pictured") + "\" id=\"s" + number + "\" data-group=\"" +
            std::to_string(step.group) + "\"";
    if (step.pieces > 1) out_ += " data-pieces=\"" + std::to_string(step.pieces) + "\"";
    if (step.once) out_ += " data-once=\"yes\"";
    out_ += ">\n<h2><b>" + escaped(step.heading) + "</b>";
    for (const std::string& where : step.where) out_ += " <span>" + escaped(where) + "</span>";
    if (step.pieces > 1) {
      out_ += " <span class=\"piece\">" + escaped(locale_.say("%1 mats alike", step.pieces)) +
              "</span>";
    }
    out_ += "</h2>\n";
    if (!step.picture.empty()) add(step.picture);
    out_ += "<div class=\"say\">";
    if (!step.dials.empty()) {
      out_ += "<dl>";
      for (const Dial& dial : step.dials) out_ += dial_markup(dial, locale_);
      out_ += "</dl>";
    }
    for (const Sentence& sentence : step.sentences) out_ += sentence_markup(sentence);
    out_ += "</div>\n</section>\n";
  }

  void add(const Picture& picture) {
    out_ += "<svg viewBox=\"" + picture.box + "\" role=\"img\" aria-label=\"" +
            escaped(picture.label) + "\">" + use(picture.under) + picture.between +
            use(picture.over) + picture.now + "</svg>\n";
  }

  std::string use(const std::string& part) {
    const auto [at, is_new] = parts_.emplace(part, "g" + std::to_string(parts_.size() + 1));
    if (is_new) defined_ += "<g id=\"" + at->second + "\">" + part + "</g>\n";
    return "<use href=\"#" + at->second + "\"/>";
  }

  void add_parts() {
    if (defined_.empty()) return;
    out_ += "<svg id=\"parts\" width=\"0\" height=\"0\" aria-hidden=\"true\"><defs>\n" + defined_ +
            "</defs></svg>\n";
  }

  void add_buttons() {
    out_ +=
        "<footer hidden=\"hidden\">\n<div class=\"status\"><progress id=\"done\" value=\"0\" "
        "max=\"1\" aria-label=\"" +
        escaped(locale_.say("Done")) +
        "\"></progress><span id=\"ticks\" role=\"status\" aria-live=\"polite\"></span>"
        "<button type=\"button\" id=\"all\" aria-pressed=\"false\">" +
        escaped(locale_.say("All steps")) +
        "</button><button type=\"button\" id=\"afresh\" data-sure=\"" +
        escaped(locale_.say("Press again to clear all ticks")) + "\">" +
        escaped(locale_.say("Clear all ticks")) +
        "</button></div>\n<p id=\"lost\" hidden=\"hidden\">" +
        escaped(locale_.say("This browser keeps no ticks: they are gone when the page is left.")) +
        "</p>\n<nav><button type=\"button\" id=\"back\">" +
        escaped(locale_.say_in("cutter", "Back")) +
        "</button><button type=\"button\" id=\"tick\" aria-pressed=\"false\"><span "
        "aria-hidden=\"true\">\xE2\x9C\x93</span> " +
        escaped(locale_.say_in("cutter", "Done")) +
        "</button><button type=\"button\" id=\"next\">" +
        escaped(locale_.say_in("cutter", "Next")) + "</button></nav>\n</footer>\n";
  }

  const std::vector<Step>& steps_;
  const Locale& locale_;
  std::string out_, defined_;
  std::map<std::string, std::string> parts_;  // their names
};

}  // namespace
}  // namespace bench

std::string render_bench_page(const CuttingPlan& planned, const Locale& locale) {
  const ToldPlan plan{planned, locale};
  const std::vector<bench::Step> steps = bench::steps_of(plan);
  return bench::PageWriter(steps, locale)
      .write(cutsheet::title_of(plan), bench::mark_of(plan_to_json(planned)));
}

std::string render_bench_page(const CuttingRun& run, const Locale& locale) {
  const std::vector<bench::Step> steps = bench::steps_of(run, locale);
  return bench::PageWriter(steps, locale)
      .write(cutsheet::title_of(run, locale), bench::mark_of(run_to_json(run)));
}

}  // namespace mullion
