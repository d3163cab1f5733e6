#include "sim/growth/history_cuts.h"

#include <algorithm>
#include <cmath>

#include "sim/growth/traits.h"
#include "sim/pruning/legal_edits.h"
#include "sim/vine/vine_query.h"

namespace spurwright::growth {
namespace {

constexpr int least_for_end = 6;
constexpr Length end_cut{20'000}, short_of_node{5'000}, short_joint{25'000}, shortest_joint{15'000}, no_end_cut{10'000};
constexpr Length collar_cut{8'000}, collar_short{2'000}, lateral_cut{3'000};
constexpr Length tie_beyond{15'000};
constexpr std::uint32_t untouched = 1000;
constexpr double dead_left_share = 0.6;

Length to_tenth_mm(Length l) { return {l.count / 100 * 100}; }

// Shears, loppers, saw by the wood's thickness and age, as a crew carries them.
Tool tool_for(Length major, int wood_age) {
    if (major <= Length{wood_age == 1 ? 18'000 : 15'000}) return Tool::shears;
    return major <= Length{32'000} ? Tool::loppers : Tool::saw;
}

} // namespace

HistoryCuts::HistoryCuts(const Vine& vine, const PrunerHabits& habits)
    : vine_(vine), habits_(habits), last_(vine.axes.size(), untouched), needed_(vine.axes.size(), -1) {}

void HistoryCuts::keep(const Axis& piece) {
    kept_.push_back(&piece);
    keep_to(piece.parent);
}

void HistoryCuts::keep_to(NodeId node) {
    while (node) {
        const Axis& axis = *vine_.find(axis_of(node));
        int& outermost = needed_[row(axis)];
        outermost = std::max(outermost, static_cast<int>(index_of(node)));
        node = axis.parent;
    }
}

std::uint32_t HistoryCuts::row(const Axis& axis) const { return row_of(vine_, axis); }

bool HistoryCuts::is_kept(const Axis& axis) const {
    return std::find(kept_.begin(), kept_.end(), &axis) != kept_.end();
}

// Whether the node that bears an axis has been cut off by the plan so far.
bool HistoryCuts::is_gone(const Axis& axis) const {
    const Axis* a = &axis;
    while (a->parent) {
        const Axis& parent = *vine_.find(axis_of(a->parent));
        if (last_[row(parent)] != untouched &&
            static_cast<int>(index_of(a->parent)) > static_cast<int>(last_[row(parent)]) - 1)
            return true;
        a = &parent;
    }
    return false;
}

// `keep`: nodes that stand afterwards, for is_gone.
void HistoryCuts::cut(const Axis& axis, std::uint32_t past, Length beyond, std::uint32_t keep) {
    const auto nodes = vine_.nodes_of(axis);
    const Node& joint = nodes[beyond.count < 0 ? 0 : std::min<std::size_t>(past + 1, nodes.size() - 1)];
    plan_.edits.push_back(Cut{nodes[past].id, to_tenth_mm(beyond), tool_for(joint.major, age(vine_, axis)), {}});
    last_[row(axis)] = keep;
}

double HistoryCuts::stub_share(const Axis& axis) const {
    return Draws(vine_.seed)
        .uniform(Trait::stub, axis.id.value, static_cast<std::uint32_t>(vine_.winter), habits_.stub_low,
                 habits_.stub_high);
}

Length HistoryCuts::stub_of(const Axis& axis, const Node& joint) const {
    return {static_cast<std::int32_t>(stub_share(axis) * joint.major.count)};
}

// A dead spur or finger that hinders nobody is often left where it stands; a dead cane never hangs on in the wires.
bool HistoryCuts::is_left(const Axis& axis) const {
    const bool lay = std::any_of(vine_.laid.begin(), vine_.laid.end(), [&](const Laid& laid) { return laid.axis == axis.id; });
    return axis.state == AxisState::dead && !lay && Draws(vine_.seed).chance(Trait::dead_left, axis.id.value, 0, dead_left_share);
}

void HistoryCuts::clear_old_wood() {
    for (const Axis& axis : vine_.axes) {
        if (axis.removed || is_trunk(axis) || age(vine_, axis) < 2 || is_gone(axis)) continue;
        const auto nodes = vine_.nodes_of(axis);
        const int outermost = needed_[row(axis)];
        if (outermost < 0 && is_left(axis)) continue;
        if (outermost < 0) {
            take_off_old(axis);
            continue;
        }
        const auto past = static_cast<std::uint32_t>(outermost);
        const Node& next = nodes[std::min<std::size_t>(past + 1, nodes.size() - 1)];
        const Length wood = wood_beyond(vine_, axis, past);
        const Length stub =
            std::min(stub_of(axis, next), past + 1 < nodes.size() ? std::max(Length{}, wood - short_of_node) : wood);
        if (past + 1 < nodes.size() || wood > stub + collar_short) cut(axis, past, stub, past + 1);
    }
}

void HistoryCuts::take_off_old(const Axis& axis) {
    const auto nodes = vine_.nodes_of(axis);
    const Length collar = nodes[0].joint;
    const Node& joint = nodes[std::min<std::size_t>(1, nodes.size() - 1)];
    const Length stub = stub_of(axis, joint), wood = wood_beyond(vine_, axis, 0);
    if (const Length in_collar = to_tenth_mm(stub - collar); in_collar.count < 0) {
        cut(axis, 0, in_collar, 0);
        return;
    }
    const Length most = nodes.size() > 1 ? std::max(Length{}, wood - short_of_node) : wood;
    const Length beyond = std::min(std::max(Length{}, stub - collar), most);
    if (nodes.size() > 1 || wood > beyond + collar_short) cut(axis, 0, beyond, 1);
}

// One-year wood that is not kept: 8 mm past its ring; suckers flush. Laterals of kept pieces: 3 mm.
void HistoryCuts::clear_canes() {
    for (const Axis& axis : vine_.axes) {
        if (axis.removed || is_trunk(axis) || age(vine_, axis) != 1 || is_kept(axis) || is_gone(axis)) continue;
        const Length wood = wood_beyond(vine_, axis, 0);
        if (is_lateral(vine_, axis)) {
            const Axis& bearer = *vine_.find(axis_of(axis.parent));
            if (is_kept(bearer)) cut(axis, 0, std::min(lateral_cut, std::max(Length{}, wood - collar_short)), 1);
        } else if (is_sucker(vine_, axis)) {
            cut(axis, 0, -vine_.nodes_of(axis)[0].joint, 0);
        } else {
            cut(axis, 0, std::min(collar_cut, std::max(Length{}, wood - collar_short)), 1);
        }
    }
}

int HistoryCuts::spur_buds_of(const Axis& axis, int buds) const {
    return std::min(buds, static_cast<int>(ripe_count_nodes(vine_, axis).size()));
}

std::uint32_t HistoryCuts::spur_end(const Axis& axis, int buds) const {
    const auto ripe = ripe_count_nodes(vine_, axis);
    return ripe[static_cast<std::size_t>(spur_buds_of(axis, buds)) - 1];
}

void HistoryCuts::shorten(const Axis& axis, std::uint32_t last) {
    const Length joint = wood_beyond(vine_, axis, last);
    const bool at_end = last + 1 >= axis.node_count;
    if (at_end && joint <= no_end_cut) return;
    Length beyond = end_cut;
    if (at_end)
        beyond = std::min(end_cut, joint);
    else if (joint < shortest_joint)
        beyond = joint;
    else if (joint < short_joint)
        beyond = joint - short_of_node;
    cut(axis, last, beyond, last + 1);
}

std::uint32_t HistoryCuts::cane_end(const Axis& axis, const Course& course, Side side, int buds,
                                    double reach_mm) const {
    const auto ripe = ripe_count_nodes(vine_, axis);
    const auto nodes = vine_.nodes_of(axis);
    const double reach = reach_mm - in_mm(end_cut);
    std::uint32_t last = ripe[0];
    for (std::size_t i = 0; i < ripe.size() && static_cast<int>(i) < buds; ++i) {
        const std::uint32_t node = ripe[i];
        if (i > 0 && sign_of(side) * in_mm(course.places[node].x) > reach) break;
        if (static_cast<int>(i) >= least_for_end && in_mm(mean_diameter(nodes[node])) < habits_.end_mm) break;
        last = node;
    }
    return last;
}

void HistoryCuts::lay(const Axis& axis, Side side, int buds, double reach_mm, int half_wraps) {
    const Course course = course_of(vine_, axis, side);
    const std::uint32_t last = cane_end(axis, course, side, buds, reach_mm);
    shorten(axis, last);
    plan_.edits.push_back(Lay{axis.id, side, half_wraps});
    const double wire = in_mm(fruiting_wire_height(vine_));
    const auto on_wire = [&](std::uint32_t i) {
        return std::fabs(in_mm(course.places[i].y) - wire) < 20 && std::fabs(in_mm(course.places[i].z)) < 20;
    };
    std::uint32_t first = 1;
    while (first < last && !on_wire(first)) ++first;
    const std::uint32_t outer = last > 1 ? last - 1 : last;
    if (first + 1 < outer) tie(axis, first, false);
    const bool holds = course_of(vine_, axis, side, outer).state != LaidState::snapped;
    if (holds && std::fabs(in_mm(course.places[outer].y) - wire) < 40 && std::fabs(in_mm(course.places[outer].z)) < 40)
        tie(axis, outer, true);
}

void HistoryCuts::tie(const Axis& axis, std::uint32_t index, bool tight) {
    const Length wood = vine_.nodes_of(axis)[std::min(index + 1, axis.node_count - 1)].joint;
    plan_.edits.push_back(
        Fasten{vine_.nodes_of(axis)[index].id,
               index + 1 < axis.node_count ? std::min(tie_beyond, to_tenth_mm({wood.count / 2})) : Length{}, tight});
}

} // namespace spurwright::growth
