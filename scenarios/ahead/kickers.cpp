#include "scenarios/ahead/kickers.h"

#include <algorithm>

#include "sim/vine/vine_query.h"

namespace spurwright::ahead {
namespace {

constexpr Length stub{8'000}, past_bud{20'000}; // as a careful hand leaves them (our choice)

bool shoot_lives(const Vine& vine, NodeId id) {
    const auto buds = vine.buds_of(*vine.find(id));
    return std::any_of(buds.begin(), buds.end(),
                       [](const Bud& bud) { return bud.kind == BudKind::node && !bud.harmed && bud.primary; });
}

} // namespace

LaidBuds laid_buds(const Vine& after_frost, const std::vector<weather::OpenBud>& buds) {
    LaidBuds laid;
    for (const weather::OpenBud& bud : buds) {
        if (bud.kept_as != weather::KeptAs::laid) continue;
        ++laid.buds;
        laid.live += shoot_lives(after_frost, bud.node);
        laid.mean_day += bud.day;
        ++laid.of_side[after_frost.find(axis_of(bud.node))->side == Side::right ? 1 : 0];
    }
    if (laid.buds > 0) laid.mean_day /= laid.buds;
    return laid;
}

std::vector<AxisId> kickers_of(const Vine& vine, const std::vector<weather::OpenBud>& buds) {
    std::vector<AxisId> kickers;
    for (const weather::OpenBud& bud : buds) {
        const AxisId cane = axis_of(bud.node);
        const bool known = !kickers.empty() && kickers.back() == cane; // buds are in the order of their nodes
        if (bud.kept_as == weather::KeptAs::upright && !known && is_cane(vine, *vine.find(cane))) kickers.push_back(cane);
    }
    return kickers;
}

Plan plan_off(AxisId kicker) { return {{Cut{node_id(kicker, 0), stub, Tool::loppers, {}}}}; }

Plan plan_instead(const Vine& vine, AxisId kicker, const LaidBuds& laid) {
    const Axis& cane = *vine.find(kicker);
    const auto nodes = ripe_count_nodes(vine, cane);
    const auto asked = static_cast<std::size_t>(laid.of_side[cane.side == Side::right ? 1 : 0]);
    Plan plan;
    if (asked > 0 && asked < nodes.size())
        plan.edits.push_back(Cut{node_id(kicker, nodes[asked - 1]), past_bud, Tool::shears, {}});
    plan.edits.push_back(Lay{kicker, cane.side, 1});
    return plan;
}

} // namespace spurwright::ahead
