#include "sim/rules/measure_cuts.h"

#include <algorithm>

#include "sim/pruning/legal_edits.h"
#include "sim/vine/vine_query.h"

namespace spurwright::rules {
namespace {

// A cut in the collar took the crown off: its row names the parent's node.
bool crown_off(const Wound& wound) { return axis_of(wound.node) != wound.axis; }

// Whether the face of this cut still stands: nothing inside it went since.
bool stands(const Vine& after, const Wound& wound) {
    if (after.find(wound.node)->removed) return false;
    if (crown_off(wound)) return true;
    const Axis& axis = *after.find(wound.axis);
    const std::uint32_t index = index_of(wound.node);
    if (index + 1 < axis.node_count && !after.nodes_of(axis)[index + 1].removed) return false;
    for (const Wound& other : after.wounds)  // a later cut in the same joint
        if (other.id > wound.id && other.axis == wound.axis && other.node == wound.node) return false;
    return true;
}

Length place_of_cut(const Vine& before, const Axis& axis, const Wound& wound) {
    if (crown_off(wound)) return wound.beyond;
    return from_surface(before, axis, index_of(wound.node), wound.beyond);
}

bool is_alive(const Vine& after, const Node& node) {
    for (const Bud& bud : after.buds_of(node))
        if (bud.primary || bud.secondary) return true;
    return false;
}

// Along the axis from its parent's surface: the outermost node inside the cut that bears live wood or a live bud; 0,
// the surface itself, where none does.
Length living_up_to(const Vine& before, const Vine& after, const Axis& axis, const Wound& wound) {
    if (crown_off(wound)) return {};
    std::uint32_t outermost = 0;
    bool bears = false;
    for (const Axis& child : after.axes)
        if (!child.removed && child.state == AxisState::live && child.parent && axis_of(child.parent) == axis.id) {
            outermost = std::max(outermost, index_of(child.parent));
            // The crown bears where a whole piece stands on it; the stub of one goes with the crown.
            bears = bears || (child.node_count > 1 && !after.nodes_of(child)[1].removed);
        }
    const auto nodes = after.nodes_of(axis);
    for (std::uint32_t i = index_of(wound.node); i > outermost; --i)
        if (is_alive(after, nodes[i])) outermost = i;
    return outermost == 0 && !bears ? Length{} : from_surface(before, axis, outermost, {});
}

// The joint would not take the stub: the cut stands as far out as the next node lets it.
bool forced_short(const Vine& before, const Axis& axis, const Wound& wound, const HouseRules& house) {
    const Length room =
        crown_off(wound) ? before.nodes_of(axis)[0].joint : wood_beyond(before, axis, index_of(wound.node));
    constexpr Length rounding{100};
    return room - wound.beyond <= house.old_wood_stub.short_of_node + rounding;
}

bool is_needed(const Vine& before, const Axis& axis, const Wound& wound, std::span<const DueCut> due,
               const HouseRules& house) {
    for (const DueCut& cut : due) {
        if (cut.axis != axis.id) continue;
        const std::int64_t off =
            (place_of_cut(before, axis, wound) - from_surface(before, axis, index_of(cut.past), cut.beyond)).count;
        const std::int64_t near = std::int64_t{house.wound_size.needed_within.count} * wound.major.count / 1000;
        return off <= near && -off <= near;
    }
    return false;
}

}  // namespace

PieceEnd end_of_piece(const Vine& after, const Axis& axis) {
    const auto nodes = after.nodes_of(axis);
    PieceEnd end;
    while (end.last_node + 1 < nodes.size() && !nodes[end.last_node + 1].removed) ++end.last_node;
    end.beyond = wood_beyond(after, axis, end.last_node);
    for (const Wound& wound : after.wounds)
        end.cut =
            end.cut || (wound.winter == after.winter && wound.axis == axis.id && wound.node == nodes[end.last_node].id);
    return end;
}

TyingFacts tying_of(const Vine& after, const HouseRules& house, const Axis& cane, int half_wraps,
                    std::uint32_t last_node) {
    using EndTie = TyingFacts::EndTie;
    const auto nodes = after.nodes_of(cane);
    const Length clear = house.tying.bud_clear;
    TyingFacts facts;
    facts.end_tie = EndTie::none;
    facts.half_wraps = half_wraps;
    for (const Tie& tie : after.ties) {
        if (tie.winter != after.winter || tie.state != TieState::on || axis_of(tie.node) != cane.id ||
            after.find(tie.node)->removed)
            continue;
        const std::uint32_t index = index_of(tie.node);
        const bool at_end = index + static_cast<std::uint32_t>(house.tying.end_nodes) >= last_node;
        if (at_end && facts.end_tie != EndTie::tight) facts.end_tie = tie.tight ? EndTie::tight : EndTie::loose;
        if (!at_end && tie.tight) ++facts.tight_elsewhere;
        // In a joint too short for both, only a tie at its own node lies over a bud.
        const Length joint = index + 1 < nodes.size() ? nodes[index + 1].joint : wood_beyond(after, cane, index);
        const bool over_next = index < last_node && joint.count >= 4 * clear.count && joint - tie.beyond < clear;
        if (tie.beyond < clear || over_next) ++facts.ties_over_buds;
    }
    return facts;
}

Length wood_left_at_origin(const Vine& before, const Vine& after, const Axis& axis) {
    if (!axis.removed) {
        const PieceEnd end = end_of_piece(after, axis);
        return from_surface(before, axis, end.last_node, end.beyond);
    }
    for (const Wound& wound : after.wounds)
        if (wound.winter == after.winter && wound.axis == axis.id && crown_off(wound) &&
            !after.find(wound.node)->removed)
            return wound.beyond;
    return {};
}

std::vector<CutFacts> measure_cuts(const Vine& before, const Vine& after, const HouseRules& house,
                                   std::span<const DueCut> due) {
    std::vector<CutFacts> cuts;
    cuts.reserve(after.wounds.size() - before.wounds.size());
    for (std::size_t row = before.wounds.size(); row < after.wounds.size(); ++row) {
        const Wound& wound = after.wounds[row];
        const Axis& axis = *before.find(wound.axis);
        CutFacts cut;
        cut.axis = wound.axis;
        cut.on_vine = stands(after, wound);
        cut.wood_age = wound.wood_age;
        cut.diameter = wound.major;
        cut.tool = wound.tool;
        cut.dead_wood = axis.state == AxisState::dead;
        cut.on_trunk = is_trunk(axis);
        if (cut.on_vine && cut.wood_age > 1) {
            const std::int64_t left =
                (place_of_cut(before, axis, wound) - living_up_to(before, after, axis, wound)).count;
            cut.stub = {static_cast<std::int32_t>(2000 * left / (wound.major.count + wound.minor.count))};
            cut.forced_short = forced_short(before, axis, wound, house);
            cut.needed = is_needed(before, axis, wound, due, house);
        }
        cuts.push_back(cut);
    }
    return cuts;
}

}  // namespace spurwright::rules
