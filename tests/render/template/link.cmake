foreach(source engine/mat/measure engine/cuts/mats engine/cuts/likeness engine/cuts/simulator engine/cuts/by_hand engine/layout/random_job)
  target_sources(${name} PRIVATE ${CMAKE_CURRENT_SOURCE_DIR}/${source}.cpp)
endforeach()
target_link_libraries(${name} PRIVATE dxflib)
