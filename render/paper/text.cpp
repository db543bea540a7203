#include "render/paper/text.h"

#include <pango/pangocairo.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <map>
#include <stdexcept>
#include <tuple>

#include "render/paper/cairo.h"

namespace mullion::paper {

// A Pango layout of a fixed em size, to be drawn scaled.
struct Text::Setting {
  std::string content;
  TextStyle style;
  std::shared_ptr<PangoLayout> layout;
  double scale = 1;  // from the layout's units to points
  double width = 0, height = 0, baseline = 0;
};

namespace {

constexpr double em = 100;  // layout units; large, so that no rounding shows

// Pango draws boxes or nothing where there is no font at all.
void require_font(PangoContext* context) {
  PangoFontDescription* any = pango_font_description_new();
  pango_font_description_set_family(any, TextStyle{}.family);
  PangoFont* found = pango_font_map_load_font(pango_cairo_font_map_get_default(), context, any);
  pango_font_description_free(any);
  if (found == nullptr) {
    throw std::runtime_error(
        "no font was found on this machine, so that no text can be set; install some (Debian: "
        "fonts-dejavu-core and fonts-lato)");
  }
  g_object_unref(found);
}

// Text has the same width on every surface: no hinting, letters not on whole points, and Pango's
// scale of a font size 1/72 in, as ours is.
std::shared_ptr<PangoContext> new_context() {
  std::shared_ptr<PangoContext> context(
      pango_font_map_create_context(pango_cairo_font_map_get_default()), g_object_unref);
  cairo_font_options_t* options = cairo_font_options_create();
  cairo_font_options_set_antialias(options, CAIRO_ANTIALIAS_GRAY);
  cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
  pango_cairo_context_set_font_options(context.get(), options);
  cairo_font_options_destroy(options);
  pango_cairo_context_set_resolution(context.get(), 72);
  pango_context_set_round_glyph_positions(context.get(), FALSE);
  pango_context_set_language(context.get(), pango_language_from_string("en"));
  require_font(context.get());
  return context;
}

// Fonts are looked for when the first text is set, not before.
PangoContext* text_context() {
  thread_local const std::shared_ptr<PangoContext> shared = new_context();
  return shared.get();
}

std::string cleaned(const std::string& content, bool keep_breaks) {
  const std::unique_ptr<char, decltype(&g_free)> valid(
      g_utf8_make_valid(content.data(), static_cast<gssize>(content.size())), g_free);
  std::string text = valid.get();
  for (char& c : text) {
    if (static_cast<unsigned char>(c) < 0x20 && !(keep_breaks && c == '\n')) c = ' ';
  }
  return text;
}

// Pango's widths of longer lines would overflow.
std::string in_one_line(const std::string& content) {
  constexpr std::size_t most = 16'000;
  return content.size() <= most ? content : content.substr(0, most);
}

// A text at the fixed size, whatever the size, the colour and the place that it is drawn at.
struct TextKey {
  std::string content, family;
  bool bold;
  double tracking, wrap;  // in parts of the size

