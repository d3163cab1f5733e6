// The way on, for the screen that shows it: read from the records when it is gone to. And a vine met before, opened as it
// stood before the choice that cost most. Must not know: screens.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "scenarios/learning/way_on.h"
#include "scenarios/practice/practice.h"

namespace spurwright::practice {

struct WayAhead {
    std::vector<records::PastVine> past;
    std::vector<learning::Returning> returning;
    std::vector<learning::RuleProgress> rules;
    drill::LookAnswers looks;
    learning::WayOn next;
};

// `house`: what is judged by now. Without a store everything is empty, and the way begins at the first scene.
[[nodiscard]] Result<WayAhead> way_ahead(const std::string& store_file, std::optional<std::int64_t> person);

struct MetVine {
    Task task;
    Plan before; // the acts before the first that cost more than is as good; what was given first among them
};
// Refused (bad_file): the vine or its rules are not in the records any more, or damaged.
[[nodiscard]] Result<MetVine> open_met(const std::string& store_file, const records::PastVine& past);

// The code of a new vine as near to this difficulty as a few draws come; `next` gives a code, as without a wish.
[[nodiscard]] Result<std::string> code_at_difficulty(const std::function<Result<std::string>()>& next, const rules::HouseRules& house, double wanted);

inline constexpr int codes_tried = 5; // our choice: a fifth of a second

}  // namespace spurwright::practice
