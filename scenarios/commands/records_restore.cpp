// records restore: a copy of the records put back in place of them.
#include "scenarios/commands/records_restore.h"

#include <filesystem>

#include "scenarios/io/safe_file.h"
#include "scenarios/records/people.h"
#include "scenarios/records/restore.h"
#include "scenarios/settings/folders.h"
#include "scenarios/settings/work_lock.h"
#include "scenarios/words/layout.h"

namespace spurwright::commands {
namespace {

// The copy, opened and read whole: every event, vine and rule set of it.
Result<records::Store> sound_copy(const std::string& file, const std::string& store_file, records::Checked& found, const words::Words& words) {
    std::error_code fault;
    if (!io::is_there(file)) return failure(refusal(Fault::bad_file, "error.file.no-such", {}, file));
    if (std::filesystem::is_directory(file, fault)) return failure(refusal(Fault::bad_file, "error.file.is-folder", {}, file));
    if (std::filesystem::equivalent(file, store_file, fault)) return failure(refusal(Fault::not_allowed, "error.records.restores-itself", {}, file));
    const auto damaged = [&](int places, const std::string& first) {
        return refusal(Fault::bad_file, "error.records.copy-damaged", {{"n", Count{places}}, {"text", first}}, file);
    };
    auto store = records::Store::open_to_read(file);
    if (!store && store.error().key.name == "error.store.damaged") return failure(damaged(1, words.sentence(TextKey{"records.lost.copy"})));
    if (!store) return failure(store.error());
    const auto checked = records::check_contents(**store);
    if (!checked) return failure(checked.error());
    if (!checked->damaged.empty()) return failure(damaged(static_cast<int>(checked->damaged.size()), words.sentence(checked->damaged.front().what)));
    found = *checked;
    return std::move(**store);
}

// Where what was there before lies now; nothing where nothing was.
struct PutBack {
    std::optional<std::string> aside;
    bool was_damaged = false;
};
Result<PutBack> put_in_place_of(const std::string& store_file, records::Store& copy) {
    const bool was_there = io::is_there(store_file);
    auto present = records::Store::open(store_file);
    if (!was_there && present) {
        if (auto done = records::become(*present, copy.path()); !done) return failure(done.error());
        return PutBack{};
    }
    auto aside = present ? records::put_back(*present, copy, records::today()) : Result<std::string>(failure(present.error()));
    if (aside) return PutBack{*aside, false};
    if (aside.error().fault != Fault::bad_file) return failure(aside.error()); // newer, or not to be written
    aside = records::put_back_over_damaged(store_file, copy, records::today());
    if (!aside) return failure(aside.error());
    return PutBack{*aside, true};
}

Result<Answer> answer_records_restore(const Asked& asked, const Surroundings& around) {
    const settings::Folders folders = settings::own_folders();
    const std::string& file = asked.subject;
    if (folders.store_file.empty()) return failure(refusal(Fault::cannot_write, "error.store.no-home", {}, "records restore"));
    records::Checked found;
    auto copy = sound_copy(file, folders.store_file, found, around.words);
    if (!copy) return failure(copy.error());
    const auto people = records::people_of(*copy);
    if (!people) return failure(people.error());
    // Held until the copy is in place, so that no window opens on what is about to go.
    if (auto made = settings::make_folder(folders.work_folder); !made) return failure(made.error());
    const settings::WorkLock lock(folders.work_folder);
    if (lock.held_by_another()) return failure(refusal(Fault::not_allowed, "error.records.window-open", {}, "records restore"));
    const auto done = put_in_place_of(folders.store_file, *copy);
    if (!done) return failure(done.error());
    Answer answer;
    answer.object.set("file", file);
    answer.object.set("store", folders.store_file);
    answer.object.set("events", found.events);
    answer.object.set("people", static_cast<std::int64_t>(people->size()));
    answer.object.set("vines", found.vines);
    answer.object.set("rule_sets", found.rule_sets);
    answer.object.set("aside", done->aside ? io::Json(*done->aside) : io::Json());
    answer.object.set("was_damaged", done->was_damaged);
    answer.text = words::wrapped(around.words("records.restored", {{"n", Count{found.events}}, {"people", Count{static_cast<std::int64_t>(people->size())}}, {"file", file}}));
    if (done->aside) answer.text += words::wrapped(around.words(done->was_damaged ? "records.aside-damaged" : "records.aside", {{"file", *done->aside}}));
    answer.text += words::wrapped(around.words("records.restored-people"));
    return answer;
}

} // namespace

Verb records_restore_verb() { return {"records restore", "FILE", TextKey{"verb.records-restore"}, {}, answer_records_restore}; }

} // namespace spurwright::commands
