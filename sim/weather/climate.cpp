#include "sim/weather/climate.h"

#include <array>
#include <cmath>
#include <string>

#include "sim/core/numeric.h"
#include "sim/core/random.h"
#include "sim/growth/traits.h"

namespace spurwright::weather {
namespace {

constexpr auto known_climates = std::to_array<Climate>({
    {"inland-continental", 11.0, 12.0, 201, 13},
    {"colder-continental", 9.5, 13.5, 203, 12},
    {"cool-maritime", 12.5, 6.0, 205, 8},
    {"warm", 15.0, 8.0, 203, 12},
    {"inland-test", 11.0, 11.7, 199, 13},
});

constexpr auto climate_field_rows = std::to_array<ClimateField>({
    {"mean_c", "°C", &Climate::mean_c, -5, 25},
    {"swing_c", "°C", &Climate::swing_c, 0, 25},
    {"warmest_day", "day", &Climate::warmest_day, 150, 250},
    {"day_range_c", "°C", &Climate::day_range_c, 0, 30},
});

// A climate beside the text that it points to.
struct KeptClimate {
    std::string name;
    Climate climate;
};

constexpr int april_1 = 91, october_31 = 304;

} // namespace

std::span<const Climate> climates() { return known_climates; }

const Climate* find_climate(std::string_view name) {
    for (const Climate& climate : known_climates)
        if (climate.name == name) return &climate;
    return nullptr;
}

std::span<const ClimateField> climate_fields() { return climate_field_rows; }

std::shared_ptr<const Climate> kept(const Climate& climate) {
    const auto whole = std::make_shared<KeptClimate>();
    whole->climate = climate;
    whole->climate.name = whole->name = climate.name;
    return {whole, &whole->climate};
}

double mean_temperature(const Climate& climate, int day) {
    // Days are counted on from the autumn's year, so that a season has no jump at new year.
    const double turn = 2 * numeric::pi * (day + 365 - climate.warmest_day) / 365.25;
    return climate.mean_c + climate.swing_c * numeric::sincos(turn).cosine;
}

Temperatures smooth_season(const Climate& climate) {
    Temperatures t;
    for (int day = first_day; day <= last_day; ++day) {
        t.mean.push_back(mean_temperature(climate, day));
        t.lowest.push_back(t.mean.back() - climate.day_range_c / 2);
    }
    return t;
}

Temperatures drawn_season(const Climate& climate, const growth::Constants& c, std::uint64_t seed, std::uint32_t year) {
    Temperatures t = smooth_season(climate);
    const double fresh = c.ar1_sd * std::sqrt(1.0 - c.ar1_rho * c.ar1_rho);
    const auto drawn = [&](std::size_t day) {
        return normal(
            draw(seed, static_cast<std::uint32_t>(growth::Trait::weather), year, static_cast<std::uint32_t>(day)));
    };
    double x = c.ar1_sd * drawn(0);
    for (std::size_t day = 0; day < t.mean.size(); ++day) {
        if (day > 0) x = c.ar1_rho * x + fresh * drawn(day);
        t.mean[day] += x;
        t.lowest[day] += x;
    }
    return t;
}

double winkler_sum(const Temperatures& t, const growth::Constants& c) {
    return heat_sum(t, c.gdd_base, april_1, october_31 + 1);
}

WinklerClass winkler_class(double sum) {
    constexpr std::array<double, 7> from{850, 1111, 1389, 1667, 1944, 2222, 2700};
    int at = 0;
    for (const double limit : from) at += sum >= limit;
    return static_cast<WinklerClass>(at);
}

} // namespace spurwright::weather
