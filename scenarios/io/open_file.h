// A file of the system while it is open, and our own few words for what the system says of it. For io alone.
#pragma once

#include <string>
#include <string_view>

#include "sim/core/error.h"

namespace spurwright::io {

class OpenFile {
public:
    OpenFile() = default;
    explicit OpenFile(int file) : file_(file) {}  // below 0: it could not be opened
    OpenFile(OpenFile&& other) noexcept : file_(other.release()) {}
    OpenFile& operator=(OpenFile&& other) noexcept;
    ~OpenFile() { close_now(); }
    explicit operator bool() const { return file_ >= 0; }
    int file() const { return file_; }
    bool close_now();  // false where the system says so

private:
    int file_ = -1;
    int release();
};

// `code` is an errno. Faults: bad_file, cannot_write.
Error unreadable(const std::string& path, int code);
Error unwritable(const std::string& path, int code);
bool write_all(int file, std::string_view bytes);

}  // namespace spurwright::io
