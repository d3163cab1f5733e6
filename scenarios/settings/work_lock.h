// One window at a time keeps the work: the system holds the lock for as long as the process lives, so that a crash
// leaves none behind.
#pragma once

#include <string>

namespace spurwright::settings {

class WorkLock {
public:
    // Of a folder that is there.
    explicit WorkLock(const std::string& folder);
    ~WorkLock();
    WorkLock(const WorkLock&) = delete;
    WorkLock& operator=(const WorkLock&) = delete;
    bool held() const { return held_; }
    bool held_by_another() const { return another_; }  // else the folder allows no lock at all

private:
    int file_ = -1;
    bool held_ = false, another_ = false;
};

}  // namespace spurwright::settings
