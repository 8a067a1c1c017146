# Builds and runs the consumer, from an installed groat or with groat as a subdirectory.
# cmake -D WAY=find_package|add_subdirectory -D SOURCE=.. -D BUILD=.. -D CONFIG=.. -D WORK=..
#       -D GENERATOR=.. -D COMPILER=.. -D VERSION=.. -P run.cmake

function(run)
    execute_process(COMMAND ${ARGN} WORKING_DIRECTORY "${SOURCE}" RESULT_VARIABLE result OUTPUT_VARIABLE output
        ERROR_VARIABLE output)
    if(NOT result EQUAL 0)
        list(JOIN ARGN " " command)
        message(FATAL_ERROR "${command}\n${output}")
    endif()
    set(output "${output}" PARENT_SCOPE)
endfunction()

file(REMOVE_RECURSE "${WORK}")
set(places)
if(WAY STREQUAL "find_package")
    run("${CMAKE_COMMAND}" --install "${BUILD}" --config "${CONFIG}" --prefix "${WORK}/prefix")
    set(places "-DCMAKE_PREFIX_PATH=${WORK}/prefix")
    if(EXISTS "${WORK}/prefix/bin/groat")
        run("${WORK}/prefix/bin/groat" --version)
        string(FIND "${output}" "${VERSION}" found)
        if(found EQUAL -1)
            message(FATAL_ERROR "the installed command is not version ${VERSION}: ${output}")
        endif()
        if(NOT EXISTS "${WORK}/prefix/share/groat/sheet.schema.json")
            message(FATAL_ERROR "the schema of its JSON is not installed")
        endif()
        if(NOT EXISTS "${WORK}/prefix/share/groat/manual/first-price.md")
            message(FATAL_ERROR "the manual is not installed")
        endif()
    endif()
endif()

run("${CMAKE_COMMAND}" -G "${GENERATOR}" -S "${CMAKE_CURRENT_LIST_DIR}" -B "${WORK}/build"
    "-DCMAKE_CXX_COMPILER=${COMPILER}" -DCMAKE_BUILD_TYPE=None "-DWAY=${WAY}"
    "-DSOURCE=${SOURCE}" ${places})
run("${CMAKE_COMMAND}" --build "${WORK}/build")
foreach(program IN ITEMS core books core_compiled books_compiled)
    run("${WORK}/build/${program}")
    message("${program}: ${output}")
endforeach()

# What the manual says of its program: it prints the same as the command.
if(WAY STREQUAL "find_package")
    run("${WORK}/build/manual")
    set(printed "${output}")
    if(EXISTS "${WORK}/prefix/bin/groat")
        run("${WORK}/prefix/bin/groat" quote 2026-041 --books samples/bakery)
        if(NOT printed STREQUAL output)
            message(FATAL_ERROR "the program of lib/manual.md prints something else than the command:\n${printed}")
        endif()
    endif()
endif()
