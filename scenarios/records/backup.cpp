#include "scenarios/records/backup.h"

#include <algorithm>
#include <filesystem>

#include "scenarios/io/safe_file.h"
#include "scenarios/settings/folders.h"

namespace spurwright::records {
namespace {

std::string backup_folder(const Store& store) { return settings::folder_of(store.path()) + "/backups"; }

Result<void> take_away(const std::string& file) {
    std::error_code fault;
    std::filesystem::remove(file, fault);
    if (fault) return failure({Fault::cannot_write, TextKey{"error.store.backup-stays"}, {}, {file, 0, 0, 0}});
    return {};
}

} // namespace

std::vector<std::string> backups_of(const Store& store) {
    std::vector<std::string> files;
    std::error_code fault;
    for (std::filesystem::directory_iterator at(backup_folder(store), fault), end; !fault && at != end; at.increment(fault))
        if (at->path().filename().string().starts_with("store-")) files.push_back(at->path().string());
    std::sort(files.begin(), files.end());
    return files;
}

Result<void> back_up_daily(Store& store, const Day& today) {
    const std::string name = backup_folder(store) + "/store-" + day_text(today) + ".sqlite";
    if (io::is_there(name)) return {};
    const auto acts = store.whole("SELECT count(*) FROM (SELECT 1 FROM act LIMIT 1)");
    if (!acts) return failure(acts.error());
    if (*acts == 0) return {};
    if (auto sound = store.check(); !sound) return sound; // a damaged one is never put over good ones
    if (auto made = settings::make_folder(backup_folder(store)); !made) return made;
    const std::string part = backup_folder(store) + "/part-" + day_text(today);
    if (auto gone = take_away(part); !gone) return gone;
    if (auto copied = store.run("VACUUM INTO ?1", {part}); !copied) return copied;
    // SQLite syncs what it copied; the name comes last, so that a copy is whole or not there.
    std::error_code fault;
    std::filesystem::rename(part, name, fault);
    if (fault) return failure({Fault::cannot_write, TextKey{"error.file.unwritable"}, {{"code", Count{fault.value()}}}, {name, 0, 0, 0}});
    std::vector<std::string> all = backups_of(store);
    for (std::size_t i = 0; i + most_backups < all.size(); ++i)
        if (auto gone = take_away(all[i]); !gone) return gone;
    return {};
}

Result<void> drop_backups(const Store& store) {
    for (const std::string& file : backups_of(store))
        if (auto gone = take_away(file); !gone) return gone;
    return {};
}

} // namespace spurwright::records
