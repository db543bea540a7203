#pragma once

// What the checks share: the job, its layout and its mat, names and places for messages, and the
// list that the findings go to.

#include <map>
#include <string>
#include <string_view>

#include "engine/mat/checks.h"

namespace mullion {

// Within which distances between curved edges are measured.
inline constexpr Length measuring_tolerance = Length::from_ticks(16);  // 0.01 mm

class Findings {
 public:
  Findings(const Job& job, const Layout& layout, const Mat& mat, const Locale& locale);

  const Job& job;
  const Layout& layout;
  const Mat& mat;
  const Locale& locale;

  // The code is one of check_table, which also has the severity.
  void add(std::string_view code, std::string message, Place place);
  Problems take();  // in the order of the table, then of adding

  template <class... Arguments>
  std::string say(const char* message, const Arguments&... arguments) const {
    return locale.say(message, arguments...);
  }
  std::string text(Length length) const { return locale.described(length, job.scale); }
  std::string name(int opening) const;  // opening 2 "dune"
  std::string name(const Window& window) const;
  std::string name(const MatLayer& layer) const;  // layer 2 "Under-mat"; empty words for one layer
  Place place(int opening) const;

 private:
  std::vector<Place> places_;
  std::map<std::size_t, Problems> found_;  // by index in the table
};

// The windows of each layer: inside the board, in order, their reveals.
void check_windows(Findings& findings);
// What is left between neighbouring windows.
void check_bars(Findings& findings);
// Pictures: held, covered, side by side.
void check_pictures(Findings& findings);
// Borders, frame, blank, sheet.
void check_board(Findings& findings);
// Decorative grooves on the face of the top mat.
void check_grooves(Findings& findings);

}  // namespace mullion
