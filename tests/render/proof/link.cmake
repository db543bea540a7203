target_sources(${name} PRIVATE ${CMAKE_CURRENT_SOURCE_DIR}/render/picture/files.cpp)
target_link_libraries(${name} PRIVATE JPEG::JPEG PNG::PNG)
