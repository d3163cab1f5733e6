#include "sim/growth/shoot.h"

#include <algorithm>
#include <cmath>

#include "sim/growth/laws.h"

namespace spurwright::growth {
namespace {

constexpr int taper_steps = 128;
constexpr int most_joints = 200;

double of_vigour(Vigour vigour, double low, double moderate, double high) {
    return vigour == Vigour::low ? low : vigour == Vigour::high ? high : moderate;
}

// exp(N(0, sd)) with mean 1.
double lognormal(const Draws& draws, Trait trait, std::uint32_t part, double sd) {
    if (!draws.scatter()) return 1.0;
    return numeric::exp(sd * draws.normal(trait, part) - sd * sd / 2);
}

double length_factor(const Push& push, const Constants& c) {
    double factor = 1.0;
    if (push.along_cane >= 0)
        factor = c.length_pos_proximal + (c.length_pos_distal - c.length_pos_proximal) * push.along_cane;
    return push.kind == PushKind::twin || push.kind == PushKind::replacement ? factor * c.length_pos_twin : factor;
}

CaneClass class_of(AxisId id, const Push& push, const ShootLaw& law, const SeasonSettings& settings,
                   const Draws& draws) {
    if (!draws.scatter()) return CaneClass::ordinary;
    const Constants& c = settings.constants;
    const bool non_count = !push.from_node_bud();
    const bool bend = push.laid && (push.count_index == 3 || push.count_index == 4);
    const double bull = law.bull_share * (non_count ? c.bull_place_noncount
                                          : bend    ? c.bull_place_bend
                                                    : c.bull_place_ordinary);
    const double share = draws.share(Trait::cane_class, id.value);
    return share < bull ? CaneClass::bull : share < bull + c.shaded_share ? CaneClass::shaded : CaneClass::ordinary;
}

double by_class(CaneClass grew, double bull, double shaded) {
    return grew == CaneClass::bull ? bull : grew == CaneClass::shaded ? shaded : 1.0;
}

// Shares of the length by joint; the noise of the first joint is drawn once more where it would come out between a
// clear joint and a base bud's.
void fill_joints(Shoot& shoot, AxisId id, int n, const ShootLaw& law, const Constants& c, const Draws& draws) {
    shoot.joints_mm.assign(static_cast<std::size_t>(n), 0.0);
    const auto noise = [&](int i, std::uint32_t nth) {
        return draws.scatter()
                   ? numeric::exp(c.internode_noise *
                                  draws.normal(Trait::joint, node_id(id, static_cast<std::uint32_t>(i) + 1).value, nth))
                   : 1.0;
    };
    double sum = 0;
    for (int i = 0; i < n; ++i) {
        const double w = joint_weight(c, i, n, law.reach[static_cast<std::size_t>(i)]) * noise(i, 0);
        shoot.joints_mm[static_cast<std::size_t>(i)] = w;
        sum += w;
    }
    const double first = shoot.joints_mm[0] * shoot.length_mm / sum;
    if (draws.scatter() && first >= c.redraw_low_mm && first <= c.redraw_high_mm) {
        sum -= shoot.joints_mm[0];
        shoot.joints_mm[0] = joint_weight(c, 0, n, law.reach[0]) * noise(0, 1);
        sum += shoot.joints_mm[0];
    }
    for (double& joint : shoot.joints_mm) joint *= shoot.length_mm / sum;
}

} // namespace

ShootLaw::ShootLaw(const Vine& vine, const SeasonSettings& settings, double capacity, double shoots) {
    const Constants& c = settings.constants;
    const double length_ref = of_vigour(vine.vigour, c.length_ref_low, c.length_ref_moderate, c.length_ref_high);
    mean_length_cm = mean_length(c, length_ref, capacity, shoots);
    mass_scale = of_vigour(vine.vigour, c.mass_scale_low, c.mass_scale_moderate, c.mass_scale_high);
    bull_share = of_vigour(vine.vigour, c.bull_share_low, c.bull_share_moderate, c.bull_share_high);
    double decay = numeric::exp(-0.5 / c.internode_base_rate);
    const double step = numeric::exp(-1.0 / c.internode_base_rate);
    for (int i = 0; i < most_joints; ++i, decay *= step) reach.push_back(decay);
    for (int i = 0; i <= taper_steps; ++i) taper.push_back(diameter_at(c, 1.0, static_cast<double>(i) / taper_steps));
}

double ShootLaw::taper_at(double share) const {
    const double at = numeric::clamp(share, 0.0, 1.0) * taper_steps;
    const auto i = std::min(static_cast<std::size_t>(taper_steps - 1), static_cast<std::size_t>(at));
    return taper[i] + (taper[i + 1] - taper[i]) * (at - static_cast<double>(i));
}

void grow_shoot(Shoot& shoot, AxisId id, const Push& push, const ShootLaw& law, const SeasonSettings& settings,
                const Draws& draws) {
    const Constants& c = settings.constants;
    const double length = numeric::clamp(law.mean_length_cm * length_factor(push, c) *
                                             lognormal(draws, Trait::length, id.value, c.length_sd),
                                         c.length_low_cm, c.length_high_cm);
    shoot.length_mm = 10.0 * length;
    shoot.grew = class_of(id, push, law, settings, draws);
    const double joint = mean_joint(c, length, by_class(shoot.grew, c.bull_internode, c.shaded_internode),
                                    lognormal(draws, Trait::internode, id.value, c.internode_sd));
    fill_joints(shoot, id, std::clamp(rounded(length / joint), 2, most_joints), law, c, draws);
    const double scale = law.mass_scale * by_class(shoot.grew, c.bull_mass, c.shaded_mass) *
                         lognormal(draws, Trait::mass, id.value, c.mass_sd);
    shoot.mass_g = shoot_mass(c, length, scale);
    shoot.base_mm = base_diameter(c, length, shoot.mass_g);
    const double flat_low = shoot.grew == CaneClass::bull     ? c.flattening_bull_low
                            : shoot.grew == CaneClass::shaded ? c.flattening_shaded_low
                                                              : c.flattening_low;
    const double flat_high = shoot.grew == CaneClass::bull     ? c.flattening_bull_high
                             : shoot.grew == CaneClass::shaded ? c.flattening_shaded_high
                                                               : c.flattening_high;
    shoot.flattening = draws.uniform(Trait::flattening, id.value, 0, flat_low, flat_high);
    shoot.poorly_ripe = draws.scatter() && draws.chance(Trait::ripe, id.value, 0, c.poorly_ripe_share);
    shoot.ripe_mm =
        shoot.poorly_ripe
            ? draws.uniform(Trait::ripe, id.value, 1, c.poorly_ripe_low_mm, c.poorly_ripe_high_mm)
            : shoot.length_mm * draws.uniform(Trait::ripe, id.value, 1, c.ripe_share_low, c.ripe_share_high);
    shoot.ripe_mm = std::min(shoot.ripe_mm, shoot.length_mm);
}

} // namespace spurwright::growth
