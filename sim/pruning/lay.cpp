#include "sim/pruning/lay.h"

#include <algorithm>
#include <utility>

#include "sim/bending/laying.h"
#include "sim/pruning/cane_plane.h"
#include "sim/pruning/legal_edits.h"
#include "sim/vine/vine_query.h"

namespace spurwright {
namespace {

LaidState state_of(Strain strain) {
    if (strain > strain_at_break) return LaidState::snapped;
    const auto skin = static_cast<std::int32_t>(std::int64_t{strain_at_break.count} * skin_crack_per_mille / 1000);
    return strain.count >= skin ? LaidState::skin_crack : LaidState::held;
}

Course solved(const Vine& vine, const Axis& axis, Side side, std::uint32_t tied) {
    Course course{{vine.nodes_of(axis)[0].place}, {}, node_id(axis.id, 0), {}, side, 0};
    if (axis.node_count < 2) return course;
    const CanePlane flat = cane_plane(vine, axis, side);
    bending::LayingHand hand;
    bending::LaidCane laid;
    if (tied > 0) hand.tied_at(flat.cane, flat.wire, tied, laid);
    else hand.least(flat.cane, flat.wire, laid);
    course.tie = laid.tie;
    if (laid.settled) {
        double down = 0;
        for (std::uint32_t i = 0; i < laid.tie; ++i) down += bending::joint_of(flat.cane, i);
        course.places = onto_vine(vine, axis, flat, laid.at, down, 1.0);
        course.strain = {rounded(std::min(laid.strain, 1.0) * 1e6)};
        course.worst = node_id(axis.id, laid.worst);
    } else {  // cannot be brought there: it stays as it stood, and breaks
        course.places.clear();
        for (const Node& node : vine.nodes_of(axis)) course.places.push_back(node.place);
        course.strain = {1'000'000};
        course.worst = node_id(axis.id, 1);
    }
    course.state = state_of(course.strain);
    return course;
}

// All that solved() reads.
CourseBook::Key course_key(const Vine& vine, const Axis& axis, Side side, std::uint32_t tied) {
    const auto nodes = vine.nodes_of(axis);
    CourseBook::Key key;
    key.reserve(4 + 6 * nodes.size());
    key.insert(key.end(), {static_cast<std::int32_t>(axis.id.value), static_cast<std::int32_t>(side), static_cast<std::int32_t>(tied), fruiting_wire_height(vine).count});
    for (const Node& node : nodes)
        key.insert(key.end(), {node.joint.count, node.major.count, node.minor.count, node.place.x.count, node.place.y.count, node.place.z.count});
    return key;
}

std::shared_ptr<const Course> answered(const Vine& vine, const Axis& axis, Side side, std::uint32_t tied) {
    if (!vine.courses) return std::make_shared<const Course>(solved(vine, axis, side, tied));
    CourseBook::Key key = course_key(vine, axis, side, tied);
    if (auto found = vine.courses->find(key)) return found;
    auto course = std::make_shared<const Course>(solved(vine, axis, side, tied));
    vine.courses->keep(std::move(key), course);
    return course;
}

}  // namespace

bool pulls(const Vine& vine, const Axis& axis, const Course& least, std::uint32_t tied) {
    if (tied == 0 || tied >= least.tie || tied >= axis.node_count || along(vine, axis, tied) < least_pulled) return false;
    const Length over = least.places[tied].y - fruiting_wire_height(vine);
    return over >= Length{} && over <= tie_reach;
}

Course course_of(const Vine& vine, const Axis& axis, Side side, std::optional<std::uint32_t> tied) {
    const auto least = answered(vine, axis, side, 0);
    return tied && pulls(vine, axis, *least, *tied) ? *answered(vine, axis, side, *tied) : *least;
}

bool would_break(const Vine& vine, const Axis& axis, Side side) { return answered(vine, axis, side, 0)->state == LaidState::snapped; }

std::optional<std::uint32_t> nearest_tight_tie(const Vine& vine, AxisId axis) {
    std::optional<std::uint32_t> nearest;
    for (const Tie& tie : vine.ties)
        if (axis_of(tie.node) == axis && tie.winter == vine.winter && tie.tight) nearest = std::min(nearest.value_or(index_of(tie.node)), index_of(tie.node));
    return nearest;
}

}  // namespace spurwright
