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
