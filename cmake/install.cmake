# Headers to include/, what is compiled of them and the package to lib/, the command to bin/, the schemas of its JSON and
# of the books, and the manual to share/groat. One export per part, so that nobody needs yaml-cpp for groat::groat alone.

include(GNUInstallDirs)
include(CMakePackageConfigHelpers)

set(groat_package_dir "${CMAKE_INSTALL_LIBDIR}/cmake/groat")

install(DIRECTORY "${PROJECT_SOURCE_DIR}/lib/" DESTINATION include
    COMPONENT development FILES_MATCHING PATTERN "*.hpp" PATTERN "*.ipp" PATTERN "schema" EXCLUDE)

foreach(part IN ITEMS core yaml json compiled)
    set(target groat_${part})
    if(part STREQUAL "core")
        set(target groat_library)
    endif()
    install(TARGETS ${target} EXPORT groat_${part}Targets ARCHIVE COMPONENT development)
    install(EXPORT groat_${part}Targets NAMESPACE groat:: DESTINATION "${groat_package_dir}"
        COMPONENT development)
endforeach()

write_basic_package_version_file("${PROJECT_BINARY_DIR}/groatConfigVersion.cmake"
    COMPATIBILITY SameMinorVersion)
install(FILES
    "${PROJECT_SOURCE_DIR}/cmake/groatConfig.cmake"
    "${PROJECT_SOURCE_DIR}/cmake/dependencies.cmake"
    "${PROJECT_BINARY_DIR}/groatConfigVersion.cmake"
    DESTINATION "${groat_package_dir}" COMPONENT development)

file(GLOB schemas CONFIGURE_DEPENDS "${PROJECT_SOURCE_DIR}/lib/schema/*.schema.json")
install(FILES ${schemas}
    DESTINATION "${CMAKE_INSTALL_DATADIR}/groat" COMPONENT command)

install(DIRECTORY "${PROJECT_SOURCE_DIR}/cli/manual" DESTINATION "${CMAKE_INSTALL_DATADIR}/groat"
    COMPONENT command FILES_MATCHING PATTERN "*.md")

if(TARGET groat)
    install(TARGETS groat RUNTIME DESTINATION "${CMAKE_INSTALL_BINDIR}" COMPONENT command)
endif()
