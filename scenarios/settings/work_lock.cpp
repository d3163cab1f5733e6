#include "scenarios/settings/work_lock.h"

#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>

#include <cerrno>

namespace spurwright::settings {

WorkLock::WorkLock(const std::string& folder) : file_(::open((folder + "/lock").c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0600)) {
    if (file_ < 0) return;
    held_ = ::flock(file_, LOCK_EX | LOCK_NB) == 0;
    another_ = !held_ && errno == EWOULDBLOCK;
}

WorkLock::~WorkLock() {
    if (file_ >= 0) ::close(file_);
}

}  // namespace spurwright::settings
