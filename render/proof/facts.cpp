#include "render/proof/facts.h"

#include <algorithm>

#include "engine/job/layer_name.h"
#include "engine/mat/rect.h"
#include "render/proof/reveals.h"
#include "render/proof/sizes.h"
#include "render/proof/tone.h"

namespace mullion::proof {
namespace {

Rect all_openings(const Mat& mat) {
  const auto& windows = mat.layers.front().windows;
  Rect all = windows.empty() ? mat.outer : windows.front().back;
  for (const Window& window : windows) all = united(all, window.back);
  return all;
}

std::vector<SizeFact> border_facts(const Job& job, const Mat& mat, const Locale& locale) {
  const Rect all = all_openings(mat);
  const Length left = all.left - mat.outer.left, right = mat.outer.right - all.right;
  const Length top = all.top - mat.outer.top, bottom = mat.outer.bottom - all.bottom;
  const auto border = [&](const char* label, Length length) {
    return fact(locale.say(label), length_text(length, job.scale, locale));
  };
  if (left == right && top == left) {
    if (top == bottom) return {border(mark("Borders"), left)};
    return {border(mark("Borders"), left), border(mark("Bottom border"), bottom)};
  }
  std::vector<SizeFact> facts;
  if (left == right) {
    facts.push_back(border(mark("Side borders"), left));
  } else {
    facts = {border(mark("Left border"), left), border(mark("Right border"), right)};
  }
  if (top == bottom) {
    facts.push_back(border(mark("Top, bottom"), top));
  } else {
    facts.push_back(border(mark("Top border"), top));
    facts.push_back(border(mark("Bottom border"), bottom));
  }
  return facts;
}

const char* shape_word(const SizeGroup& group) {
  switch (group.shape) {
    case ShapeKind::ellipse:
      return group.sight.width() == group.sight.height() ? mark("circle") : mark("oval");
    case ShapeKind::arch:
      return mark("arch");
    case ShapeKind::rounded:
      return mark("rounded");
    case ShapeKind::stepped:
      return mark("stepped");
    case ShapeKind::octagon:
      return mark("octagon");
    case ShapeKind::outline:
      return mark("shaped");
    case ShapeKind::rectangle:
      break;
  }
  return "";
}

std::vector<SizeFact> sizes_of(const Piece& piece, const Locale& locale) {
  const Job& job = *piece.job;
  const Mat& mat = *piece.mat;
  const auto size = [&](const Rect& rect) {
    return size_text(rect.width(), rect.height(), job.scale, locale);
  };
  std::vector<SizeFact> facts;
  if (job.frame) facts.push_back(fact(locale.say("Outside of frame"), size(seen_extent(job, mat))));
  facts.push_back(fact(locale.say("Mat"), size(mat.outer)));
  for (SizeFact& border : border_facts(job, mat, locale)) facts.push_back(std::move(border));
  for (const SizeGroup& group : group_by_size(mat)) {
    std::string label =
        locale.say(group.several ? mark("Openings %1") : mark("Opening %1"), group.numbers);
    if (group.shape != ShapeKind::rectangle) {
      label += ", " + locale.say(shape_word(group));
    }
    facts.push_back(fact(label, size(group.sight)));
  }
  for (SizeFact& reveal : reveal_facts(piece, locale)) facts.push_back(std::move(reveal));
  return facts;
}

// A core that is neither white nor of the face's own colour is worth a word.
const char* core_words(const Layer& layer) {
  if (layer.core == layer.colour) return mark("solid core");
  constexpr double dark = 0.05;  // of luminance; our own figure
  if (luminance(layer.core) < dark) return mark("black core");
  return layer.core == white ? nullptr : mark("coloured core");
}

// "under-mat, 4-ply board, black core"
std::string board_detail(const Layer& layer, int number, const Locale& locale) {
  std::string out = layer.board.empty() ? "" : name_on_paper(layer.name, number, locale) + ", ";
  out += locale.say("%1-ply board", layer.ply);
  const char* core = core_words(layer);
  return core == nullptr ? out : out + ", " + locale.say(core);
}

std::vector<Material> materials_of(const Job& job, const Locale& locale) {
  std::vector<Material> out;
  int number = 0;
  for (const Layer& layer : job.layers) {
    ++number;
    if (layer.spacer) continue;
    out.push_back(
        {layer.colour, board_on_paper(layer, number, locale), board_detail(layer, number, locale)});
  }
  if (job.frame) {
    const std::string& name = job.frame->moulding;
    out.push_back({job.frame->colour, name.empty() ? locale.say("Moulding") : name,
                   locale.say("Moulding, %1 wide",
                              length_text(job.frame->face_width, job.scale, locale).own)});
  }
  return out;
}

template <class T>
bool has(const std::vector<T>& items, const T& item) {
  return std::find(items.begin(), items.end(), item) != items.end();
}

template <class T>
void keep_common(std::vector<T>& common, const std::vector<T>& others) {
  std::erase_if(common, [&](const T& item) { return !has(others, item); });
}

template <class T>
void take_out(std::vector<T>& items, const std::vector<T>& common) {
  std::erase_if(items, [&](const T& item) { return has(common, item); });
}

using Rows = std::vector<PriceRow>;

// The row of a line, from a place on: a choice may have two lines of one text, such as two boards
// of one name.
Rows::iterator row_for(Rows& rows, Rows::iterator from, const PriceLine& line) {
  return std::find_if(from, rows.end(), [&](const PriceRow& row) {
    return row.text == line.text && row.is_total == line.is_total;
  });
}

}  // namespace

SizeFact fact(const std::string& label, const SizeText& text) {
  return {label, text.own, text.other};
}

Facts facts_of(const Piece& piece, const Locale& locale) {
  return {sizes_of(piece, locale), materials_of(*piece.job, locale)};
}

ToldApart told_apart(const Sheet& sheet) {
  ToldApart out{facts_of(sheet.choices.front().piece, sheet.locale), {}};
  if (sheet.choices.size() < 2) return out;
  for (const Choice& choice : sheet.choices)
    out.own.push_back(facts_of(choice.piece, sheet.locale));
  for (const Facts& own : out.own) {
    keep_common(out.common.sizes, own.sizes);
    keep_common(out.common.materials, own.materials);
  }
  for (Facts& own : out.own) {
    take_out(own.sizes, out.common.sizes);
    take_out(own.materials, out.common.materials);
  }
  return out;
}

// A line that only a later choice has comes where that choice has it: after the line before it.
std::vector<PriceRow> price_rows(const Sheet& sheet) {
  const std::size_t count = sheet.choices.size();
  Rows rows;
  for (std::size_t i = 0; i < count; ++i) {
    std::ptrdiff_t next = 0;
    for (const PriceLine& line : sheet.choices[i].prices) {
      auto row = row_for(rows, rows.begin() + next, line);
      if (row == rows.end()) {
        row = rows.insert(rows.begin() + next,
                          {line.text, line.detail, std::vector<std::string>(count), line.is_total});
      } else if (row->detail != line.detail) {
        row->detail.clear();  // it is not that of all choices
      }
      row->amounts[i] = line.amount;
      next = row - rows.begin() + 1;
    }
  }
  return rows;
}

std::string total_of(const Choice& choice) {
  for (const PriceLine& line : choice.prices) {
    if (line.is_total) return line.amount;
  }
  return {};
}

}  // namespace mullion::proof
