// Every record judged again from what was kept beside it: vines by their hash, rules by theirs. What comes out otherwise
// is told, never written over. And the check that everything a record needs is there and sound.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "scenarios/records/events.h"
#include "sim/core/text_key.h"

namespace spurwright::records {

enum class Outcome : unsigned char {
    same,
    different,   // by the same judge: a defect
    other_judge, // marks of another judge's version stand beside those of now
    unreadable,  // the vine, the rules or the body cannot be read any more
};
constexpr auto words_of(Outcome) { return std::to_array<std::string_view>({"same", "different", "other-judge", "unreadable"}); }

struct Replayed {
    std::int64_t id = 0;
    std::string kind, when_utc;
    Outcome outcome{};
    std::string was, is; // what differs: "marks 87.5, best 96.0, plans 41200/12/3"
    TextKey why;         // of unreadable
    bool keys_proved = false; // of a quiz: its questions were made again and their keys came out the same
};

// Events of the kinds "answer", "lesson", "quiz" and "weighing", in their order, or the one of that number. Refused (unknown_part): there is
// no event of that number, or it is of a kind that holds nothing to judge.
[[nodiscard]] Result<std::vector<Replayed>> replay(Store& store, std::optional<std::int64_t> id, const std::function<void(int done, int of)>& progress = {});

struct Damage {
    std::string where; // "event 12", "vine 0123...", a path
    TextKey what;
};
struct Checked {
    std::int64_t events = 0, vines = 0, rule_sets = 0;
    std::size_t backups = 0;
    std::vector<Damage> damaged;
};
// Reads the whole store, every event with what it needs, every copy.
[[nodiscard]] Result<Checked> check_records(Store& store);

} // namespace spurwright::records
