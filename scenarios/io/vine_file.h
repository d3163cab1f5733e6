// The vine file: one vine in one state as JSON, for people and programs ("kind": "spurwright-vine"). The reader refuses
// by line and part name; the writer leaves defaults out, so that write(read(f)) is a fixed point and keeps the hash.
// Schema: assets/schemas/vine-1.json. Must not know: rules, marks, pictures.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "sim/core/error.h"
#include "sim/vine/vine.h"

namespace spurwright::io {

inline constexpr std::string_view vine_kind = "spurwright-vine";
inline constexpr int vine_version = 1;

struct VineFile {
    Vine vine;
    std::string code;                         // empty where the vine is not exactly what a code grows
    std::optional<std::uint64_t> pruned_from; // hash of the state before, in files that `prune` wrote
    std::string plan;                         // the edits since, canonical
    std::string title, note;                  // free, at most 200 characters
};

// Faults: bad_file (with line, column, key or part), newer. `source` is what to call the file in a refusal. A code in
// the file is checked: what it grows must be this vine.
[[nodiscard]] Result<VineFile> read_vine_file(std::string_view text, const std::string& source);
std::string print_vine_file(const VineFile& file);

// Both with a path. Faults besides: cannot_write.
[[nodiscard]] Result<VineFile> load_vine_file(const std::string& path);
[[nodiscard]] Result<void> save_vine_file(const std::string& path, const VineFile& file);

} // namespace spurwright::io
