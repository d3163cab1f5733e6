#include "sim/growth/history_pruner.h"

#include <algorithm>
#include <cmath>

#include "sim/growth/history_choice.h"
#include "sim/growth/traits.h"
#include "sim/pruning/lay.h"
#include "sim/pruning/legal_edits.h"
#include "sim/vine/vine_query.h"

namespace spurwright::growth {
namespace {

constexpr double buds_a_metre = 15;
constexpr int spur_buds = 2, least_for_end = 6;
constexpr Length end_cut{20'000}, short_of_node{5'000}, short_joint{25'000}, shortest_joint{15'000}, no_end_cut{10'000};
constexpr Length collar_cut{8'000}, collar_short{2'000}, lateral_cut{3'000};
constexpr Length gap_to_neighbour{50'000}, tie_beyond{15'000};
constexpr int wraps = 2; // half wraps
constexpr std::uint32_t untouched = 1000;

Length to_tenth_mm(Length l) { return {l.count / 100 * 100}; }

// Shears, loppers, saw by the wood's thickness and age, as a crew carries them.
Tool tool_for(Length major, int wood_age) {
    if (major <= Length{wood_age == 1 ? 18'000 : 15'000}) return Tool::shears;
    return major <= Length{32'000} ? Tool::loppers : Tool::saw;
}

class Planner {
public:
    Planner(const Vine& vine, const PrunerHabits& habits)
        : vine_(vine), habits_(habits), last_(vine.axes.size(), untouched), needed_(vine.axes.size(), -1) {}

    Plan plan() {
        for (const Side side : both_sides) chosen_.push_back(choose(vine_, side, habits_));
        for (const Chosen& side : chosen_) {
            for (const Axis* piece : {side.cane, side.spur})
                if (piece) need(*piece);
        }
        clear_old_wood();
        clear_canes();
        for (const Chosen& side : chosen_)
            if (side.spur) shorten(*side.spur, spur_end(*side.spur));
        int spurs = 0;
        for (const Chosen& side : chosen_) spurs += side.spur ? spur_buds_of(*side.spur) : 0;
        const int target =
            static_cast<int>(std::floor(habits_.load * std::floor(buds_a_metre * in_m(vine_.spacing) + 0.5) + 0.5));
        const int rest = std::max(2, target - spurs);
        const std::array<int, 2> shares{habits_.buds_a_cane.value_or(rest - rest / 2),
                                        habits_.buds_a_cane.value_or(rest / 2)};
        for (std::size_t i = 0; i < 2; ++i)
            if (chosen_[i].cane) lay(*chosen_[i].cane, both_sides[i], shares[i]);
        return std::move(plan_);
    }

private:
    std::uint32_t row(const Axis& axis) const { return row_of(vine_, axis); }
    bool is_kept(const Axis& axis) const {
        return std::any_of(chosen_.begin(), chosen_.end(),
                           [&](const Chosen& c) { return c.cane == &axis || c.spur == &axis; });
    }

    // Marks the way from a kept piece inward: the outermost node each axis must keep.
    void need(const Axis& piece) {
        NodeId on = piece.parent;
        while (on) {
            const Axis& axis = *vine_.find(axis_of(on));
            int& outermost = needed_[row(axis)];
            outermost = std::max(outermost, static_cast<int>(index_of(on)));
            on = axis.parent;
        }
    }

    // Whether the node that bears an axis has been cut off by the plan so far.
    bool is_gone(const Axis& axis) const {
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
    void cut(const Axis& axis, std::uint32_t past, Length beyond, std::uint32_t keep) {
        const auto nodes = vine_.nodes_of(axis);
        const Node& joint = nodes[beyond.count < 0 ? 0 : std::min<std::size_t>(past + 1, nodes.size() - 1)];
        plan_.edits.push_back(Cut{nodes[past].id, to_tenth_mm(beyond), tool_for(joint.major, age(vine_, axis)), {}});
        last_[row(axis)] = keep;
    }

    double stub_share(const Axis& axis) const {
        return Draws(vine_.seed)
            .uniform(Trait::stub, axis.id.value, static_cast<std::uint32_t>(vine_.winter), habits_.stub_low,
                     habits_.stub_high);
    }

    Length stub_of(const Axis& axis, const Node& joint) const {
        return {static_cast<std::int32_t>(stub_share(axis) * joint.major.count)};
    }

    // Wood of two years and older: back to what it still bears, or off.
    void clear_old_wood() {
        for (const Axis& axis : vine_.axes) {
            if (axis.removed || is_trunk(axis) || age(vine_, axis) < 2 || is_gone(axis)) continue;
            const auto nodes = vine_.nodes_of(axis);
            const int outermost = needed_[row(axis)];
            if (outermost < 0) {
                take_off_old(axis);
                continue;
            }
            const auto past = static_cast<std::uint32_t>(outermost);
            const Node& next = nodes[std::min<std::size_t>(past + 1, nodes.size() - 1)];
            const Length wood = wood_beyond(vine_, axis, past);
            const Length stub = std::min(stub_of(axis, next),
                                         past + 1 < nodes.size() ? std::max(Length{}, wood - short_of_node) : wood);
            if (past + 1 < nodes.size() || wood > stub + collar_short) cut(axis, past, stub, past + 1);
        }
    }

    void take_off_old(const Axis& axis) {
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
    void clear_canes() {
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

    int spur_buds_of(const Axis& axis) const {
        return std::min(spur_buds, static_cast<int>(ripe_count_nodes(vine_, axis).size()));
    }

    std::uint32_t spur_end(const Axis& axis) const {
        const auto ripe = ripe_count_nodes(vine_, axis);
        return ripe[static_cast<std::size_t>(spur_buds_of(axis)) - 1];
    }

    // Cuts a piece 20 mm past its last bud, or short of the next node where the joint is short.
    void shorten(const Axis& axis, std::uint32_t last) {
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

    // The last node of a laid cane: so many buds, stopped by the neighbour's half, by ripe wood and by thin wood.
    std::uint32_t cane_end(const Axis& axis, const Course& course, Side side, int buds) const {
        const auto ripe = ripe_count_nodes(vine_, axis);
        const auto nodes = vine_.nodes_of(axis);
        const double reach = in_mm(vine_.spacing) / 2 - in_mm(gap_to_neighbour) - in_mm(end_cut);
        std::uint32_t last = ripe[0];
        for (std::size_t i = 0; i < ripe.size() && static_cast<int>(i) < buds; ++i) {
            const std::uint32_t node = ripe[i];
            if (i > 0 && sign_of(side) * in_mm(course.places[node].x) > reach) break;
            if (static_cast<int>(i) >= least_for_end && in_mm(mean_diameter(nodes[node])) < habits_.end_mm) break;
            last = node;
        }
        return last;
    }

    void lay(const Axis& axis, Side side, int buds) {
        const Course course = course_of(vine_, axis, side);
        const std::uint32_t last = cane_end(axis, course, side, buds);
        shorten(axis, last);
        plan_.edits.push_back(Lay{axis.id, side, wraps});
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

    void tie(const Axis& axis, std::uint32_t index, bool tight) {
        const Length wood = vine_.nodes_of(axis)[std::min(index + 1, axis.node_count - 1)].joint;
        plan_.edits.push_back(Fasten{
            vine_.nodes_of(axis)[index].id,
            index + 1 < axis.node_count ? std::min(tie_beyond, to_tenth_mm({wood.count / 2})) : Length{}, tight});
    }

    const Vine& vine_;
    const PrunerHabits& habits_;
    std::vector<std::uint32_t> last_; // nodes that stand after the plan so far, by axis row; untouched: all
    std::vector<int> needed_;
    std::vector<Chosen> chosen_;
    Plan plan_;
};

} // namespace

Plan history_plan(const Vine& vine, const PrunerHabits& habits) {
    if (habits.cuts_nothing) return {};
    return Planner(vine, habits).plan();
}

} // namespace spurwright::growth
