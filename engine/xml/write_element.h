#pragma once

// A job file, or another file of ours, as its writer sees it: the file and its elements. What is
// empty or as usual is left unsaid by the functions that say so.

#include <optional>
#include <pugixml.hpp>
#include <string>
#include <string_view>
#include <vector>

#include "engine/length/format.h"
#include "engine/xml/colour.h"

namespace mullion {

class ElementWriter {
 public:
  ElementWriter(pugi::xml_node node, Unit unit) : node_(node), unit_(unit) {}

  ElementWriter child(std::string_view name) {
    return {node_.append_child(std::string(name).c_str()), unit_};
  }
  void content(const char* name, const std::string& text);  // a child with text, unless empty

  void attribute(const char* name, std::string_view text);
  void text(const char* name, std::string_view text);                  // unless empty
  void list(const char* name, const std::vector<std::string>& words);  // unless empty
  void length(const char* name, Length length);
  void measured_unless(const char* name, Length length, Length usual);
  void measured(const char* name, Length length);  // as measured_number
  void length_unless(const char* name, Length length, Length usual);
  void length_or_free(const char* name, const std::optional<Length>& length);
  // `all` for what most sides have and a name of its own for an odd one; nothing where usual.
  void sides(const char* all, const char* const (&names)[4], const Sides& sides,
             const std::optional<Sides>& usual = {});
  void integer(const char* name, int number);
  void integer_unless(const char* name, int number, int usual);
  void decimal_unless(const char* name, double number, double usual);
  void yes(const char* name, bool flag);  // unless false
  void colour(const char* name, const Colour& colour);

 private:
  pugi::xml_node node_;
  Unit unit_;
};

class FileWriter {
 public:
  FileWriter(const char* root, Unit unit);

  ElementWriter& root() { return root_; }
  std::string text() const;

 private:
  pugi::xml_document document_;
  ElementWriter root_;
};

}  // namespace mullion
