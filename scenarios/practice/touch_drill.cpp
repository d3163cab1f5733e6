#include "scenarios/practice/touch_drill.h"

#include <algorithm>

#include "scenarios/quiz/in_sight.h"
#include "sim/core/random.h"
#include "sim/vine/canonical_text.h"
#include "sim/vine/vine_query.h"

namespace spurwright::practice {
namespace {

// All our choice: a joint long and thick enough to be looked at between its nodes, no higher than a hand touches without
// reaching, and a share of older wood that cannot be guessed from the answers before.
constexpr Length shortest_joint{15'000}, thinnest{4'000}, over_the_wire{350'000};
constexpr std::int32_t fewest_older = 5, most_older = 7;

enum class Drawn : std::uint32_t { share = 1, axis = 2, node = 3, order = 4 };
std::uint64_t drawn(std::uint64_t seed, Drawn what, std::uint32_t part = 0) { return draw(seed, static_cast<std::uint32_t>(what), part); }

// One axis and its joints that may be touched, in drawn order.
struct Wood {
    AxisId axis;
    std::vector<NodeId> joints;
};

bool may_be_touched(const Vine& vine, const Axis& axis, const Node& node, Length along) {
    return !node.removed && index_of(node.id) > 0 && node.joint >= shortest_joint && mean_diameter(node) >= thinnest && node.place.y.count > 0 &&
           node.place.y <= fruiting_wire_height(vine) + over_the_wire && along <= axis.ripe && quiz::in_sight(vine, node.id);
}

std::vector<Wood> wood_of(const Vine& vine, bool older, std::uint64_t seed) {
    std::vector<Wood> all;
    for (const Axis& axis : vine.axes) {
        if (axis.removed || is_trunk(axis) || axis.state != AxisState::live || (age(vine, axis) > 1) != older) continue;
        Wood wood{axis.id, {}};
        Length along;
        for (const Node& node : vine.nodes_of(axis)) {
            if (index_of(node.id) > 0) along += node.joint;
            if (may_be_touched(vine, axis, node, along)) wood.joints.push_back(node.id);
        }
        std::stable_sort(wood.joints.begin(), wood.joints.end(),
                         [&](NodeId a, NodeId b) { return drawn(seed, Drawn::node, a.value) < drawn(seed, Drawn::node, b.value); });
        if (!wood.joints.empty()) all.push_back(std::move(wood));
    }
    std::stable_sort(all.begin(), all.end(), [&](const Wood& a, const Wood& b) { return drawn(seed, Drawn::axis, a.axis.value) < drawn(seed, Drawn::axis, b.axis.value); });
    return all;
}

// One joint of each axis in turn, then a second of each, and so on.
std::vector<NodeId> joints_in_turn(const std::vector<Wood>& all) {
    std::vector<NodeId> joints;
    for (std::size_t round = 0, before = 1; before > 0; ++round) {
        before = 0;
        for (const Wood& wood : all) {
            if (round >= wood.joints.size()) continue;
            joints.push_back(wood.joints[round]);
            ++before;
        }
    }
    return joints;
}

int canes_on(const Vine& vine, const Axis& axis) {
    return static_cast<int>(std::count_if(vine.axes.begin(), vine.axes.end(), [&](const Axis& a) {
        return !a.removed && a.parent && axis_of(a.parent) == axis.id && age(vine, a) == 1;
    }));
}

// A tie that was made on it in an earlier winter and still holds.
bool tied_before(const Vine& vine, const Axis& axis) {
    return std::any_of(vine.ties.begin(), vine.ties.end(), [&](const Tie& tie) {
        return axis_of(tie.node) == axis.id && tie.winter == vine.winter - 1 && tie.state != TieState::cut && !vine.find(tie.node)->removed;
    });
}

void tell(const Vine& vine, const Axis& axis, Touch& touch) {
    const int years = age(vine, axis), canes = canes_on(vine, axis), buds = count_buds(vine, axis);
    if (years == 1) {
        touch.key = TextKey{is_lateral(vine, axis) ? "drill.new.lateral" : buds > 0 ? "drill.new.buds" : "drill.new.bark"};
        touch.arguments = {{"n", Count{buds}}};
        return;
    }
    touch.key = TextKey{years == 2 && tied_before(vine, axis) ? "drill.older.tied" : canes > 0 ? "drill.older.bears" : "drill.older.bark"};
    touch.arguments = {{"n", Count{canes}}, {"years", Count{years}}};
}

Touch touch_at(const Vine& vine, NodeId joint) {
    const Axis& axis = *vine.find(axis_of(joint));
    Touch touch;
    touch.spot = {axis.id, node_id(axis.id, index_of(joint) - 1), Length{vine.find(joint)->joint.count / 2}};
    touch.older = age(vine, axis) > 1;
    tell(vine, axis, touch);
    return touch;
}

}  // namespace

TouchDrill::TouchDrill(const Vine& vine) {
    const std::uint64_t seed = vine_hash(vine);
    std::vector<NodeId> older = joints_in_turn(wood_of(vine, true, seed)), younger = joints_in_turn(wood_of(vine, false, seed));
    const auto wanted = static_cast<std::size_t>(between(drawn(seed, Drawn::share), fewest_older, most_older));
    const std::size_t rest = touches_in_a_drill - std::min(touches_in_a_drill, younger.size());
    older.resize(std::min(older.size(), std::max(wanted, rest)));
    younger.resize(std::min(younger.size(), touches_in_a_drill - older.size()));
    std::vector<NodeId> joints = std::move(older);
    joints.insert(joints.end(), younger.begin(), younger.end());
    std::stable_sort(joints.begin(), joints.end(), [&](NodeId a, NodeId b) { return drawn(seed, Drawn::order, a.value) < drawn(seed, Drawn::order, b.value); });
    for (const NodeId joint : joints) touches_.push_back(touch_at(vine, joint));
}

int TouchDrill::right() const {
    return static_cast<int>(std::count_if(touches_.begin(), touches_.end(), [](const Touch& t) { return t.right(); }));
}

void TouchDrill::answer(bool older) {
    if (here() && !answered()) touches_[at_].said_older = older;
}

void TouchDrill::next() {
    if (answered()) ++at_;
}

}  // namespace spurwright::practice
