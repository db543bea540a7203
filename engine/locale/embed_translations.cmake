include(${CMAKE_CURRENT_LIST_DIR}/../embed.cmake)

# mullion_embed_translations(TARGET FILES...): compiles each catalogue, named after its language, with
# msgfmt and puts its bytes into TARGET (engine/locale/catalogue.h).
function(mullion_embed_translations target)
  set(catalogues "")
  foreach(po_file ${ARGN})
    set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${po_file})
    get_filename_component(language ${po_file} NAME_WE)
    set(mo_file ${CMAKE_CURRENT_BINARY_DIR}/${language}.mo)
    execute_process(COMMAND ${GETTEXT_MSGFMT_EXECUTABLE} --check-format --no-hash --endianness=little
                            -o ${mo_file} ${po_file} RESULT_VARIABLE status)
    if(NOT status EQUAL 0)
      message(FATAL_ERROR "msgfmt refuses ${po_file}")
    endif()
    list(APPEND catalogues ${language} ${mo_file})
  endforeach()
  mullion_embed_list(${target} translations engine/locale/catalogue.h mullion Translation ${catalogues})
endfunction()
