#include "engine/xml/document.h"

#include <charconv>
#include <cstring>

#include "engine/xml/limits.h"
#include "engine/xml/tags.h"

namespace mullion {
namespace {

const char* what_is_wrong(pugi::xml_parse_status status) {
  switch (status) {
    case pugi::status_bad_pi:
      return "a declaration or processing instruction is not complete; expected ?> at its end";
    case pugi::status_bad_comment:
      return "a comment is not closed; expected -->";
    case pugi::status_bad_cdata:
      return "a CDATA section is not closed; expected ]]>";
    case pugi::status_bad_pcdata:
      return "text is not well-formed";
    case pugi::status_bad_start_element:
      return "a start tag is not complete; expected attributes and then >";
    case pugi::status_bad_attribute:
      return "an attribute is not complete; expected name=\"value\" with a blank before it";
    case pugi::status_bad_end_element:
      return "an end tag is not complete; expected </name>";
    case pugi::status_unrecognized_tag:
      return "found a < that begins no tag; expected a name after it, or &lt; for the sign itself";
    case pugi::status_out_of_memory:
      return "not enough memory to read the file";
    default:
      return "the file is not well-formed XML";
  }
}

void report_mismatch(Reading& reading) {
  const UnmatchedTag tag = first_unmatched_tag(reading.source.text());
  constexpr std::size_t longest_shown = 60;
  const std::string found = tag.found.empty()
                                ? "the file ends"
                                : "found " + std::string(tag.found.substr(0, longest_shown));
  if (!tag.open) {
    reading.problem(tag.offset, "job-xml", found + " where no element is open");
    return;
  }
  reading.problem(tag.offset, "job-xml",
                  found + "; expected </" + std::string(tag.open->name.substr(0, longest_shown)) +
                      ">, for the element of line " +
                      std::to_string(reading.source.place(tag.open->offset).line));
}

void report_doctype(Reading& reading, std::size_t offset) {
  const std::size_t start = reading.source.text().rfind("<!DOCTYPE", offset);
  reading.problem(start == std::string_view::npos ? offset : start, "job-doctype",
                  "a " + reading.root + " file has no document type declaration; take it out");
}

void report_syntax(Reading& reading, const pugi::xml_parse_result& result) {
  const auto offset = static_cast<std::size_t>(std::max<std::ptrdiff_t>(result.offset, 0));
  if (result.status == pugi::status_bad_doctype) {
    report_doctype(reading, offset);
  } else if (result.status == pugi::status_end_element_mismatch) {
    report_mismatch(reading);
  } else {
    reading.problem(offset, "job-xml", what_is_wrong(result.status));
  }
}

bool same_word(std::string_view a, std::string_view b) {
  return a.size() == b.size() && ::strncasecmp(a.data(), b.data(), a.size()) == 0;
}

void check_declaration(Reading& reading, const pugi::xml_node& node) {
  const std::size_t offset = offset_of(node);
  const pugi::xml_attribute version = node.first_attribute();
  if (offset != 0 || std::strcmp(node.name(), "xml") != 0 ||
      std::strcmp(version.name(), "version") != 0 || std::strcmp(version.value(), "1.0") != 0) {
    reading.problem(offset, "job-xml",
                    "found a declaration that is not right; expected <?xml version=\"1.0\" "
                    "encoding=\"UTF-8\"?> at the very beginning of the file");
    return;
  }
  pugi::xml_attribute next = version.next_attribute();
  if (std::strcmp(next.name(), "encoding") == 0) {
    if (!same_word(next.value(), "UTF-8")) {
      reading.problem(offset, "job-encoding",
                      "found encoding " + quoted(next.value()) + "; expected \"UTF-8\"");
    }
    next = next.next_attribute();
  }
  const std::string_view standalone = next.value();
  if (std::strcmp(next.name(), "standalone") == 0 && (standalone == "yes" || standalone == "no")) {
    next = next.next_attribute();
  }
  if (next) {
    reading.problem(offset, "job-xml",
                    "found " + quoted(next.name()) +
                        " in the XML declaration; expected version, "
                        "then encoding");
  }
}

void check_text(Reading& reading, const pugi::xml_node& node) {
  const std::size_t offset = offset_of(node);
  const std::string_view text = reading.source.text();
  const std::string_view raw = text.substr(offset, text.find('<', offset) - offset);
  check_references(reading, raw, offset);
  if (const std::size_t end = raw.find("]]>"); end != std::string_view::npos) {
    reading.problem(offset + end, "job-xml", "found ]]> in text; expected ]]&gt;");
  }
}

void check_comment(Reading& reading, const pugi::xml_node& node) {
  const std::string_view value = node.value();
  if (value.find("--") == std::string_view::npos && !value.ends_with('-')) return;
  constexpr std::size_t opening = 4;  // of "<!--"
  reading.problem(reading.source.text().find("--", offset_of(node) + opening), "job-xml",
                  "found -- within a comment; XML has it only at a comment's end");
}

// What pugixml does not refuse itself, node by node. False when the tree is too deep to go on.
bool check_nodes(Reading& reading, const pugi::xml_document& document) {
  int depth = 0;
  pugi::xml_node node = document.first_child();
  while (node) {
    switch (node.type()) {
      case pugi::node_declaration:
        check_declaration(reading, node);
        break;
      case pugi::node_doctype:
        report_doctype(reading, offset_of(node));
        return false;
      case pugi::node_pcdata:
        check_text(reading, node);
        break;
      case pugi::node_comment:
        check_comment(reading, node);
        break;
      case pugi::node_element:
        if (depth >= deepest_job_xml) {
          reading.problem(offset_of(node), "job-too-deep",
                          "found elements within elements more than " +
                              std::to_string(deepest_job_xml) + " deep; that is the limit");
          return false;
        }
        break;
      default:
        break;
    }
    if (node.first_child()) {
      ++depth;
      node = node.first_child();
      continue;
    }
    while (node && !node.next_sibling()) {
      node = node.parent();
      --depth;
      if (depth < 0) return true;
    }
    node = node.next_sibling();
  }
  return true;
}

// The one element at the top, with nothing but comments and instructions beside it.
pugi::xml_node only_root(Reading& reading, const pugi::xml_document& document) {
  pugi::xml_node root;
  for (const pugi::xml_node& node : document.children()) {
    if (node.type() == pugi::node_element && !root) {
      root = node;
    } else if (node.type() == pugi::node_element || node.type() == pugi::node_pcdata ||
               node.type() == pugi::node_cdata) {
      reading.problem(offset_of_text(reading, node), "job-xml",
                      "found more than one element at the top of the file; expected one <" +
                          reading.root + "> and nothing else but comments");
      return {};
    }
  }
  if (!root) {
    reading.problem(0, "job-xml", "found no element; expected <" + reading.root + ">");
  } else if (root.name() != reading.root) {
    reading.problem(offset_of(root), "job-unknown-element",
                    "found <" + std::string(root.name()).substr(0, 60) +
                        "> at the top of the file; expected <" + reading.root + ">");
    return {};
  }
  return root;
}

// Of "&#38;" and "&#x26;" the part between & and ;.
bool is_good_reference(std::string_view name) {
  for (const char* known : {"lt", "gt", "amp", "apos", "quot"}) {
    if (name == known) return true;
  }
  if (!name.starts_with('#')) return false;
  name.remove_prefix(1);
  int base = 10;
  if (name.starts_with('x')) {
    name.remove_prefix(1);
    base = 16;
  }
  std::uint32_t value = 0;
  const char* const end = name.data() + name.size();
  const auto [stopped, error] = std::from_chars(name.data(), end, value, base);
  return error == std::errc() && stopped == end && is_xml_character(value);
}

}  // namespace

std::size_t offset_of(const pugi::xml_node& node) {
  const std::ptrdiff_t offset = node.offset_debug();
  if (offset < 0) return 0;
  const std::size_t before = node.type() == pugi::node_element       ? 1
                             : node.type() == pugi::node_declaration ? 2
                             : node.type() == pugi::node_comment     ? 4
                                                                     : 0;
  const auto at = static_cast<std::size_t>(offset);
  return at < before ? 0 : at - before;
}

std::size_t offset_of_text(const Reading& reading, const pugi::xml_node& node) {
  const std::string_view text = reading.source.text();
  return std::min(text.find_first_not_of(" \t\r\n", offset_of(node)), text.size());
}

void check_references(Reading& reading, std::string_view raw, std::size_t offset) {
  for (std::size_t at = raw.find_first_of("&<"); at != std::string_view::npos;
       at = raw.find_first_of("&<", at + 1)) {
    if (reading.full()) return;
    if (raw[at] == '<') {
      reading.problem(offset + at, "job-xml", "found < in a value; expected &lt;");
      continue;
    }
    constexpr std::size_t longest_reference = 20;
    const std::string_view rest = raw.substr(at, longest_reference);
    const std::size_t end = rest.find(';');
    const bool named = end != std::string_view::npos;
    if (named && is_good_reference(rest.substr(1, end - 1))) continue;
    reading.problem(offset + at, "job-entity",
                    "found " + (named ? quoted(rest.substr(0, end + 1)) : "a bare &") +
                        "; expected &amp; for the sign itself, or one of &lt; &gt; &quot; &apos;");
  }
}

pugi::xml_node load_document(Reading& reading, pugi::xml_document& document) {
  const SourceText& source = reading.source;
  if (source.text().size() > largest_job_file) {
    reading.problem(0, "job-too-large",
                    "the file has " + std::to_string(source.text().size()) +
                        " bytes; the limit is " + std::to_string(largest_job_file));
    return {};
  }
  if (const auto bad = source.first_bad_character()) {
    reading.problem(*bad, "job-encoding",
                    "found bytes that are not a character in UTF-8, or a control character; save "
                    "the file as plain text in UTF-8");
    return {};
  }
  constexpr unsigned options = pugi::parse_default | pugi::parse_comments | pugi::parse_pi |
                               pugi::parse_declaration | pugi::parse_doctype | pugi::parse_fragment;
  const pugi::xml_parse_result result = document.load_buffer(
      source.text().data(), source.text().size(), options, pugi::encoding_utf8);
  if (!result) {
    report_syntax(reading, result);
    return {};
  }
  if (!check_nodes(reading, document)) return {};
  return only_root(reading, document);
}

}  // namespace mullion
