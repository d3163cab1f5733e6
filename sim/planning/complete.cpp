#include "sim/planning/complete.h"

#include <algorithm>

#include "sim/core/check.h"
#include "sim/planning/cordon.h"
#include "sim/planning/tables.h"
#include "sim/pruning/legal_edits.h"
#include "sim/rules/asked.h"
#include "sim/rules/clearing.h"
#include "sim/rules/measure_pieces.h"
#include "sim/vine/vine_query.h"

namespace spurwright::planning {
namespace {

// How careful hands cut what goes (our choice; DEVELOPERS.md).
constexpr Length cane_stub{8'000};      // past the crown: the collar and its base buds stay whole
constexpr Length short_of_node{2'000};  // where the first joint is too short for that
constexpr Length lateral_stub{3'000};

Length tenths(Length length) { return {length.count / 100 * 100}; }  // of a millimetre, towards the node

class Hand {
public:
    Hand(const Vine& vine, const rules::HouseRules& house, const Choice& choice, const std::vector<AxisId>& standing_first) : vine_(vine), house_(house) {
        if (choice.left_cane) plan_.edits.push_back(Mark{axis_of(choice.left_cane), Role::left});
        if (choice.right_cane) plan_.edits.push_back(Mark{axis_of(choice.right_cane), Role::right});
        if (choice.left_cane) canes_.push_back({axis_of(choice.left_cane), index_of(choice.left_cane), Side::left});
        if (choice.right_cane) canes_.push_back({axis_of(choice.right_cane), index_of(choice.right_cane), Side::right});
        keep_spur(choice.left_spur, choice.left_buds);
        keep_spur(choice.right_spur, choice.right_buds);
        SPURWRIGHT_CHECK(canes_.size(), >, std::size_t{0});
        leave_standing(standing_first);
    }
    Hand(const Vine& vine, const rules::HouseRules& house, const CordonChoice& choice) : vine_(vine), house_(house) {
        for (const auto& side : choice)
            for (const SpurKept& spur : side) keep_spur(spur.axis, spur.buds);
    }

    Plan plan() && {
        mark();
        clear_old_wood();
        clear_canes();
        std::stable_sort(canes_.begin(), canes_.end(), by_axis);
        std::stable_sort(spurs_.begin(), spurs_.end(), by_axis);
        for (const Kept& spur : spurs_) cut_end(spur);
        trim_laterals();
        for (const Kept& cane : canes_) cut_end(cane);
        for (const Kept& cane : canes_) plan_.edits.push_back(Lay{cane.axis, cane.side, 2});
        for (const Kept& cane : canes_) tie(cane);
        take_off_spares();
        return std::move(plan_);
    }

private:
    struct Kept {
        AxisId axis;
        std::uint32_t last_node = 0;
        Side side{};
    };
    static bool by_axis(const Kept& one, const Kept& other) { return one.axis < other.axis; }

    void keep_spur(AxisId id, int buds) {
        if (!id) return;
        const auto nodes = ripe_count_nodes(vine_, *vine_.find(id), house_.habits());
        SPURWRIGHT_CHECK(nodes.size(), >=, static_cast<std::size_t>(buds));
        spurs_.push_back({id, nodes[static_cast<std::size_t>(buds - 1)]});
    }

    // Kickers and spares: of the canes that are free, those asked for, then those nearest to the head.
    void leave_standing(const std::vector<AxisId>& first) {
        if (house_.standing.kickers + house_.standing.spares == 0) return;
        const rules::Offers offers = rules::offers(vine_, house_);
        const rules::Asked asked = rules::asked(offers, house_);
        std::vector<AxisId> free;
        for (const AxisId axis : first)
            if (among(offers.standing, axis)) free.push_back(axis);
        for (const AxisId axis : offers.standing)
            if (!among(first, axis)) free.push_back(axis);
        std::int32_t kickers = asked.kickers && !house_.standing.frost_over ? house_.standing.kickers : 0;
        std::int32_t spares = asked.spares ? house_.standing.spares : 0;
        for (const AxisId axis : free) {
            if (kept(axis)) continue;
            if (kickers > 0 && kickers--) kickers_.push_back(axis);
            else if (spares > 0 && spares--) spares_.push_back(axis);
        }
    }

    static bool among(const std::vector<AxisId>& list, AxisId axis) {
        return std::find(list.begin(), list.end(), axis) != list.end();
    }

    const Kept* kept(AxisId id) const {
        for (const auto* pieces : {&canes_, &spurs_})
            for (const Kept& piece : *pieces)
                if (piece.axis == id) return &piece;
        return nullptr;
    }

    void mark() {
        for (const Kept& spur : spurs_) plan_.edits.push_back(Mark{spur.axis, Role::spur});
        for (const AxisId axis : kickers_) plan_.edits.push_back(Mark{axis, Role::kicker});
        for (const AxisId axis : spares_) plan_.edits.push_back(Mark{axis, Role::spare});
    }

    void cut(NodeId past, Length beyond) {
        const Axis& axis = *vine_.find(axis_of(past));
        const auto nodes = vine_.nodes_of(axis);
        const Node& joint = nodes[beyond.count < 0 ? 0 : std::min<std::size_t>(index_of(past) + 1, nodes.size() - 1)];
        const rules::HouseRules::ToolChoice& tools = house_.tool_choice;
        const Length shears = age(vine_, axis) == 1 ? tools.shears_one_year : tools.shears_old;
        const Tool tool = joint.major <= shears          ? Tool::shears
                          : joint.major <= tools.loppers ? Tool::loppers
                                                         : Tool::saw;
        plan_.edits.push_back(Cut{past, beyond, tool, {}});
    }

    void clear_old_wood() {
        std::vector<AxisId> kept_axes;
        for (const auto* pieces : {&canes_, &spurs_})
            for (const Kept& piece : *pieces) kept_axes.push_back(piece.axis);
        kept_axes.insert(kept_axes.end(), kickers_.begin(), kickers_.end());
        old_cuts_ = rules::due_old_wood_cuts(vine_, house_, kept_axes);
        // What bears a spare waits for it.
        for (const rules::DueCut& due : old_cuts_) {
            const bool waits = std::any_of(spares_.begin(), spares_.end(),
                                           [&](AxisId spare) { return goes_with_it(*vine_.find(spare), due); });
            if (waits) waiting_.push_back(due);
            else cut(due.past, due.beyond);
        }
    }

    bool goes_with_it(const Axis& axis, const rules::DueCut& due) const {
        for (const Axis* at = &axis; at->parent; at = vine_.find(axis_of(at->parent)))
            if (axis_of(at->parent) == due.axis && (due.beyond.count < 0 || index_of(at->parent) > index_of(due.past)))
                return true;
        return false;
    }

    void take_off_spares() {
        for (const rules::DueCut& due : waiting_) cut(due.past, due.beyond);
        for (const AxisId spare : spares_) {
            const Axis& axis = *vine_.find(spare);
            if (!gone(axis)) cut(node_id(spare, 0), stub_within(cane_stub, wood_beyond(vine_, axis, 0)));
        }
    }

    // Whether a cut of last year's wood took this axis along.
    bool gone(const Axis& axis) const {
        return std::any_of(old_cuts_.begin(), old_cuts_.end(),
                           [&](const rules::DueCut& due) { return goes_with_it(axis, due); });
    }

    void clear_canes() {
        for (const Axis& axis : vine_.axes) {
            if (axis.removed || axis.state == AxisState::dead || !is_cane(vine_, axis) || kept(axis.id) || gone(axis) ||
                among(kickers_, axis.id) || among(spares_, axis.id))
                continue;
            const NodeId crown = node_id(axis.id, 0);
            if (is_sucker(vine_, axis, house_.habits()))
                cut(crown, -tenths(vine_.nodes_of(axis)[0].joint));
            else
                cut(crown, stub_within(cane_stub, wood_beyond(vine_, axis, 0)));
        }
    }

    static Length stub_within(Length stub, Length joint) {
        return tenths(std::max(Length{}, std::min(stub, joint - short_of_node)));
    }

    void trim_laterals() {
        for (const Axis& axis : vine_.axes) {
            if (axis.removed || !is_lateral(vine_, axis)) continue;
            const Kept* on = kept(axis_of(axis.parent));
            if (!on || index_of(axis.parent) > on->last_node) continue;
            cut(node_id(axis.id, 0), tenths(std::min(lateral_stub, wood_beyond(vine_, axis, 0))));
        }
    }

    void tie(const Kept& cane) {
        const Axis& axis = *vine_.find(cane.axis);
        if (const auto tie =
                rules::canonical_tie(vine_, house_, axis, course_of(vine_, axis, cane.side), cane.last_node))
            plan_.edits.push_back(*tie);
    }

    void cut_end(const Kept& piece) {
        const rules::PieceEnd end = rules::canonical_end(vine_, *vine_.find(piece.axis), piece.last_node);
        if (end.cut) cut(node_id(piece.axis, end.last_node), end.beyond);
    }

    const Vine& vine_;
    const rules::HouseRules& house_;
    std::vector<Kept> canes_, spurs_;
    std::vector<rules::DueCut> old_cuts_, waiting_;  // waiting: of old_cuts_, those that take a spare along
    std::vector<AxisId> kickers_, spares_;
    Plan plan_;
};

}  // namespace

Plan complete(const Vine& vine, const rules::HouseRules& house, const Choice& choice, const std::vector<AxisId>& standing_first) {
    return Hand(vine, house, choice, standing_first).plan();
}
Plan complete(const Vine& vine, const rules::HouseRules& house, const CordonChoice& choice) {
    return Hand(vine, house, choice).plan();
}

}  // namespace spurwright::planning
