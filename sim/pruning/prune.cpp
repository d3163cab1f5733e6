#include <algorithm>

#include "sim/pruning/lay.h"
#include "sim/pruning/legal_edits.h"
#include "sim/pruning/plan.h"
#include "sim/vine/vine_query.h"

namespace spurwright {
namespace {

template <class Row>
auto next_id(const std::vector<Row>& rows) {
    auto id = rows.empty() ? decltype(Row::id){} : rows.back().id;
    ++id.value;
    return id;
}

// Carries out edits on one vine. The caller has asked why_not() before each.
class Hands {
public:
    Hands(Vine& vine, const BearingMap& bearing, const Vine& uncut) : vine_(vine), bearing_(bearing), uncut_(uncut) {}

    void operator()(const Cut& cut) {
        const Axis& axis = *vine_.find(axis_of(cut.past));
        const auto nodes = vine_.nodes_of(axis);
        const std::uint32_t index = index_of(cut.past);
        const bool crown_off = cut.beyond.count < 0;
        const Node& joint = nodes[crown_off ? 0 : std::min<std::size_t>(index + 1, nodes.size() - 1)];
        Wound wound;
        wound.id = next_id(vine_.wounds);
        wound.axis = axis.id;
        wound.node = crown_off && axis.parent ? axis.parent : cut.past;
        wound.beyond = crown_off ? nodes[0].joint + cut.beyond : cut.beyond;
        wound.major = joint.major;
        wound.minor = joint.minor;
        wound.wood_age = age(vine_, axis);
        wound.winter = vine_.winter;
        wound.tool = cut.tool;
        wound.tilt = cut.tilt;
        vine_.wounds.push_back(wound);
        take_off(row_of(vine_, axis), crown_off ? 0 : index + 1);
    }

    void operator()(const Lay& lay) {
        bring_down(row_of(vine_, *vine_.find(lay.cane)), lay.side, lay.half_wraps, nearest_tight_tie(vine_, lay.cane));
    }

    // A tight tie nearer than where the cane comes down by itself pulls it down there.
    void operator()(const Fasten& tie) {
        vine_.ties.push_back({next_id(vine_.ties), tie.at, tie.beyond, vine_.winter, tie.tight, TieState::on});
        if (!tie.tight) return;
        const AxisId axis = axis_of(tie.at);
        for (const Laid& laid : vine_.laid)
            if (laid.axis == axis && laid.winter == vine_.winter && laid.state != LaidState::snapped)
                return bring_down(row_of(vine_, *vine_.find(axis)), laid.side, laid.half_wraps, nearest_tight_tie(vine_, axis));
    }

    void operator()(const Mark& mark) { vine_.axes[row_of(vine_, *vine_.find(mark.axis))].mark = mark.role; }

private:
    // The course is that of the cane as it grew: from where it stands now it may have been laid already, or moved with
    // the older wood that bears it.
    void bring_down(std::uint32_t row, Side side, int half_wraps, std::optional<std::uint32_t> tied) {
        const Axis& axis = vine_.axes[row];
        const Axis& grown = *uncut_.find(axis.id);
        const Course course = course_of(uncut_, grown, side, tied);
        const Place now = vine_.nodes_of(axis)[0].place, then = uncut_.nodes_of(grown)[0].place;
        for (std::uint32_t i = 0; i < axis.node_count; ++i) {
            Node& node = vine_.nodes[axis.first_node + i];
            if (node.removed) break;
            const Place from = node.place, to = course.places[i];
            node.place = {to.x + now.x - then.x, to.y + now.y - then.y, to.z + now.z - then.z};
            carry_along(row, i, from, node.place);
        }
        const Laid laid{axis.id, vine_.winter, side, half_wraps, course.strain, course.worst, course.state};
        const auto at = std::lower_bound(vine_.laid.begin(), vine_.laid.end(), axis.id, [](const Laid& l, AxisId id) { return l.axis < id; });
        if (at != vine_.laid.end() && at->axis == axis.id) *at = laid;
        else vine_.laid.insert(at, laid);
        if (course.state == LaidState::snapped) take_off(row, index_of(course.worst) + 1);
    }

