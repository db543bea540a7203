#pragma once

// The jobs of a folder with what a card shows of each. What was read and laid out stays until the
// file changes. For several threads.

#include <map>
#include <mutex>
#include <string>
#include <string_view>

#include "cli/page/files.h"
#include "cli/page/state.h"
#include "engine/cuts/cutter/profile.h"

namespace mullion::cli::page {

class Listing {
 public:
  // What is wrong with a job is said in the locale's language.
  Listing(const Files& files, Locale locale) : files_(files), locale_(std::move(locale)) {}

  Json jobs();
  // A small drawing of the piece; empty where there is no such job or no mat.
  std::string thumbnail(const std::string& name);

  // Names of the XML files below the folder whose outermost element is that.
  std::vector<std::string> files_of(std::string_view element);

 private:
  struct Card {
    Stamp stamp;
    std::string element;  // the outermost one
    Json shown;
    std::string drawing;
  };
  Card read(const Files::Listed& listed) const;
  std::vector<std::string> bring_up_to_date();

  const Files& files_;
  Locale locale_;
  std::mutex mutex_;
  std::map<std::string, Card, std::less<>> cards_;
};

// The name of the outermost element of an XML text; empty where there is none.
std::string outermost_element(std::string_view text);

}  // namespace mullion::cli::page
