// What is kept on disk between sittings: settings, the work in hand, what the house was told. Says what could not be
// kept and goes on. Must not know: screens, requests, how a vine is opened.
#pragma once

#include <memory>
#include <optional>
#include <string>

#include "scenarios/practice/practice.h"
#include "scenarios/settings/folders.h"
#include "scenarios/settings/settings.h"
#include "scenarios/settings/work_file.h"
#include "scenarios/settings/work_lock.h"

namespace spurwright::practice {

class Keeping {
public:
    explicit Keeping(const settings::Folders& folders) : folders_(folders), work_(folders.work_folder) {}

    // Changes `to` into the settings kept from before, as far as they could be read; a fault is to be said.
    [[nodiscard]] Result<void> recall(settings::Settings& to);
    // Takes the folder of the work for this window, and looks for work to offer; a fault is to be said.
    [[nodiscard]] Result<void> recall_work();

    bool read_only() const { return read_only_; }  // another window keeps the work
    const std::optional<settings::Work>& offered() const { return offered_; }
    std::optional<settings::Work> take_offered();
    void set_aside() { work_.set_aside(); }  // work offered and not wanted: under another name, nothing is deleted
    std::string path(const std::string& name) const { return work_.path(name); }
    // Of a file kept beside the work; empty where nothing is kept.
    std::string path_beside(const std::string& name) const { return work_.keeps() && !read_only_ ? work_.path(name) : std::string(); }

    const std::string& store_file() const { return folders_.store_file; }  // the records; empty where nothing is kept

    // A fault is to be said; that the same work cannot be saved is one the first time only, as the work goes on in memory.
    // `vine_number` tells one vine in hand from the next.
    [[nodiscard]] Result<void> keep(const Practice& practice, std::uint64_t vine_number);
    [[nodiscard]] Result<void> keep(const settings::Settings& settings) const;
    // What a person says against a finding. Faults: cannot_write, also where nothing is kept.
    [[nodiscard]] Result<void> keep_disagreement(const Practice& practice, const std::string& note) const;

private:
    settings::Folders folders_;
    settings::WorkFolder work_;
    std::unique_ptr<settings::WorkLock> lock_;
    std::optional<settings::Work> offered_;
    std::uint64_t vine_kept_ = 0;
    bool read_only_ = false, may_save_settings_ = true, may_keep_ = true, unsaved_said_ = false;
};

}  // namespace spurwright::practice
