// Spring on a pruned vine: when each kept bud opens, by the wood it stands on, and what cold takes of them. A growing
// tip holds back the buds below it on its own axis and on no other: so a kicker or a spare delays nothing.
#pragma once

#include <cstdint>
#include <vector>

#include "sim/vine/vine.h"
#include "sim/weather/frost.h"
#include "sim/weather/kill.h"
#include "sim/weather/shoots.h"

namespace spurwright::weather {

// What a kept axis is on the night: laid along the wire, cut to a few buds, or upright with its tip on (a kicker, a
// spare, a cane left long).
enum class KeptAs : unsigned char { laid, spur, upright };
constexpr auto words_of(KeptAs) { return std::to_array<std::string_view>({"laid", "spur", "upright"}); }

// Acts after winter, as days; 0: done in winter, or never for what stays upright.
struct LateActs {
    int laid_day = 0;    // the laid canes stood upright until then
    int upright_cut = 0; // what stands upright is cut back or laid on that day
    int cut_day = 0;     // canes to lay and spurs stood whole until then, so that tips that are gone held their buds
};

struct OpenBud {
    NodeId node;
    KeptAs kept_as{};
    int day = 0;       // at whose end the bud is open; the series' end where it is held all season
    bool held = false; // a tip of its own axis held it back, one cut off since too
    double height_m = 0;
};

// The live count buds of `pruned`, by node. Needs a series that begins on first_day.
std::vector<OpenBud> opening(const Vine& pruned, int budbreak_day, const LateActs& acts, const Temperatures& t,
                             const growth::Constants& c);

// Shares of primary shoots lost to spring frosts, one a bud: the worst night up to midsummer counts, at the bud's
// height and stage. Nights before budbreak belong to winter_kill().
std::vector<double> frost_losses(const std::vector<OpenBud>& buds, int budbreak_day, growth::Species species,
                                 const Temperatures& t, const growth::Constants& c);

struct ColdToll {
    int buds = 0;          // live count buds before
    int killed = 0;        // primaries dead of winter
    int compound_dead = 0; // nothing of the bud left
    int frosted = 0;       // primary shoots lost to frost
};

// Takes from the vine's buds what the season's cold takes, drawn by bud, winter and `draw_seed`: dead primaries are
// replaced by their secondaries when it grows. Nothing becomes visible on the wood.
ColdToll take_cold(Vine& pruned, const std::vector<OpenBud>& buds, const std::vector<double>& frost_share,
                   const BudKill& kill, std::uint64_t draw_seed);

} // namespace spurwright::weather
