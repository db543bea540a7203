target_sources(${name} PRIVATE engine/layout/jobs.cpp engine/layout/languages.cpp engine/layout/wild_job.cpp)
target_link_libraries(${name} PRIVATE pugixml::pugixml)
