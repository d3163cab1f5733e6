// A finished vine as an event of kind "answer": what a person did to which vine, by which rules, and what came of it, so
// that years later the same vine opens and is judged again. Must not know: screens, how a vine was served.
#pragma once

#include <optional>
#include <string>

#include "scenarios/io/json.h"
#include "scenarios/records/events.h"
#include "scenarios/words/words.h"
#include "sim/planning/planning.h"
#include "sim/pruning/plan.h"
#include "sim/rules/findings.h"
#include "sim/rules/house_rules.h"

namespace spurwright::records {

inline constexpr std::string_view answer_kind = "answer";
inline constexpr int answer_version = 1;

struct FinishedVine {
    Vine vine; // uncut this winter
    std::string code; // empty where no code grows it
    Plan plan;
    std::size_t given = 0; // edits of it that were made before
    rules::HouseRules house;
    std::string house_name, place, mode, view; // place: "lesson" or "own"; view: "row" or "orbit"
    std::optional<std::int64_t> person;
    rules::Judgement judgement;
    std::optional<Tenths> best; // none: the vine offers no plan
    planning::Tally tally;
    std::optional<std::int32_t> difficulty; // of the vine, thousandths on the scale of answers (planning/difficulty.h)
    std::optional<Tenths> tolerance; // within so much of the best is as good
};

// Keeps the event, its vine and its rules in one act. Nothing, and nothing kept, where the last answer on that vine by
// that person was the same plan under the same rules: a window that went on after a crash finishes it twice.
[[nodiscard]] Result<std::optional<std::int64_t>> keep_finished(Store& store, const FinishedVine& finished, const words::Words& words, const std::string& when_utc);

// The vine and the rules, kept once by their hashes; within an act of the caller's. `worked`: rows cut this winter may be in it.
[[nodiscard]] Result<void> keep_what_it_needs(Store& store, const Vine& vine, const std::string& code, const rules::HouseRules& house, const std::string& house_name);

std::string program_version();

} // namespace spurwright::records
