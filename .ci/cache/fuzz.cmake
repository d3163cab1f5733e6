# Fuzzers, and every test under the address and undefined-behaviour sanitizers: one instrumented build serves both.
include(${CMAKE_CURRENT_LIST_DIR}/common.cmake)
set(CMAKE_BUILD_TYPE RelWithDebInfo CACHE STRING "")
set(CMAKE_CXX_COMPILER clang++ CACHE STRING "")
set(CMAKE_CXX_FLAGS "-fsanitize=fuzzer-no-link" CACHE STRING "")
set(CMAKE_CXX_FLAGS_RELWITHDEBINFO "-O1 -g1" CACHE STRING "")
set(SPURWRIGHT_SANITIZE "address,undefined" CACHE STRING "")
set(SPURWRIGHT_FUZZ ON CACHE BOOL "")
set(SPURWRIGHT_UNITY ON CACHE BOOL "")
