target_sources(${name} PRIVATE ${CMAKE_CURRENT_SOURCE_DIR}/engine/mat/measure.cpp)
