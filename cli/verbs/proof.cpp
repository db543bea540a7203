#include <cstdio>
#include <deque>
#include <memory>

#include "cli/language.h"
#include "cli/load.h"
#include "cli/prices.h"
#include "cli/verb.h"
#include "engine/diff/diff.h"
#include "engine/job/layer_name.h"
#include "render/proof/mail.h"
#include "render/proof/page.h"
#include "render/proof/sheet.h"

namespace mullion::cli {
namespace {

struct Options {
  std::vector<std::string> jobs;
  std::string output, shop, mail;
  PriceOptions prices;
  double png_dpi = 150, photo_dpi = 0;
  bool glare = false;
  Locale locale;
};

constexpr double mail_picture_dpi = 110;

struct Variant {
  Loaded loaded;
  proof::Photographs photographs;
};

Result<Variant> load_variant(const std::string& path) {
  Result<Loaded> loaded = load(path);
  if (!loaded) return tl::unexpected(std::move(loaded.error()));
  Result<proof::Photographs> photographs = proof::open_photographs(loaded->job);
  if (!photographs) return tl::unexpected(std::move(photographs.error()));
  return Variant{std::move(*loaded), std::move(*photographs)};
}

std::string boards_of(const Job& job, const Locale& locale) {
  std::string out;
  int number = 0;
  for (const Layer& layer : job.layers) {
    ++number;
    if (layer.spacer) continue;
    const std::string board = board_on_paper(layer, number, locale);
    out = out.empty() ? board : locale.say("%1 over %2", out, board);
  }
  return out;
}

std::vector<std::string> notes_on(const Job& first, const Job& other, const Locale& locale) {
  std::vector<std::string> out = differences_in_look(first, other, locale);
  for (std::string& note : out) note = locale.say("Compared with A: %1", note);
  return out;
}

std::vector<proof::PriceLine> lines_of(const price::Estimate& estimate, const Locale& locale) {
  std::vector<proof::PriceLine> out;
  for (const price::Line& line : estimate.lines) {
    out.push_back({line.what, line.detail, price::format(line.price, estimate.currency, locale),
                   line.kind == price::Line::Kind::total});
  }
  return out;
}

Problems complete(const Options& options, const std::deque<Variant>& variants,
                  proof::Sheet& sheet) {
  sheet.style.glare = options.glare;
  sheet.locale = options.locale;
  if (options.photo_dpi > 0) sheet.style.resolution = {options.photo_dpi, false};
  if (!options.shop.empty()) {
    const Result<Shop> shop = read_shop(options.shop);
    if (!shop) return shop.error();
    auto head = proof::open_letterhead(*shop);
    if (!head) return head.error();
    sheet.head = std::move(*head);
  }
  for (std::size_t i = 0; !options.prices.book.empty() && i < variants.size(); ++i) {
    const auto estimate = estimate_for(variants[i].loaded, options.prices, options.locale);
    if (!estimate) return estimate.error();
    sheet.choices[i].prices = lines_of(*estimate, options.locale);
  }
  return {};
}

int write_page(const Options& options, const proof::Sheet& sheet) {
  if (options.output.empty()) return success;
  const auto format = format_of(options.output);
  const auto bytes = ending_of(options.output) == "html"
                         ? proof::render_page(sheet)
                         : proof::render_sheet(sheet, *format, options.png_dpi);
  return bytes ? write_output(options.output, *bytes) : report(bytes.error());
}

int write_draft(const Options& options, const proof::Sheet& sheet) {
  if (options.mail.empty()) return success;
  const auto pdf = proof::render_sheet(sheet, paper::Format::pdf, 0);
  if (!pdf) return report(pdf.error());
  const auto png = proof::render_sheet(sheet, paper::Format::png, mail_picture_dpi);
  if (!png) return report(png.error());
  const auto mail = proof::write_mail(sheet, {*png, *pdf});
  if (mail) return write_output(options.mail, *mail);
  return refuse(bad_job, mail.error());
}

int make_proof(const Options& options) {
  if (options.output.empty() && options.mail.empty()) {
    return refuse(bad_usage, "found neither --output nor --mail; expected one");
  }
  if (!options.output.empty() && ending_of(options.output) != "html" &&
      !format_of(options.output)) {
    return report_unknown_ending(options.output);
  }
  std::deque<Variant> variants;
  proof::Sheet sheet;
  for (const std::string& path : options.jobs) {
    Result<Variant> variant = load_variant(path);
    if (!variant) return report(variant.error());
    const Loaded& loaded = variants.emplace_back(std::move(*variant)).loaded;
    const int unwise = report(check_mat(loaded.job, loaded.layout, loaded.mat));
    if (unwise != success) return unwise;
    sheet.choices.push_back({{&loaded.job, &loaded.mat, &variants.back().photographs},
                             boards_of(loaded.job, options.locale),
                             notes_on(variants.front().loaded.job, loaded.job, options.locale),
                             {}});
  }
  const Problems problems = complete(options, variants, sheet);
  if (!problems.empty()) return report(problems);
  const int page = write_page(options, sheet);
  return page == success ? write_draft(options, sheet) : page;
}

}  // namespace

void add_proof(CommandLine& program) {
  const Verb verb = program.verb("proof", "Draw the page that the customer looks at and signs");
  auto options = std::make_shared<Options>();
  verb.argument("JOB", Takes::job_file, options->jobs,
                "The job file; several are choices side by side, lettered from A")
      .required()
      .times(1, static_cast<int>(proof::most_choices));
  verb.option("-o,--output", Takes::file, options->output,
              "The file to write: .pdf, .svg, .png or .html");
  verb.option("--shop", Takes::file, options->shop,
              "The shop's name, address and logo, for head and foot");
  verb.option("--mail", Takes::file, options->mail,
              "Also write a mail with the proof, ready to be sent, as this .eml file");
  add_price_options(verb, options->prices, false);
  verb.option("--dpi", options->png_dpi, "Dots per inch of a PNG").between(20, 1200);
  verb.option("--photo-dpi", options->photo_dpi,
              "Sample photographs down to this many dots per inch of the page; without it, "
              "JPEG data goes into PDF and SVG files as it is")
      .between(36, 1200);
  add_language_option(verb, options->locale);
  verb.flag("--glare", options->glare, "Show the light on the glass");
  verb.runs([options] { return make_proof(*options); });
}

}  // namespace mullion::cli
