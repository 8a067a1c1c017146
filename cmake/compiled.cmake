# groat::compiled: the same library, compiled once. Headers then only declare; the implementation halves beside them
# (*.ipp) are compiled here, a room at a time. Whoever links it instead of groat::groat, groat::yaml and groat::json
# changes nothing in the code, and waits a fraction of the time for each file that includes groat.hpp.

file(GLOB_RECURSE groat_halves CONFIGURE_DEPENDS RELATIVE "${PROJECT_SOURCE_DIR}/lib" "${PROJECT_SOURCE_DIR}/lib/groat/*.ipp")

set(groat_rooms)
foreach(half IN LISTS groat_halves)
    get_filename_component(room "${half}" DIRECTORY)
    string(REGEX REPLACE "^groat/?" "" room "${room}")
    if(room STREQUAL "")
        set(room door)
    endif()
    list(APPEND groat_rooms ${room})
    string(APPEND groat_room_${room} "#include <${half}>\n")
endforeach()
list(REMOVE_DUPLICATES groat_rooms)

set(groat_room_sources)
foreach(room IN LISTS groat_rooms)
    set(source "${PROJECT_BINARY_DIR}/compiled/${room}.cpp")
    file(CONFIGURE OUTPUT "${source}" CONTENT "${groat_room_${room}}")
    list(APPEND groat_room_sources "${source}")
endforeach()

add_library(groat_compiled STATIC ${groat_room_sources})
add_library(groat::compiled ALIAS groat_compiled)
set_target_properties(groat_compiled PROPERTIES EXPORT_NAME compiled OUTPUT_NAME groat POSITION_INDEPENDENT_CODE ON)
target_compile_definitions(groat_compiled PUBLIC GROAT_COMPILED)
target_link_libraries(groat_compiled PUBLIC groat_library groat_yaml groat_json PRIVATE $<BUILD_INTERFACE:groat_warnings>)
if(NOT PROJECT_IS_TOP_LEVEL)
    set_target_properties(groat_compiled PROPERTIES EXCLUDE_FROM_ALL ON)
endif()
