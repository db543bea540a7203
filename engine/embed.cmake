# mullion_embed(TARGET NAME FILE): compiles the text of FILE into TARGET as the function
# `std::string_view mullion::NAME()`.
function(mullion_embed target name file)
  set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${file})
  file(READ ${file} text)
  string(LENGTH "${text}" length)
  set(pieces "")  # a string literal is at most 65536 characters long by the standard
  set(from 0)
  while(from LESS length)
    string(SUBSTRING "${text}" ${from} 8000 piece)
    string(APPEND pieces "    R\"embedded(${piece})embedded\"\n")
    math(EXPR from "${from} + 8000")
  endwhile()
  set(source ${CMAKE_CURRENT_BINARY_DIR}/embedded_${name}.cpp)
  file(CONFIGURE OUTPUT ${source} @ONLY CONTENT
"#include <string_view>

namespace mullion {
std::string_view @name@();
std::string_view @name@() {
  return
@pieces@      ;
}
}  // namespace mullion
")
  target_sources(${target} PRIVATE ${source})
endfunction()

# mullion_embed_list(TARGET FUNCTION HEADER NAMESPACE TYPE [NAME FILE]...): compiles the bytes of the
# files into TARGET as the function `const std::vector<TYPE>& NAMESPACE::FUNCTION()`, which the header
# declares. TYPE is made of a name and the bytes.
function(mullion_embed_list target function header namespace type)
  set(arrays "")
  set(entries "")
  set(count 0)
  set(rest ${ARGN})
  while(rest)
    list(POP_FRONT rest name file)
    set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${file})
    file(READ ${file} bytes HEX)
    string(REGEX REPLACE "(................................)" "\\1\n" bytes "${bytes}")
    string(REGEX REPLACE "([0-9a-f][0-9a-f])" "'\\\\x\\1'," bytes "${bytes}")
    string(APPEND arrays "constexpr char file_${count}[] = {\n${bytes}};\n")
    string(APPEND entries "      {\"${name}\", {file_${count}, sizeof file_${count}}},\n")
    math(EXPR count "${count} + 1")
  endwhile()
  set(source ${CMAKE_CURRENT_BINARY_DIR}/embedded_${function}.cpp)
  file(CONFIGURE OUTPUT ${source} @ONLY CONTENT
"#include \"@header@\"

namespace @namespace@ {
namespace {

@arrays@
}  // namespace

const std::vector<@type@>& @function@() {
  static const std::vector<@type@> all = {
@entries@  };
  return all;
}
}  // namespace @namespace@
")
  target_sources(${target} PRIVATE ${source})
endfunction()
