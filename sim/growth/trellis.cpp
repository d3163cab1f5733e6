#include "sim/growth/trellis.h"

#include "sim/growth/growth_constants.h"

namespace spurwright::growth {

std::vector<Wire> wires_of(const Site& site) {
    const Constants c;
    std::vector<Wire> wires;
    const auto add = [&](WireKind kind, double height_mm, double half_gap_mm, WireState state) {
        wires.push_back({WireId{static_cast<std::uint32_t>(wires.size()) + 1}, kind, from_mm(height_mm),
                         from_mm(half_gap_mm), state});
    };
    if (site.drip) add(WireKind::drip, c.drip_height_mm, 0, WireState::up);
    add(WireKind::fruiting, 1000 * site.wire_m, 0, WireState::up);
    const WireState state = site.wires_in_winter == WiresInWinter::dropped ? WireState::down : WireState::up;
    for (const double height : site.catch_m)
        add(WireKind::catching, 1000 * (site.wire_m + height), c.catch_half_gap_mm, state);
    return wires;
}

std::array<Neighbour, 2> neighbours_of(const Site& site) {
    // A row of single canes has them all to one side: the next vine's wood on this one's way is its trunk.
    const Length reach = site.system == System::one_cane ? Length{} : from_mm(500 * site.spacing_m - 50);
    std::array<Neighbour, 2> both{Neighbour{NeighbourKind::vine, reach}, Neighbour{NeighbourKind::vine, reach}};
    if (site.neighbours == Neighbours::far || site.neighbours == Neighbours::none) both[0].kind = NeighbourKind::none;
    if (site.neighbours == Neighbours::near || site.neighbours == Neighbours::none) both[1].kind = NeighbourKind::none;
    return both;
}

} // namespace spurwright::growth
