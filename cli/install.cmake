# What `cmake --install` puts where, and the Debian packages that CPack makes of it: `mullion`, the
# program, and `libmullion-dev`, the library with its headers.
include(GNUInstallDirs)
include(CMakePackageConfigHelpers)

install(TARGETS mullion COMPONENT mullion)
install(TARGETS mullion_whole RUNTIME DESTINATION ${CMAKE_INSTALL_LIBEXECDIR}/mullion COMPONENT mullion)
install(FILES README.md gallery/JOB-FILE.md TYPE DOC COMPONENT mullion)
install(DIRECTORY gallery/ DESTINATION ${CMAKE_INSTALL_DATADIR}/mullion/gallery COMPONENT mullion
        FILES_MATCHING PATTERN *.xml PATTERN pictures/*)
install(FILES engine/job/job.xsd engine/cuts/cutter/cutter.xsd engine/sheets/inventory/stock.xsd
              engine/shop/prices.xsd engine/shop/shop.xsd
        DESTINATION ${CMAKE_INSTALL_DATADIR}/mullion/schema COMPONENT mullion)

# Written by the program as it is built (cli/CMakeLists.txt).
set(words_folder ${CMAKE_CURRENT_BINARY_DIR}/cli/words)
install(FILES ${words_folder}/mullion.1 DESTINATION ${CMAKE_INSTALL_MANDIR}/man1 COMPONENT mullion)
install(FILES ${words_folder}/mullion DESTINATION ${CMAKE_INSTALL_DATADIR}/bash-completion/completions COMPONENT mullion)
install(FILES ${words_folder}/_mullion DESTINATION ${CMAKE_INSTALL_DATADIR}/zsh/vendor-completions COMPONENT mullion)
install(FILES ${words_folder}/mullion.fish DESTINATION ${CMAKE_INSTALL_DATADIR}/fish/vendor_completions.d COMPONENT mullion)

set(config_folder ${CMAKE_INSTALL_LIBDIR}/cmake/mullion)
install(TARGETS mullion_engine mullion_render EXPORT mullion
        ARCHIVE COMPONENT dev
        FILE_SET HEADERS DESTINATION ${CMAKE_INSTALL_INCLUDEDIR}/mullion COMPONENT dev)
install(EXPORT mullion NAMESPACE mullion:: FILE mullion-targets.cmake DESTINATION ${config_folder} COMPONENT dev)
configure_package_config_file(cli/mullion-config.cmake.in ${CMAKE_CURRENT_BINARY_DIR}/mullion-config.cmake
                              INSTALL_DESTINATION ${config_folder})
write_basic_package_version_file(${CMAKE_CURRENT_BINARY_DIR}/mullion-config-version.cmake COMPATIBILITY SameMinorVersion)
install(FILES ${CMAKE_CURRENT_BINARY_DIR}/mullion-config.cmake ${CMAKE_CURRENT_BINARY_DIR}/mullion-config-version.cmake
        DESTINATION ${config_folder} COMPONENT dev)

set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_CONTACT "The mullion authors <authors@mullion.invalid>")
set(CPACK_PACKAGE_VERSION ${PROJECT_VERSION})
set(CPACK_DEB_COMPONENT_INSTALL ON)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_STRIP_FILES ON)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
set(CPACK_DEBIAN_MULLION_PACKAGE_NAME mullion)
set(CPACK_DEBIAN_MULLION_PACKAGE_SECTION graphics)
set(CPACK_DEBIAN_MULLION_PACKAGE_DEPENDS "fonts-dejavu-core, fonts-lato")
set(CPACK_COMPONENT_MULLION_DESCRIPTION "${PROJECT_DESCRIPTION}")
set(CPACK_DEBIAN_DEV_PACKAGE_NAME libmullion-dev)
set(CPACK_DEBIAN_DEV_PACKAGE_SECTION libdevel)
set(CPACK_DEBIAN_DEV_PACKAGE_SHLIBDEPS OFF)  # static archives; what they are linked with is named here
set(CPACK_DEBIAN_DEV_PACKAGE_DEPENDS "libcairo2-dev, libpango1.0-dev, libpugixml-dev, libexpected-dev, libgmp-dev, libpolyclipping-dev, coinor-libclp-dev, libqpdf-dev, libjpeg-dev, libpng-dev, liblcms2-dev, libgmime-3.0-dev, libzint-dev, nlohmann-json3-dev, fonts-dejavu-core, fonts-lato")
set(CPACK_COMPONENT_DEV_DESCRIPTION "The library behind mullion: layout, mat geometry, cutting plans and their drawings")
include(CPack)
