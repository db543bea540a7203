# The simulator that plays plans, and the mats it is given.
set(plays ${CMAKE_CURRENT_SOURCE_DIR}/engine/cuts)
target_sources(${name} PRIVATE ${plays}/by_hand.cpp ${plays}/likeness.cpp ${plays}/mats.cpp ${plays}/simulator.cpp)
target_include_directories(${name} PRIVATE ${plays})
target_link_libraries(${name} PRIVATE pugixml::pugixml)
