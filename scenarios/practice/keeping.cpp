#include "scenarios/practice/keeping.h"

#include <utility>

#include "scenarios/io/vine_file.h"
#include "scenarios/practice/disagreement.h"

namespace spurwright::practice {
namespace {

Error not_saved() { return {Fault::cannot_write, {"screen.message.not-saved"}, {}, {}}; }

}  // namespace

Result<void> Keeping::recall(settings::Settings& to) {
    if (folders_.settings_file.empty()) return {};
    const settings::Loaded loaded = settings::load_settings(folders_.settings_file);
    to = loaded.settings;
    may_save_settings_ = loaded.may_save;
    if (loaded.why) return failure({loaded.why->fault, {"screen.message.settings-unread"}, {{"path", folders_.settings_file}}, {}});
    return {};
}

Result<void> Keeping::recall_work() {
    if (!work_.keeps()) return {};
    if (auto made = settings::make_folder(work_.folder()); !made) {
        may_keep_ = false;
        return made;
    }
    lock_ = std::make_unique<settings::WorkLock>(work_.folder());
    if (lock_->held_by_another()) {
        read_only_ = true;
        return failure({Fault::not_allowed, {"screen.message.second-window"}, {}, {}});
    }
    auto work = work_.load();
    if (!work) {
        if (work.error().fault == Fault::newer) may_keep_ = false;  // left as it was
        return failure({work.error().fault, {"screen.message.work-unread"}, {{"path", work_.folder()}}, {}});
    }
    if (*work && !(*work)->plan.edits.empty()) offered_ = **work;
    return {};
}

std::optional<settings::Work> Keeping::take_offered() { return std::exchange(offered_, std::nullopt); }

Result<void> Keeping::keep(const Practice& practice, std::uint64_t vine_number) {
    if (!work_.keeps() || read_only_ || !may_keep_) return {};
    settings::Work work;
    const Task& task = practice.task();
    work.code = task.code;
    work.scene = task.scene;
    work.house = task.house_name;
    work.from_book = task.from_book;
    work.plan = practice.all_acts();
    work.done = practice.done_count();
    if (!task.scene.empty()) work.number = task.scene_number;
    if (task.ladder) {
        work.rung = task.ladder->number;
        work.shown = practice.shown_acts();
    }
    if (task.code.empty() && task.scene.empty()) {
        work.vine_file = "vine.json";
        if (auto made = settings::make_folder(work_.folder()); !made) return failure(not_saved());
        if (vine_kept_ != vine_number) {
            io::VineFile file;
            file.vine = task.vine;
            if (!io::save_vine_file(work_.path(work.vine_file), file)) return failure(not_saved());
            vine_kept_ = vine_number;
        }
    }
    if (auto saved = work_.save(work); saved) unsaved_said_ = false;
    else if (!std::exchange(unsaved_said_, true)) return failure(not_saved());
    return {};
}

Result<void> Keeping::keep(const settings::Settings& settings) const {
    if (folders_.settings_file.empty() || read_only_ || !may_save_settings_) return {};
    auto made = settings::make_folder(settings::folder_of(folders_.settings_file));
    return made ? settings::save_settings(folders_.settings_file, settings) : made;
}

Result<void> Keeping::keep_disagreement(const Practice& practice, const std::string& note) const {
    if (!work_.keeps() || read_only_) return failure(not_saved());
    if (auto made = settings::make_folder(work_.folder()); !made) return made;
    return add_line(work_.path("disagreements.jsonl"), disagreement_line(practice, note));
}

}  // namespace spurwright::practice
