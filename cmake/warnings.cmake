# groat_warnings: for our own code, privately; whoever links groat::groat gets none of it.
#
# Warnings are errors with the compilers that .ci/run uses. A newer compiler may warn about something
# new, and that must not stop a baker from building: there they stay warnings.

add_library(groat_warnings INTERFACE)

set(groat_werror OFF)
if((CMAKE_CXX_COMPILER_ID STREQUAL "GNU" AND CMAKE_CXX_COMPILER_VERSION VERSION_LESS 13)
    OR (CMAKE_CXX_COMPILER_ID STREQUAL "Clang" AND CMAKE_CXX_COMPILER_VERSION VERSION_LESS 15))
    set(groat_werror ON)
endif()
option(GROAT_WERROR "Treat warnings in our own code as errors" ${groat_werror})

if(CMAKE_CXX_COMPILER_ID MATCHES "GNU|Clang")
    target_compile_options(groat_warnings INTERFACE
        -Wall -Wextra -Wpedantic -Wconversion -Wshadow
        $<$<BOOL:${GROAT_WERROR}>:-Werror>)
endif()
if(CMAKE_CXX_COMPILER_ID STREQUAL "GNU" AND CMAKE_CXX_COMPILER_VERSION VERSION_LESS 13)
    # GCC 12 warns about its own std::string where a literal meets operator+ (GCC bug 105651).
    target_compile_options(groat_warnings INTERFACE -Wno-restrict)
endif()
