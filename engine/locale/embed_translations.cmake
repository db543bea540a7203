# mullion_embed_translations(TARGET FILES...): compiles each catalogue, named after its language, with
# msgfmt and puts its bytes into TARGET (engine/locale/catalogue.h).
function(mullion_embed_translations target)
  set(arrays "")
  set(entries "")
  foreach(po_file ${ARGN})
    set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${po_file})
    get_filename_component(language ${po_file} NAME_WE)
    set(mo_file ${CMAKE_CURRENT_BINARY_DIR}/${language}.mo)
    execute_process(COMMAND ${GETTEXT_MSGFMT_EXECUTABLE} --check-format --no-hash --endianness=little
                            -o ${mo_file} ${po_file} RESULT_VARIABLE status)
    if(NOT status EQUAL 0)
      message(FATAL_ERROR "msgfmt refuses ${po_file}")
    endif()
    file(READ ${mo_file} bytes HEX)
    string(REGEX REPLACE "(................................)" "\\1\n" bytes "${bytes}")
    string(REGEX REPLACE "([0-9a-f][0-9a-f])" "'\\\\x\\1'," bytes "${bytes}")
    string(APPEND arrays "constexpr char ${language}[] = {\n${bytes}};\n")
    string(APPEND entries "      {\"${language}\", {${language}, sizeof ${language}}},\n")
  endforeach()
  set(source ${CMAKE_CURRENT_BINARY_DIR}/translations.cpp)
  file(CONFIGURE OUTPUT ${source} @ONLY CONTENT
"#include \"engine/locale/catalogue.h\"

namespace mullion {
namespace {

@arrays@
}  // namespace

const std::vector<Translation>& translations() {
  static const std::vector<Translation> all = {
@entries@  };
  return all;
}
}  // namespace mullion
")
  target_sources(${target} PRIVATE ${source})
endfunction()
