# File by file, so that each stands on its own, without a shadowed name; and nothing optimised.
include(${CMAKE_CURRENT_LIST_DIR}/common.cmake)
set(CMAKE_BUILD_TYPE Debug CACHE STRING "")
set(CMAKE_CXX_FLAGS_DEBUG "-O0 -g1" CACHE STRING "")
set(SPURWRIGHT_WERROR ON CACHE BOOL "")
