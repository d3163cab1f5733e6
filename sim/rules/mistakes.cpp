#include "sim/rules/mistakes.h"

#include <algorithm>
#include <cstdlib>

#include "sim/rules/bud_kill_adjust.h"
#include "sim/rules/cane_diameter.h"
#include "sim/rules/end_cut.h"
#include "sim/rules/origin_distance.h"
#include "sim/rules/piece_points.h"
#include "sim/rules/prunings_weighed.h"
#include "sim/rules/say.h"
#include "sim/rules/tool_choice.h"
#include "sim/rules/wound_size.h"
#include "sim/vine/vine_query.h"

namespace spurwright::rules {
namespace {

class Watcher {
public:
    Watcher(const Vine& before, const PlanFacts& plan, const Offers& offers, const Asked& asked, const HouseRules& house, const MistakeLimits& limits)
        : before_(before), plan_(plan), offers_(offers), asked_(asked), house_(house), limits_(limits) {}

    std::vector<Mistake> watch() {
        for (const Side side : both_sides) {
            const SidePieces& pieces = plan_.sides[index_of(side)];
            if (pieces.cane) look_at(*pieces.cane, side);
            if (pieces.spur) look_at(*pieces.spur, pieces.cane ? &*pieces.cane : nullptr, side);
            look_at_the_side(pieces, side);
        }
        look_at_the_head();
        look_at_the_load();
        look_at_the_clearing();
        look_at_what_stands();
        look_at_the_scale();
        std::stable_sort(found_.begin(), found_.end(),
                         [](const Mistake& one, const Mistake& other) { return one.name < other.name; });
        return std::move(found_);
    }

private:
    using Name = MistakeName;

    void add(Name name, RuleName rule, AxisId on, Side side, Arguments arguments = {}) {
        if (on) arguments.push_back({"part", on});
        if (side != Side::none) arguments.push_back({"side", side_key(side)});
        found_.push_back({name, rule, on, side, std::move(arguments)});
    }

    // A good cane of this side, rather one that was not kept as the spur.
    AxisId nearer_one(Side side) const {
        const std::vector<AxisId>& canes = offers_.sides[index_of(side)].canes;
        const auto& spur = plan_.sides[index_of(side)].spur;
        const auto other = std::find_if(canes.begin(), canes.end(), [&](AxisId cane) { return !spur || spur->axis != cane; });
        return other == canes.end() ? canes.front() : *other;
    }

    void look_at(const CaneFacts& cane, Side side) {
        const Length thin = house_.cane_diameter.band.half.low;
        if (cane.diameter < thin)
            add(Name::thin_wood_kept, RuleName::cane_diameter, cane.axis, side, {{"measured", cane.diameter}, {"low", thin}});
        if (say_cane_diameter(cane, house_).measured_word == "bull")
            add(Name::bull_cane_laid, RuleName::cane_diameter, cane.axis, side, {{"measured", cane.diameter}});
        const bool far = mark_origin_distance(cane.distance_to_head, cane.creep, house_) == no_mark;
        if (far && asked_.cane[index_of(side)])
            add(Name::cane_from_too_far_out, RuleName::origin_distance, cane.axis, side,
                {{"measured", cane.distance_to_head}, {"better", nearer_one(side)}});
        look_at_height(cane.axis, cane.below_wire, RuleName::origin_height, side);
        const bool over = !house_.cane_side.over_the_head && cane.over_the_head > house_.cane_side.over_by;
        if (over || cane.off_row > house_.cane_side.full_to)
            add(Name::bent_over_the_head, RuleName::cane_side, cane.axis, side, {{"measured", cane.off_row}});
        const Length end = house_.cane_end_diameter.half_from;
        if (cane.end_diameter < end)
            add(Name::cut_where_thin, RuleName::cane_end_diameter, cane.axis, side, {{"measured", cane.end_diameter}, {"low", end}});
        look_at_end(cane.end, cane.axis, side);
        if (cane.free_wire.count < 0)
            add(Name::overlap, RuleName::cane_reach, cane.axis, side, {{"measured", -cane.free_wire}});
        if (cane.tying.half_wraps > house_.tying.wraps.high.count)
            add(Name::wrapped_too_often, RuleName::tying, cane.axis, side, {{"wraps", Ratio{cane.tying.half_wraps / 2.0}}});
        if (cane.tying.tight_elsewhere > 0) add(Name::tie_girdles, RuleName::tying, cane.axis, side);
    }

