target_sources(${name} PRIVATE ${CMAKE_CURRENT_SOURCE_DIR}/engine/sheets/guillotine/cut_check.cpp)
target_include_directories(${name} PRIVATE ${CMAKE_CURRENT_SOURCE_DIR}/engine/sheets/guillotine)
target_compile_options(${name} PRIVATE -O2)  # it tries every plan of a few blanks
set_target_properties(${name} PROPERTIES DISABLE_PRECOMPILE_HEADERS ON)  # which are compiled without -O2
