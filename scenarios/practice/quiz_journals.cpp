#include "scenarios/practice/quiz_journals.h"

#include <algorithm>
#include <filesystem>
#include <vector>

#include "scenarios/io/journal.h"
#include "scenarios/io/safe_file.h"
#include "scenarios/quiz/event_text.h"
#include "scenarios/settings/work_lock.h"

namespace spurwright::practice {
namespace {

std::vector<std::string> journals_in(const std::string& folder, std::string_view ending) {
    std::vector<std::string> files;
    std::error_code fault;
    for (std::filesystem::directory_iterator at(folder, fault), end; !fault && at != end; at.increment(fault)) {
        const std::string name = at->path().filename().string();
        if (name.starts_with("wall") && name.ends_with(ending)) files.push_back(at->path().string());
    }
    std::stable_sort(files.begin(), files.end());
    return files;
}

bool is_answer_of(const std::string& entry, std::int64_t number) {
    const auto event = quiz::read_event(entry, "journal");
    const auto* answered = event ? std::get_if<quiz::event::Answered>(&*event) : nullptr;
    return answered && answered->voter.way == quiz::Way::person && answered->voter.number == number;
}

}  // namespace

Result<void> may_forget_in_journals(const std::string& work_folder) {
    if (work_folder.empty() || !io::is_there(work_folder)) return {};
    settings::WorkLock lock(work_folder);
    if (lock.held_by_another()) return failure({Fault::not_allowed, {"error.crew.window-open"}, {}, {"crew forget", 0, 0, 0}});
    return {};
}

Result<std::int64_t> forget_in_journals(const std::string& work_folder, std::int64_t number) {
    if (auto may = may_forget_in_journals(work_folder); !may) return failure(may.error());
    std::int64_t gone = 0;
    for (const std::string& path : journals_in(work_folder, ".journal")) {
        const auto bytes = io::read_file(path, io::largest_journal);
        if (!bytes) return failure(bytes.error());
        const io::JournalEntries read = io::read_entries(*bytes);
        std::string kept;
        std::int64_t of_this = 0;
        for (const std::string& entry : read.entries) {
            if (is_answer_of(entry, number)) ++of_this;
            else kept += io::entry_bytes(entry);
        }
        // A torn end may hold the number as well; it was never acknowledged.
        if (of_this == 0 && read.good_bytes == bytes->size()) continue;
        if (auto written = io::write_file(path, kept); !written) return failure(written.error());
        gone += of_this;
    }
    for (const std::string& path : journals_in(work_folder, ".tail")) {
        std::error_code fault;
        std::filesystem::remove(path, fault);
        if (fault) return failure({Fault::cannot_write, {"error.store.backup-stays"}, {}, {path, 0, 0, 0}});
    }
    return gone;
}

}  // namespace spurwright::practice
