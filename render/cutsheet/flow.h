#pragma once

// Blocks set one below the other on pages; a block that does not fit goes to the next page. Without
// a document nothing is drawn, and the pages are only counted.

#include <functional>
#include <string>
#include <vector>

#include "engine/locale/locale.h"
#include "render/cutsheet/look.h"
#include "render/paper/document.h"

namespace mullion::cutsheet {

class Flow {
 public:
  Flow(paper::PageSize page, std::string title, std::vector<paper::Page>* document,
       const Locale& locale = {});

  double width() const;
  double page_height() const;  // of what is set on a page
  int pages() const { return pages_; }
  bool runs_over() const { return runs_over_; }  // a block was higher than a page

  using Draw = std::function<void(paper::Drawing&, paper::Spot)>;
  // `draw` gets the upper left corner of a block of that height.
  void block(double height, const Draw& draw);
  // Starts a page unless so much is left, so that a heading is not alone at the foot.
  void keep(double height);
  void gap(double height) { y_ += height; }
  void text(const std::string& text, const paper::TextStyle& style);
  // A heading in white on black.
  void bar(const std::string& title, const Look& look, double keep_below);

 private:
  void next_page();

  paper::PageSize page_;
  std::string title_;
  std::vector<paper::Page>* document_;
  Locale locale_;
  paper::Drawing* drawing_ = nullptr;
  double y_ = 0;
  int pages_ = 0;
  bool runs_over_ = false;
};

void tick_box(paper::Drawing& page, paper::Spot corner, double size);

// Texts, each behind a box to tick, in as many columns as hold them without a break if that is
// possible, else one below the other.
void add_list(Flow& flow, const std::vector<std::string>& texts, const paper::TextStyle& style);
// What is done one after the other: always one below the other.
void add_steps(Flow& flow, const std::vector<std::string>& texts, const paper::TextStyle& style);

// Sentences one after the other, as many on a line as fit, each behind the mark.
void add_sentences(Flow& flow, const std::vector<std::string>& sentences, const char* mark,
                   const paper::TextStyle& style);

inline constexpr double line_spacing = 1.3;

// What stands at the top of every sheet: what it is for, how boards lie, the cautions, and the
// straight cuts.
void add_head(Flow& flow, const std::string& title, const std::string& summary,
              const std::string& lie, const std::vector<std::string>& cautions, const Look& look);

void add_blanks(Flow& flow, const std::vector<std::string>& blanks, const Locale& locale,
                const Look& look);

}  // namespace mullion::cutsheet
