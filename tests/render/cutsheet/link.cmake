target_sources(${name} PRIVATE ${CMAKE_CURRENT_SOURCE_DIR}/engine/cuts/simulator.cpp
               ${CMAKE_CURRENT_SOURCE_DIR}/engine/cuts/by_hand.cpp
               ${CMAKE_CURRENT_SOURCE_DIR}/engine/cuts/likeness.cpp ${CMAKE_CURRENT_SOURCE_DIR}/engine/cuts/mats.cpp)
target_include_directories(${name} PRIVATE ${CMAKE_CURRENT_SOURCE_DIR}/engine/cuts)
# They read thousands of pages.
set_source_files_properties(
  ${CMAKE_CURRENT_SOURCE_DIR}/render/cutsheet/printed_plan.cpp
  ${CMAKE_CURRENT_SOURCE_DIR}/render/cutsheet/printed_sheet.cpp
  ${CMAKE_CURRENT_SOURCE_DIR}/render/cutsheet/printed_words.cpp
  PROPERTIES COMPILE_OPTIONS -O2 SKIP_PRECOMPILE_HEADERS ON)
