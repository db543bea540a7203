#include "engine/locale/region.h"

#include <algorithm>
#include <array>

namespace mullion {
namespace {

template <std::size_t n>
using Territories = std::array<std::string_view, n>;

template <std::size_t n>
bool has(const Territories<n>& territories, std::string_view territory) {
  return std::find(territories.begin(), territories.end(), territory) != territories.end();
}

constexpr Territories<2> in_inches = {"LR", "US"};
constexpr Territories<3> in_both = {"CA", "GB", "MM"};
constexpr Territories<14> on_letter = {"BZ", "CA", "CL", "CO", "CR", "GT", "MX",
                                       "NI", "PA", "PH", "PR", "SV", "US", "VE"};
constexpr Territories<2> pointed_german = {"CH", "LI"};
constexpr Territories<13> pointed_spanish = {"BR", "BZ", "CU", "DO", "GT", "HN", "MX",
                                             "NI", "PA", "PE", "PR", "SV", "US"};

}  // namespace

Measure measure_in(std::string_view territory) {
  if (has(in_inches, territory)) return Measure::inches;
  return territory.empty() || has(in_both, territory) ? Measure::unstated : Measure::metric;
}

Measure measure_of(Unit unit) {
  return unit == Unit::inch ? Measure::inches : Measure::metric;
}

Scale usual_scale(Measure measure) {
  return measure == Measure::inches ? Scale{Unit::inch, sixty_fourths(4)}
                                    : Scale{Unit::centimetre, millimetres(1)};
}

bool uses_letter_paper(std::string_view territory) {
  return has(on_letter, territory);
}

bool writes_decimal_point(std::string_view language, std::string_view territory) {
  if (language == "de") return has(pointed_german, territory);
  return language == "es" && has(pointed_spanish, territory);
}

}  // namespace mullion
