#include <memory>
#include <numbers>

#include "render/paper/canvas.h"
#include "render/paper/characters.h"
#include "render/paper/setting.h"

namespace mullion::paper {
namespace {

struct Release {
  void operator()(void* object) const { g_object_unref(object); }
};
using Layout = std::unique_ptr<PangoLayout, Release>;

Layout lay_text(cairo_t* context, const std::string& text, const TextStyle& style) {
  Layout layout(pango_cairo_create_layout(context));
  set_for_any_surface(pango_layout_get_context(layout.get()));
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
  return longest_fitting(text, width,
                         [&](const std::string& part) { return text_width(part, style); });
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
