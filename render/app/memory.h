// Keeps freed memory with the program: a software renderer takes and gives back its vertex store every frame, and the C
// library would hand it to the system each time (frames take up to four times as long). First thing in every main that
// draws.
#pragma once

#include <cstdlib> // says which C library it is

#ifdef __GLIBC__
#include <malloc.h>
#endif

namespace spurwright::app {

inline bool keep_freed_memory() {
#ifdef __GLIBC__
    return mallopt(M_TRIM_THRESHOLD, 512 << 20) != 0 && mallopt(M_MMAP_THRESHOLD, 512 << 20) != 0 &&
           mallopt(M_TOP_PAD, 64 << 20) != 0;
#else
    return true;
#endif
}

// Gives back what nobody needs while nothing is drawn: the driver's compiler leaves twenty megabytes behind at the start,
// a software renderer eleven after a frame. The next frame takes them anew.
inline void give_back_freed_memory() {
#ifdef __GLIBC__
    malloc_trim(0);
#endif
}

} // namespace spurwright::app
