// An append-only journal: each entry is on disk before it is acknowledged, and whatever a crash left of the last one is
// set aside at the next start, never the entries before it. Records of length (u32, little end first), CRC-32C of the
// payload (u32), payload. Must not know: what entries say.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "scenarios/io/open_file.h"

namespace spurwright::io {

inline constexpr std::size_t longest_entry = 1 << 20;                // bytes; our choice
inline constexpr std::size_t largest_journal = 64 * 1024 * 1024;     // bytes; our choice

// The whole entries of a journal's bytes, in order, and how many bytes they take: what follows is a torn tail.
struct JournalEntries {
    std::vector<std::string> entries;
    std::size_t good_bytes = 0;
};
JournalEntries read_entries(std::string_view bytes);
std::string entry_bytes(std::string_view payload);

class Journal {
public:
    // Opens or begins the journal at `path`. A torn tail goes to "PATH.tail" and is cut off here.
    // Faults: bad_file, cannot_write; then nothing at `path` was changed.
    [[nodiscard]] static Result<Journal> open(const std::string& path);

    const std::vector<std::string>& entries() const { return entries_; }  // as found at the start, then as appended
    bool had_tail() const { return had_tail_; }
    const std::string& path() const { return path_; }

    // On disk when it returns. Fault::cannot_write: the journal ends as before, and the next append tries again.
    [[nodiscard]] Result<void> append(std::string_view payload);

private:
    Journal(std::string path, OpenFile file) : path_(std::move(path)), file_(std::move(file)) {}

    std::string path_;
    OpenFile file_;
    std::vector<std::string> entries_;
    std::size_t size_ = 0;  // bytes that are whole entries
    bool had_tail_ = false;
};

}  // namespace spurwright::io
