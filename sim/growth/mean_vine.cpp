#include "sim/growth/mean_vine.h"

#include <algorithm>

#include "sim/core/check.h"
#include "sim/core/numeric.h"
#include "sim/growth/laws.h"

namespace spurwright::growth {
namespace {

// Bursting, blind and fruiting buds of all canes.
void burst_means(MeanYear& year, const KeptWood& kept, double capacity, const Constants& c) {
    for (const int nodes : kept.nodes) year.count_nodes += nodes;
    SPURWRIGHT_CHECK(year.count_nodes, >, 0.0);
    const double b = inhibition(c, year.count_nodes, capacity), keep = 1.0 - c.bud_loss_handling;
    for (const int nodes : kept.nodes) {
        for (int i = 1; i <= nodes; ++i) {
            const double p = keep * budburst_p(c, b, i, nodes);
            const double place = i == 1 ? c.fruit_first_node : i == 2 ? c.fruit_second_node : 1.0;
            year.burst += p;
            year.blind += 1.0 - p;
            if (2 * i <= nodes) year.blind_basal += 1.0 - p;
            year.bunches_on_canes += p * place;
        }
    }
    year.non_count = non_count_shoots(c, year.count_nodes, capacity);
    year.doubles = c.double_share * year.burst;
    year.shoots = year.burst + year.non_count + year.doubles;
    year.fruiting = year.burst + c.secondary_f * year.doubles + c.noncount_f * year.non_count;
}

// One-year wood that stays: its share of the nodes, each as heavy as a mean one.
double kept_share(const MeanYear& year, const Constants& c) {
    const double nodes = year.length_cm / mean_joint(c, year.length_cm, 1.0, 1.0);
    return std::min(0.5, year.count_nodes / std::max(1.0, year.shoots * nodes));
}

} // namespace

MeanYear grow_year(MeanVine& vine, const KeptWood& kept, const TrialSite& site, const Constants& c) {
    MeanYear year;
    burst_means(year, kept, vine.capacity, c);
    year.reserves = vine.reserves;
    year.length_cm = mean_length(c, site.length_ref, vine.capacity, year.shoots);
    year.mass_g = shoot_mass(c, year.length_cm, site.mass_scale);
    year.base_mm = base_diameter(c, year.length_cm, year.mass_g);
    const double a_shoot =
        inflorescences(c, kept.parent_area_mm2) * numeric::pow(vine.reserves, c.reserve_split_number);
    year.bunches_on_canes *= a_shoot * (1.0 + c.secondary_f * c.double_share);
    year.bunches = year.bunches_on_canes + a_shoot * c.noncount_f * year.non_count;
    year.bunch_g = bunch_mass(c, vine.capacity, year.shoots, vine.reserves);
    year.yield_kg = year.bunches * year.bunch_g / 1000;
    year.prunings_kg = year.shoots * year.mass_g / 1000 * (1.0 - kept_share(year, c));
    year.crop_to_prunings = year.yield_kg / year.prunings_kg;
    vine.reserves = next_reserves(c, vine.reserves, year.fruiting, vine.capacity);
    vine.capacity = next_capacity(c, vine.capacity, site.capacity, year.crop_to_prunings);
    return year;
}

std::vector<MeanYear> grow_years(int years, const KeptWood& kept, const TrialSite& site, const Constants& c) {
    MeanVine vine{site.capacity, 1.0};
    std::vector<MeanYear> all;
    all.reserve(static_cast<std::size_t>(years));
    for (int i = 0; i < years; ++i) all.push_back(grow_year(vine, kept, site, c));
    return all;
}

} // namespace spurwright::growth
