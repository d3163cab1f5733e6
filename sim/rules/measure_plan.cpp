#include "sim/rules/measure_plan.h"

#include <algorithm>
#include <tuple>

#include "sim/pruning/legal_edits.h"
#include "sim/pruning/prunings.h"
#include "sim/rules/clearing.h"
#include "sim/rules/measure_cuts.h"
#include "sim/rules/measure_pieces.h"

namespace spurwright::rules {
namespace {

// Reads the vine before and after together; holds no state but what it has found.
class PlanReader {
public:
    PlanReader(const Vine& before, const Vine& after, const HouseRules& house, const Offers& offers)
        : before_(before), after_(after), house_(house), habits_(house.habits()), offers_(offers) {}

    PlanFacts read() {
        read_laid();
        read_standing();
        choose_spurs();
        explain_missing_canes();
        if (before_.system == System::one_cane) gather_single();
        read_laterals();
        read_spares();
        read_clearing();
        count_load();
        if (house_.prunings_weighed.asked) weigh();
        return std::move(plan_);
    }

private:
    SidePieces& at(Side side) { return plan_.sides[index_of(side)]; }
    const Axis& was(const Axis& axis) const { return before_.axes[row_of(after_, axis)]; }

    const Laid* laid_now(AxisId id) const {
        const auto row = std::lower_bound(after_.laid.begin(), after_.laid.end(), id,
                                          [](const Laid& l, AxisId wanted) { return l.axis < wanted; });
        return row != after_.laid.end() && row->axis == id && row->winter == after_.winter ? &*row : nullptr;
    }

    // Nearest to the crown point, then lowest, then thickest, then first: of several pieces of a side the one meant.
    template <class Piece>
    static auto rank(const Piece& piece, Length thickness) {
        return std::make_tuple(piece.distance_to_head, -piece.below_wire, -thickness, piece.axis);
    }

    void read_laid() {
        worked_ = after_.wounds.size() > before_.wounds.size();
        for (const Laid& laid : after_.laid) {
            if (laid.winter != after_.winter) continue;
            worked_ = true;
            const Axis& axis = *after_.find(laid.axis);
            if (axis.removed || !keeps_a_node(axis)) continue;  // laid and then cut off
            const int years = age(after_, axis);
            if (years > 1) {
                plan_.old_wood_laid.push_back(axis.id);
                note_instead(laid.side, NoCane::old_wood, axis.id, 0, years);
            } else if (is_cane(after_, axis)) {
                read_laid_cane(axis, laid);
            }
        }
    }

    void read_laid_cane(const Axis& axis, const Laid& laid) {
        if (before_.system == System::cordon) {  // a formed cordon lays none
            plan_.clearing.pieces_left.push_back(axis.id);
            return;
        }
        if (is_sucker(after_, axis, habits_)) plan_.suckers_laid.push_back({axis.id, on_rootstock(after_, axis)});
        const PieceEnd end = end_of_piece(after_, axis);
        const CaneFacts cane =
            measure_cane(before_, house_, was(axis), laid.side, course_of(before_, was(axis), laid.side, nearest_tight_tie(after_, axis.id)), end,
                         tying_of(after_, house_, axis, laid.half_wraps, end.last_node));
        const int buds = cane.count_buds;
        if (laid.state == LaidState::snapped) return note_instead(laid.side, NoCane::broken, axis.id, buds, 1);
        if (buds < house_.cane_count.floor_buds) return note_instead(laid.side, NoCane::too_few_buds, axis.id, buds, 1);
        SidePieces& side = at(laid.side);
        if (!side.cane) {
            side.cane = cane;
        } else if (rank(cane, cane.diameter) < rank(*side.cane, side.cane->diameter)) {
            side.more_canes.push_back(side.cane->axis);
            side.cane = cane;
        } else {
            side.more_canes.push_back(cane.axis);
        }
    }

    // What stands for a cane that is not there; the graver reason stays.
    void note_instead(Side laid_to, NoCane why, AxisId axis, int buds, int years) {
        SidePieces& side = at(laid_to);
        if (side.instead && why < side.why_none) return;
        side.why_none = why;
        side.instead = axis;
        side.instead_buds = buds;
        side.instead_age = years;
    }

