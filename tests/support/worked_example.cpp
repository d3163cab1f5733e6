#include "tests/support/worked_example.h"

#include "sim/core/check.h"
#include "sim/rules/measure_pieces.h"

namespace spurwright::test {
namespace {

Length reach_after(const WorkedCane& cane, Side side, int n) {
    return Length{n * cane.joint.count} + (side == cane.side ? cane.own_start : cane.other_start);
}
Length end_after(const WorkedCane& cane, int n) { return cane.diameter - Length{n * cane.thinner_by.count}; }
Length free_wire(Length reach) { return Length{worked_spacing.count - 2 * reach.count}; }

constexpr Length mm(double v) { return from_mm(v); }

}  // namespace

const std::vector<WorkedCane>& worked_canes() {
    static const std::vector<WorkedCane> canes{
        {AxisId{11}, Side::left, 10, mm(9.0), mm(9.3), mm(70), mm(60), mm(120), {20'000}, mm(0.25), mm(0), mm(-90)},
        {AxisId{12}, Side::left, 8, mm(7.2), mm(7.3), mm(62), mm(45), mm(140), {30'000}, mm(0.25), mm(-10), mm(-80)},
        {AxisId{13}, Side::left, 9, mm(10.4), mm(10.8), mm(74), mm(190), mm(40), {10'000}, mm(0.30), mm(195), mm(-220)},
        {AxisId{21}, Side::right, 9, mm(7.6), mm(7.9), mm(66), mm(50), mm(110), {50'000}, mm(0.28), mm(10), mm(-70)},
        {AxisId{22}, Side::right, 6, mm(6.0), mm(6.2), mm(58), mm(30), mm(170), {40'000}, mm(0.25), mm(-20), mm(-50)},
    };
    return canes;
}

const WorkedCane& worked_cane(int axis) {
    for (const WorkedCane& cane : worked_canes())
        if (static_cast<int>(cane.axis.value) == axis) return cane;
    SPURWRIGHT_CHECK(axis, ==, 11);
    return worked_canes()[0];
}

rules::CaneFacts worked_cane_facts(const WorkedCane& cane, Side side, int n, const rules::HouseRules& house) {
    rules::CaneFacts facts;
    facts.axis = cane.axis;
    facts.side = side;
    facts.count_buds = n;
    facts.diameter = cane.diameter;
    facts.mean_joint = cane.joint;
    facts.end_diameter = end_after(cane, n);
    facts.distance_to_head = cane.distance;
    facts.below_wire = cane.below;
    facts.off_row = side == cane.side ? cane.off_row : Angle{180'000} - cane.off_row;
    facts.reach = reach_after(cane, side, n);
    facts.free_wire = free_wire(facts.reach);
    facts.room = Length{worked_spacing.count / 2};
    facts.more_ripe_wood = n < cane.buds && end_after(cane, n + 1) >= house.cane_end_diameter.full_from &&
                           free_wire(reach_after(cane, side, n + 1)).count >= 0;
    facts.end = {mm(20), cane.joint, true};
    return facts;
}

rules::SpurFacts worked_spur_facts(const WorkedCane& cane, int buds) {
    rules::SpurFacts facts;
    facts.axis = cane.axis;
    facts.side = cane.side;
    facts.count_buds = buds;
    facts.first_joint_diameter = cane.first_joint;
    facts.distance_to_head = cane.distance;
    facts.below_wire = cane.below;
    facts.end = {mm(20), cane.joint, true};
    return facts;
}

rules::Offers worked_offers(const rules::HouseRules& house, bool with_sucker) {
    rules::Offers offers;
    offers.suckers = with_sucker;
    offers.old_wood = true;
    for (const WorkedCane& cane : worked_canes()) {
        rules::SideOffers& side = offers.sides[rules::index_of(cane.side)];
        if (acceptable_cane(worked_cane_facts(cane, cane.side, 4, house), house)) side.canes.push_back(cane.axis);
        if (acceptable_spur(worked_spur_facts(cane, 1), house)) side.spurs.push_back(cane.axis);
    }
    return offers;
}

rules::PlanFacts worked_plan(const WorkedChoice& c, const rules::HouseRules& house) {
    rules::PlanFacts plan;
    const auto lay = [&](Side side, int axis, int n) {
        if (axis) plan.sides[rules::index_of(side)].cane = worked_cane_facts(worked_cane(axis), side, n, house);
    };
    const auto keep = [&](Side side, int axis, int buds) {
        if (axis) plan.sides[rules::index_of(side)].spur = worked_spur_facts(worked_cane(axis), buds);
    };
    lay(Side::left, c.left_cane, c.left_n);
    lay(Side::right, c.right_cane, c.right_n);
    keep(Side::left, c.left_spur, c.left_buds);
    keep(Side::right, c.right_spur, c.right_buds);
    plan.load = {c.left_n + c.right_n, c.left_buds + c.right_buds, c.left_n + c.right_n + c.left_buds + c.right_buds,
                 worked_spacing};
    plan.clearing.pieces_kept = true;
    plan.clearing.cuts_due_in_old_wood = 2;
    plan.suckers.removed = 1;
    for (const std::uint32_t u : {5u, 6u}) {
        rules::CutFacts cut;
        cut.axis = AxisId{u};
        cut.wood_age = 2;
        cut.diameter = mm(12);
        cut.tool = Tool::shears;
        cut.needed = true;
        cut.stub = {1500};
        plan.cuts.push_back(cut);
    }
    for (const int axis : {c.left_cane, c.right_cane, c.left_spur, c.right_spur, 31}) {
        if (!axis) continue;
        rules::CutFacts cut;
        cut.axis = AxisId{static_cast<std::uint32_t>(axis)};
        cut.diameter = mm(8);
        cut.tool = Tool::shears;
        plan.cuts.push_back(cut);
    }
    return plan;
}

}  // namespace spurwright::test
