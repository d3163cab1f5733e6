// What was changed of one vine of the book, the newest first, as the store noted it. Must not know: sentences, screens.
#pragma once

#include "scenarios/reference_vines/book.h"

namespace spurwright::reference_vines {

enum class VineChangeKind : unsigned char { named, moved, weighed, reweighed, noted, taken_back };
constexpr auto words_of(VineChangeKind) { return std::to_array<std::string_view>({"named", "moved", "weighed", "reweighed", "noted", "taken-back"}); }

struct VineChange {
    std::string when_utc;
    VineChangeKind kind{};
    bool undoes = false;              // by taking an act back
    int winter = 0;                   // of a weighing
    std::optional<Mass> before, after;
};

inline constexpr int most_changes_listed = 100;

[[nodiscard]] Result<std::vector<VineChange>> vine_history(records::Store& store, std::int64_t vine);

} // namespace spurwright::reference_vines