    // Every cane that is still there and was not laid.
    void read_standing() {
        for (const Axis& axis : after_.axes) {
            if (is_trunk(axis) || age(after_, axis) != 1 || axis.state != AxisState::live ||
                !is_cane(before_, was(axis)))
                continue;
            if (is_sucker(before_, was(axis), habits_)) {
                read_sucker(axis);
                continue;
            }
            if (axis.removed || (laid_now(axis.id) && keeps_a_node(axis))) continue;
            const int buds = count_buds(after_, axis, habits_);
            const bool uncut = is_uncut(axis);
            if (axis.mark == Role::kicker && house_.standing.kickers > 0 && is_kicker(axis, uncut && buds > 3)) continue;
            if (buds > 3) {
                plan_.standing.forgotten += uncut;
                plan_.clearing.pieces_left.push_back(axis.id);
                if (axis.mark == Role::left || axis.mark == Role::right) marked_.push_back(&axis);
                if (axis.mark == Role::spur && !at(axis.side).spur_not_cut) at(axis.side).spur_not_cut = axis.id;
            } else if (buds > 0) {
                read_stub(axis, uncut);
            } else if (uncut && axis.node_count > 1) {
                plan_.clearing.pieces_left.push_back(axis.id);
            } else if (axis.mark == Role::spur || keeps_a_node(axis)) {
                bare_[index_of(axis.side)].push_back(axis.id);
            }
            if (uncut) note_offer(axis);
        }
    }

    // Whether a cane with a kicker's tape stands on purpose; one too many, or one that should be gone, was only left.
    bool is_kicker(const Axis& axis, bool uncut) {
        StandingFacts& standing = plan_.standing;
        if (house_.standing.frost_over) {
            standing.late += uncut;
            return false;
        }
        const auto kept = static_cast<std::int32_t>(standing.kickers.size() + standing.spoilt.size());
        if (kept >= house_.standing.kickers || !keeps_a_node(axis)) return false;
        const bool tied = std::any_of(after_.ties.begin(), after_.ties.end(), [&](const Tie& tie) {
            return tie.winter == after_.winter && axis_of(tie.node) == axis.id;
        });
        (uncut && !tied ? standing.kickers : standing.spoilt).push_back(axis.id);
        return true;
    }

    // Of those marked as spares: what was cut off in the end.
    void read_spares() {
        if (house_.standing.spares == 0) return;
        for (const Axis& axis : after_.axes) {
            if (axis.mark != Role::spare || is_trunk(axis) || age(after_, axis) != 1 || was(axis).removed) continue;
            plan_.standing.spares_cut += axis.removed || !keeps_a_node(axis);
        }
    }

    void weigh() {
        const Prunings off = prunings(before_, after_);
        double bundle = off.removed.one_year_mg, ends = 0;
        for (std::size_t row = 0; row < before_.axes.size(); ++row) {
            const Axis& axis = before_.axes[row];
            if (age(before_, axis) != 1 || is_trunk(axis)) continue;
            const double gone = standing_mass_mg(before_, axis) - standing_mass_mg(after_, after_.axes[row]);
            if (!house_.prunings_weighed.suckers && is_sucker(before_, axis, habits_)) bundle -= gone;
            if (is_kept(axis.id) || (is_lateral(before_, axis) && is_kept(axis_of(axis.parent)))) ends += gone;
        }
        const auto mass = [](double mg) { return Mass{rounded(std::max(0.0, mg))}; };
        plan_.weighing = {std::nullopt, mass(bundle), mass(ends), mass(off.removed.older_mg)};
    }

    // A cane laid or a spur of the plan.
    bool is_kept(AxisId id) const {
        return std::any_of(plan_.sides.begin(), plan_.sides.end(), [&](const SidePieces& side) {
            return (side.cane && side.cane->axis == id) || (side.spur && side.spur->axis == id) ||
                   std::any_of(side.row.begin(), side.row.end(), [&](const auto& one) { return one.spur.axis == id; });
        });
    }

