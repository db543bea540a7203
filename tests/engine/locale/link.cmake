find_package(pugixml REQUIRED)
target_link_libraries(${name} PRIVATE pugixml::pugixml)