    void look_at(const SpurFacts& spur, const CaneFacts* cane, Side side) {
        const Length thin = house_.spur_size.full_from;
        if (spur.first_joint_diameter < thin)
            add(Name::thin_wood_kept, RuleName::spur_size, spur.axis, side, {{"measured", spur.first_joint_diameter}, {"low", thin}});
        look_at_height(spur.axis, spur.below_wire, RuleName::spur_place, side);
        if (spur.count_buds > house_.spur_buds.full.high.count)
            add(Name::three_bud_spur, RuleName::spur_buds, spur.axis, side, {{"n", Count{spur.count_buds}}});
        if (cane) {
            const Length level = house_.spur_place.level;
            const bool higher = spur.below_wire + level < cane->below_wire;
            const bool farther = spur.distance_to_head > cane->distance_to_head + level;
            if (higher || farther)
                add(Name::spur_above_or_outside, RuleName::spur_place, spur.axis, side, {{"cane", cane->axis}});
        }
        look_at_end(spur.end, spur.axis, side);
    }

    void look_at_height(AxisId axis, Length below, RuleName rule, Side side) {
        if (below.count <= 0) add(Name::piece_above_the_wire, rule, axis, side, {{"measured", -below}});
    }

    void look_at_end(const EndCutFacts& end, AxisId axis, Side side) {
        if (!end.cut) return;
        if (end.next_node && end.wood_beyond_bud > *end.next_node + house_.end_cut.node_slack)
            add(Name::dead_peg, RuleName::end_cut, axis, side, {{"measured", end.wood_beyond_bud}});
        else if (end.wood_beyond_bud < house_.end_cut.half_from && mark_end_cut(end, house_) < full_mark)
            add(Name::cut_too_close, RuleName::end_cut, axis, side, {{"measured", end.wood_beyond_bud}});
    }

    void look_at_the_side(const SidePieces& pieces, Side side) {
        if (!pieces.cane && pieces.why_none == NoCane::broken)
            add(Name::cane_snapped, RuleName::tying, pieces.instead, side);
        if (pieces.spur || !asked_.spur[index_of(side)]) return;
        if (pieces.bare_stub) add(Name::base_bud_counted, RuleName::spur_buds, pieces.bare_stub, side);
        const auto& spurs = offers_.sides[index_of(side)].spurs;
        const auto laid = [&](AxisId axis) {
            return std::any_of(plan_.sides.begin(), plan_.sides.end(),
                               [&](const SidePieces& s) { return s.cane && s.cane->axis == axis; });
        };
        const auto used = std::find_if(spurs.begin(), spurs.end(), laid);
        if (used != spurs.end() && !pieces.good_spur_stands && !pieces.bare_stub)
            add(Name::spur_chosen_last, RuleName::spur_count, *used, side);
    }

    void look_at_the_head() {
        const auto& [left, right] = plan_.sides;
        const Length far = house_.origin_distance.half_to;
        if (left.cane && right.cane && left.cane->distance_to_head > far && right.cane->distance_to_head > far)
            add(Name::gap_over_the_head, RuleName::origin_distance, {}, Side::none, {{"measured", far}});
        for (const Side side : both_sides) {
            const int pieces = near_the_head(side);
            if (pieces > limits_.crowded_over)
                add(Name::crowded_head, RuleName::wood_left_behind, {}, side, {{"n", Count{pieces}}});
        }
        const bool asked = asked_.spur[0] || asked_.spur[1];
        if (asked && !left.spur && !right.spur && plan_.clearing.pieces_kept) add(Name::no_renewal_spur, RuleName::spur_count, {}, Side::none);
        for (const AxisId old : plan_.old_wood_laid) add(Name::two_year_wood_laid, RuleName::wood_age, old, Side::none);
    }

    // Kept pieces of this side and shoots left standing that start near its crown point.
    int near_the_head(Side side) const {
        const SidePieces& pieces = plan_.sides[index_of(side)];
        const auto near = [&](const auto& piece) { return piece && piece->distance_to_head <= limits_.crowded_within; };
        int n = near(pieces.cane) + near(pieces.spur);
        for (const AxisId left : plan_.clearing.pieces_left) {
            const Axis& axis = *before_.find(left);
            n += axis.side == side && is_cane(before_, axis) && distance_to_head(before_, axis) <= limits_.crowded_within;
        }
        return n;
    }

