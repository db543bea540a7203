#include "render/cutsheet/pages.h"

#include <cmath>
#include <optional>

namespace mullion::cutsheet {
namespace {

// Smaller diagrams are taken only where the whole sheet is then one page.
constexpr double for_one_page = 0.7, usual_least = 0.8, largest = 1.4, step = 0.05;
constexpr int fewest_columns = 3, most_tile_columns = 4;
constexpr double least_again = 0.7;

int pages_of(const paper::PageSize& page, const Write& write, const Look& look) {
  Flow flow(page, "", nullptr);
  write(flow, look);
  return flow.pages();
}

// Diagrams of lower layers as large as the pages allow.
Look with_larger_repeats(const paper::PageSize& page, const Write& write, const Look& look) {
  const int pages = pages_of(page, write, look);
  for (double again = 1; again > look.again + step / 2; again -= step) {
    const Look larger{look.size, look.columns, again};
    if (pages_of(page, write, larger) <= pages) return larger;
  }
  return look;
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
