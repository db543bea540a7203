#include "engine/edit/markup.h"

#include <algorithm>
#include <charconv>
#include <cstdint>

#include "engine/xml/tags.h"
#include "engine/xml/words.h"

namespace mullion::edit {
namespace {

void append_utf8(std::string& out, std::uint32_t c) {
  const auto byte = [&](std::uint32_t value) { out += static_cast<char>(value); };
  const auto tail = [&](int shift) { byte(0x80 | ((c >> shift) & 0x3F)); };
  if (c < 0x80) {
    byte(c);
  } else if (c < 0x800) {
    byte(0xC0 | (c >> 6));
    tail(0);
  } else if (c < 0x10000) {
    byte(0xE0 | (c >> 12));
    tail(6);
    tail(0);
  } else {
    byte(0xF0 | (c >> 18));
    tail(12);
    tail(6);
    tail(0);
  }
}

// Of what stands between & and ;.
void append_reference(std::string& out, std::string_view name) {
  if (name == "lt") {
    out += '<';
  } else if (name == "gt") {
    out += '>';
  } else if (name == "amp") {
    out += '&';
  } else if (name == "quot") {
    out += '"';
  } else if (name == "apos") {
    out += '\'';
  } else if (name.starts_with('#')) {
    const bool hexadecimal = name.substr(1).starts_with('x');
    const std::string_view digits = name.substr(hexadecimal ? 2 : 1);
    std::uint32_t value = 0;
    std::from_chars(digits.data(), digits.data() + digits.size(), value, hexadecimal ? 16 : 10);
    append_utf8(out, value);
  }
}

std::string resolved(std::string_view raw) {
  std::string out;
  std::size_t at = 0;
  while (at < raw.size()) {
    const std::size_t sign = std::min(raw.find('&', at), raw.size());
    out += raw.substr(at, sign - at);
    if (sign == raw.size()) break;
    const std::size_t end = std::min(raw.find(';', sign), raw.size());
    append_reference(out, raw.substr(sign + 1, end - sign - 1));
    at = std::min(end + 1, raw.size());
  }
  return out;
}

class MarkupReader {
 public:
  explicit MarkupReader(std::string_view text) : text_(text) {}

  // What stands at the top of the file is a remark, but for the one element.
  Markup read_root() {
    for (;;) {
      const std::size_t at = text_.find('<', at_);
      if (at == std::string_view::npos) return {};
      at_ = at;
      if (!skip_remark()) return read_element();
    }
  }

 private:
  std::size_t after(std::string_view mark) const {
    const std::size_t found = text_.find(mark, at_);
    return found == std::string_view::npos ? text_.size() : found + mark.size();
  }

  bool skip_remark() {
    const std::string_view rest = text_.substr(at_);
    if (rest.starts_with("<!--")) {
      at_ = after("-->");
    } else if (rest.starts_with("<?")) {
      at_ = after("?>");
    } else {
      return false;
    }
    return true;
  }

  Markup read_element() {
    Markup out;
    out.all.begin = at_;
    const std::size_t name_end = std::min(text_.find_first_of(" \t\r\n/>", at_), text_.size());
    out.name_span = {at_ + 1, name_end};
    out.name = text_.substr(at_ + 1, name_end - at_ - 1);
    std::size_t end = name_end;
    for (const WrittenAttribute& written : written_attributes(text_, at_)) {
      const std::size_t raw_end = written.raw_offset + written.raw.size();
      out.attributes.push_back({written.name,
                                {written.offset, raw_end + 1},
                                {written.raw_offset, raw_end},
                                resolved(written.raw)});
      end = raw_end + 1;
    }
    at_ = std::min(text_.find('>', end), text_.size() - 1) + 1;
    out.has_one_tag = text_[at_ - 2] == '/';
    out.inside = {at_, at_};
    if (!out.has_one_tag) read_inside(out);
    out.all.end = at_;
    return out;
  }

  void read_inside(Markup& out) {
    while (at_ < text_.size()) {
      const std::size_t begin = at_;
      if (text_[at_] != '<') {
        at_ = std::min(text_.find('<', at_), text_.size());
        const bool blank =
            text_.substr(begin, at_ - begin).find_first_not_of(blanks) == std::string_view::npos;
        if (!blank) out.words.push_back({begin, at_});
      } else if (text_.substr(at_).starts_with("<![CDATA[")) {
        at_ = after("]]>");
        out.words.push_back({begin, at_});
      } else if (skip_remark()) {
        out.remarks.push_back({begin, at_});
      } else if (text_.substr(at_).starts_with("</")) {
        out.inside.end = at_;
        at_ = after(">");
        return;
      } else {
        out.children.push_back(read_element());
      }
    }
  }

  std::string_view text_;
  std::size_t at_ = 0;
};

std::string escaped(std::string_view text, char quote, bool keep_lines) {
  std::string out;
  for (const char c : text) {
    if (c == '&') {
      out += "&amp;";
    } else if (c == '<') {
      out += "&lt;";
    } else if (c == '>') {
      out += "&gt;";
    } else if (c == '"' && quote == '"') {
      out += "&quot;";
    } else if (c == '\'' && quote == '\'') {
      out += "&apos;";
    } else if (!keep_lines && (c == '\n' || c == '\r' || c == '\t')) {
      out += ' ';
    } else {
      out += c;
    }
  }
  return out;
}

}  // namespace

const WrittenValue* Markup::find(std::string_view attribute) const {
  const auto found =
      std::find_if(attributes.begin(), attributes.end(),
                   [&](const WrittenValue& written) { return written.name == attribute; });
  return found == attributes.end() ? nullptr : &*found;
}

std::string Markup::value(std::string_view attribute) const {
  const WrittenValue* written = find(attribute);
  return written == nullptr ? std::string() : tidy(written->text);
}

const Markup* Markup::child(std::string_view element) const {
  const auto found = std::find_if(children.begin(), children.end(),
                                  [&](const Markup& one) { return one.name == element; });
  return found == children.end() ? nullptr : &*found;
}

Markup read_markup(std::string_view text) {
  return MarkupReader(text).read_root();
}

const Markup* parent_of(const Markup& root, const Markup& child) {
  for (const Markup& one : root.children) {
    if (&one == &child) return &root;
    if (one.all.begin <= child.all.begin && child.all.end <= one.all.end) {
      return parent_of(one, child);
    }
  }
  return nullptr;
}

std::string escaped_value(std::string_view text, char quote) {
  return escaped(text, quote, false);
}

std::string escaped_text(std::string_view text) {
  return escaped(text, '\0', true);
}

}  // namespace mullion::edit
