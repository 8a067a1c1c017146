# What we decide only when nobody embeds us: optimisation, compiler cache, sanitizers.

get_property(groat_multi_config GLOBAL PROPERTY GENERATOR_IS_MULTI_CONFIG)
if(NOT groat_multi_config AND NOT CMAKE_BUILD_TYPE)
    set(CMAKE_BUILD_TYPE Release CACHE STRING "Release, RelWithDebInfo or Debug" FORCE)
endif()

# CMake's Release is -O3, which here takes half as long again to compile and runs no faster than -O2.
string(REPLACE "-O3" "-O2" CMAKE_CXX_FLAGS_RELEASE "${CMAKE_CXX_FLAGS_RELEASE}")

set(CMAKE_CXX_EXTENSIONS OFF)
set(CMAKE_EXPORT_COMPILE_COMMANDS ON)

# The sloppiness is what ccache asks for when headers are precompiled; to depend on the compiler's own
# list of headers spares it a second preprocessing.
find_program(GROAT_CCACHE ccache)
if(GROAT_CCACHE AND NOT CMAKE_CXX_COMPILER_LAUNCHER)
    set(CMAKE_CXX_COMPILER_LAUNCHER "${CMAKE_COMMAND}" -E env CCACHE_DEPEND=1
        CCACHE_SLOPPINESS=pch_defines,time_macros,include_file_mtime,include_file_ctime
        "${GROAT_CCACHE}")
endif()

if(GROAT_SANITIZE)
    add_compile_options(-fsanitize=${GROAT_SANITIZE} -fno-sanitize-recover=all
        -fno-omit-frame-pointer)
    add_link_options(-fsanitize=${GROAT_SANITIZE})
endif()
