#include "render/cutsheet/pages.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace mullion::cutsheet {
namespace {

// Smaller diagrams are taken only where the whole sheet is then one page.
constexpr double for_one_page = 0.7, usual_least = 0.8, largest = 1.4, step = 0.05;
constexpr int fewest_columns = 3, most_tile_columns = 4;
constexpr double least_again = 0.7;

// A look that cuts something off at a page's foot is the last to be taken.
constexpr int of_what_runs_over = 10'000;

int pages_of(const paper::PageSize& page, const Write& write, const Look& look) {
  Flow flow(page, "", nullptr);
  write(flow, look);
  return flow.pages() + (flow.runs_over() ? of_what_runs_over : 0);
}

// Diagrams of lower layers as large as the pages allow.
Look with_larger_repeats(const paper::PageSize& page, const Write& write, const Look& look) {
  const int pages = pages_of(page, write, look);
  for (double again = 1; again > std::max(look.again, least_again - step) + step / 2;
       again -= step) {
    const Look larger{look.size, look.columns, again, look.dense};
    if (pages_of(page, write, larger) <= pages) return larger;
  }
  return look;
}

// Where the usual looks need more pages than a framer wants to turn, or where it saves the only
// page to turn, small tiles are tried.
constexpr int many_pages = 2;
constexpr int fewest_dense_columns = 4, most_dense_columns = 5;
constexpr double dense_least = 0.55, none_again = 0;

std::optional<Look> dense_look(const paper::PageSize& page, const Write& write, int usual) {
  if (usual == 1) return std::nullopt;
  std::optional<Look> best;
  int fewest = usual > many_pages ? usual : 2;
  for (int columns = fewest_dense_columns; columns <= most_dense_columns; ++columns) {
    const Look look{dense_least, columns, none_again, true};
    const int pages = pages_of(page, write, look);
    if (pages >= fewest) continue;
    fewest = pages;
    best = look;
  }
  if (!best) return best;
  // Pictures of lower layers before larger type.
  const Look pictured{dense_least, best->columns, least_again, true};
  if (pages_of(page, write, pictured) == fewest) best = pictured;
  for (double size = dense_least + step; size <= largest; size += step) {
    const Look larger{size, best->columns, best->again, true};
    if (pages_of(page, write, larger) > fewest) break;
    best = larger;
  }
  return best;
}

Look best_look(const paper::PageSize& page, const Write& write) {
  const bool one_page = pages_of(page, write, {for_one_page, fewest_columns, least_again}) == 1;
  const double smallest = one_page ? for_one_page : usual_least;
  Look best{smallest, fewest_columns, least_again};
  std::optional<int> fewest;
  for (int columns = fewest_columns; columns <= most_tile_columns; ++columns) {
    const int pages = pages_of(page, write, {smallest, columns, least_again});
    if (!fewest || pages < *fewest) {
      fewest = pages;
      best = {smallest, columns, least_again};
    }
  }
  if (const auto dense = dense_look(page, write, *fewest)) {
    return with_larger_repeats(page, write, *dense);
  }
  for (int columns = fewest_columns; columns <= most_tile_columns; ++columns) {
    // Pages grow with the type, so the largest type that keeps them is found by halving.
    int low = best.columns == columns ? 0 : -1;
    int high = static_cast<int>(std::lround((largest - smallest) / step)) + 1;
    const auto look = [&](int n) { return Look{smallest + step * n, columns, least_again}; };
    if (low < 0) low = static_cast<int>(std::lround((best.size - smallest) / step));
    while (high - low > 1) {
      const int middle = (low + high) / 2;
      (pages_of(page, write, look(middle)) <= *fewest ? low : high) = middle;
    }
    if (look(low).size > best.size && pages_of(page, write, look(low)) <= *fewest) {
      best = look(low);
    }
  }
  return with_larger_repeats(page, write, best);
}

}  // namespace

std::string set_on_pages(const paper::PageSize& page, const std::string& title,
                         const std::string& date, const Locale& locale, const Write& write) {
  const Look look = best_look(page, write);
  std::vector<paper::Page> document;
  Flow flow(page, title, &document, locale);
  write(flow, look);
  return paper::write_pdf(document, {title, date});
}

}  // namespace mullion::cutsheet
