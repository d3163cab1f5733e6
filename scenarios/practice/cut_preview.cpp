#include "scenarios/practice/cut_preview.h"

#include <algorithm>
#include <cstdlib>

#include "sim/pruning/legal_edits.h"
#include "sim/pruning/prunings.h"
#include "sim/vine/vine_query.h"

namespace spurwright::practice {
namespace {

// How careful hands cut (our choice, DEVELOPERS.md): the same places that the full plan of a choice uses.
constexpr Length past_bud{20'000};        // one-year wood, past its last bud
constexpr Length past_crown{8'000};       // a cane taken off: collar and base buds stay
constexpr Length short_of_node{2'000};    // never through the next node
constexpr Length old_short_of_node{5'000};
constexpr Length steady{6'000};              // how near the usual place is meant as it (our choice)

Length tenths(Length l) { return {(l.count >= 0 ? l.count : l.count - 99) / 100 * 100}; }
Length at_least_none(Length l) { return std::max(Length{}, l); }

Length on_old_wood(const Vine& vine, const Axis& axis, std::uint32_t index) {
    const auto nodes = vine.nodes_of(axis);
    const Node& joint = nodes[std::min<std::size_t>(index + 1, nodes.size() - 1)];
    const Length stub{joint.major.count * 3 / 2};
    const Length room = at_least_none(wood_beyond(vine, axis, index) - old_short_of_node);
    if (index > 0) return std::min(stub, room);
    // The stub of an axis taken off is measured from the wood that bears it: its collar counts.
    const Length collar = nodes[0].joint;
    const Length from_surface{nodes[0].major.count * 3 / 2};
    if (from_surface <= collar) return std::min(from_surface, at_least_none(collar - old_short_of_node)) - collar;
    return std::min(stub - collar > Length{} ? stub - collar : Length{}, room);
}

int buds_between(const Vine& vine, const Axis& axis, std::uint32_t from) {
    int buds = 0;
    for (const Node& node : vine.nodes_of(axis))
        if (index_of(node.id) >= from && !node.removed && age(vine, axis) == 1 && is_count_bud(vine, axis, node)) ++buds;
    return buds;
}

}  // namespace

Length default_beyond(const Vine& vine, NodeId past) {
    const Axis& axis = *vine.find(axis_of(past));
    const std::uint32_t index = index_of(past);
    if (age(vine, axis) > 1) return tenths(on_old_wood(vine, axis, index));
    const Length room = at_least_none(wood_beyond(vine, axis, index) - short_of_node);
    if (index > 0) return tenths(std::min(past_bud, room));
    if (is_sucker(vine, axis)) return -Length{vine.nodes_of(axis)[0].joint.count / 100 * 100};  // at its origin
    return tenths(std::min(past_crown, room));
}

Cut cut_at(const Vine& vine, const Spot& spot, Tool tool) {
    const NodeId past = spot.node ? spot.node : node_id(spot.axis, 0);
    if (spot.beyond.count < 0 || !vine.find(past)) return {past, vine.find(past) ? default_beyond(vine, past) : Length{}, tool, {}};
    const Length most = wood_beyond(vine, *vine.find(axis_of(past)), index_of(past)), usual = default_beyond(vine, past);
    // Nobody points to the millimetre: near where a careful hand would cut is there.
    if (index_of(past) == 0 && std::abs(spot.beyond.count - usual.count) <= steady.count) return {past, usual, tool, {}};
    return {past, tenths(std::min(spot.beyond, most)), tool, {}};
}

bool cuts_trunk(const Vine& vine, const Cut& cut) {
    const Axis* axis = vine.find(axis_of(cut.past));
    return axis && is_trunk(*axis);
}

CutPreview preview(const Vine& vine, const Cut& cut) {
    CutPreview p;
    p.cut = cut;
    Vine after = vine;
    if (!prune_one(after, cut, vine)) return p;
    for (std::size_t row = 0; row < vine.axes.size(); ++row) {
        const Axis& axis = vine.axes[row];
        if (!axis.removed && after.axes[row].removed) p.axes.push_back(axis.id);
        for (const Node& node : vine.nodes_of(axis)) {
            if (node.removed || !after.find(node.id)->removed) continue;
            p.nodes.push_back(node.id);
            if (age(vine, axis) == 1 && is_count_bud(vine, axis, node)) ++p.buds_off;
        }
    }
    const Axis& axis = *after.find(axis_of(cut.past));
    p.buds_kept = axis.removed ? 0 : buds_between(after, axis, 0);
    const Prunings off = prunings(vine, after);
    p.mass_mg = off.removed.one_year_mg + off.removed.older_mg;
    p.key = TextKey{index_of(cut.past) == 0 ? "act.would-take-off" : "act.would-cut"};
    p.arguments = {{"part", axis_of(cut.past)},
                   {"node", Count{index_of(cut.past)}},
                   {"beyond", cut.beyond},
                   {"n", Count{p.buds_kept}},
                   {"off", Count{p.buds_off}},
                   {"mass", Mass{rounded(std::min(p.mass_mg, 2e9))}}};
    if (cuts_trunk(vine, cut)) p.warning = TextKey{"act.warn.trunk"};
    return p;
}

}  // namespace spurwright::practice
