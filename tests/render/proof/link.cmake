target_link_libraries(${name} PRIVATE PNG::PNG)
