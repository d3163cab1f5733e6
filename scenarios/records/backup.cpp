#include "scenarios/records/backup.h"

#include <algorithm>
#include <chrono>
#include <filesystem>

#include "scenarios/io/part_file.h"
#include "scenarios/io/safe_file.h"
#include "scenarios/records/forgetting.h"
#include "scenarios/records/restore.h"
#include "scenarios/settings/folders.h"

namespace spurwright::records {
namespace {

constexpr std::size_t largest_damaged = std::size_t{4} << 30; // bytes; our choice

std::string backup_folder(const std::string& store) { return settings::folder_of(store) + "/backups"; }

Result<void> take_away(const std::string& file) {
    std::error_code fault;
    std::filesystem::remove(file, fault);
    if (fault) return failure({Fault::cannot_write, TextKey{"error.store.backup-stays"}, {}, {file, 0, 0, 0}});
    return {};
}

// Paths in the folder of copies, in the order of their names.
std::vector<std::string> copies_where(const std::string& store, bool (*wanted)(const std::string& name)) {
    std::vector<std::string> files;
    std::error_code fault;
    for (std::filesystem::directory_iterator at(backup_folder(store), fault), end; !fault && at != end; at.increment(fault))
        if (wanted(at->path().filename().string())) files.push_back(at->path().string());
    std::sort(files.begin(), files.end());
    return files;
}

bool is_of_a_day(const std::string& name) { return name.starts_with("store-") && name.ends_with(".sqlite"); }
bool was_put_aside(const std::string& name) { return name.starts_with("before-") && name.ends_with(".sqlite"); }
bool was_begun(const std::string& name) { return name.find(".part-") != std::string::npos; }

// By a program that was stopped: one that still runs is done with it long before.
bool is_old(const std::string& file) {
    std::error_code fault;
    const auto written = std::filesystem::last_write_time(file, fault);
    return !fault && written < std::filesystem::file_time_type::clock::now() - std::chrono::hours(1);
}

// "FOLDER/KIND-2026-01-31.sqlite", or -2, -3 ... of that day.
std::string free_name(const std::string& store, std::string_view kind, const Day& today) {
    const std::string begun = backup_folder(store) + "/" + std::string(kind) + "-" + day_text(today);
    for (int i = 1;; ++i) {
        std::string name = begun + (i == 1 ? "" : "-" + std::to_string(i)) + ".sqlite";
        if (!io::is_there(name) && !io::is_there(name + "-wal")) return name;
    }
}

Result<void> copy_bytes(const std::string& from, const std::string& to) {
    const auto bytes = io::read_file(from, largest_damaged);
    if (!bytes) return failure(bytes.error());
    return io::write_file(to, *bytes);
}

} // namespace

std::vector<std::string> backups_of(const Store& store) { return copies_where(store.path(), is_of_a_day); }

std::vector<std::string> copies_of(const Store& store) {
    return copies_where(store.path(), [](const std::string& name) { return is_of_a_day(name) || was_put_aside(name); });
}

Result<void> write_copy(Store& store, const std::string& file) {
    if (io::is_there(file)) return failure({Fault::cannot_write, TextKey{"error.records.copy-there"}, {}, {file, 0, 0, 0}});
    const auto part = io::empty_beside(file);
    if (!part) return failure(part.error());
    if (auto copied = store.run("VACUUM INTO ?1", {*part}); !copied) {
        [[maybe_unused]] const auto gone = take_away(*part);
        return copied;
    }
    // Synced here, whatever the library synced of it; the name comes last, so that a copy is whole or not there.
    return io::put_in_place(*part, file);
}

Result<void> back_up_daily(Store& store, const Day& today) {
    if (auto done = finish_forgetting(store); !done) return done;
    const std::string name = backup_folder(store.path()) + "/store-" + day_text(today) + ".sqlite";
    if (io::is_there(name)) return {};
    const auto acts = store.whole("SELECT count(*) FROM (SELECT 1 FROM act LIMIT 1)");
    if (!acts) return failure(acts.error());
    if (*acts == 0) return {};
    if (auto sound = store.check(); !sound) return sound; // a damaged one is never put over good ones
    if (auto made = settings::make_folder(backup_folder(store.path())); !made) return made;
    for (const std::string& begun : copies_where(store.path(), was_begun))
        if (is_old(begun))
            if (auto gone = take_away(begun); !gone) return gone;
    if (auto written = write_copy(store, name); !written && !io::is_there(name)) return written; // there: another program was quicker
    std::vector<std::string> others = backups_of(store);
    // Never the one of today: after a clock was put back its name may be the oldest.
    others.erase(std::remove(others.begin(), others.end(), name), others.end());
    for (std::size_t i = 0; i + most_backups <= others.size(); ++i)
        if (auto gone = take_away(others[i]); !gone) return gone;
    return {};
}

Result<void> drop_backups(const Store& store) {
    for (const std::string& file : copies_where(store.path(), [](const std::string&) { return true; }))
        if (auto gone = take_away(file); !gone) return gone;
    return {};
}

Result<std::string> put_back(Store& store, Store& copy, const Day& today) {
    if (auto made = settings::make_folder(backup_folder(store.path())); !made) return failure(made.error());
    const std::string aside = free_name(store.path(), "before", today);
    if (auto kept = write_copy(store, aside); !kept) return failure(kept.error());
    if (auto done = become(store, copy.path()); !done) return failure(done.error());
    return aside;
}

Result<Store> open_backed_up(const std::string& path, const Day& today) {
    auto store = Store::open(path);
    if (!store) return store;
    if (auto copied = back_up_daily(*store, today); !copied) return failure(copied.error());
    return store;
}

Result<std::string> put_back_over_damaged(const std::string& path, Store& copy, const Day& today) {
    if (auto made = settings::make_folder(backup_folder(path)); !made) return failure(made.error());
    const std::string aside = free_name(path, "damaged", today), log = path + "-wal";
    const auto part = io::empty_beside(path);
    if (!part) return failure(part.error());
    const auto whole = [&]() -> Result<void> {
        if (auto copied = copy.run("VACUUM INTO ?1", {*part}); !copied) return copied;
        // Both files are kept before either goes; the log goes before the new file comes, which must not be read with it.
        if (io::is_there(log))
            if (auto kept = copy_bytes(log, aside + "-wal"); !kept) return kept;
        if (auto kept = copy_bytes(path, aside); !kept) return kept;
        for (const std::string& old : {log, path + "-shm"})
            if (auto gone = take_away(old); !gone) return gone;
        return {};
    }();
    if (!whole) {
        [[maybe_unused]] const auto gone = take_away(*part);
        return failure(whole.error());
    }
    if (auto placed = io::put_in_place(*part, path); !placed) return failure(placed.error());
    return aside;
}

} // namespace spurwright::records
