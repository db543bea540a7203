#include "engine/job/reference/reference.h"

#include <algorithm>

#include "engine/job/reference/schema.h"

namespace mullion {

std::string_view example_job();          // gallery/double-mat.xml
std::string_view example_arrangement();  // gallery/title-and-three.xml

namespace {

using namespace reference;

constexpr const char* how_to_write = R"(
## How to write one

A job file is plain text: any editor will do that saves text as it is typed (as UTF-8, the usual
choice). Its name ends in `.xml`. This is a whole one:

```xml
@EXAMPLE@```

- `<picture .../>` is an **element**. It is opened by `<` and its name, and closed by `/>`.
- An element that holds others is opened by `<layers>` and closed by `</layers>`, with the others
  between. The whole file is one element, `<job>`, that holds all else.
- `width="10"` is an **attribute**: a name, an equals sign and a value in quotes. The order of
  attributes does not matter.
- Capital and small letters differ: write every name as it is written here.
- Blanks and line breaks between elements do not matter. `<!-- ... -->` is a remark of your own.
- In a name or a note, write `&amp;` for `&`, `&lt;` for `<` and `&quot;` for a double quote.

`mullion check job.xml` says in words what is wrong with a file, and where.

All widths and heights are as seen from the front, with the work hanging. The program mirrors what
is drawn for the back.
)";

constexpr const char* rules_example = R"(<rules>
  <same-size of="pier gull harbour"/>
  <centred what="title" direction="across"/>
  <at-least measure="border.left" length="2 1/2"/>
</rules>
)";

std::string spaced(std::string name) {
  std::replace(name.begin(), name.end(), '-', ' ');
  return name;
}

std::string link(const std::string& shown, const std::string& heading) {
  return "[" + shown + "](#" + heading + ")";
}

std::string element_link(const std::string& name) {
  return link("`" + name + "`", name);
}

std::string listed(const std::vector<std::string>& words) {
  std::string out;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) out += i + 1 == words.size() ? " or " : ", ";
    out += words[i];
  }
  return out;
}

// The heading of a kind of value: an element may be called the same.
std::string anchor(const ValueType& type) {
  return "value-" + type.name;
}

std::string described(const Schema& schema, const std::string& type_name) {
  const ValueType* type = schema.type(type_name);
  if (!type) return spaced(type_name);
  std::vector<std::string> parts;
  for (const std::string& word : type->words) parts.push_back("`" + word + "`");
  for (const std::string& member : type->members) parts.push_back(described(schema, member));
  return parts.empty() ? link(spaced(type->name), anchor(*type)) : listed(parts);
}

std::string where_left_out(const Attribute& attribute) {
  if (attribute.needed) return "**needed**";
  return attribute.left_out.empty() ? "may be left out" : attribute.left_out;
}

std::string how_often(const Child& child) {
  if (child.one_of) return "one of these";
  if (child.needed) return child.repeated ? "one or more" : "one";
  return child.repeated ? "any number" : "none or one";
}

std::string example(const std::string& name) {
  std::string text;
  if (name == "rules") text = rules_example;
  if (name == "arrange") {
    const std::string_view job = example_arrangement();
    const std::size_t from = job.find("  <arrange"), end = job.find("</arrange>");
    text = std::string(job.substr(from, end - from)) + "</arrange>\n";
  }
  if (text.empty()) return {};
  return "\nAn example:\n\n```xml\n" + text + "```\n";
}

std::string parents(const Schema& schema, const std::string& name) {
  std::vector<std::string> out;
  for (const Element& element : schema.elements) {
    for (const Child& child : element.children) {
      if (child.name == name) out.push_back(element_link(element.name));
    }
  }
  return listed(out);
}

std::string section(const Schema& schema, const Element& element) {
  std::string out = "\n### " + element.name + "\n\n" + element.text;
  if (const std::string in = parents(schema, element.name); !in.empty())
    out += " Stands in " + in + ".";
  out += "\n";
  if (element.holds_text) {
    out += "\nIt holds text between `<" + element.name + ">` and `</" + element.name +
           ">`: " + described(schema, element.type) + ".\n";
  }
  out += example(element.name);
  if (!element.attributes.empty())
    out += "\n| attribute | value | left out | meaning |\n|---|---|---|---|\n";
  for (const Attribute& attribute : element.attributes) {
    out += "| `" + attribute.name + "` | " + described(schema, attribute.type) + " | " +
           where_left_out(attribute) + " | " + attribute.text + " |\n";
  }
  if (!element.children.empty()) out += "\n| holds | how many | what it is |\n|---|---|---|\n";
  for (const Child& child : element.children) {
    out += "| " + element_link(child.name) + " | " + how_often(child) + " | " + child.text + " |\n";
  }
  return out;
}

bool is_used(const Schema& schema, const std::string& type) {
  const auto uses = [&](const std::string& name) {
    const ValueType* value = schema.type(name);
    return name == type ||
           (value && std::count(value->members.begin(), value->members.end(), type));
  };
  return std::any_of(schema.elements.begin(), schema.elements.end(), [&](const Element& element) {
    return uses(element.type) ||
           std::any_of(element.attributes.begin(), element.attributes.end(),
                       [&](const Attribute& attribute) { return uses(attribute.type); });
  });
}

std::string kinds_of_value(const Schema& schema) {
  std::string out = "\n## Kinds of value\n\n";
  for (const ValueType& type : schema.types) {
    if (!type.words.empty() || !type.members.empty() || !is_used(schema, type.name)) continue;
    out += "- <a id=\"" + anchor(type) + "\"></a>**" + spaced(type.name) + "**: " + type.text;
    if (type.longest > 0) out += " At most " + std::to_string(type.longest) + " characters.";
    out += "\n";
  }
  return out;
}

std::string introduction() {
  std::string out = how_to_write;
  static constexpr std::string_view mark = "@EXAMPLE@";
  out.replace(out.find(mark), mark.size(), example_job());
  return out;
}

}  // namespace

std::string job_file_reference() {
  const Schema schema = read_schema(job_schema());
  std::string out = "<!-- Written by `mullion manual job-file`; change engine/job/job.xsd. -->\n";
  out += "# The job file\n\n" + schema.text + "\n" + introduction() + "\n## The elements\n";
  for (const Element& element : schema.elements) out += section(schema, element);
  return out + kinds_of_value(schema);
}

}  // namespace mullion