    void look_at_the_load() {
        const int target = target_buds(house_, plan_.load.spacing), all = plan_.load.all;
        const auto over = [&](PerMille share) { return std::int64_t{all} * 1000 > std::int64_t{target} * share.count; };
        if (over(limits_.load_over))
            add(Name::too_many_buds, RuleName::bud_load, {}, Side::none, {{"n", Count{all}}, {"target", Count{target}}});
        const int usual = usual_target_buds(house_, plan_.load.spacing), counted = plan_.load.counted();
        const bool as_usual = std::int64_t{std::abs(counted - usual)} * 1000 <= std::int64_t{usual} * limits_.as_usual.count;
        if (adjusts_for_bud_kill(house_) && as_usual && counted < target)
            add(Name::not_adjusted_for_bud_kill, RuleName::bud_kill_adjust, {}, Side::none,
                {{"n", Count{counted}}, {"target", Count{target}}, {"killed", house_.bud_kill.killed}});
        const bool weak = std::int64_t{target} * 1'000'000'000 < std::int64_t{limits_.weak_below.count} * plan_.load.spacing.count;
        if (weak && over(limits_.stretched_over))
            add(Name::weak_vine_stretched, RuleName::bud_load, {}, Side::none, {{"n", Count{all}}, {"target", Count{target}}});
    }

    void look_at_the_clearing() {
        for (const AxisId axis : plan_.suckers.left) add(Name::sucker_kept, RuleName::suckers, axis, Side::none);
        for (const AxisId axis : plan_.suckers.stubs) add(Name::sucker_stub, RuleName::suckers, axis, Side::none);
        for (const AxisId axis : plan_.clearing.old_canes_left) add(Name::old_cane_left, RuleName::wood_left_behind, axis, Side::none);
        for (const CutFacts& cut : plan_.cuts) look_at(cut);
    }

    void look_at_what_stands() {
        const StandingFacts& is = plan_.standing;
        if (is.late > 0) add(Name::kicker_forgotten, RuleName::kicker_kept, {}, Side::none, {{"n", Count{is.late}}});
        const bool tied = std::any_of(plan_.sides.begin(), plan_.sides.end(), [](const SidePieces& side) {
            return side.cane && side.cane->tying.end_tie != TyingFacts::EndTie::none;
        });
        if (tied && (asked_.spares || asked_.kickers) && is.forgotten > is.late)
            add(Name::spare_forgotten, RuleName::kicker_absent, {}, Side::none, {{"n", Count{is.forgotten - is.late}}});
    }

    void look_at_the_scale() {
        const WeighingFacts& is = plan_.weighing;
        if (!is.report || as_heavy_as(is.report->weight, is.bundle, house_)) return;
        const Mass weight = is.report->weight;
        if (is.old_wood.count > 0 && as_heavy_as(weight, is.bundle + is.old_wood, house_))
            add(Name::old_wood_weighed, RuleName::prunings_weighed, {}, Side::none, {{"measured", is.old_wood}});
        else if (is.ends.count > 0 && as_heavy_as(weight, is.bundle - is.ends, house_))
            add(Name::ends_not_weighed, RuleName::prunings_weighed, {}, Side::none, {{"measured", is.ends}});
    }

    void look_at(const CutFacts& cut) {
        const bool old = cut.on_vine && cut.wood_age >= 2 && !cut.dead_wood;
        if (old && !cut.on_trunk && !cut.forced_short && cut.stub < house_.old_wood_stub.band.half.low)
            add(Name::flush_cut, RuleName::old_wood_stub, cut.axis, Side::none, {{"ratio", Ratio{cut.stub.count / 1000.0}}});
        if (old && !cut.needed && (cut.on_trunk || cut.diameter > house_.wound_size.none_from))
            add(Name::needless_wound, RuleName::wound_size, cut.axis, Side::none, {{"measured", cut.diameter}});
        if (mark_tool(cut, house_) < full_mark)
            add(Name::wrong_tool, RuleName::tool_choice, cut.axis, Side::none,
                {{"measured", cut.diameter}, {"better", tool_key(suitable_tool(cut.diameter, cut.wood_age, house_))}});
    }

    const Vine& before_;
    const PlanFacts& plan_;
    const Offers& offers_;
    const Asked& asked_;
    const HouseRules& house_;
    const MistakeLimits& limits_;
    std::vector<Mistake> found_;
};

}  // namespace

std::vector<Mistake> mistakes(const Vine& before, const PlanFacts& plan, const Offers& offers, const Asked& asked, const HouseRules& house,
                              const MistakeLimits& limits) {
    return Watcher(before, plan, offers, asked, house, limits).watch();
}

}  // namespace spurwright::rules
