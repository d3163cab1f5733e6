// What to do next, and why; which vines come back, and why; how far each rule is. From what was done before alone.
// Must not know: screens, the store, how a vine is opened.
#pragma once

#include <optional>
#include <vector>

#include "scenarios/drill/progress.h"
#include "scenarios/learning/success.h"
#include "scenarios/records/past_vines.h"
#include "sim/core/text_key.h"

namespace spurwright::learning {

// A vine met before that comes back.
struct Returning {
    std::size_t at = 0; // into the past vines: the last time it was done
    TextKey why;
    Arguments arguments;
};
inline constexpr std::size_t most_returning = 6;
// Those whose last pruning was not as good, the last vine of all only after a day; most lost first.
std::vector<Returning> returning_vines(const std::vector<records::PastVine>& past, const records::Day& today);

// The crew's four words of a rule on whole vines: alone is no loss of it beyond the tolerance on four of the last five, on
// two days; needs a look is two of the last five lost by it. No time. Our choice.
struct RuleProgress {
    rules::RuleName rule{};
    drill::Mastery mastery{};
    int vines = 0, lost = 0; // of the last five
};
// Only rules that lost something in the last ten vines, most often first.
std::vector<RuleProgress> rules_to_look_at(const std::vector<records::PastVine>& past);

// How strong on whole vines: Glicko-2, a period a day; the vine's difficulty is the opponent, a loss a part of a win.
Strength strength_on_vines(const std::vector<records::PastVine>& past);

inline constexpr double wanted_success = 0.85; // [L7: 15.87 % error, theory]; our choice for vines
// Where a new vine should lie on the scale of answers: for the wanted success, a step harder where 9 of the last ten were
// as good, a step easier under 8 (our choice).
double wanted_vine_difficulty(const std::vector<records::PastVine>& past);
double expected_success(const std::vector<records::PastVine>& past, double difficulty);

enum class NextThing : unsigned char { first_scene, looks, met_vine, new_vine };
struct WayOn {
    NextThing thing{};
    std::size_t at = 0; // of a met vine: into the past vines
    double difficulty = 0;
    TextKey why;
    Arguments arguments;
};
WayOn way_on(const std::vector<records::PastVine>& past, const drill::LookAnswers& looks, const records::Day& today, std::int32_t day_number);

int days_between(const records::Day& from, const records::Day& to);

} // namespace spurwright::learning
