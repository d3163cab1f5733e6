#include "sim/planning/held_plan.h"

#include <algorithm>

#include "sim/planning/best_plan.h"
#include "sim/planning/complete.h"
#include "sim/planning/open_choices.h"

namespace spurwright::planning {
namespace {

// Lower than any piece of a plan can win by being left out, and small enough for the search's words (tables.h).
constexpr std::int32_t left_out = -600;

// The tables of a vine in hand, narrowed down to what its tapes and cuts allow.
class Narrowed {
public:
    Narrowed(const VineTables& all, const Vine& before, const Vine& now) : before_(before), now_(now), open_(all) {
        open_.tables = open_choices(all, now);
        for (std::size_t row = 0; row < open_.pieces.size(); ++row) keep_length(row);
        for (std::size_t row = 0; row < open_.pieces.size(); ++row) hold(row);
        for (std::size_t row = 0; row < open_.pieces.size(); ++row) make_room(row);
    }

    const VineTables& tables() const { return open_; }
    const std::vector<AxisId>& not_held() const { return not_held_; }

private:
    Role role(std::size_t row) const { return now_.find(open_.pieces[row].axis)->mark; }
    bool is_held(AxisId axis) const { return std::find(held_.begin(), held_.end(), axis) != held_.end(); }

    bool cut_this_winter(AxisId axis) const {
        const auto then = before_.nodes_of(*before_.find(axis)), nodes = now_.nodes_of(*now_.find(axis));
        for (std::size_t i = 1; i < nodes.size(); ++i)
            if (nodes[i].removed && !then[i].removed) return true;
        return false;
    }

    // A cane cut this winter ends where it was cut: shorter ends are no choice any more, though they could still be made.
    void keep_length(std::size_t row) {
        Candidate& candidate = open_.tables.candidates[row];
        const std::size_t ends = std::max(candidate.cane[0][0].size(), candidate.cane[1][0].size());
        if (ends < 2 || !cut_this_winter(open_.pieces[row].axis)) return;
        for (auto& side : candidate.cane)
            for (auto& load : side) load.erase(load.begin(), load.begin() + static_cast<std::ptrdiff_t>(std::min(load.size(), ends - 1)));
        candidate.first_buds += static_cast<int>(ends) - 1;
        auto& nodes = open_.pieces[row].cut_nodes;
        nodes = {nodes[ends - 1]};
    }

    void hold(std::size_t row) {
        const Candidate& candidate = open_.tables.candidates[row];
        const Role taped = role(row);
        const AxisId axis = open_.pieces[row].axis;
        const bool cane = taped == Role::left || taped == Role::right;
        if (!cane && taped != Role::spur) return;
        const bool can = cane ? candidate.lies(side_of(taped)) : !candidate.spur.empty();
        (can ? held_ : not_held_).push_back(axis);
        if (!can) return;
        if (cane) {
            for (auto& load : open_.tables.no_cane[at(side_of(taped))]) load = left_out;
            cane_taped_[at(side_of(taped))] = true;
        } else {
            open_.tables.no_spur[at(candidate.side)] = left_out;
            spur_taped_[at(candidate.side)] = true;
        }
    }

    static Side side_of(Role cane) { return cane == Role::left ? Side::left : Side::right; }

    // What is taped stays what it is taped as; where a tape hangs, what bears none gives way.
    void make_room(std::size_t row) {
        Candidate& candidate = open_.tables.candidates[row];
        const Role taped = is_held(open_.pieces[row].axis) ? role(row) : Role::none;
        const bool put_aside = role(row) == Role::remove || role(row) == Role::kicker || role(row) == Role::spare;
        for (const Side side : both_sides) {
            const bool taped_here = (taped == Role::left || taped == Role::right) && side_of(taped) == side;
            if (put_aside || (taped != Role::none && !taped_here) || (cane_taped_[at(side)] && !taped_here))
                for (auto& load : candidate.cane[at(side)]) load.clear();
        }
        if (put_aside || (taped != Role::none && taped != Role::spur) || (spur_taped_[at(candidate.side)] && taped != Role::spur)) candidate.spur.clear();
    }

    const Vine& before_;
    const Vine& now_;
    VineTables open_;
    std::vector<AxisId> held_, not_held_;
    std::array<bool, 2> cane_taped_{}, spur_taped_{};
};

std::vector<AxisId> taped_as(const Vine& now, std::initializer_list<Role> roles) {
    std::vector<AxisId> found;
    for (const Role role : roles)
        for (const Axis& axis : now.axes)
            if (!axis.removed && axis.mark == role) found.push_back(axis.id);
    return found;
}

}  // namespace

std::optional<HeldPlan> best_holding(const Vine& before, const rules::HouseRules& house, const VineTables& tables, const Vine& now) {
    const Narrowed narrowed(tables, before, now);
    VineTables open = narrowed.tables();
    HeldPlan held;
    held.not_held = narrowed.not_held();
    auto found = best_pick(open.tables);
    if (!found) {  // the tapes leave nothing to lay: what is still open without them
        open = tables;
        open.tables = open_choices(tables, now);
        found = best_pick(open.tables);
        if (!found) return std::nullopt;
        held.not_held = taped_as(now, {Role::left, Role::right, Role::spur, Role::remove});
    }
    const Choice choice = choice_of(open, found->pick);
    const std::vector<AxisId> standing = taped_as(now, {Role::kicker, Role::spare});
    held.best.choice = choice;
    held.best.plan = complete(before, house, choice, standing);
    const auto worth = pick_of(tables, choice);  // by the vine's own tables, not by those that hold it
    held.best.points = Tenths{points_of(tables.tables, *worth)};
    held.best.sum = Tenths{sum_of(tables.tables, *worth)};
    held.rest = finish(before, now, house, held.best.plan);
    return held;
}

}  // namespace spurwright::planning
