// What a plan brings: the vine as pruned is grown on through seasons of drawn weather, cold and frost, pruned each
// later winter by a good pruner, with the memory of its crops. The same weather for every plan, so that plans differ by
// themselves alone; each draw has its own luck of buds and shoots as well. A plausible vine under stated assumptions,
// never a forecast. Must not know: sentences, screens.
#pragma once

#include <array>
#include <functional>
#include <string_view>
#include <vector>

#include "sim/growth/variety.h"
#include "sim/rules/house_rules.h"
#include "sim/vine/vine.h"
#include "sim/weather/budbreak.h"
#include "sim/weather/climate.h"

namespace spurwright::ahead {

inline constexpr int most_seasons = 10, weather_draws = 20;

// One number a winter and draw; `thickness_mm` has one a cane.
enum class Figure : unsigned char {
    shoots,
    non_count_shoots,
    blind_nodes,
    thickness_mm,
    buds_killed,
    frost_loss_share,
    yield_kg,
    prunings_g,
    crop_to_prunings,
    creep_mm,
    climb_mm,
    good_canes,
};
inline constexpr std::size_t figure_count = 12;
constexpr auto words_of(Figure) {
    return std::to_array<std::string_view>({"shoots", "non_count_shoots", "blind_nodes", "thickness_mm", "buds_killed",
                                            "frost_loss_share", "yield_kg", "prunings_g", "crop_to_prunings",
                                            "creep_mm", "climb_mm", "good_canes"});
}

// Of all draws: the middle, and what a tenth lie below and above. Without a number where no draw gave one (nothing
// laid).
struct Spread {
    bool known = false;
    double median = 0, low = 0, high = 0;
};
Spread spread_of(std::vector<double> values);

struct AheadWinter {
    int winter = 0; // since planting
    std::array<Spread, figure_count> figures;
    const Spread& operator[](Figure figure) const { return figures[static_cast<std::size_t>(figure)]; }
};

struct AheadWish {
    int seasons = 1;                           // 1 to most_seasons
    const growth::Variety* variety = nullptr;  // not null
    const weather::Climate* climate = nullptr; // not null where `own` is empty
    std::vector<weather::Temperatures> own;    // own seasons, drawn from in any order
};

struct Ahead {
    std::vector<AheadWinter> winters; // the next winter first
    std::array<int, 3> budbreaks{};   // seasons by weather::BudbreakRule
};

// `pruned` is this winter's vine after a plan. `house` says which canes are good. `progress` is called after each draw.
Ahead look_ahead(const Vine& pruned, const rules::HouseRules& house, const AheadWish& wish,
                 const std::function<void()>& progress = {});

} // namespace spurwright::ahead
