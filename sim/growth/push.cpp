#include "sim/growth/push.h"

#include <algorithm>
#include <cmath>

namespace spurwright::growth {
namespace {

constexpr double trunk_azimuth_most = 80; // a shoot of the trunk itself leaves to its own side

} // namespace

void turn(Push& push, const Vine& vine, double sd_deg, const PushDraws& draws) {
    const std::uint64_t bits = draws.draws().bits(Trait::azimuth, push.on.value, draws.address(push.nth));
    push.towards_front = bits & 1;
    push.azimuth_deg = draws.draws().scatter() ? std::fabs(sd_deg * normal(bits)) : 0.0;
    const bool on_trunk = !vine.find(axis_of(push.on))->parent;
    if (on_trunk) push.azimuth_deg = std::min(push.azimuth_deg, trunk_azimuth_most);
}

} // namespace spurwright::growth
