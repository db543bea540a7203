target_sources(${name} PRIVATE engine/layout/jobs.cpp)
target_link_libraries(${name} PRIVATE PkgConfig::CAIRO)
