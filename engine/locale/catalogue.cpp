#include "engine/locale/catalogue.h"

#include <array>
#include <stdexcept>

namespace mullion {
namespace {

constexpr std::uint32_t magic_number = 0x950412de;

struct PluralRule {
  std::string_view expression;  // as the header writes it, without parentheses
  std::int64_t (*form)(std::int64_t n);
};

constexpr std::array<PluralRule, 3> plural_rules{{
    {"0", [](std::int64_t) { return std::int64_t{0}; }},
    {"n != 1", [](std::int64_t n) { return std::int64_t{n != 1}; }},
    {"n > 1", [](std::int64_t n) { return std::int64_t{n > 1}; }},
}};

// The rule of a header's line "Plural-Forms: nplurals=2; plural=(n != 1);".
const PluralRule& plural_rule(std::string_view header) {
  constexpr std::string_view key = "plural=";
  const std::size_t line = header.find("Plural-Forms:");
  const std::size_t from = line == std::string_view::npos ? line : header.find(key, line);
  std::string_view text = from == std::string_view::npos ? "" : header.substr(from + key.size());
  text = text.substr(0, text.find_first_of(";\n"));
  if (text.starts_with('(') && text.ends_with(')')) text = text.substr(1, text.size() - 2);
  for (const PluralRule& rule : plural_rules) {
    if (rule.expression == text) return rule;
  }
  throw std::invalid_argument("no plural rule \"" + std::string(text) + "\" is known");
}

}  // namespace

Catalogue::Catalogue(std::string_view mo_file) : file_(mo_file) {
  if (number_at(0) != magic_number) throw std::out_of_range("not a catalogue of messages");
  count_ = number_at(8);
  originals_ = number_at(12);
  translations_ = number_at(16);
}

std::optional<std::string_view> Catalogue::find(std::string_view id,
                                                std::string_view context) const {
  constexpr char end_of_context = '\4';
  std::string key(id);
  if (!context.empty()) key = std::string(context) + end_of_context + key;
  std::uint32_t from = 0, to = count_;
  while (from < to) {
    const std::uint32_t middle = from + (to - from) / 2;
    const std::string_view original = text_at(originals_, middle);
    const std::string_view found = original.substr(0, original.find('\0'));  // the plural follows
    if (found == key) return text_at(translations_, middle);
    if (found < key) {
      from = middle + 1;
    } else {
      to = middle;
    }
  }
  return std::nullopt;
}

std::optional<std::string_view> Catalogue::find_plural(std::string_view id, std::int64_t n) const {
  const auto header = find("");
  auto forms = find(id);
  if (!forms || !header) return std::nullopt;
  for (auto form = plural_rule(*header).form(n); form > 0; --form) {
    const std::size_t end = forms->find('\0');
    if (end == std::string_view::npos) return std::nullopt;
    forms = forms->substr(end + 1);
  }
  return forms->substr(0, forms->find('\0'));
}

std::uint32_t Catalogue::number_at(std::size_t position) const {
  std::uint32_t number = 0;
  for (std::size_t i = 4; i-- > 0;) {
    if (position + i >= file_.size()) throw std::out_of_range("a catalogue of messages ends early");
    number = number << 8 | static_cast<unsigned char>(file_[position + i]);
  }
  return number;
}

std::string_view Catalogue::text_at(std::size_t table, std::uint32_t index) const {
  const std::size_t entry = table + 8 * std::size_t{index};
  const std::size_t length = number_at(entry), start = number_at(entry + 4);
  if (start > file_.size() || length > file_.size() - start) {
    throw std::out_of_range("a catalogue of messages ends early");
  }
  return file_.substr(start, length);
}

}  // namespace mullion
