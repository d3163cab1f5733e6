// What came of a quiz, worked out from its events alone. Counts stand beside every share; nobody is ranked: groups stand
// in the order of their posts, people by number. Must not know: sentences, screens, names.
#pragma once

#include <map>
#include <optional>
#include <vector>

#include "scenarios/quiz/quiz.h"

namespace spurwright::quiz {

struct Share {
    int right = 0, of = 0;
    std::optional<PerMille> share() const;  // nothing of nobody
    bool operator==(const Share&) const = default;
};

struct ItemResult {
    std::size_t item = 0;
    bool dropped = false, rekeyed = false, scored = true;
    Share first, last;                       // before talking, and what counts
    std::optional<Answer> commonest_wrong;   // of what counts; the lowest of equals
    int commonest_wrong_count = 0;
    bool operator==(const ItemResult&) const = default;
};

struct RuleResult {
    rules::RuleName rule{};
    Share answers;
    bool named() const { return answers.of >= fewest_to_name; }  // else too few to call it a weakness
    static constexpr int fewest_to_name = 8;                     // our choice
    bool operator==(const RuleResult&) const = default;
};

struct Results {
    std::vector<ItemResult> items;         // revealed ones, dropped ones too, in their order
    std::vector<RuleResult> rules;         // in the order of the rule list, of items that count
    std::map<Voter, Share> voters;         // posts and people, of items that count
    std::vector<rules::RuleName> to_show;  // the two to walk through in the row: most wrong answers first, at least one
    Share all;
    bool operator==(const Results&) const = default;
};

// An item counts once it was revealed, unless it was dropped or is only good to talk about.
Results results_of(const Quiz& quiz);

}  // namespace spurwright::quiz