    // A spur is cut to its buds, or needs no cut, or is marked for one; any other short cane was only left standing. A
    // vine on which nothing was done has none.
    void read_stub(const Axis& axis, bool uncut) {
        const SpurFacts spur = measure_spur(before_, house_, was(axis), end_of_piece(after_, axis));
        const bool meant = !uncut || axis.mark == Role::spur || spur.end.wood_beyond_bud <= house_.end_cut.full_from;
        const bool in_row = before_.system != System::cordon || find_in(offers_.row[index_of(axis.side)], axis.id);
        if (meant && worked_ && spur.count_buds > 0 && in_row)
            spurs_[index_of(axis.side)].push_back(spur);
        else
            plan_.clearing.pieces_left.push_back(axis.id);
    }

    bool is_uncut(const Axis& axis) const {
        return !after_.nodes_of(axis).back().removed && !end_of_piece(after_, axis).cut;
    }
    bool keeps_a_node(const Axis& axis) const { return axis.node_count > 1 && !after_.nodes_of(axis)[1].removed; }

    void note_offer(const Axis& axis) {
        const SideOffers& offered = offers_.sides[index_of(axis.side)];
        for (std::size_t i = 0; i < offered.canes.size(); ++i)
            if (offered.canes[i] == axis.id) {
                at(axis.side).good_cane_stands = true;
                at(axis.side).good_standing.push_back(offered.shortest[i]);
            }
        for (std::size_t i = 0; i < offered.spurs.size(); ++i)
            if (offered.spurs[i] == axis.id) {
                at(axis.side).good_spur_stands = true;
                if (i < offered.two_buds.size()) at(axis.side).good_spurs.push_back(offered.two_buds[i]);
            }
    }

    void read_sucker(const Axis& axis) {
        if (was(axis).removed) return;  // gone before the plan
        const bool renews = house_.suckers.renewal && !renewed_ && !on_rootstock(before_, was(axis));
        if (renews && !axis.removed && !laid_now(axis.id) && count_buds(after_, axis, habits_) > 0) {
            renewed_ = true;  // the one shoot that is to become the trunk
        } else if (!axis.removed && ((laid_now(axis.id) && keeps_a_node(axis)) || count_buds(after_, axis, habits_) > 0 || is_uncut(axis))) {
            plan_.suckers.left.push_back(axis.id);
        } else if (wood_left_at_origin(before_, after_, axis) > house_.suckers.left_to) {
            plan_.suckers.stubs.push_back(axis.id);
        } else {
            ++plan_.suckers.removed;
        }
    }

    void choose_spurs() {
        for (const Side side : both_sides) {
            std::vector<SpurFacts>& stubs = spurs_[index_of(side)];
            std::stable_sort(stubs.begin(), stubs.end(), [](const SpurFacts& a, const SpurFacts& b) {
                return rank(a, a.first_joint_diameter) < rank(b, b.first_joint_diameter);
            });
            SidePieces& pieces = at(side);
            if (before_.system == System::cordon) {
                choose_row(side, stubs);
                continue;
            }
            for (const SpurFacts& stub : stubs) {
                if (!pieces.spur)
                    pieces.spur = stub;
                else
                    pieces.more_spurs.push_back(stub.axis);
            }
            if (!pieces.spur && !bare_[index_of(side)].empty()) pieces.bare_stub = bare_[index_of(side)].front();
        }
    }

    using KeptInRow = std::vector<std::pair<const RowCane*, const SpurFacts*>>;
    // Along an arm outward. Of more than are asked the one nearest to its inner neighbour goes, of two the outer one.
    void choose_row(Side side, const std::vector<SpurFacts>& stubs) {
        const std::vector<RowCane>& row = offers_.row[index_of(side)];
        KeptInRow kept;
        for (const RowCane& cane : row)
            for (const SpurFacts& stub : stubs)
                if (stub.axis == cane.axis) kept.emplace_back(&cane, &stub);
        SidePieces& pieces = at(side);
        const auto asked = static_cast<std::size_t>(offers_.row_asked[index_of(side)]);
        while (kept.size() > asked) {
            std::size_t closest = kept.size() - 1;
            for (std::size_t i = kept.size() - 1; i > 0; --i)
                if (kept[i].first->along - kept[i - 1].first->along < gap_before(kept, closest)) closest = i;
            pieces.more_spurs.push_back(kept[closest].first->axis);
            kept.erase(kept.begin() + static_cast<std::ptrdiff_t>(closest));
        }
        for (std::size_t i = 0; i < kept.size(); ++i)
            pieces.row.push_back({*kept[i].second, place_in(row, *kept[i].first, i ? kept[i - 1].first : nullptr, house_)});
    }