    // Everything of an axis from node `first` on, and all that grows there; one piece of brush.
    void take_off(std::uint32_t row, std::uint32_t first) {
        const Axis& axis = vine_.axes[row];
        if (first >= axis.node_count || vine_.nodes[axis.first_node + first].removed) return;
        bool hanging = false;
        const NodeId outer = vine_.nodes[axis.first_node + first].id;
        remove_from(row, first, hanging);
        vine_.brush.push_back({next_id(vine_.brush), outer, hanging});
    }

    void remove_from(std::uint32_t row, std::uint32_t first, bool& hanging) {
        Axis& axis = vine_.axes[row];
        if (first == 0) axis.removed = true;
        for (std::uint32_t i = first; i < axis.node_count; ++i) {
            Node& node = vine_.nodes[axis.first_node + i];
            hanging = hanging || (!node.removed && node.tendril == Tendril::gripping);
            node.removed = true;
        }
        for (const std::uint32_t child : bearing_.borne_by(row))
            if (index_of(vine_.axes[child].parent) >= first && !vine_.axes[child].removed) remove_from(child, 0, hanging);
    }

    // What stands on a node that laying moved goes with it, unturned.
    void carry_along(std::uint32_t row, std::uint32_t index, const Place& from, const Place& to) {
        const Place step{to.x - from.x, to.y - from.y, to.z - from.z};
        for (const std::uint32_t child : bearing_.borne_by(row))
            if (index_of(vine_.axes[child].parent) == index) shift(child, step);
    }

    void shift(std::uint32_t row, const Place& step) {
        const Axis& axis = vine_.axes[row];
        for (std::uint32_t i = 0; i < axis.node_count; ++i) {
            Place& p = vine_.nodes[axis.first_node + i].place;
            p = {p.x + step.x, p.y + step.y, p.z + step.z};
        }
        for (const std::uint32_t child : bearing_.borne_by(row)) shift(child, step);
    }

    Vine& vine_;
    const BearingMap& bearing_;
    const Vine& uncut_;
};

bool is_gone(const Vine& vine, const Argument& part) {
    if (const auto* node = std::get_if<NodeId>(&part)) return vine.find(*node) && vine.find(*node)->removed;
    if (const auto* axis = std::get_if<AxisId>(&part)) return vine.find(*axis) && vine.find(*axis)->removed;
    return false;
}

// Which edit took the part off: the refusal says so. 0: it was gone before this plan.
int taken_off_by(const Vine& before, const Plan& plan, std::size_t refused, const Argument& part) {
    Vine vine = before;
    const BearingMap bearing(vine);
    for (std::size_t i = 0; i < refused; ++i) {
        if (is_gone(vine, part)) return static_cast<int>(i);
        std::visit(Hands(vine, bearing, before), plan.edits[i]);
    }
    return static_cast<int>(refused);
}

}  // namespace

Result<void> prune_one(Vine& vine, const Edit& edit, const Vine& uncut) {
    if (auto error = why_not(vine, edit)) return failure(std::move(*error));
    const BearingMap bearing(vine);
    std::visit(Hands(vine, bearing, uncut), edit);
    return {};
}

Result<Vine> prune(const Vine& before, const Plan& plan) {
    Vine vine = before;
    const BearingMap bearing(vine);
    for (std::size_t i = 0; i < plan.edits.size(); ++i) {
        if (auto error = why_not(vine, plan.edits[i])) {
            error->where.step = static_cast<int>(i) + 1;
            if (error->fault == Fault::already_gone) {
                const int by = taken_off_by(before, plan, i, error->arguments[0].value);
                if (by > 0) error->arguments.push_back({"by", Count{by}});
                else error->key = TextKey{"error.plan.gone-before"};
            }
            return failure(std::move(*error));
        }
        std::visit(Hands(vine, bearing, before), plan.edits[i]);
    }
    return vine;
}

}  // namespace spurwright
