// A disk that fails when it is told to: every writing step of the store (write, truncate, sync, delete) is counted, and at
// one of them it refuses, stops the process, or loses what was not synced as a power cut does.
#pragma once

#include <string>

namespace spurwright::test {

enum class DiskFault {
    none,
    full,          // that step says there is no room; later ones work again
    full_from_here, // and every later one
    broken,        // that step says the disk is broken
    short_write,   // half of it is written, then no room
    killed_before, // the process stops
    killed_after,
    cut,           // the process stops, and nothing that was not synced is on the disk
    cut_even,      // every other of the unsynced writes is, the later ones of a file perhaps without the earlier
    cut_odd,
    cut_torn,      // all of them, the last one of each file only to 512 bytes
};
inline constexpr DiskFault all_disk_faults[] = {DiskFault::full,         DiskFault::full_from_here, DiskFault::broken,  DiskFault::short_write, DiskFault::killed_before,
                                                DiskFault::killed_after, DiskFault::cut,            DiskFault::cut_even, DiskFault::cut_odd,     DiskFault::cut_torn};
inline bool stops_process(DiskFault fault) { return fault >= DiskFault::killed_before; }

// While it lives, for every store opened in this process and its children. Nothing is truly synced: the test itself decides
// what a power cut leaves.
class FaultyDisk {
public:
    FaultyDisk();
    ~FaultyDisk();
    FaultyDisk(const FaultyDisk&) = delete;
    FaultyDisk& operator=(const FaultyDisk&) = delete;
};
void fail_at(int step, DiskFault fault); // counted from now, from 1
int steps_so_far();
[[noreturn]] void stop_now(DiskFault fault); // as at a step, once all was done

}  // namespace spurwright::test