    static Length gap_before(const KeptInRow& kept, std::size_t i) {
        return i == 0 ? Length{open_end} : kept[i].first->along - kept[i - 1].first->along;
    }

    // A vine of a single cane has one cane and one spur in all: of both sides' the one meant; the others are too many.
    void gather_single() {
        SidePieces &left = at(Side::left), &right = at(Side::right);
        if (left.cane && right.cane) {
            const bool left_is = rank(*left.cane, left.cane->diameter) < rank(*right.cane, right.cane->diameter);
            SidePieces &meant = left_is ? left : right, &rest = left_is ? right : left;
            meant.more_canes.push_back(rest.cane->axis);
            meant.more_canes.insert(meant.more_canes.end(), rest.more_canes.begin(), rest.more_canes.end());
            rest.more_canes.clear();
            rest.cane.reset();
        }
        if (left.spur && right.spur) {
            const bool left_is = rank(*left.spur, left.spur->first_joint_diameter) <
                                 rank(*right.spur, right.spur->first_joint_diameter);
            SidePieces &meant = left_is ? left : right, &rest = left_is ? right : left;
            meant.more_spurs.push_back(rest.spur->axis);
            meant.more_spurs.insert(meant.more_spurs.end(), rest.more_spurs.begin(), rest.more_spurs.end());
            rest.more_spurs.clear();
            rest.spur.reset();
        }
        left.good_cane_stands = right.good_cane_stands = left.good_cane_stands || right.good_cane_stands;
        left.good_standing.insert(left.good_standing.end(), right.good_standing.begin(), right.good_standing.end());
        right.good_standing = left.good_standing;
        left.good_spur_stands = right.good_spur_stands = left.good_spur_stands || right.good_spur_stands;
        left.good_spurs.insert(left.good_spurs.end(), right.good_spurs.begin(), right.good_spurs.end());
        right.good_spurs = left.good_spurs;
    }

    // A lateral left on a piece that was kept is a piece left; on one that was left itself it goes with that.
    void read_laterals() {
        for (const Axis& axis : after_.axes) {
            if (axis.removed || axis.state != AxisState::live || age(after_, axis) != 1 || is_trunk(axis) ||
                !is_lateral(after_, axis))
                continue;
            if (!keeps_a_node(axis)) continue;
            const AxisId bearer = axis_of(axis.parent);
            if (laid_now(bearer) || is_spur(bearer)) plan_.clearing.pieces_left.push_back(axis.id);
        }
    }

    bool is_spur(AxisId id) const {
        for (const auto& stubs : spurs_)
            for (const SpurFacts& stub : stubs)
                if (stub.axis == id) return true;
        return false;
    }

    void explain_missing_canes() {
        for (const Axis* axis : marked_) {
            const Side side = axis->mark == Role::left ? Side::left : Side::right;
            if (!at(side).cane && at(side).why_none == NoCane::none_laid)
                note_instead(side, NoCane::marked_not_laid, axis->id, 0, 1);
        }
    }

