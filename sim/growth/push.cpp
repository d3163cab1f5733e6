#include "sim/growth/push.h"

#include <algorithm>
#include <cmath>

namespace spurwright::growth {

void turn(Push& push, const Vine& vine, double sd_deg, const Constants& c, const PushDraws& draws) {
    const std::uint64_t bits = draws.draws().bits(Trait::azimuth, push.on.value, draws.address(push.nth));
    push.towards_front = bits & 1;
    push.azimuth_deg = draws.draws().scatter() ? std::fabs(sd_deg * normal(bits)) : 0.0;
    const bool on_trunk = !vine.find(axis_of(push.on))->parent;
    if (on_trunk) push.azimuth_deg = std::min(push.azimuth_deg, c.trunk_azimuth_most_deg);
}

} // namespace spurwright::growth
