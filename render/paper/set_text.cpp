#include <map>
#include <tuple>

#include "render/paper/setting.h"
#include "render/paper/text.h"

namespace mullion::paper {
namespace {

constexpr double em = 100;  // layout units; large, so that no rounding shows

std::shared_ptr<PangoContext> new_context() {
  std::shared_ptr<PangoContext> context(
      pango_font_map_create_context(pango_cairo_font_map_get_default()), g_object_unref);
  set_for_any_surface(context.get());
  pango_context_set_language(context.get(), pango_language_from_string("en"));
  return context;
}

// Fonts are looked for when the first text is set, not before.
PangoContext* context() {
  thread_local const std::shared_ptr<PangoContext> shared = new_context();
  return shared.get();
}

std::string cleaned(const std::string& content) {
  const std::unique_ptr<char, decltype(&g_free)> valid(
      g_utf8_make_valid(content.data(), static_cast<gssize>(content.size())), g_free);
  std::string text = valid.get();
  for (char& c : text) {
    if (static_cast<unsigned char>(c) < 0x20 && c != '\n') c = ' ';
  }
  return text;
}

std::shared_ptr<PangoLayout> lay_text(const std::string& content, const TextStyle& style,
                                      double wrap) {
  std::shared_ptr<PangoLayout> layout(pango_layout_new(context()), g_object_unref);
  PangoFontDescription* face = pango_font_description_new();
  pango_font_description_set_family_static(face, "DejaVu Sans");
  pango_font_description_set_absolute_size(face, em * PANGO_SCALE);
  pango_font_description_set_weight(face, style.bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_layout_set_font_description(layout.get(), face);
  pango_font_description_free(face);
  // Without ligatures a reader of the file finds every word by its letters.
  PangoAttrList* plain = pango_attr_list_new();
  pango_attr_list_insert(plain, pango_attr_font_features_new("liga=0"));
  pango_layout_set_attributes(layout.get(), plain);
  pango_attr_list_unref(plain);
  if (wrap > 0) {
    pango_layout_set_width(layout.get(), static_cast<int>(wrap / style.size * em * PANGO_SCALE));
    pango_layout_set_wrap(layout.get(), PANGO_WRAP_WORD_CHAR);
  }
  pango_layout_set_text(layout.get(), content.data(), static_cast<int>(content.size()));
  return layout;
}

// A text at the fixed size, whatever the size, the colour and the place that it is drawn at.
struct Laid {
  std::shared_ptr<PangoLayout> layout;
  double width = 0, height = 0, baseline = 0;
};

Laid lay(const std::string& content, const TextStyle& style, double wrap) {
  Laid laid;
  laid.layout = lay_text(content, style, wrap);
  PangoRectangle logical;
  pango_layout_get_extents(laid.layout.get(), nullptr, &logical);
  laid.width = static_cast<double>(logical.width) / PANGO_SCALE;
  laid.height = static_cast<double>(logical.height) / PANGO_SCALE;
  laid.baseline = static_cast<double>(pango_layout_get_baseline(laid.layout.get())) / PANGO_SCALE;
  return laid;
}

// Drawings repeat their texts: measured, then drawn, on every sheet and layer. The last ones are
// not set again.
const Laid& laid_before(const std::string& content, const TextStyle& style, double wrap) {
  constexpr std::size_t most = 1024;
  using Key = std::tuple<std::string, bool, double>;
  thread_local std::map<Key, Laid> known;
  if (known.size() >= most) known.clear();
  const Key key{content, style.bold, wrap > 0 ? wrap / style.size : 0};
  const auto found = known.find(key);
  if (found != known.end()) return found->second;
  return known.emplace(key, lay(content, style, wrap)).first->second;
}

}  // namespace

void set_for_any_surface(PangoContext* context) {
  cairo_font_options_t* options = cairo_font_options_create();
  cairo_font_options_set_antialias(options, CAIRO_ANTIALIAS_GRAY);
  cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
  pango_cairo_context_set_font_options(context, options);
  cairo_font_options_destroy(options);
  pango_cairo_context_set_resolution(context, 72);
  pango_context_set_round_glyph_positions(context, FALSE);
}

Text::Text(const std::string& content, const TextStyle& style, double wrap) {
  Setting setting;
  setting.content = cleaned(content);
  setting.style = style;
  const Laid& laid = laid_before(setting.content, style, wrap);
  setting.layout = laid.layout;
  setting.scale = style.size / em;
  setting.width = laid.width * setting.scale;
  setting.height = laid.height * setting.scale;
  setting.baseline = laid.baseline * setting.scale;
  setting_ = std::make_shared<const Setting>(std::move(setting));
}

const std::string& Text::content() const {
  return setting_->content;
}

const TextStyle& Text::style() const {
  return setting_->style;
}

double Text::width() const {
  return setting_->width;
}

double Text::height() const {
  return setting_->height;
}

double Text::baseline() const {
  return setting_->baseline;
}

}  // namespace mullion::paper