    void read_clearing() {
        ClearingFacts& clearing = plan_.clearing;
        std::vector<AxisId> kept;
        for (const SidePieces& side : plan_.sides) {
            if (side.cane) kept.push_back(side.cane->axis);
            kept.insert(kept.end(), side.more_canes.begin(), side.more_canes.end());
            if (side.spur) kept.push_back(side.spur->axis);
            for (const auto& one : side.row) kept.push_back(one.spur.axis);
            kept.insert(kept.end(), side.more_spurs.begin(), side.more_spurs.end());
        }
        clearing.pieces_kept = !kept.empty();
        for (const auto* standing : {&plan_.standing.kickers, &plan_.standing.spoilt})
            kept.insert(kept.end(), standing->begin(), standing->end());
        const std::vector<DueCut> due = due_old_wood_cuts(before_, house_, kept);
        clearing.cuts_due_in_old_wood = static_cast<int>(due.size());
        for (const DueCut& cut : due) read_due_cut(cut);
        plan_.cuts = measure_cuts(before_, after_, house_, due);
        note_where_to_cut_again();
        for (const CutFacts& cut : plan_.cuts)
            if (cut.on_vine && cut.on_trunk && !plan_.trunk_cut) plan_.trunk_cut = cut.axis;
        if (plan_.cuts.empty()) clearing.any_cut_due = any_cut_due(kept, due);
        std::stable_sort(clearing.pieces_left.begin(), clearing.pieces_left.end());
        count_nodes();
    }

    // Cuts in old wood can be made again farther in, on their axis or on what bears it, beyond what is wanted there.
    void note_where_to_cut_again() {
        std::vector<std::pair<AxisId, std::uint32_t>> bears;  // axes that bear what is wanted, and up to which node
        const auto carry = [&](AxisId id) {
            bears.emplace_back(id, before_.find(id)->node_count);
            for (NodeId on = before_.find(id)->parent; on; on = before_.find(axis_of(on))->parent) bears.emplace_back(axis_of(on), index_of(on));
        };
        for (const SidePieces& side : plan_.sides) {
            if (side.cane) carry(side.cane->axis);
            if (side.spur) carry(side.spur->axis);
            for (const auto& one : side.row) carry(one.spur.axis);
        }
        for (std::size_t i = 0; i < plan_.cuts.size(); ++i) {
            const Wound& wound = after_.wounds[before_.wounds.size() + i];
            if (wound.wood_age < 2) continue;
            const Axis* axis = before_.find(wound.axis);
            std::uint32_t at = axis_of(wound.node) == axis->id ? index_of(wound.node) : 0;
            while (!is_trunk(*axis) && !plan_.cuts[i].again_on) {
                bool wanted = false;
                std::uint32_t from = 0;
                for (const auto& [bearer, node] : bears)
                    if (bearer == axis->id) wanted = true, from = std::max(from, node);
                if (has_room(*axis, from, at, wound.major)) plan_.cuts[i].again_on = axis->id;
                if (wanted) break;
                at = index_of(axis->parent);
                axis = before_.find(axis_of(axis->parent));
            }
        }
    }

    // Whether a joint between two nodes is long enough for a stub of wood so thick.
    bool has_room(const Axis& axis, std::uint32_t from, std::uint32_t to, Length thick) const {
        const std::int64_t least = std::int64_t{house_.old_wood_stub.band.full.low.count} * thick.count / 1000;
        for (std::uint32_t i = from; i < std::min(to, axis.node_count - 1); ++i) {
            const Length inner = i == 0 ? Length{} : from_surface(before_, axis, i, {});
            if ((from_surface(before_, axis, i + 1, {}) - inner).count >= least) return true;
        }
        return false;
    }

    void read_due_cut(const DueCut& due) {
        const Axis& axis = *after_.find(due.axis);
        if (axis.removed) return;
        const PieceEnd end = end_of_piece(after_, axis);
        if (!end.cut) ++plan_.clearing.old_cuts_not_made;
        const Length standing = from_surface(before_, was(axis), end.last_node, end.beyond) -
                                from_surface(before_, was(axis), index_of(due.past), due.beyond);
        if (end.cut && standing <= house_.wood_left_behind.stub_to) return;
        plan_.clearing.pieces_left.push_back(axis.id);
        if (was_laid_last_winter(before_, was(axis))) plan_.clearing.old_canes_left.push_back(axis.id);
    }

    // Whether careful hands would have made any cut for the pieces kept. Asked only where none was made.
    bool any_cut_due(const std::vector<AxisId>& kept, const std::vector<DueCut>& due) const {
        if (!due.empty()) return true;
        for (const Axis& axis : before_.axes) {
            if (axis.removed || is_trunk(axis) || axis.state != AxisState::live || age(before_, axis) != 1) continue;
            if (std::find(kept.begin(), kept.end(), axis.id) == kept.end()) return true;
            if (canonical_end(before_, axis, axis.node_count - 1).cut) return true;
        }
        return false;
    }

