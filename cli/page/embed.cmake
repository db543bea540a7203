# mullion_embed_page(TARGET): compiles the files of cli/page/web and Preact's modules into TARGET, as
# the function mullion::cli::page::page_file (page_files.h).
function(mullion_embed_page target)
  set(folder ${CMAKE_CURRENT_SOURCE_DIR}/page/web)
  file(GLOB_RECURSE own RELATIVE ${folder} CONFIGURE_DEPENDS ${folder}/*)
  set(table "")
  set(count 0)
  foreach(name ${own})
    mullion_embed(${target} page_file_${count} ${folder}/${name})
    string(APPEND table "    {\"${name}\", page_file_${count}},\n")
    string(APPEND declared "std::string_view page_file_${count}();\n")
    math(EXPR count "${count} + 1")
  endforeach()

  # Preact as Debian packs it (node-preact), without its comments, which are a third of it. Browsers want
  # the endings of the modules' names.
  find_path(PREACT_FOLDER src/preact.js PATHS /usr/share/nodejs/preact NO_DEFAULT_PATH REQUIRED)
  file(GLOB_RECURSE modules RELATIVE ${PREACT_FOLDER}/src ${PREACT_FOLDER}/src/*.js)
  foreach(module ${modules})
    file(READ ${PREACT_FOLDER}/src/${module} text)
    string(REGEX REPLACE "from '(\\.[^']*)'" "from '\\1.js'" text "${text}")
    string(REGEX REPLACE "/\\*[^*]*\\*+([^/*][^*]*\\*+)*/" "" text "${text}")
    set(name preact/${module})
    set(copy ${CMAKE_CURRENT_BINARY_DIR}/${name})
    file(CONFIGURE OUTPUT ${copy} CONTENT "${text}" @ONLY)
    mullion_embed(${target} page_file_${count} ${copy})
    string(APPEND table "    {\"${name}\", page_file_${count}},\n")
    string(APPEND declared "std::string_view page_file_${count}();\n")
    math(EXPR count "${count} + 1")
  endforeach()

  set(source ${CMAKE_CURRENT_BINARY_DIR}/embedded_page_files.cpp)
  file(CONFIGURE OUTPUT ${source} @ONLY CONTENT
"#include \"cli/page/page_files.h\"

namespace mullion {
@declared@}

namespace mullion::cli::page {

std::string_view page_file(std::string_view name) {
  struct Entry {
    std::string_view name;
    std::string_view (*text)();
  };
  constexpr Entry entries[] = {
@table@  };
  for (const Entry& entry : entries) {
    if (entry.name == name) return entry.text();
  }
  return {};
}

}  // namespace mullion::cli::page
")
  target_sources(${target} PRIVATE ${source})
endfunction()
