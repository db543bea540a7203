#include "cli/language.h"

#include <cstdlib>

#include "cli/command_tree.h"
#include "cli/known_words.h"

namespace mullion::cli {
namespace {

std::string environment_name(const char* category) {
  for (const char* variable : {"LC_ALL", category, "LANG"}) {
    const char* value = std::getenv(variable);
    if (value != nullptr && *value != '\0') return value;
  }
  return {};
}

std::string refusal(const std::string& name) {
  if (Locale::find(name)) return {};
  return "found \"" + name + "\"; expected one of " + joined(languages(), ", ") +
         ", perhaps with a territory as in es-MX";
}

}  // namespace

Locale environment_locale(const char* category) {
  const std::string name = environment_name(category);
  if (const auto locale = Locale::find(name)) return *locale;
  const std::size_t territory = name.find('_');
  if (territory == std::string::npos) return {};
  return Locale::find("en" + name.substr(territory)).value_or(Locale());
}

void add_language_option(const Verb& verb, Locale& locale) {
  locale = environment_locale("LC_MESSAGES");
  verb.option(
          "--language", Takes::word,
          [&locale](const std::string& name) { locale = *Locale::find(name); },
          "Of the words on the paper, perhaps with a territory for units and paper, as in "
          "es-MX; the environment's where not given")
      .checked(refusal, languages());
}

}  // namespace mullion::cli
