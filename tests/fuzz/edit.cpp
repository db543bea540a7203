#include "engine/edit/edit.h"
#include "engine/edit/edit_json.h"
#include "engine/edit/history.h"
#include "engine/job/read.h"
#include "tests/fuzz/fuzz.h"

namespace {

using namespace mullion;

constexpr std::string_view job = R"(<?xml version="1.0"?>
<!-- a job -->
<job version="1" unit="in">
  <title>Two <!-- and a word --></title>
  <pictures><picture id="a" width="8" height='10'/> <!-- a -->
    <picture id="b" width="8" height="10" float="1/4"/>
  </pictures>
  <layers>
    <layer board="Oat"/>
    <layer board="Ink" reveal="1/4" only="a b"/></layers>
  <borders all="3" bottom-extra="1/2"/>
  <arrange>
    <groove distance="1" width="1/8"/>
    <row gap="1" window="2">
      <opening picture="a" shape="ellipse"/>
      <gap id="g"/>
      <column id="c"><opening picture="b"><reveal layer="2" left="1/2"/></opening>
        <opening width="4" height="free"/></column>
    </row>
  </arrange>
  <rules>
    <equal of="g border.left"/>
    <align of="a c opening-3" edge="top"/>
  </rules>
</job>
)";

// The job before the first line of dashes, else the one above; then an edit a line.
void make(std::string& text, std::string_view line) {
  const auto edit = edit::edit_from_json(line);
  if (!edit) return fuzz::must(!edit.error().empty());
  const std::string written = edit::edit_to_json(*edit);
  const auto again = edit::edit_from_json(written);
  fuzz::must(again && edit::edit_to_json(*again) == written);

  const auto after = edit::apply(text, *edit, "fuzz.xml");
  if (!after) return fuzz::must(!after.error().empty());
  fuzz::must(edit::with_changes(text, after->changes) == after->text);
  const auto back = edit::apply(after->text, edit::inverse_of(*after), "fuzz.xml");
  fuzz::must(back && back->text == text);
  const bool valid = parse_job(text, "fuzz.xml", Need::pictures).has_value();
  fuzz::must(!valid || parse_job(after->text, "fuzz.xml", Need::pictures).has_value());
  const auto hunks = edit::hunks_of(text, after->changes);
  const auto placed = edit::placed(hunks, text);
  fuzz::must(placed && edit::with_changes(text, *placed) == after->text);
  text = after->text;
}

}  // namespace

// A sequence of edits: each that is made is undone to the byte, and a valid job stays one.
int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  std::string_view input = fuzz::text_of(data, size);
  constexpr std::string_view dashes = "\n---\n";
  std::string text(job);
  if (const std::size_t at = input.find(dashes); at != std::string_view::npos) {
    text = input.substr(0, at);
    input.remove_prefix(at + dashes.size());
  }
  constexpr int most = 12;
  for (int n = 0; n < most && !input.empty(); ++n) {
    const std::size_t end = std::min(input.find('\n'), input.size());
    make(text, input.substr(0, end));
    input.remove_prefix(std::min(end + 1, input.size()));
  }
  return 0;
}
