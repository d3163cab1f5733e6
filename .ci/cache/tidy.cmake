# Only for its list of commands, which clang-tidy reads.
include(${CMAKE_CURRENT_LIST_DIR}/common.cmake)
set(CMAKE_BUILD_TYPE Debug CACHE STRING "")
set(CMAKE_CXX_COMPILER clang++ CACHE STRING "")
set(SPURWRIGHT_RENDER OFF CACHE BOOL "")
