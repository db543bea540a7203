target_sources(${name} PRIVATE engine/layout/jobs.cpp engine/layout/languages.cpp)
target_link_libraries(${name} PRIVATE PkgConfig::CAIRO)