  friend bool operator<(const TextKey& a, const TextKey& b) {
    return std::tie(a.content, a.bold, a.wrap, a.tracking, a.family) <
           std::tie(b.content, b.bold, b.wrap, b.tracking, b.family);
  }
};

struct Laid {
  std::shared_ptr<PangoLayout> layout;
  double width = 0, height = 0, baseline = 0;
};

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

// "4 1/2 in" is not broken: neither between two numbers nor before a unit.
void keep_lengths_whole(PangoAttrList* attributes, const std::string& text) {
  constexpr std::array<std::string_view, 3> units{"in", "cm", "mm"};
  for (std::size_t i = 1; i + 1 < text.size(); ++i) {
    if (text[i] != ' ' || !is_digit(text[i - 1])) continue;
    const std::string_view next(text.data() + i + 1, std::min<std::size_t>(2, text.size() - i - 1));
    const bool ends =
        i + 3 >= text.size() || std::isalpha(static_cast<unsigned char>(text[i + 3])) == 0;
    const bool unit = ends && std::find(units.begin(), units.end(), next) != units.end();
    if (!unit && !is_digit(next.front())) continue;
    PangoAttribute* whole = pango_attr_allow_breaks_new(FALSE);
    whole->start_index = static_cast<guint>(i - 1);
    whole->end_index = static_cast<guint>(i + 2);
    pango_attr_list_insert(attributes, whole);
  }
}

std::shared_ptr<PangoLayout> layout_of(const TextKey& key) {
  std::shared_ptr<PangoLayout> layout(pango_layout_new(text_context()), g_object_unref);
  PangoFontDescription* face = pango_font_description_new();
  pango_font_description_set_family(face, key.family.c_str());
  pango_font_description_set_absolute_size(face, em * PANGO_SCALE);
  pango_font_description_set_weight(face, key.bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_layout_set_font_description(layout.get(), face);
  pango_font_description_free(face);
  // Without ligatures a reader of the file finds every word by its letters.
  PangoAttrList* plain = pango_attr_list_new();
  pango_attr_list_insert(plain, pango_attr_font_features_new("liga=0"));
  if (key.tracking != 0) {
    pango_attr_list_insert(
        plain, pango_attr_letter_spacing_new(static_cast<int>(key.tracking * em * PANGO_SCALE)));
  }
  if (key.wrap > 0) keep_lengths_whole(plain, key.content);
  pango_layout_set_attributes(layout.get(), plain);
  pango_attr_list_unref(plain);
  if (key.wrap > 0) {
    pango_layout_set_width(layout.get(), static_cast<int>(key.wrap * em * PANGO_SCALE));
    pango_layout_set_wrap(layout.get(), PANGO_WRAP_WORD_CHAR);
  }
  pango_layout_set_text(layout.get(), key.content.data(), static_cast<int>(key.content.size()));
  return layout;
}

Laid lay(const TextKey& key) {
  Laid laid;
  laid.layout = layout_of(key);
  PangoRectangle logical;
  pango_layout_get_extents(laid.layout.get(), nullptr, &logical);
  laid.width = static_cast<double>(logical.width) / PANGO_SCALE;
  laid.height = static_cast<double>(logical.height) / PANGO_SCALE;
  laid.baseline = static_cast<double>(pango_layout_get_baseline(laid.layout.get())) / PANGO_SCALE;
  return laid;
}

// Drawings repeat their texts: measured, then drawn, on every sheet and layer. The last ones are
// not set again.
const Laid& laid_before(TextKey key) {
  constexpr std::size_t most = 1024;
  thread_local std::map<TextKey, Laid> known;
  if (known.size() >= most) known.clear();
  const auto found = known.find(key);
  if (found != known.end()) return found->second;
  Laid laid = lay(key);
  return known.emplace(std::move(key), std::move(laid)).first->second;
}

}  // namespace

Text::Text(const std::string& content, const TextStyle& style, double wrap) {
  Setting setting;
  setting.content = wrap > 0 ? cleaned(content, true) : cleaned(in_one_line(content), false);
  setting.style = style;
  const Laid& laid = laid_before({setting.content, style.family, style.bold,
                                  style.tracking / style.size, wrap > 0 ? wrap / style.size : 0});
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

std::vector<std::string> Text::lines() const {
  std::vector<std::string> lines;
  if (content().empty()) return lines;
  for (GSList* at = pango_layout_get_lines_readonly(setting_->layout.get()); at != nullptr;
       at = at->next) {
    const auto* line = static_cast<const PangoLayoutLine*>(at->data);
    std::string words = content().substr(static_cast<std::size_t>(line->start_index),
                                         static_cast<std::size_t>(line->length));
    words.erase(words.find_last_not_of(' ') + 1);
    lines.push_back(std::move(words));
  }
  return lines;
}

double text_width(const std::string& content, const TextStyle& style) {
  return content.empty() ? 0 : Text(content, style).width();
}

std::string fitted(const std::string& content, double width, const TextStyle& style) {
  if (text_width(content, style) <= width) return content;
  // Where the text's characters begin: it may be cut before each of them.
  std::vector<std::size_t> starts;
  for (std::size_t i = 0; i < content.size(); ++i) {
    if ((static_cast<unsigned char>(content[i]) & 0xC0) != 0x80) starts.push_back(i);
  }
  const auto cut = [&](std::size_t start) { return content.substr(0, start) + "\xE2\x80\xA6"; };
  const auto too_long = std::partition_point(starts.begin(), starts.end(), [&](std::size_t start) {
    return text_width(cut(start), style) <= width;
  });
  if (too_long == starts.begin()) return {};  // not even the ellipsis fits
  return cut(*(too_long - 1));
}

TextStyle narrowed(const std::string& content, double width, TextStyle style, double least) {
  constexpr double rounding = 0.999;
  const double wide = text_width(content, style);
  if (wide > width) style.size *= std::max(least, rounding * width / wide);
  return style;
}

std::vector<std::string> lines_of(const std::string& content, double width,
                                  const TextStyle& style) {
  const bool in_one =
      content.find('\n') == std::string::npos && text_width(content, style) <= width;
  return Text(content, style, in_one ? 0 : width).lines();
}

Path outlines_of(const Text& text) {
  const Text::Setting& setting = text.setting();
  const Surface nowhere(cairo_recording_surface_create(CAIRO_CONTENT_ALPHA, nullptr));
  const Context cairo(cairo_create(nowhere.get()));
  pango_cairo_layout_path(cairo.get(), setting.layout.get());
  cairo_path_t* outlines = cairo_copy_path(cairo.get());
  Path path;
  const auto at = [&](const cairo_path_data_t& data) {
    return Spot{data.point.x * setting.scale, data.point.y * setting.scale};
  };
  for (int i = 0; i < outlines->num_data; i += outlines->data[i].header.length) {
    const cairo_path_data_t* data = outlines->data + i;
    switch (data->header.type) {
      case CAIRO_PATH_MOVE_TO:
        path.move_to(at(data[1]));
        break;
      case CAIRO_PATH_LINE_TO:
        path.line_to(at(data[1]));
        break;
      case CAIRO_PATH_CURVE_TO:
        path.curve_to(at(data[1]), at(data[2]), at(data[3]));
        break;
      case CAIRO_PATH_CLOSE_PATH:
        path.close();
        break;
    }
  }
  cairo_path_destroy(outlines);
  return path;
}

void show(const Text& text, cairo_t* cairo) {
  const Text::Setting& setting = text.setting();
  cairo_scale(cairo, setting.scale, setting.scale);
  cairo_move_to(cairo, 0, 0);
  pango_cairo_show_layout(cairo, setting.layout.get());
  cairo_new_path(cairo);
}

}  // namespace mullion::paper
