// Cold hardiness of winter buds: the published model and its parameters, read in full [ferguson-2014]. Each day cold
// below the phase's threshold hardens, warmth above it softens, the less so the nearer the bud is to its limits.
// Not valid in mild maritime and warm climates, where the chilling that ends dormancy never comes together.
#pragma once

#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "sim/growth/growth_constants.h"
#include "sim/growth/variety.h"
#include "sim/weather/days.h"

namespace spurwright::weather {

struct Hardiness {
    std::string_view cultivar;            // "cabernet-sauvignon"
    std::string_view name;                // as people write it
    double threshold_endo, threshold_eco; // C
    double harden_endo, soften_endo, harden_eco, soften_eco;
    double at_start, hardiest, least_hardy; // C: H on day 250, Hmax, Hmin
    double theta;
    double chilling_end; // C d below 10 where dormancy ends, negative
    double rmse;         // of the published fit, C
};

// Twenty cultivars; all values read [ferguson-2014], none may be edited.
std::span<const Hardiness> hardiness_table();
const Hardiness* find_hardiness(std::string_view cultivar); // null where there is none

enum class Dormancy : unsigned char { endo, eco };

// dH of one day at this mean temperature. `may_soften` false: no chilling day has come yet.
double hardiness_step(const Hardiness& h, double hardiness, double mean_c, Dormancy phase, bool may_soften = true);

// H at the end of each day of the series, and the day on which dormancy turns from endo to eco, where it does.
struct HardinessCourse {
    std::vector<double> hardiness;
    std::optional<int> eco_from;
    double hardiest() const;
};
HardinessCourse harden(const Hardiness& h, const Temperatures& t);

// First day from 1 January on at whose end the bud stands no more cold than a bursting one (-2.2 C of vinifera, -6.4 C
// of labruscana); nothing where dormancy turns later than our limit or never, or that day never comes: there the model
// is not valid.
std::optional<int> budbreak_by_hardiness(const HardinessCourse& course, growth::Species species,
                                         const growth::Constants& c);

} // namespace spurwright::weather
