#include "sim/growth/fruit.h"

#include "sim/growth/laws.h"

namespace spurwright::growth {

double fruiting_share(const Push& push, const Constants& c) {
    if (push.kind == PushKind::count) return 1.0;
    return push.from_node_bud() ? c.secondary_f : c.noncount_f;
}

double mean_bunches(const Push& push, const Constants& c) {
    double mean = inflorescences(c, push.parent_area);
    if (push.count_index == 1) mean *= c.fruit_first_node;
    if (push.count_index == 2) mean *= c.fruit_second_node;
    return mean * fruiting_share(push, c);
}

Crop crop_of(const Spring& spring, double capacity, double reserves, const Constants& c) {
    Crop crop;
    for (const Push& push : spring.pushes) {
        crop.fruiting += fruiting_share(push, c);
        crop.bunches += mean_bunches(push, c);
    }
    crop.bunches *= numeric::pow(reserves, c.reserve_split_number);
    crop.bunch_g = bunch_mass(c, capacity, spring.shoots, reserves);
    crop.yield_kg = crop.bunches * crop.bunch_g / 1000;
    return crop;
}

} // namespace spurwright::growth
