// The events written out: a table for people's programs, or every body whole as JSON (assets/schemas/records-1.json).
#pragma once

#include <optional>
#include <string>

#include "scenarios/records/events.h"
#include "scenarios/words/words.h"

namespace spurwright::records {

struct ExportWish {
    std::string kind; // empty: all
    std::optional<std::int64_t> person;
    bool with_vines = false; // JSON alone
};
struct ExportedRecords {
    std::string text;
    std::int64_t written = 0;  // events
    std::int64_t left_out = 0; // of other kinds or persons
    std::int64_t rows = 0, vines = 0, rule_sets = 0;
};

// A row an answer, a question of a quiz, a person of a quiz, a sign-off. UTF-8, CRLF, RFC 4180; a text that looks like a
// formula gets a ' before it, a number never. Questions and answers are told in `words`.
[[nodiscard]] Result<ExportedRecords> records_csv(Store& store, const ExportWish& wish, const words::Words& words);
[[nodiscard]] Result<ExportedRecords> records_json(Store& store, const ExportWish& wish, const words::Words& words);

} // namespace spurwright::records
