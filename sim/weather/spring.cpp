#include "sim/weather/spring.h"

#include <algorithm>

#include "sim/core/random.h"
#include "sim/growth/traits.h"
#include "sim/vine/vine_query.h"

namespace spurwright::weather {
namespace {

constexpr int longest_spur = 3; // count buds
constexpr int midsummer = 181;  // 30 June: later frosts find no spring's shoots

KeptAs kept_as(const Vine& v, const Axis& axis, std::size_t buds) {
    for (const Laid& laid : v.laid)
        if (laid.axis == axis.id && laid.winter == v.winter && laid.state != LaidState::snapped) return KeptAs::laid;
    const bool cut = std::any_of(v.wounds.begin(), v.wounds.end(),
                                 [&](const Wound& wound) { return wound.axis == axis.id && wound.winter == v.winter; });
    return cut && buds <= longest_spur ? KeptAs::spur : KeptAs::upright;
}

// Ripe nodes of the cane that were cut off past what is kept.
std::size_t ripe_nodes_gone(const Vine& v, const Axis& axis) {
    std::size_t gone = 0;
    Length at;
    for (const Node& node : v.nodes_of(axis)) {
        if (index_of(node.id) > 0) at += node.joint;
        gone += node.removed && at <= axis.ripe;
    }
    return gone;
}

bool lives(const Vine& v, const Node& node) {
    for (const Bud& bud : v.buds_of(node))
        if (bud.kind == BudKind::node && !bud.harmed && (bud.primary || bud.secondary || bud.tertiary)) return true;
    return false;
}

} // namespace

std::vector<OpenBud> opening(const Vine& pruned, int budbreak_day, const LateActs& acts, const Temperatures& t,
                             const growth::Constants& c) {
    std::vector<OpenBud> buds;
    for (const Axis& axis : pruned.axes) {
        if (axis.removed || axis.born != pruned.winter || axis.state == AxisState::dead || !axis.parent) continue;
        std::vector<std::uint32_t> nodes;
        for (const std::uint32_t i : ripe_count_nodes(pruned, axis))
            if (!pruned.nodes_of(axis)[i].removed && lives(pruned, pruned.nodes_of(axis)[i])) nodes.push_back(i);
        const KeptAs as = kept_as(pruned, axis, nodes.size());
        // The tip it has now holds its buds while it stands; the tip it had held them until it was cut.
        const bool stands = as == KeptAs::upright || (as == KeptAs::laid && acts.laid_day > budbreak_day),
                   stood_whole = as != KeptAs::upright && acts.cut_day > budbreak_day;
        const int freed = as == KeptAs::laid ? acts.laid_day : acts.upright_cut;
        const double gone = stood_whole ? static_cast<double>(ripe_nodes_gone(pruned, axis)) : 0;
        for (std::size_t i = 0; i < nodes.size(); ++i) {
            const Node& node = pruned.nodes_of(axis)[nodes[i]];
            OpenBud bud{node.id, as, budbreak_day, false, in_m(node.place.y)};
            const double from_tip = static_cast<double>(nodes.size() - 1 - i);
            const bool by_own = stands && from_tip >= c.held_from_tip,
                       by_gone = stood_whole && from_tip + gone >= c.held_from_tip;
            bud.held = by_own || by_gone;
            if (as == KeptAs::spur) bud.day += static_cast<int>(c.spur_later_days);
            if (by_own && freed == 0) bud.day = t.end_day();
            else if (bud.held)
                bud.day = std::max(budbreak_day,
                                   released_day(std::max(by_own ? freed : 0, by_gone ? acts.cut_day : 0), t, c));
            buds.push_back(bud);
        }
    }
    std::stable_sort(buds.begin(), buds.end(), [](const OpenBud& a, const OpenBud& b) { return a.node < b.node; });
    return buds;
}

std::vector<double> frost_losses(const std::vector<OpenBud>& buds, int budbreak_day, growth::Species species,
                                 const Temperatures& t, const growth::Constants& c) {
    std::vector<double> shares;
    for (const OpenBud& bud : buds) {
        double worst = 0, unfolded = 0;
        for (int day = std::max(first_day, budbreak_day); day <= std::min(midsummer, t.end_day() - 1); ++day) {
            // Stage by the heat gathered before the night; no night after four leaves differs in its limit.
            const FrostLimit limit = frost_limit(species, stage_of(day <= bud.day ? -1.0 : unfolded), c);
            worst =
                std::max(worst, killed_share(at_height(t.lowest_on(day), bud.height_m, c), limit.lt50_c, limit.sd_c));
            if (day >= bud.day) unfolded += std::max(0.0, t.mean_on(day) - c.gdd_base) / c.phyllochron;
        }
        shares.push_back(worst);
    }
    return shares;
}

ColdToll take_cold(Vine& pruned, const std::vector<OpenBud>& buds, const std::vector<double>& frost_share,
                   const BudKill& kill, std::uint64_t draw_seed) {
    ColdToll toll;
    const auto share = [&](growth::Trait trait, BudId bud) {
        return unit(
            draw(draw_seed, static_cast<std::uint32_t>(trait), bud.value, static_cast<std::uint32_t>(pruned.winter)));
    };
    for (std::size_t i = 0; i < buds.size(); ++i) {
        const Node& node = *pruned.find(buds[i].node);
        for (std::uint32_t slot = 0; slot < node.bud_count; ++slot) {
            Bud& bud = pruned.buds[node.first_bud + slot];
            if (bud.kind != BudKind::node || bud.harmed || !(bud.primary || bud.secondary || bud.tertiary)) continue;
            ++toll.buds;
            const double winter = share(growth::Trait::winter_kill, bud.id);
            if (bud.primary && winter < kill.primary) ++toll.killed, bud.primary = false;
            bud.secondary = bud.secondary && winter >= kill.secondary;
            bud.tertiary = bud.tertiary && winter >= kill.tertiary;
            if (!bud.primary && !bud.secondary && !bud.tertiary) ++toll.compound_dead;
            if (bud.primary && share(growth::Trait::frost_kill, bud.id) < frost_share[i])
                ++toll.frosted, bud.primary = false;
        }
    }
    return toll;
}

} // namespace spurwright::weather
