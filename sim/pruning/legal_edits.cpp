#include "sim/pruning/legal_edits.h"

#include <algorithm>
#include <cmath>

#include "sim/vine/neighbours_wood.h"
#include "sim/vine/vine_query.h"

namespace spurwright {
namespace {

Error refusal(Fault fault, std::string_view key, Arguments arguments) { return {fault, TextKey{key}, std::move(arguments), {"plan", 0, 0, 0}}; }

std::optional<Error> missing_axis(const Vine& vine, AxisId id) {
    if (!vine.find(id)) return refusal(Fault::unknown_part, "error.plan.unknown-part", {{"part", id}});
    return std::nullopt;
}

std::optional<Error> missing_node(const Vine& vine, NodeId id) {
    const Node* node = vine.find(id);
    if (!node) return refusal(Fault::unknown_part, "error.plan.unknown-part", {{"part", id}});
    if (node->removed) return refusal(Fault::already_gone, "error.plan.already-gone", {{"part", id}});
    return std::nullopt;
}

// Wood that hangs over from the next vine is pulled back by its own pruner.
std::optional<Error> not_own(const Vine& vine, AxisId id) {
    if (is_neighbours(vine, *vine.find(id))) return refusal(Fault::not_allowed, "error.plan.neighbours", {{"part", id}});
    return std::nullopt;
}

bool laid_this_winter(const Vine& vine, AxisId id) {
    return std::any_of(vine.laid.begin(), vine.laid.end(), [&](const Laid& l) { return l.axis == id && l.winter == vine.winter; });
}

Length from_nearest_wire(const Vine& vine, const Place& p) {
    double nearest = 1e12;
    for (const Wire& wire : vine.wires) {
        const double y = p.y.count - wire.height.count;
        const double z = std::fabs(double(p.z.count)) - wire.half_gap.count;
        nearest = std::min(nearest, std::sqrt(y * y + z * z));
    }
    return {static_cast<std::int32_t>(std::min(nearest, 1e9))};
}

std::optional<Error> why_not_cut(const Vine& vine, const Cut& cut) {
    if (auto error = missing_node(vine, cut.past)) return error;
    if (auto error = not_own(vine, axis_of(cut.past))) return error;
    const Axis& axis = *vine.find(axis_of(cut.past));
    const std::uint32_t index = index_of(cut.past);
    const Length lowest = index == 0 ? -vine.nodes_of(axis)[0].joint : Length{};
    const Length highest = wood_beyond(vine, axis, index);
    if (cut.beyond < lowest || cut.beyond > highest)
        return refusal(Fault::not_allowed, "error.plan.cut-place", {{"part", cut.past}, {"low", lowest}, {"high", highest}});
    if (cut.tilt.count < -60'000 || cut.tilt.count > 60'000) return refusal(Fault::not_allowed, "error.plan.tilt-range", {{"part", cut.past}});
    return std::nullopt;
}

std::optional<Error> why_not_lay(const Vine& vine, const Lay& lay) {
    if (auto error = missing_axis(vine, lay.cane)) return error;
    const Axis& axis = *vine.find(lay.cane);
    if (axis.removed) return refusal(Fault::already_gone, "error.plan.already-gone", {{"part", lay.cane}});
    if (auto error = not_own(vine, lay.cane)) return error;
    if (is_trunk(axis)) return refusal(Fault::not_allowed, "error.plan.lay-trunk", {{"part", lay.cane}});
    if (axis.state == AxisState::dead) return refusal(Fault::not_allowed, "error.plan.lay-dead", {{"part", lay.cane}});
    if (laid_this_winter(vine, lay.cane)) return refusal(Fault::not_allowed, "error.plan.lay-twice", {{"part", lay.cane}});
    if (lay.side == Side::none || lay.half_wraps < 0 || lay.half_wraps > 6)
        return refusal(Fault::not_allowed, "error.plan.lay-how", {{"part", lay.cane}});
    return std::nullopt;
}

std::optional<Error> why_not_tie(const Vine& vine, const Fasten& tie) {
    if (auto error = missing_node(vine, tie.at)) return error;
    if (auto error = not_own(vine, axis_of(tie.at))) return error;
    const Axis& axis = *vine.find(axis_of(tie.at));
    if (tie.beyond.count < 0 || tie.beyond > wood_beyond(vine, axis, index_of(tie.at)))
        return refusal(Fault::not_allowed, "error.plan.tie-place", {{"part", tie.at}, {"high", wood_beyond(vine, axis, index_of(tie.at))}});
    const Length away = from_nearest_wire(vine, vine.find(tie.at)->place);
    if (!can_be_tied(vine, vine.find(tie.at)->place, laid_this_winter(vine, axis.id)))
        return refusal(Fault::not_allowed, "error.plan.tie-far", {{"part", tie.at}, {"away", away}, {"most", tie_reach}});
    return std::nullopt;
}

}  // namespace

Length wood_beyond(const Vine& vine, const Axis& axis, std::uint32_t index) {
    const auto nodes = vine.nodes_of(axis);
    if (index + 1 < nodes.size() && !nodes[index + 1].removed) return nodes[index + 1].joint;
    std::optional<Length> stub;  // of this winter's cuts past this node, the shortest is what is left
    for (const Wound& wound : vine.wounds)
        if (wound.winter == vine.winter && wound.axis == axis.id && wound.node == nodes[index].id && (!stub || wound.beyond < *stub))
            stub = wound.beyond;
    if (stub) return *stub;
    if (index + 1 < nodes.size()) return {};  // snapped here: nothing stands beyond the node
    return std::max(Length{}, axis.ripe - along(vine, axis, index));
}

bool can_be_tied(const Vine& vine, const Place& place, bool laid_now) {
    if (from_nearest_wire(vine, place) <= tie_reach) return true;
    const bool aside = place.z > tie_reach || place.z < -tie_reach;
    return laid_now && !aside && place.y >= fruiting_wire_height(vine);
}

std::optional<Error> why_not(const Vine& vine, const Edit& edit) {
    struct Asker {
        const Vine& vine;
        std::optional<Error> operator()(const Cut& c) const { return why_not_cut(vine, c); }
        std::optional<Error> operator()(const Lay& l) const { return why_not_lay(vine, l); }
        std::optional<Error> operator()(const Fasten& t) const { return why_not_tie(vine, t); }
        std::optional<Error> operator()(const Mark& m) const { return missing_axis(vine, m.axis); }
    };
    return std::visit(Asker{vine}, edit);
}

LegalEdits legal_edits(const Vine& vine) {
    LegalEdits legal;
    for (const Axis& axis : vine.axes) {
        legal.marks.push_back(axis.id);
        if (axis.removed || is_neighbours(vine, axis)) continue;
        const bool laid_now = laid_this_winter(vine, axis.id);
        if (!why_not_lay(vine, {axis.id, Side::left, 0})) legal.lays.push_back(axis.id);
        for (const Node& node : vine.nodes_of(axis)) {
            if (node.removed) break;
            const std::uint32_t index = index_of(node.id);
            legal.cuts.push_back({node.id, index == 0 ? -node.joint : Length{}, wood_beyond(vine, axis, index)});
            if (can_be_tied(vine, node.place, laid_now)) legal.ties.push_back(node.id);
        }
    }
    return legal;
}

}  // namespace spurwright
