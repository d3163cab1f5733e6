// What a plan brings: the vine as pruned is grown on through seasons of drawn weather, cold and frost, pruned each
// later winter by a good pruner, with the memory of its crops. The same weather for every plan, so that plans differ by
// themselves alone; each draw has its own luck of buds and shoots as well. A plausible vine under stated assumptions,
// never a forecast. Must not know: sentences, screens.
#pragma once

#include <array>
#include <functional>
#include <memory>
#include <optional>
#include <string_view>
#include <vector>

#include "sim/growth/variety.h"
#include "sim/rules/house_rules.h"
#include "sim/vine/vine.h"
#include "sim/weather/budbreak.h"
#include "sim/weather/climate.h"
#include "sim/weather/spring.h"

namespace spurwright::ahead {

inline constexpr int most_seasons = 10, weather_draws = 20;
inline constexpr std::string_view usual_climate = "inland-continental"; // where none is said

// One number a winter and draw; `thickness_mm` and `cane_distance_mm` (along the wood to the head) have one a cane.
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
    creep_mm, // of the laid canes' starts, along the wood
    climb_mm, // of them over the ground; of a cordon's spurs from their arm
    good_canes, // to lay by the house's full bands; of a cordon good spurs of their places
    good_left, // of them, on the near post's side
    good_right,
    cane_distance_mm,
    open_day, // of the year, on which the buds of laid canes open: their mean
};
inline constexpr std::size_t figure_count = 16;
constexpr auto words_of(Figure) {
    return std::to_array<std::string_view>({"shoots", "non_count_shoots", "blind_nodes", "thickness_mm", "buds_killed",
                                            "frost_loss_share", "yield_kg", "prunings_g", "crop_to_prunings",
                                            "creep_mm", "climb_mm", "good_canes", "good_left", "good_right",
                                            "cane_distance_mm", "open_day"});
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
    weather::LateActs late;                    // of the first spring
    bool kickers = false; // what stands upright and uncut is insurance: looked at after the first spring's frost, then
                          // cut off, or laid where the laid canes are dead; else it stays as it stands
};

// One season of the vine's own variety and of a climate by name. A variety or climate that we have no values of is the plain
// variety, the usual climate.
AheadWish usual_wish(const Vine& vine, std::string_view climate = usual_climate);

// The next winter under the first draw, which keeps the vine's own luck.
struct NextVine {
    Vine vine;        // uncut
    AheadWinter told; // of this one life; of thickness and distance the middle of its canes
};

// One draw's next winter: each figure's middle; nothing where it gave no number.
using DrawnWinter = std::array<std::optional<double>, figure_count>;

struct Ahead {
    std::vector<AheadWinter> winters; // the next winter first
    std::vector<DrawnWinter> draws;   // of the next winter: two plans' draws of one number had the same weather
    std::array<int, 3> budbreaks{};   // seasons by weather::BudbreakRule
    std::shared_ptr<const NextVine> next;
    int kickers_laid = 0; // draws in which the laid canes were dead and a kicker took their place
};

// `pruned` is this winter's vine after a plan. `house` says which canes are good. `progress` is called after each draw.
Ahead look_ahead(const Vine& pruned, const rules::HouseRules& house, const AheadWish& wish,
                 const std::function<void()>& progress = {});

} // namespace spurwright::ahead
