#include "scenarios/io/safe_file.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdlib>
#include <vector>

#include "scenarios/io/open_file.h"

namespace spurwright::io {
namespace {

// The file a link leads to, so that the link stays one; the path itself where nothing is there yet.
std::string resolved(const std::string& path) {
    char* real = ::realpath(path.c_str(), nullptr);
    if (!real) return path;
    std::string target = real;
    std::free(real);
    return target;
}

std::string folder_of(const std::string& path) {
    const auto slash = path.rfind('/');
    return slash == std::string::npos ? "." : slash == 0 ? "/" : path.substr(0, slash);
}

} // namespace

bool is_there(const std::string& path) {
    struct stat there{};
    return ::stat(path.c_str(), &there) == 0;
}

Result<std::string> read_file(const std::string& path, std::size_t largest) {
    const OpenFile file(::open(path.c_str(), O_RDONLY | O_CLOEXEC));
    if (!file) return failure(unreadable(path, errno));
    std::string bytes;
    std::vector<char> part(1 << 16);
    for (;;) {
        const ssize_t got = ::read(file.file(), part.data(), part.size());
        if (got < 0 && errno == EINTR) continue;
        if (got < 0) return failure(unreadable(path, errno));
        if (got == 0) return bytes;
        bytes.append(part.data(), static_cast<std::size_t>(got));
        if (bytes.size() > largest)
            return failure({Fault::bad_file,
                            TextKey{"error.file.too-large"},
                            {{"most", Count{static_cast<std::int64_t>(largest / 1024 / 1024)}}},
                            {path, 0, 0, 0}});
    }
}

Result<void> write_file(const std::string& path, std::string_view bytes) {
    const std::string target = resolved(path);
    struct stat there {};
    mode_t mode = 0;
    if (::stat(target.c_str(), &there) == 0) {
        if (S_ISDIR(there.st_mode)) return failure(unwritable(path, EISDIR));
        if (!S_ISREG(there.st_mode))
            return failure({Fault::cannot_write, TextKey{"error.file.not-plain"}, {}, {path, 0, 0, 0}});
        if (::access(target.c_str(), W_OK) != 0) return failure(unwritable(path, errno));
        mode = there.st_mode & 07777;
    } else {
        const mode_t mask = ::umask(0);
        ::umask(mask);
        mode = 0666 & ~mask;
    }
    std::string beside = target + ".part-XXXXXX";
    OpenFile file(::mkstemp(beside.data()));
    if (!file) return failure(unwritable(path, errno));
    const bool whole = write_all(file.file(), bytes) && ::fchmod(file.file(), mode) == 0 && ::fsync(file.file()) == 0 &&
                       file.close_now() && ::rename(beside.c_str(), target.c_str()) == 0;
    if (!whole) {
        const int code = errno;
        ::unlink(beside.c_str());
        return failure(unwritable(path, code));
    }
    const OpenFile folder(::open(folder_of(target).c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
    if (folder) ::fsync(folder.file()); // the new name itself; some file systems cannot, and the file is whole anyway
    return {};
}

} // namespace spurwright::io
