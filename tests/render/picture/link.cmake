target_link_libraries(${name} PRIVATE JPEG::JPEG PNG::PNG PkgConfig::LCMS ZLIB::ZLIB)
