#include "tests/records/faulty_disk.h"

#include <fcntl.h>
#include <sqlite3.h>
#include <unistd.h>

#include <algorithm>
#include <cstring>
#include <map>
#include <memory>
#include <vector>

#include "tests/support/folder.h"

namespace spurwright::test {
namespace {

struct LostWrite {
    std::size_t at = 0;
    std::string bytes;
};

// What a power cut would leave of a file: what was synced, and what was written since.
struct OnDisk {
    std::string synced;
    std::vector<LostWrite> since;
};

struct Disk {
    sqlite3_vfs* real = nullptr;
    int steps = 0, fail_step = 0;
    DiskFault fault = DiskFault::none;
    std::map<std::string, OnDisk> files;
};
Disk& disk() {
    static Disk the_disk;
    return the_disk;
}

struct FaultyFile {
    sqlite3_file base;
    const char* path; // null: a file that nobody asks about
    sqlite3_file* real() { return reinterpret_cast<sqlite3_file*>(this + 1); }
};
FaultyFile* faulty(sqlite3_file* file) { return reinterpret_cast<FaultyFile*>(file); }
sqlite3_file* real(sqlite3_file* file) { return faulty(file)->real(); }

void put_at(std::string& content, const LostWrite& write, std::size_t length) {
    if (content.size() < write.at + length) content.resize(write.at + length, '\0');
    std::copy_n(write.bytes.begin(), length, content.begin() + static_cast<std::ptrdiff_t>(write.at));
}

void cut_power(DiskFault fault) {
    for (auto& [path, on_disk] : disk().files) {
        if (::access(path.c_str(), F_OK) != 0) continue;
        std::string content = on_disk.synced;
        for (std::size_t i = 0; i < on_disk.since.size(); ++i) {
            const LostWrite& write = on_disk.since[i];
            const bool last = i + 1 == on_disk.since.size();
            if (fault == DiskFault::cut || (fault == DiskFault::cut_even && i % 2 == 1) || (fault == DiskFault::cut_odd && i % 2 == 0)) continue;
            put_at(content, write, fault == DiskFault::cut_torn && last ? std::min<std::size_t>(write.bytes.size(), 512) : write.bytes.size());
        }
        const int file = ::open(path.c_str(), O_WRONLY | O_TRUNC);
        if (file < 0 || ::write(file, content.data(), content.size()) != static_cast<ssize_t>(content.size())) ::_exit(96);
        ::close(file);
    }
}

// Counts a step; the code with which it fails, SQLITE_OK where it is carried out. `after`: it has been.
int step(bool counted, bool after) {
    Disk& d = disk();
    if (!counted) return SQLITE_OK;
    if (!after) ++d.steps;
    const bool here = d.steps == d.fail_step, from_here = d.fail_step > 0 && d.steps >= d.fail_step;
    switch (d.fault) {
    case DiskFault::full:
    case DiskFault::short_write: return !after && here ? SQLITE_FULL : SQLITE_OK;
    case DiskFault::full_from_here: return !after && from_here ? SQLITE_FULL : SQLITE_OK;
    case DiskFault::broken: return !after && here ? SQLITE_IOERR_WRITE : SQLITE_OK;
    case DiskFault::killed_before:
        if (!after && here) ::_exit(9);
        return SQLITE_OK;
    case DiskFault::killed_after:
        if (after && here) ::_exit(9);
        return SQLITE_OK;
    case DiskFault::cut:
    case DiskFault::cut_even:
    case DiskFault::cut_odd:
    case DiskFault::cut_torn:
        if (!after && here) {
            cut_power(d.fault);
            ::_exit(9);
        }
        return SQLITE_OK;
    default: return SQLITE_OK;
    }
}

int close_file(sqlite3_file* file) { return real(file)->pMethods ? real(file)->pMethods->xClose(real(file)) : SQLITE_OK; }
int read_file(sqlite3_file* file, void* to, int amount, sqlite3_int64 at) { return real(file)->pMethods->xRead(real(file), to, amount, at); }

int write_file(sqlite3_file* file, const void* from, int amount, sqlite3_int64 at) {
    const char* path = faulty(file)->path;
    const int code = step(path, false);
    if (code != SQLITE_OK && disk().fault == DiskFault::short_write) real(file)->pMethods->xWrite(real(file), from, amount / 2, at);
    if (code != SQLITE_OK) return code;
    const int done = real(file)->pMethods->xWrite(real(file), from, amount, at);
    if (path) disk().files[path].since.push_back({static_cast<std::size_t>(at), std::string(static_cast<const char*>(from), static_cast<std::size_t>(amount))});
    step(path, true);
    return done;
}

int truncate_file(sqlite3_file* file, sqlite3_int64 size) {
    const char* path = faulty(file)->path;
    if (const int code = step(path, false); code != SQLITE_OK) return code;
    const int done = real(file)->pMethods->xTruncate(real(file), size);
    // Taken as on the disk at once, with what was written before: a file system may well do so.
    if (path) disk().files[path] = {file_text(path), {}};
    step(path, true);
    return done;
}

int sync_file(sqlite3_file* file, int) {
    const char* path = faulty(file)->path;
    if (const int code = step(path, false); code != SQLITE_OK) return code == SQLITE_FULL ? SQLITE_FULL : SQLITE_IOERR_FSYNC;
    if (path) disk().files[path] = {file_text(path), {}};
    step(path, true);
    return SQLITE_OK;
}

int size_of_file(sqlite3_file* file, sqlite3_int64* size) { return real(file)->pMethods->xFileSize(real(file), size); }
int lock_file(sqlite3_file* file, int kind) { return real(file)->pMethods->xLock(real(file), kind); }
int unlock_file(sqlite3_file* file, int kind) { return real(file)->pMethods->xUnlock(real(file), kind); }
int check_lock(sqlite3_file* file, int* held) { return real(file)->pMethods->xCheckReservedLock(real(file), held); }
int control_file(sqlite3_file* file, int op, void* argument) { return real(file)->pMethods->xFileControl(real(file), op, argument); }
int sector_size(sqlite3_file*) { return 512; }
int characteristics(sqlite3_file*) { return 0; } // nothing is promised: no write is atomic or in order
int shm_map(sqlite3_file* file, int region, int size, int extend, void volatile** at) { return real(file)->pMethods->xShmMap(real(file), region, size, extend, at); }
int shm_lock(sqlite3_file* file, int offset, int n, int flags) { return real(file)->pMethods->xShmLock(real(file), offset, n, flags); }
void shm_barrier(sqlite3_file* file) { real(file)->pMethods->xShmBarrier(real(file)); }
int shm_unmap(sqlite3_file* file, int gone) { return real(file)->pMethods->xShmUnmap(real(file), gone); }

const sqlite3_io_methods methods{2,           close_file, read_file,    write_file,   truncate_file, sync_file,       size_of_file, lock_file, unlock_file, check_lock,
                                 control_file, sector_size, characteristics, shm_map, shm_lock,     shm_barrier, shm_unmap, nullptr,   nullptr};

int open_file(sqlite3_vfs*, const char* name, sqlite3_file* file, int flags, int* out_flags) {
    FaultyFile* made = faulty(file);
    made->base.pMethods = nullptr;
    const bool asked_about = name && (flags & (SQLITE_OPEN_MAIN_DB | SQLITE_OPEN_WAL | SQLITE_OPEN_MAIN_JOURNAL)) != 0;
    made->path = asked_about ? name : nullptr;
    if (asked_about) disk().files.emplace(name, OnDisk{file_text(name), {}});
    const int code = disk().real->xOpen(disk().real, name, made->real(), flags, out_flags);
    if (code == SQLITE_OK) made->base.pMethods = &methods;
    return code;
}

int delete_file(sqlite3_vfs*, const char* name, int sync_folder) {
    if (const int code = step(true, false); code != SQLITE_OK) return SQLITE_IOERR_DELETE;
    const int done = disk().real->xDelete(disk().real, name, sync_folder);
    disk().files.erase(name);
    step(true, true);
    return done;
}

}  // namespace

FaultyDisk::FaultyDisk() {
    static sqlite3_vfs faulty_vfs;
    disk().real = ::sqlite3_vfs_find(nullptr);
    faulty_vfs = *disk().real;
    faulty_vfs.zName = "faulty";
    faulty_vfs.szOsFile += static_cast<int>(sizeof(FaultyFile));
    faulty_vfs.pNext = nullptr;
    faulty_vfs.xOpen = open_file;
    faulty_vfs.xDelete = delete_file;
    ::sqlite3_vfs_register(&faulty_vfs, 1);
}

FaultyDisk::~FaultyDisk() {
    ::sqlite3_vfs_register(disk().real, 1);
    disk().files.clear();
}

void fail_at(int step_number, DiskFault fault) {
    disk().steps = 0;
    disk().fail_step = step_number;
    disk().fault = fault;
}

int steps_so_far() { return disk().steps; }

void stop_now(DiskFault fault) {
    if (fault >= DiskFault::cut) cut_power(fault);
    ::_exit(9);
}

}  // namespace spurwright::test
