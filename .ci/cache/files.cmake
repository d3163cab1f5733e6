# File by file, for work: a change compiles again what reads it and no more.
include(${CMAKE_CURRENT_LIST_DIR}/release.cmake)
set(SPURWRIGHT_UNITY OFF CACHE BOOL "" FORCE)
