#pragma once

// A job schema as what its annotations say: the elements in the order in which a reader meets them,
// and the kinds of value. Only what job.xsd uses of XML Schema is understood.

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace mullion::reference {

struct Attribute {
  std::string name, type;
  bool needed = false;
  std::string text, left_out;  // `left_out` is what follows "Left out:" in the annotation
};

struct Child {
  std::string name, text;
  bool needed = false, repeated = false;
  bool one_of = false;  // just one of those that are marked so stands there
};

struct Element {
  std::string name, text;
  bool holds_text = false;  // and neither children nor attributes
  std::string type;
  std::vector<Attribute> attributes;
  std::vector<Child> children;
};

struct ValueType {
  std::string name, text;
  std::vector<std::string> words;    // all that is allowed, where the schema lists it
  std::vector<std::string> members;  // of a union
  int longest = 0;                   // in characters; 0 where the schema sets no limit
};

struct Schema {
  std::string text;
  std::vector<Element> elements;  // each once, parents before their children
  std::vector<ValueType> types;   // in the order of the schema

  const ValueType* type(std::string_view name) const;
};

// Throws std::runtime_error where the text is no schema: it comes with the program.
Schema read_schema(std::string_view xsd);

}  // namespace mullion::reference
