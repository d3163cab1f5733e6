#include "sim/growth/rhythm.h"

#include <algorithm>
#include <cmath>

#include "sim/growth/fruit.h"
#include "sim/growth/variety.h"

namespace spurwright::growth {
namespace {

// Inflorescences of one shoot: the parent's section, the place on the cane, the kind of bud; at most three.
int bunch_count(AxisId id, const Push& push, const Constants& c, const Draws& draws) {
    const double mean = mean_bunches(push, c);
    const double base = std::floor(mean);
    return std::min(3, static_cast<int>(base) + draws.chance(Trait::bunches, id.value, 0, mean - base));
}

Tendril tendril_state(const Node& node, CaneClass grew, const Trellis& trellis, const Constants& c,
                      const Draws& draws) {
    const double u = draws.share(Trait::tendril_state, node.id.value);
    const bool in_zone = spurwright::in_mm(node.place.y) >= trellis.fruiting + c.tendril_zone_mm;
    if (!in_zone) return u < c.tendril_broken ? Tendril::scar : Tendril::loose;
    return u < c.tendril_grip && grew != CaneClass::shaded ? Tendril::gripping : Tendril::loose;
}

Bunch bunch_state(const Node& node, const SeasonSettings& settings, const Draws& draws) {
    if (draws.chance(Trait::bunch_state, node.id.value, 0, settings.constants.mummy_share)) return Bunch::mummy;
    return settings.machine_harvest ? Bunch::rachis : Bunch::stub;
}

class Harming {
public:
    Harming(Vine& vine, const Axis& axis, const Trellis& trellis, const Constants& c, const Draws& draws)
        : vine_(vine), axis_(axis), trellis_(trellis), c_(c), draws_(draws) {}

    void harm() {
        const std::uint32_t id = axis_.id.value, last = axis_.node_count - 1;
        if (draws_.chance(Trait::harm, id, 0, c_.spot_share))
            at(static_cast<std::uint32_t>(draws_.between(Trait::harm, id, 1, 1, static_cast<int>(std::min(5u, last)))))
                .harm = Harm::spot;
        if (draws_.chance(Trait::harm, id, 2, c_.scar_share))
            at(wire_node(static_cast<std::uint32_t>(draws_.between(Trait::harm, id, 3, 0, 1)))).harm = Harm::scar;
        if (draws_.chance(Trait::harm, id, 4, c_.crack_share)) at(0).harm = Harm::cracked;
    }

private:
    Node& at(std::uint32_t index) { return vine_.nodes[axis_.first_node + index]; }

    // First node above the fruiting wire (0) or the lowest catch wire (1); the last where none is.
    std::uint32_t wire_node(std::uint32_t which) {
        const double height =
            which == 1 && !trellis_.catch_heights.empty() ? trellis_.catch_heights[0] : trellis_.fruiting;
        for (std::uint32_t i = 1; i < axis_.node_count; ++i)
            if (spurwright::in_mm(at(i).place.y) >= height) return i;
        return axis_.node_count - 1;
    }

    Vine& vine_;
    const Axis& axis_;
    const Trellis& trellis_;
    const Constants& c_;
    const Draws& draws_;
};

} // namespace

int tendril_class(int index, int bare, bool continuous) {
    if (index <= bare) return 0;
    return continuous ? 1 : (index - bare) % 3;
}

void dress(NextVine& next, const Push& push, const Trellis& trellis, const SeasonSettings& settings,
           const Draws& draws) {
    const Axis& axis = next.vine.axes.back();
    const Constants& c = settings.constants;
    const int bare = draws.chance(Trait::tendril_start, axis.id.value, 0, 0.5) ? 2 : 3;
    const Variety* variety = find_variety(next.vine.variety);
    const bool continuous = settings.tendrils_everywhere.value_or(variety && variety->tendrils_everywhere);
    int bunches = bunch_count(axis.id, push, c, draws);
    for (std::uint32_t i = 1; i < axis.node_count; ++i) {
        Node& node = next.vine.nodes[axis.first_node + i];
        node.tendril_class = tendril_class(static_cast<int>(i), bare, continuous);
        if (node.tendril_class == 0) continue;
        if (bunches > 0) {
            --bunches;
            node.bunch = bunch_state(node, settings, draws);
        } else {
            node.tendril = tendril_state(node, axis.grew, trellis, c, draws);
        }
    }
    if (draws.scatter()) Harming(next.vine, axis, trellis, c, draws).harm();
}

} // namespace spurwright::growth
