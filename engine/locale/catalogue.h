#pragma once

// The messages of one language, as `msgfmt` compiles them: the MO format of the GNU gettext manual
// (section "The Format of GNU MO Files"), least significant byte first. A message is found by
// binary search in the file's own sorted table, so that a catalogue costs nothing until it is
// asked. Which plural form a number takes is told by the header's "Plural-Forms", which must be one
// of a table of three: one form for all, all but one (English, German, Spanish), or more than one
// (French).
//
// The bytes are those of our own build; a table that points beyond them throws std::out_of_range.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace mullion {

class Catalogue {
 public:
  Catalogue() = default;  // without messages
  explicit Catalogue(std::string_view mo_file);

  // The translation of a message, in a context if that is not empty.
  std::optional<std::string_view> find(std::string_view id, std::string_view context = {}) const;

  // The form for `n` of a message that has plural forms. Throws std::invalid_argument where the
  // header's rule is not in the table.
  std::optional<std::string_view> find_plural(std::string_view id, std::int64_t n) const;

 private:
  std::uint32_t number_at(std::size_t position) const;
  std::string_view text_at(std::size_t table, std::uint32_t index) const;

  std::string_view file_;
  std::uint32_t count_ = 0;
  std::size_t originals_ = 0, translations_ = 0;  // where the two tables begin
};

// The catalogues that are compiled into the library, one a file of engine/locale/translations.
struct Translation {
  std::string_view language;  // ISO 639-1
  std::string_view mo_file;   // its bytes
};
const std::vector<Translation>& translations();

}  // namespace mullion
