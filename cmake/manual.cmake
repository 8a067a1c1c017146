# The pages of the manual become a source file of the command: text in raw string literals, cut between lines
# into parts that every compiler takes. A page that is changed is read again before the next build.

# In this order they are listed; a page that is not named here comes after these.
set(groat_manual_order first-price suppliers orders bake-day menus kitchen-review what-if paper figures the-books books
    commands cautions)

function(groat_manual_source folder file)
    file(GLOB pages CONFIGURE_DEPENDS "${folder}/*.md")
    set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${pages})
    set(ordered ${groat_manual_order})
    list(TRANSFORM ordered PREPEND "${folder}/")
    list(TRANSFORM ordered APPEND ".md")
    list(APPEND ordered ${pages})
    list(REMOVE_DUPLICATES ordered)

    set(groat_manual_entries "")
    foreach(page IN LISTS ordered)
        if(NOT page IN_LIST pages)
            continue()
        endif()
        get_filename_component(topic "${page}" NAME_WE)
        file(READ "${page}" text)
        set(parts "")
        while(NOT text STREQUAL "")
            string(SUBSTRING "${text}" 0 12000 part)
            string(FIND "${part}" "\n" end REVERSE)
            if(end EQUAL -1)
                message(FATAL_ERROR "${page}: a line is too long, or the last one does not end")
            endif()
            math(EXPR end "${end} + 1")
            string(SUBSTRING "${text}" 0 ${end} part)
            string(SUBSTRING "${text}" ${end} -1 text)
            string(APPEND parts "R\"manual(${part})manual\",\n")
        endwhile()
        string(APPEND groat_manual_entries "{\"${topic}\", {\n${parts}}},\n")
    endforeach()

    file(CONFIGURE OUTPUT "${file}" @ONLY CONTENT [[
// Made by cmake/manual.cmake from cli/manual/*.md.
#include "manual.hpp"

namespace groat::cli {

std::vector<desk::ManualPage> manual_pages() {
    return {
@groat_manual_entries@};
}

} // namespace groat::cli
]])
endfunction()
