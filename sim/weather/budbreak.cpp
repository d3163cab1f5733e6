#include "sim/weather/budbreak.h"

namespace spurwright::weather {

Budbreak budbreak_by_heat(growth::Burst burst, const Temperatures& t, const growth::Constants& c) {
    const double middle = (c.budbreak_sum_early + c.budbreak_sum_late) / 2;
    const double wanted =
        c.spring_sum * (burst == growth::Burst::early ? c.budbreak_sum_early : c.budbreak_sum_late) / middle;
    const int day = day_of_sum(t, c.spring_sum_base, static_cast<int>(c.spring_sum_from), wanted);
    if (day >= t.end_day()) return {};
    return {day, BudbreakRule::heat_sum};
}

Budbreak budbreak(const growth::Variety& variety, const Temperatures& t, const growth::Constants& c) {
    if (const Hardiness* row = find_hardiness(variety.hardiness))
        if (const auto day = budbreak_by_hardiness(harden(*row, t), variety.species, c))
            return {*day, BudbreakRule::hardiness};
    return budbreak_by_heat(variety.burst, t, c);
}

std::optional<int> bloom_day(int budbreak_day, const Temperatures& t, const growth::Constants& c) {
    const int day = day_of_sum(t, c.gdd_base, budbreak_day, c.bloom_sum);
    return day < t.end_day() ? std::optional(day) : std::nullopt;
}

} // namespace spurwright::weather
