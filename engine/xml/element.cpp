#include "engine/xml/element.h"

#include <algorithm>
#include <charconv>
#include <set>

#include "engine/xml/colour.h"
#include "engine/xml/document.h"
#include "engine/xml/limits.h"
#include "engine/xml/tags.h"

namespace mullion {

Element::Element(Reading& reading, pugi::xml_node node)
    : reading_(reading), node_(node), offset_(offset_of(node)) {
  read_attributes();
}

Element::~Element() {
  for (const Attribute& attribute : attributes_) {
    if (attribute.asked) continue;
    reading_.problem(attribute.offset, "job-unknown-attribute",
                     "unknown attribute " + quoted(attribute.name) + " in " + tag() +
                         reading_.hint(attribute.name, asked_));
  }
}

void Element::read_attributes() {
  std::set<std::string_view> seen;
  pugi::xml_attribute parsed = node_.first_attribute();
  for (const WrittenAttribute& written : written_attributes(reading_.source.text(), offset_)) {
    check_references(reading_, written.raw, written.raw_offset);
    if (!seen.insert(written.name).second) {
      reading_.problem(
          written.offset, "job-repeated-attribute",
          "found " + quoted(written.name) + " twice in " + tag() + "; expected it once");
    } else {
      attributes_.push_back({written.name, parsed.value(), written.offset, false});
    }
    parsed = parsed.next_attribute();
  }
}

const Element::Attribute* Element::find(std::string_view attribute) {
  if (std::find(asked_.begin(), asked_.end(), attribute) == asked_.end()) {
    asked_.push_back(attribute);
  }
  for (Attribute& candidate : attributes_) {
    if (candidate.name != attribute) continue;
    candidate.asked = true;
    return &candidate;
  }
  return nullptr;
}

const Element::Attribute* Element::stated(std::string_view attribute) const {
  for (const Attribute& candidate : attributes_) {
    if (candidate.name == attribute) return &candidate;
  }
  return nullptr;
}

std::vector<pugi::xml_node> Element::children(const std::vector<std::string_view>& known) {
  std::vector<pugi::xml_node> out;
  for (const pugi::xml_node& child : node_.children()) {
    if (child.type() == pugi::node_pcdata || child.type() == pugi::node_cdata) {
      reading_.problem(offset_of_text(reading_, child), "job-stray-text",
                       "found text " + quoted(tidy(child.value())) + " in " + tag() +
                           "; expected " + (known.empty() ? "nothing in it" : "elements only"));
    } else if (child.type() == pugi::node_element) {
      const std::string_view name = child.name();
      if (std::find(known.begin(), known.end(), name) != known.end()) {
        out.push_back(child);
        continue;
      }
      reading_.problem(
          offset_of(child), "job-unknown-element",
          "unknown element <" + std::string(name.substr(0, 60)) + "> in " + tag() +
              (known.empty() ? "; expected nothing in it" : reading_.hint(name, known)));
    }
  }
  return out;
}

std::string Element::content(std::size_t longest) {
  std::string text;
  for (const pugi::xml_node& child : node_.children()) {
    if (child.type() == pugi::node_pcdata || child.type() == pugi::node_cdata) {
      text += child.value();
    } else if (child.type() == pugi::node_element) {
      reading_.problem(offset_of(child), "job-unknown-element",
                       "unknown element <" + std::string(child.name()).substr(0, 60) + "> in " +
                           tag() + "; expected text only");
    }
  }
  text = tidy_lines(text);
  if (const std::size_t count = count_characters(text); count > longest) {
    problem("job-too-long", "found " + std::to_string(count) + " characters in " + tag() +
                                "; the limit is " + std::to_string(longest));
  }
  return text;
}

std::optional<std::string> Element::value(std::string_view attribute) {
  const Attribute* found = find(attribute);
  if (found == nullptr) return std::nullopt;
  return tidy(found->value);
}

std::optional<std::string> Element::required(std::string_view attribute,
                                             std::string_view expected) {
  auto found = value(attribute);
  if (!found) {
    problem("job-missing-attribute", "found no " + std::string(attribute) + " in " + tag() +
                                         "; expected " + std::string(expected));
  }
  return found;
}

void Element::limit_length(std::string_view attribute, std::string_view text,
                           std::size_t longest) const {
  const std::size_t count = count_characters(text);
  if (count <= longest) return;
  problem_at(attribute, "job-too-long",
             "found " + std::to_string(count) + " characters in " + std::string(attribute) +
                 " of " + tag() + "; the limit is " + std::to_string(longest));
}

std::string Element::line(std::string_view attribute, std::string_view fallback) {
  const auto found = value(attribute);
  if (!found) return std::string(fallback);
  limit_length(attribute, *found, longest_line);
  return *found;
}

std::string Element::email(std::string_view attribute) {
  std::string address = line(attribute);
  const std::size_t at = address.find('@');
  const bool good = at != std::string::npos && at > 0 && at + 1 < address.size() &&
                    at == address.rfind('@') && address.find(' ') == std::string::npos;
  if (has(attribute) && !good) {
    unexpected(attribute, "job-bad-email", "an address such as name@example.org");
  }
  return address;
}

std::string Element::id(std::string_view attribute) {
  const auto found = value(attribute);
  if (!found) return {};
  limit_length(attribute, *found, longest_id);
  if (!is_name(*found)) {
    unexpected(attribute, "job-bad-id", "a name of letters, digits, hyphens and underscores");
  } else if (*found == "mat" || *found == "outer" || *found == "border") {
    unexpected(attribute, "job-reserved-id",
               "another name, since mat, outer and border have a meaning in rules");
  }
  return *found;
}

std::vector<std::string> Element::list(std::string_view attribute) {
  std::vector<std::string> out;
  const std::string text = value(attribute).value_or("");
  std::size_t at = 0;
  while (at < text.size()) {
    if (out.size() == most_listed) {
      problem_at(attribute, "job-too-many",
                 "found more than " + std::to_string(most_listed) + " names in " +
                     std::string(attribute) + " of " + tag() + "; that is the limit");
      break;
    }
    const std::size_t end = std::min(text.find(' ', at), text.size());
    out.push_back(text.substr(at, end - at));
    at = end + 1;
  }
  return out;
}

std::string Element::path(std::string_view attribute) {
  const Attribute* found = find(attribute);
  if (found == nullptr) return {};
  const std::string fault = path_fault(found->value);
  if (!fault.empty()) {
    problem_at(attribute, "job-bad-path",
               "found " + std::string(attribute) + "=" + quoted(found->value) + " in " + tag() +
                   "; " + fault);
  }
  limit_length(attribute, found->value, longest_path);
  return found->value;
}

std::optional<Length> Element::length(std::string_view attribute, Least least) {
  const auto found = value(attribute);
  if (!found) return std::nullopt;
  const auto length = parse_length(*found, reading_.scale.unit);
  if (length) return in_range(attribute, *length, least);
  bad_length(attribute, length.error());
  return std::nullopt;
}

std::optional<Length> Element::measured(std::string_view attribute) {
  const auto found = value(attribute);
  if (!found) return std::nullopt;
  const auto read = parse_measured(*found, reading_.scale.unit);
  if (!read) {
    bad_length(attribute, read.error());
    return std::nullopt;
  }
  if (!read->exact) {
    reading_.note(offset_of_attribute(attribute), "job-measured",
                  std::string(attribute) + " of " + tag() + ": " + quoted(*found) +
                      " is taken to the nearest tick (1/40640 in), less than 0.0004 mm away");
  }
  return in_range(attribute, read->length, Least::above_zero);
}

void Element::bad_length(std::string_view attribute, const std::string& why) const {
  problem_at(attribute, "job-bad-length", std::string(attribute) + " of " + tag() + ": " + why);
}

std::optional<Length> Element::in_range(std::string_view attribute, Length length,
                                        Least least) const {
  if (length < Length() || (least == Least::above_zero && length == Length())) {
    unexpected(attribute, "job-out-of-range",
               least == Least::zero ? "zero or more" : "a length above zero");
    return std::nullopt;
  }
  if (length > longest_side) {
    unexpected(attribute, "job-out-of-range",
               "at most " + format_exact(longest_side, Unit::millimetre));
    return std::nullopt;
  }
  return length;
}

Length Element::measured_or(std::string_view attribute, Length fallback) {
  return measured(attribute).value_or(fallback);
}

Length Element::length_or(std::string_view attribute, Least least, Length fallback) {
  return length(attribute, least).value_or(fallback);
}

Length Element::required_length(std::string_view attribute, Least least) {
  if (!stated(attribute)) required(attribute, "a length");
  return length(attribute, least).value_or(inches(1));
}

std::optional<Length> Element::length_or_free(std::string_view attribute) {
  const auto found = length_or_word<bool>(attribute, {{"free", true}});
  return found ? found->length : std::nullopt;
}

int Element::integer(std::string_view attribute, int least, int most, int fallback) {
  const auto found = value(attribute);
  if (!found) return fallback;
  int number = 0;
  const char* const end = found->data() + found->size();
  const auto [stopped, error] = std::from_chars(found->data(), end, number);
  if (error == std::errc() && stopped == end && number >= least && number <= most) return number;
  unexpected(attribute, "job-bad-number",
             "a whole number from " + std::to_string(least) + " to " + std::to_string(most));
  return fallback;
}

double Element::decimal(std::string_view attribute, double least, double most, double fallback) {
  const auto found = value(attribute);
  if (!found) return fallback;
  const auto number = parse_decimal(*found);
  if (number && *number >= least && *number <= most) return *number;
  unexpected(attribute, "job-bad-number",
             "a number from " + format_decimal(least) + " to " + format_decimal(most));
  return fallback;
}

Fraction Element::fraction(std::string_view attribute) {
  constexpr std::int64_t most = 100;
  const auto found = value(attribute);
  if (!found) return {1, 1};
  const auto ratio = parse_fraction(*found);
  if (ratio && ratio->numerator > 0 && ratio->numerator <= most * ratio->denominator &&
      ratio->denominator <= most * ratio->numerator) {
    return *ratio;
  }
  unexpected(attribute, "job-bad-number",
             "a number from 1/100 to 100 such as 2, 3/2, 1 1/2 or 1.5");
  return {1, 1};
}

bool Element::yes(std::string_view attribute) {
  return word<bool>(attribute, {{"yes", true}, {"no", false}}, false);
}

void Element::colour(std::string_view attribute, Colour& colour) {
  const auto found = value(attribute);
  if (!found) return;
  if (const auto parsed = parse_colour(*found)) {
    colour = *parsed;
  } else {
    problem_at(attribute, "job-bad-colour",
               std::string(attribute) + " of " + tag() + ": " + parsed.error());
  }
}

void Element::ignore_attributes() {
  for (Attribute& attribute : attributes_) attribute.asked = true;
}

void Element::unknown_word(std::string_view attribute, std::string_view found,
                           const std::vector<std::string_view>& words) const {
  problem_at(attribute, "job-unknown-word",
             "found " + std::string(attribute) + "=" + quoted(found) + " in " + tag() +
                 reading_.hint(found, words));
}

void Element::problem(std::string code, std::string message) const {
  reading_.problem(offset_, std::move(code), std::move(message));
}

std::size_t Element::offset_of_attribute(std::string_view attribute) const {
  const Attribute* found = stated(attribute);
  return found == nullptr ? offset_ : found->offset;
}

void Element::problem_at(std::string_view attribute, std::string code, std::string message) const {
  reading_.problem(offset_of_attribute(attribute), std::move(code), std::move(message));
}

void Element::unexpected(std::string_view attribute, std::string code,
                         std::string_view expected) const {
  const Attribute* found = stated(attribute);
  problem_at(attribute, std::move(code),
             "found " + std::string(attribute) + "=" +
                 quoted(found == nullptr ? std::string() : tidy(found->value)) + " in " + tag() +
                 "; expected " + std::string(expected));
}

}  // namespace mullion
