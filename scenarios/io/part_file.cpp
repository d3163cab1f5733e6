#include "scenarios/io/part_file.h"

#include <fcntl.h>
#include <unistd.h>

#include <cerrno>
#include <cstdlib>

#include "scenarios/io/open_file.h"

namespace spurwright::io {

Result<std::string> empty_beside(const std::string& path) {
    std::string beside = path + ".part-XXXXXX";
    const OpenFile file(::mkstemp(beside.data()));
    if (!file) return failure(unwritable(path, errno));
    return beside;
}

Result<void> put_in_place(const std::string& beside, const std::string& path) {
    OpenFile file(::open(beside.c_str(), O_RDWR | O_CLOEXEC));
    if (!file || ::fsync(file.file()) != 0 || !file.close_now() || ::rename(beside.c_str(), path.c_str()) != 0) {
        const int code = errno;
        ::unlink(beside.c_str());
        return failure(unwritable(path, code));
    }
    const auto slash = path.rfind('/');
    const OpenFile folder(::open(slash == std::string::npos ? "." : slash == 0 ? "/" : path.substr(0, slash).c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
    if (folder) ::fsync(folder.file()); // the new name itself; some file systems cannot, and the file is whole anyway
    return {};
}

} // namespace spurwright::io
