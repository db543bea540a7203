#include <pango/pangocairo.h>

#include <memory>
#include <numbers>

#include "render/paper/canvas.h"
#include "render/paper/characters.h"

namespace mullion::paper {
namespace {

// Pango's own scale of a font size is 1/72 in, as ours is, when the layout's resolution is 72 dpi.
struct Release {
  void operator()(void* object) const { g_object_unref(object); }
};
using Layout = std::unique_ptr<PangoLayout, Release>;

Layout lay_text(cairo_t* context, const std::string& text, const TextStyle& style) {
  Layout layout(pango_cairo_create_layout(context));
  pango_cairo_context_set_resolution(pango_layout_get_context(layout.get()), 72);
  cairo_font_options_t* options = cairo_font_options_create();
  cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_antialias(options, CAIRO_ANTIALIAS_GRAY);
  pango_cairo_context_set_font_options(pango_layout_get_context(layout.get()), options);
  cairo_font_options_destroy(options);
  // Else letters stand on whole points.
  pango_context_set_round_glyph_positions(pango_layout_get_context(layout.get()), FALSE);

  PangoFontDescription* font = pango_font_description_new();
  pango_font_description_set_family_static(font, style.family);
  pango_font_description_set_weight(font, style.bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_font_description_set_size(font, static_cast<int>(style.size * PANGO_SCALE));
  pango_layout_set_font_description(layout.get(), font);
  pango_font_description_free(font);
  pango_layout_set_single_paragraph_mode(layout.get(), true);
  pango_layout_set_text(layout.get(), text.data(), static_cast<int>(text.size()));
  if (style.tracking != 0) {
    PangoAttrList* attributes = pango_attr_list_new();
    pango_attr_list_insert(
        attributes, pango_attr_letter_spacing_new(static_cast<int>(style.tracking * PANGO_SCALE)));
    pango_layout_set_attributes(layout.get(), attributes);
    pango_attr_list_unref(attributes);
  }
  return layout;
}

void set_ink(cairo_t* context, const Colour& colour) {
  cairo_set_source_rgb(context, colour.red / 255.0, colour.green / 255.0, colour.blue / 255.0);
}

double width_of(const Layout& layout) {
  int width = 0;
  pango_layout_get_size(layout.get(), &width, nullptr);
  return static_cast<double>(width) / PANGO_SCALE;
}

}  // namespace

void Canvas::text(const std::string& text, Spot spot, const TextStyle& style) {
  if (text.empty()) return;
  const Layout layout = lay_text(context_, text, style);
  const double back = style.anchor == Anchor::left     ? 0
                      : style.anchor == Anchor::centre ? width_of(layout) / 2
                                                       : width_of(layout);
  const double baseline =
      static_cast<double>(pango_layout_get_baseline(layout.get())) / PANGO_SCALE;
  cairo_save(context_);
  set_ink(context_, style.colour);
  cairo_translate(context_, spot.x, spot.y);
  cairo_rotate(context_, style.turn * std::numbers::pi / 180);
  cairo_move_to(context_, -back, -baseline);
  pango_cairo_show_layout(context_, layout.get());
  cairo_new_path(context_);
  cairo_restore(context_);
}

double Canvas::text_width(const std::string& text, const TextStyle& style) {
  return text.empty() ? 0 : width_of(lay_text(context_, text, style));
}

std::string Canvas::fitted(const std::string& text, double width, const TextStyle& style) {
  if (text_width(text, style) <= width) return text;
  for (std::size_t end = text.size(); end > 0;) {
    end = character_before(text, end);
    const std::string shorter = text.substr(0, end) + "\xE2\x80\xA6";
    if (text_width(shorter, style) <= width) return shorter;
  }
  return {};
}

double Canvas::paragraph(const std::string& text, Spot corner, double width,
                         const TextStyle& style) {
  if (text.empty()) return 0;
  const Layout layout = lay_text(context_, text, style);
  pango_layout_set_single_paragraph_mode(layout.get(), false);
  pango_layout_set_wrap(layout.get(), PANGO_WRAP_WORD_CHAR);
  pango_layout_set_width(layout.get(), static_cast<int>(width * PANGO_SCALE));
  pango_layout_set_line_spacing(layout.get(), 1.25F);
  cairo_save(context_);
  set_ink(context_, style.colour);
  cairo_move_to(context_, corner.x, corner.y);
  pango_cairo_show_layout(context_, layout.get());
  cairo_new_path(context_);
  cairo_restore(context_);
  int height = 0;
  pango_layout_get_size(layout.get(), nullptr, &height);
  return static_cast<double>(height) / PANGO_SCALE;
}

}  // namespace mullion::paper