    void count_nodes() {
        for (std::size_t row = 0; row < before_.axes.size(); ++row) {
            const Axis& axis = before_.axes[row];
            if (is_trunk(axis) || age(before_, axis) != 1) continue;
            for (std::uint32_t i = 1; i < axis.node_count; ++i) {
                if (before_.nodes[axis.first_node + i].removed) break;
                ++plan_.clearing.one_year_nodes;
                const bool removed = after_.nodes[axis.first_node + i].removed;
                plan_.clearing.one_year_nodes_removed += removed;
                if (removed && before_.nodes[axis.first_node + i].harm == Harm::spot) plan_.clearing.spotted_wood_cut = true;
            }
        }
    }

    void count_load() {
        LoadFacts& load = plan_.load;
        load.spacing = before_.spacing;
        for (const SidePieces& side : plan_.sides) {
            if (side.cane) load.fruiting += side.cane->count_buds;
            if (side.spur) load.spurs += side.spur->count_buds;
            for (const auto& one : side.row) load.spurs += one.spur.count_buds;
        }
        for (const Axis& axis : after_.axes)
            if (!axis.removed && axis.state == AxisState::live && !is_trunk(axis) && age(after_, axis) == 1 && !stands_on_purpose(axis))
                load.all += count_buds(after_, axis, habits_);
    }

    // A kicker, or a side shoot of one.
    bool stands_on_purpose(const Axis& axis) const {
        if (plan_.standing.kickers.empty() && plan_.standing.spoilt.empty()) return false;
        const AxisId id = is_lateral(after_, axis) ? axis_of(axis.parent) : axis.id;
        const auto among = [&](const std::vector<AxisId>& list) {
            return std::find(list.begin(), list.end(), id) != list.end();
        };
        return among(plan_.standing.kickers) || among(plan_.standing.spoilt);
    }

    const Vine& before_;
    const Vine& after_;
    const HouseRules& house_;
    const CountingHabits habits_;
    const Offers& offers_;
    PlanFacts plan_;
    bool worked_ = false;                          // anything cut or laid
    bool renewed_ = false;                         // a shoot was left to renew the trunk
    std::array<std::vector<SpurFacts>, 2> spurs_;  // every stub of 1 to 3 count buds, by side
    std::array<std::vector<AxisId>, 2> bare_;      // stubs meant as spurs, without a count bud
    std::vector<const Axis*> marked_;              // standing canes with tape for a side
};

}  // namespace

PairFacts PlanFacts::pair() const {
    PairFacts pair;
    for (std::size_t side = 0; side < 2; ++side) {
        pair.cane[side] = sides[side].cane.has_value();
        pair.more[side] = static_cast<int>(sides[side].more_canes.size());
    }
    pair.sucker_laid = !suckers_laid.empty();
    return pair;
}

PlanFacts measure_plan(const Vine& before, const Vine& after, const HouseRules& house, const Offers& offers) {
    return PlanReader(before, after, house, offers).read();
}

void note_order(PlanFacts& facts, const Plan& plan) {
    std::size_t last_tie = 0;
    for (std::size_t i = 0; i < plan.edits.size(); ++i)
        if (std::holds_alternative<Fasten>(plan.edits[i])) last_tie = i;
    std::vector<AxisId> spares, early;
    for (const Edit& edit : plan.edits)
        if (const auto* mark = std::get_if<Mark>(&edit); mark && mark->role == Role::spare) spares.push_back(mark->axis);
    for (std::size_t i = 0; i < last_tie; ++i) {
        const auto* cut = std::get_if<Cut>(&plan.edits[i]);
        if (!cut) continue;
        const AxisId axis = axis_of(cut->past);
        const auto among = [&](const std::vector<AxisId>& list) { return std::find(list.begin(), list.end(), axis) != list.end(); };
        if (among(spares) && !among(early)) early.push_back(axis);
    }
    facts.standing.spares_early = std::min(facts.standing.spares_cut, static_cast<int>(early.size()));
}

}  // namespace spurwright::rules
