target_sources(${name} PRIVATE ${CMAKE_CURRENT_SOURCE_DIR}/engine/sheets/guillotine/cut_check.cpp)
target_include_directories(${name} PRIVATE ${CMAKE_CURRENT_SOURCE_DIR}/engine/sheets/guillotine)
target_link_libraries(${name} PRIVATE PkgConfig::CAIRO)
