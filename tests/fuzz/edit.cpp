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

const std::vector<std::string> names{"border.left",
                                     "border.sides",
                                     "border.bottom",
                                     "border.bottom-extra",
                                     "border.all",
                                     "outer.width",
                                     "frame",
                                     "title",
                                     "note",
                                     "unit",
                                     "layer.1",
                                     "layer.2",
                                     "layer.3",
                                     "layer.2.reveal",
                                     "layer.2.only",
                                     "rule.1",
                                     "rule.2",
                                     "rule.1.of",
                                     "picture.a",
                                     "picture.b",
                                     "picture.a.id",
                                     "picture.b.float",
                                     "picture.a.overlap",
                                     "arrange",
                                     "arrange.1",
                                     "arrange.1.1",
                                     "arrange.1.2",
                                     "arrange.1.3",
                                     "arrange.1.2.1",
                                     "arrange.1.2.2",
                                     "arrange.1.gap",
                                     "arrange.1.gap.1",
                                     "arrange.1.gap.2.id",
                                     "arrange.1.window",
                                     "arrange.1.2.align",
                                     "a",
                                     "b",
                                     "c",
                                     "g",
                                     "a.left",
                                     "c.width",
                                     "c.id",
                                     "a.reveal.2.left",
                                     "a.reveal.2",
                                     "a.shape",
                                     "opening-3",
                                     "opening-3.width",
                                     "opening-3.id",
                                     "arrange.groove.1",
                                     "a.groove.1",
                                     "a-2"};
const std::vector<std::string> values{"free", "",   "3",       "1/2 in", "20 mm",
                                      "a",    "c",  "new",     "2",      "circle",
                                      "a b",  "mm", "x & <y>", "stretch"};

// Edits chosen by bytes.
class Chooser {
 public:
  explicit Chooser(std::string_view bytes) : bytes_(bytes) {}

  edit::Edit edit() {
    switch (pick(12)) {
      case 0:
        return edit::Remove{name()};
      case 1:
        return edit::Copy{name(), value()};
      case 2:
      case 3:
        return edit::Move{name(), position()};
      case 4:
        return edit::MakeGroup{
            pick(2) == 0 ? Along::row : Along::column, {name(), name()}, {{"gap", value()}}};
      case 5:
        return edit::TurnGroup{name()};
      case 6:
        return edit::Dissolve{name()};
      case 7:
        return edit::Arrange{arrangement()};
      case 8:
        return edit::Add{"picture", {{"width", "4"}, {"height", "5"}}, {}, position()};
      case 9: {
        static const std::vector<std::string> elements{"opening", "layer",    "groove",
                                                       "frame",   "at-least", "reveal"};
        return edit::Add{any(elements), {{"width", value()}, {"height", value()}}, {}, position()};
      }
      default: {
        const std::string what = name(), said = value();
        return edit::State{what, said.empty() ? std::nullopt : std::optional(said)};
      }
    }
  }

 private:
  std::size_t pick(std::size_t choices) {
    if (bytes_.empty()) return 0;
    const auto byte = static_cast<unsigned char>(bytes_.front());
    bytes_.remove_prefix(1);
    return byte % choices;
  }
  const std::string& any(const std::vector<std::string>& list) { return list[pick(list.size())]; }
  std::string name() { return any(names); }
  std::string value() { return any(values); }
  edit::Position position() { return {static_cast<edit::Position::Where>(pick(8)), name()}; }
  std::string arrangement() {
    const std::string word = pick(2) == 0 ? "row" : "column";
    return "<" + word + "><opening picture='" + value() + "'/><opening picture='b'/></" + word +
           ">";
  }

  std::string_view bytes_;
};

// A line is an edit as JSON, or bytes that choose one.
tl::expected<edit::Edit, Problems> edit_of(std::string_view line) {
  if (!line.starts_with('{')) return Chooser(line).edit();
  return edit::edit_from_json(line);
}

void make(std::string& text, std::string_view line) {
  const auto edit = edit_of(line);
  if (!edit) return fuzz::must(!edit.error().empty());
  const std::string written = edit::edit_to_json(*edit);
  const auto again = edit::edit_from_json(written);
  fuzz::must(again && edit::edit_to_json(*again) == written);

  const auto after = edit::apply(text, *edit, "fuzz.xml");
  if (!after) return fuzz::must(!after.error().empty());
  fuzz::must(edit::with_changes(text, after->changes) == after->text);
  fuzz::must(edit::with_changes(after->text, edit::inverse(after->changes)) == text);
  const bool valid = parse_job(text, "fuzz.xml", Need::pictures).has_value();
  fuzz::must(!valid || parse_job(after->text, "fuzz.xml", Need::pictures).has_value());
  const auto hunks = edit::hunks_of(text, after->changes);
  const auto placed = edit::placed(hunks, text);
  fuzz::must(placed && edit::with_changes(text, *placed) == after->text);
  text = after->text;
}

}  // namespace

// The job before the first line of dashes, else the one above; then an edit a line: each that is
// made is undone to the byte, and a valid job stays one.
int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  std::string_view input = fuzz::text_of(data, size);
  constexpr std::string_view dashes = "\n---\n";
  std::string text(job);
  if (const std::size_t at = input.find(dashes); at != std::string_view::npos) {
    text = input.substr(0, at);
    input.remove_prefix(at + dashes.size());
  }
  constexpr int most = 6;
  for (int n = 0; n < most && !input.empty(); ++n) {
    const std::size_t end = std::min(input.find('\n'), input.size());
    make(text, input.substr(0, end));
    input.remove_prefix(std::min(end + 1, input.size()));
  }
  return 0;
}
