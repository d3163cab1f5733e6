#include "sim/weather/hardiness.h"

#include <algorithm>
#include <array>

#include "sim/core/numeric.h"

namespace spurwright::weather {
namespace {

// clang-format off
constexpr auto hardiness_rows = std::to_array<Hardiness>({
    {"barbera", "Barbera",                       15, 3, .06, .10, .02, .08, -10.1, -23.5, -1.2, 7, -700, 1.4},
    {"cabernet-franc", "Cabernet franc",         13, 4, .12, .04, .10, .10,  -9.9, -25.4, -1.2, 7, -500, 1.3},
    {"cabernet-sauvignon", "Cabernet Sauvignon", 13, 5, .12, .08, .10, .10, -10.3, -25.1, -1.2, 7, -700, 1.5},
    {"chardonnay", "Chardonnay",                 14, 3, .10, .10, .02, .08, -11.8, -25.7, -1.2, 7, -600, 1.4},
    {"chenin-blanc", "Chenin blanc",             14, 4, .10, .04, .02, .10, -12.1, -24.1, -1.2, 7, -700, 1.1},
    {"concord", "Concord",                       13, 3, .12, .02, .10, .10, -12.8, -29.5, -2.5, 3, -600, 1.7},
    {"gewurztraminer", "Gewürztraminer",         13, 6, .12, .06, .02, .18, -11.6, -24.9, -1.2, 5, -400, 1.7},
    {"grenache", "Grenache",                     12, 3, .16, .02, .10, .06, -10.0, -22.7, -1.2, 5, -500, 1.3},
    {"lemberger", "Lemberger",                   13, 5, .10, .02, .10, .18, -13.0, -25.6, -1.2, 7, -800, 1.5},
    {"malbec", "Malbec",                         14, 4, .10, .06, .08, .08, -11.5, -25.1, -1.2, 7, -400, 1.9},
    {"merlot", "Merlot",                         13, 5, .10, .04, .02, .10, -10.3, -25.0, -1.2, 7, -500, 1.6},
    {"nebbiolo", "Nebbiolo",                     11, 3, .16, .02, .02, .10, -11.1, -24.4, -1.2, 3, -700, 1.3},
    {"pinot-gris", "Pinot gris",                 13, 6, .12, .02, .02, .20, -12.0, -24.1, -1.2, 3, -400, 1.6},
    {"riesling", "Riesling",                     12, 5, .14, .02, .10, .12, -12.6, -26.1, -1.2, 7, -700, 1.6},
    {"sangiovese", "Sangiovese",                 11, 3, .14, .02, .02, .06, -10.7, -21.9, -1.2, 7, -700, 1.7},
    {"sauvignon-blanc", "Sauvignon blanc",       14, 5, .08, .06, .10, .12, -10.6, -24.9, -1.2, 7, -300, 1.4},
    {"semillon", "Semillon",                     13, 7, .10, .08, .02, .20, -10.4, -22.4, -1.2, 5, -300, 1.3},
    {"syrah", "Syrah",                           14, 4, .08, .06, .04, .08, -10.3, -24.2, -1.2, 7, -700, 1.5},
    {"viognier", "Viognier",                     14, 5, .10, .08, .10, .10, -11.2, -24.0, -1.2, 7, -300, 1.6},
    {"zinfandel", "Zinfandel",                   12, 3, .16, .02, .10, .06, -10.4, -24.4, -1.2, 7, -500, 1.1},
});
// clang-format on

constexpr double chilling_base = 10; // of the published sum

} // namespace

std::span<const Hardiness> hardiness_table() { return hardiness_rows; }

const Hardiness* find_hardiness(std::string_view cultivar) {
    for (const Hardiness& row : hardiness_rows)
        if (row.cultivar == cultivar) return &row;
    return nullptr;
}

double hardiness_step(const Hardiness& h, double now, double mean_c, Dormancy phase, bool may_soften) {
    const bool endo = phase == Dormancy::endo;
    const double threshold = endo ? h.threshold_endo : h.threshold_eco;
    const double cold = std::min(0.0, mean_c - threshold), warm = std::max(0.0, mean_c - threshold);
    const double span = h.least_hardy - h.hardiest; // Hmin - Hmax, above 0
    const double harden_room = 1.0 - (h.least_hardy - now) / span;
    const double soften_room = 1.0 - numeric::pow(std::max(0.0, (now - h.hardiest) / span), h.theta);
    const double hardened = cold * (endo ? h.harden_endo : h.harden_eco) * harden_room;
    const double softened = may_soften ? warm * (endo ? h.soften_endo : h.soften_eco) * soften_room : 0.0;
    return hardened + softened;
}

double HardinessCourse::hardiest() const { return *std::min_element(hardiness.begin(), hardiness.end()); }

HardinessCourse harden(const Hardiness& h, const Temperatures& t) {
    HardinessCourse course;
    double now = h.at_start, chilling = 0;
    for (std::size_t i = 0; i < t.mean.size(); ++i) {
        const Dormancy phase = chilling > h.chilling_end ? Dormancy::endo : Dormancy::eco; // by the days before
        chilling += std::min(0.0, t.mean[i] - chilling_base);
        if (phase == Dormancy::eco && !course.eco_from) course.eco_from = first_day + static_cast<int>(i);
        now += hardiness_step(h, now, t.mean[i], phase, chilling < 0);
        now = numeric::clamp(now, h.hardiest, h.least_hardy);
        course.hardiness.push_back(now);
    }
    return course;
}

std::optional<int> budbreak_by_hardiness(const HardinessCourse& course, growth::Species species,
                                         const growth::Constants& c) {
    if (!course.eco_from || *course.eco_from > c.eco_latest) return std::nullopt;
    const double open = species == growth::Species::labruscana ? c.budbreak_lt_labruscana : c.budbreak_lt_vinifera;
    for (int day = std::max(1, *course.eco_from); day < first_day + static_cast<int>(course.hardiness.size()); ++day)
        if (course.hardiness[static_cast<std::size_t>(day - first_day)] >= open) return day;
    return std::nullopt;
}

} // namespace spurwright::weather
