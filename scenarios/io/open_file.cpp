#include "scenarios/io/open_file.h"

#include <unistd.h>

#include <cerrno>

namespace spurwright::io {
namespace {

// Our own few words for what the system says, so that they exist in every language.
Error why(Fault fault, std::string_view other, const std::string& path, int code) {
    std::string_view key = other;
    if (code == ENOENT || code == ENOTDIR)
        key = fault == Fault::cannot_write ? "error.file.no-folder" : "error.file.no-such";
    else if (code == EACCES || code == EPERM || code == EROFS)
        key = "error.file.not-allowed";
    else if (code == EISDIR)
        key = "error.file.is-folder";
    else if (code == ENOSPC || code == EDQUOT)
        key = "error.file.full";
    else if (code == ENAMETOOLONG)
        key = "error.file.long-name";
    return {fault, TextKey{key}, {{"code", Count{code}}}, {path, 0, 0, 0}};
}

}  // namespace

OpenFile& OpenFile::operator=(OpenFile&& other) noexcept {
    close_now();
    file_ = other.release();
    return *this;
}

int OpenFile::release() {
    const int file = file_;
    file_ = -1;
    return file;
}

bool OpenFile::close_now() {
    const int file = release();
    return file < 0 || ::close(file) == 0;
}

Error unreadable(const std::string& path, int code) { return why(Fault::bad_file, "error.file.unreadable", path, code); }
Error unwritable(const std::string& path, int code) { return why(Fault::cannot_write, "error.file.unwritable", path, code); }

bool write_all(int file, std::string_view bytes) {
    while (!bytes.empty()) {
        const ssize_t written = ::write(file, bytes.data(), bytes.size());
        if (written < 0 && errno == EINTR) continue;
        if (written <= 0) return false;
        bytes.remove_prefix(static_cast<std::size_t>(written));
    }
    return true;
}

}  // namespace spurwright::io
