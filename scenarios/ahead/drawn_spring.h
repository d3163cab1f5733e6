// One drawn spring on a pruned vine: when its buds open, what winter's cold and spring's frost take of them. The look
// ahead lives through many of these, a spring visit looks at one. Must not know: what grows then, sentences.
#pragma once

#include <vector>

#include "scenarios/ahead/look_ahead.h"
#include "sim/weather/spring.h"

namespace spurwright::ahead {

struct DrawnSpring {
    weather::Temperatures temperatures;
    weather::Budbreak open;
    weather::BudKill kill; // nothing where the hardiness model is not valid
    std::vector<weather::OpenBud> buds;
    std::vector<double> frost_share; // one a bud
};

// `pruned` stands under the wish's climate, colder where spring frost is common there; `draw` from 1, `year` from 0:
// the wish's late acts are those of year 0 alone.
DrawnSpring drawn_spring(const Vine& pruned, const AheadWish& wish, const growth::Constants& c, std::uint32_t draw,
                         std::uint32_t year);

} // namespace spurwright::ahead
