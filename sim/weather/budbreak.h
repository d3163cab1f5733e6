// When a cultivar's buds open in a season, and by which rule that was said: by hardiness in cold climates, by a heat
// sum where hardiness does not decide.
#pragma once

#include "sim/weather/hardiness.h"

namespace spurwright::weather {

enum class BudbreakRule : unsigned char { hardiness, heat_sum, none };
constexpr auto words_of(BudbreakRule) { return std::to_array<std::string_view>({"hardiness", "heat-sum", "none"}); }

struct Budbreak {
    int day = last_day + 1;
    BudbreakRule rule = BudbreakRule::none; // none: the series ends before any bud opens
};

// The heat sum counts above 4.5 C from 1 March to 240 C d (computed from 46 years of one site; error 4.5 to 6.5 days),
// scaled by early or late as the published sums from 1 April are [purdue-double].
Budbreak budbreak(const growth::Variety& variety, const Temperatures& t, const growth::Constants& c);
// The heat-sum rule alone.
Budbreak budbreak_by_heat(growth::Burst burst, const Temperatures& t, const growth::Constants& c);

// Bloom: nothing where the series ends before [pratt-coombe for the nodes by then].
std::optional<int> bloom_day(int budbreak_day, const Temperatures& t, const growth::Constants& c);

} // namespace spurwright::weather
