# mullion_embed_page(TARGET): compiles the files of cli/page/web and Preact's modules into TARGET, as
# the function mullion::cli::page::page_files (page_files.h).
function(mullion_embed_page target)
  set(folder ${CMAKE_CURRENT_SOURCE_DIR}/page/web)
  file(GLOB_RECURSE own RELATIVE ${folder} CONFIGURE_DEPENDS ${folder}/*)
  set(files "")
  foreach(name ${own})
    list(APPEND files ${name} ${folder}/${name})
  endforeach()

  # Preact as Debian packs it (node-preact), without its comments, which are a third of it. Browsers want
  # the endings of the modules' names.
  find_path(PREACT_FOLDER src/preact.js PATHS /usr/share/nodejs/preact NO_DEFAULT_PATH REQUIRED)
  file(GLOB_RECURSE modules RELATIVE ${PREACT_FOLDER}/src ${PREACT_FOLDER}/src/*.js)
  foreach(module ${modules})
    file(READ ${PREACT_FOLDER}/src/${module} text)
    string(REGEX REPLACE "from '(\\.[^']*)'" "from '\\1.js'" text "${text}")
    string(REGEX REPLACE "/\\*[^*]*\\*+([^/*][^*]*\\*+)*/" "" text "${text}")
    set(copy ${CMAKE_CURRENT_BINARY_DIR}/preact/${module})
    file(CONFIGURE OUTPUT ${copy} CONTENT "${text}" @ONLY)
    list(APPEND files preact/${module} ${copy})
  endforeach()
  mullion_embed_list(${target} page_files cli/page/page_files.h mullion::cli::page PageFile ${files})
endfunction()
