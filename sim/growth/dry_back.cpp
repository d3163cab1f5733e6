#include "sim/growth/dry_back.h"

#include <algorithm>

#include "sim/vine/vine_query.h"

namespace spurwright::growth {
namespace {

// Along the wood between two nodes of one axis.
Length between(const Vine& vine, const Axis& axis, std::uint32_t a, std::uint32_t b) {
    const Length from = along(vine, axis, std::min(a, b)), to = along(vine, axis, std::max(a, b));
    return to - from;
}

// How far it goes into live wood, mm: past the stub, and past the solid wood of the node, which stops the first of it;
// below 0: they take it.
double depth_in_live_wood(const Wound& wound, const Constants& c, const Draws& draws) {
    double depth = c.dry_back_share * in_mm(wound.major);
    if (draws.scatter())
        depth *= numeric::exp(c.dry_back_sd * draws.normal(Trait::dry_back, wound.id.value) - c.dry_back_sd * c.dry_back_sd / 2);
    return depth - in_mm(wound.beyond) - c.dry_back_spared * in_mm(wound.major);
}

void die(NextVine& next, Axis& axis) {
    axis.state = AxisState::dead;
    for (std::uint32_t i = 0; i < axis.node_count; ++i) next.latent[axis.first_node + i] = 0;
}

} // namespace

void dry_back(NextVine& next, const Constants& c, const Draws& draws) {
    Vine& v = next.vine;
    const int cut_in = v.winter - 1;
    for (const Wound& wound : v.wounds) {
        if (wound.winter != cut_in || wound.wood_age < 2) continue;
        const double depth = depth_in_live_wood(wound, c, draws);
        if (depth <= 0) continue;
        const Axis& bearer = *v.find(axis_of(wound.node));
        const std::uint32_t at = index_of(wound.node);
        const auto reached = [&](std::uint32_t index) { return in_mm(between(v, bearer, index, at)) < depth; };
        for (std::uint32_t i = 0; i < bearer.node_count; ++i)
            if (reached(i)) next.latent[bearer.first_node + i] = 0;
        const double share = std::min(1.0, depth / in_mm(wound.major));
        for (std::size_t row = 0; row < next.old_axes; ++row) {
            Axis& axis = v.axes[row];
            if (axis.born != cut_in || axis.state == AxisState::dead || !axis.parent || axis_of(axis.parent) != bearer.id ||
                !reached(index_of(axis.parent)))
                continue;
            if (draws.chance(Trait::dry_back, axis.id.value, static_cast<std::uint32_t>(v.winter) * 4096 + wound.id.value % 4096, c.dry_back_kill * share))
                die(next, axis);
        }
    }
}

} // namespace spurwright::growth
