// Climates as data: a yearly wave, a daily range, and weather about it drawn day by day. The four standard climates and
// the test climate of the hardiness paper's valley are our choice; the sums they give are computed.
#pragma once

#include <cstdint>
#include <memory>
#include <span>
#include <string_view>

#include "sim/growth/growth_constants.h"
#include "sim/weather/days.h"

namespace spurwright::weather {

struct Climate {
    std::string_view name;
    double mean_c = 11, swing_c = 12, warmest_day = 201; // M, A, ph
    double day_range_c = 12;                             // highest less lowest of a day
    growth::ValueStatus status = growth::ValueStatus::choice;
};

// inland-continental, colder-continental, cool-maritime, warm; then inland-test, the harmonic inland climate in which
// the published hardiness parameters are tried.
std::span<const Climate> climates();
const Climate* find_climate(std::string_view name); // null where there is none

// The values of a climate, by the names of files. Ranges our choice: no vineyard lies beyond.
struct ClimateField {
    std::string_view name, unit;
    double Climate::*value;
    double low, high;
};
std::span<const ClimateField> climate_fields();

// The same climate with a name of its own: for one that no table holds.
std::shared_ptr<const Climate> kept(const Climate& climate);

double mean_temperature(const Climate& climate, int day); // of the wave alone

// A season of the wave alone, and one with weather: x_d = rho x_(d-1) + N(0, sd sqrt(1 - rho^2)), drawn by day from
// `seed` and `year`, so that a longer or later series never changes an earlier day.
Temperatures smooth_season(const Climate& climate);
Temperatures drawn_season(const Climate& climate, const growth::Constants& c, std::uint64_t seed, std::uint32_t year);

// Winkler's sum: base 10, 1 April to 31 October [winkler-agroclim]. Its class limits are from memory.
double winkler_sum(const Temperatures& t, const growth::Constants& c);
enum class WinklerClass : unsigned char { below, ia, ib, ii, iii, iv, v, above };
constexpr auto words_of(WinklerClass) {
    return std::to_array<std::string_view>({"below", "Ia", "Ib", "II", "III", "IV", "V", "above"});
}
WinklerClass winkler_class(double sum);

} // namespace spurwright::weather
