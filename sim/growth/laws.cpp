#include "sim/growth/laws.h"

#include <algorithm>
#include <cmath>

#include "sim/core/numeric.h"

namespace spurwright::growth {

double inhibition(const Constants& c, double count_nodes, double capacity) {
    return c.budburst_b0 * numeric::clamp((count_nodes / capacity - 0.5) / 0.5, 0.0, c.budburst_load_cap);
}

double budburst_p(const Constants& c, double b, int i, int nodes) {
    const double p = 1.0 - b * numeric::exp(-(i - 1) / c.budburst_lambda);
    return i > nodes - 2 ? std::max(p, c.budburst_terminal_p) : p;
}

double non_count_shoots(const Constants& c, double count_nodes, double capacity) {
    return c.noncount_slope * std::max(0.0, capacity - count_nodes);
}

double mean_length(const Constants& c, double length_ref, double capacity, double shoots) {
    return length_ref * numeric::pow(capacity / std::max(1.0, shoots), c.length_exponent);
}

double mean_joint(const Constants& c, double length, double joint_factor, double scatter) {
    const double l =
        c.internode_ref * numeric::pow(length / c.internode_length_ref, c.internode_exponent) * scatter * joint_factor;
    return numeric::clamp(l, c.internode_clip_low, c.internode_clip_high);
}

double joint_weight(const Constants& c, int i, int n, double reach) {
    const double late =
        std::max(0.0, (static_cast<double>(i) / n - c.internode_tip_from) / (1.0 - c.internode_tip_from));
    return (1.0 - reach) * (1.0 - c.internode_tip_drop * late);
}

double shoot_mass(const Constants& c, double length, double scale) {
    return scale * c.mass_coeff * numeric::pow(length, c.mass_exponent);
}

double base_diameter(const Constants& c, double length, double mass) {
    return 10.0 * std::sqrt(4.0 * mass / (c.density_fresh * numeric::pi * length * c.taper_integral));
}

double diameter_at(const Constants& c, double base, double share) {
    return base * numeric::pow(1.0 - c.taper_a * share, c.taper_p);
}

double inflorescences(const Constants& c, double area) {
    const double a = numeric::clamp(area, c.fruit_area_low, c.fruit_area_high);
    return c.fruit_a2 * a * a + c.fruit_a1 * a + c.fruit_c;
}

double bunch_mass(const Constants& c, double capacity, double shoots, double reserves) {
    return c.bunch_mass_ref * numeric::pow(capacity / std::max(1.0, shoots), c.bunch_exponent) *
           numeric::pow(reserves, c.reserve_split_mass);
}

double next_reserves(const Constants& c, double reserves, double fruiting, double capacity) {
    const double load = fruiting / (c.reserve_nu * capacity);
    const double over = load > 1.0 ? numeric::log(load) : 0.0;
    const double target = 1.0 - c.reserve_a * (1.0 - numeric::exp(-over / c.reserve_z0));
    return reserves + c.reserve_rho * (target - reserves);
}

double next_capacity(const Constants& c, double capacity, double site, double crop_to_prunings) {
    const double change =
        c.capacity_return * numeric::log(site / capacity) - c.capacity_kappa * numeric::log(crop_to_prunings / c.ri_star);
    return capacity * numeric::clamp(numeric::exp(change), c.capacity_clamp_low, c.capacity_clamp_high);
}

double laid_diameter(const Constants& c, double one_year, double one_year_base) {
    return one_year + c.laid_cane_growth_mm + c.laid_cane_taper_kept * (one_year_base - one_year);
}

double ring_width(const Constants& c, int ring) {
    return c.ring_w_inf + (c.ring_w1 - c.ring_w_inf) * numeric::exp(-(ring - 1) / c.ring_tau);
}

} // namespace spurwright::growth
