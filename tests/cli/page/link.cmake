target_link_libraries(${name} PRIVATE pugixml::pugixml)
