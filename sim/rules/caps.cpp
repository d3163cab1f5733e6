#include "sim/rules/caps.h"

#include <algorithm>

#include "sim/rules/judge.h"
#include "sim/rules/piece_points.h"
#include "sim/rules/say.h"
#include "sim/rules/wood_left_behind.h"

namespace spurwright::rules {

std::vector<Cap> caps_of(const PlanFacts& plan, const Asked& asked, const HouseRules& house) {
    std::vector<Cap> caps;
    const auto add = [&](std::string_view cap, Tenths limit, std::string_view key, AxisId on, Arguments arguments) {
        arguments.push_back({"limit", limit});
        if (on) arguments.push_back({"part", on});
        caps.push_back({cap, limit, on ? name_of(on) : "", TextKey{key}, std::move(arguments)});
    };
    const Tenths hard = house.caps.hard, soft = house.caps.soft;
    for (const AxisId axis : plan.old_wood_laid) add("two-year-laid", hard, "cap.two-year-laid", axis, {});
    for (const auto& sucker : plan.suckers_laid) {
        if (sucker.rootstock)
            add(cap_rootstock, hard, "cap.rootstock-laid", sucker.axis, {});
        else
            add(cap_trunk_sucker, hard, "cap.trunk-sucker-laid", sucker.axis, {});
    }
    if (plan.trunk_cut) add("trunk-cut", hard, "cap.trunk-cut", plan.trunk_cut, {});
    const auto bare = [&](Side side) {
        return !plan.sides[index_of(side)].cane && !plan.sides[index_of(side)].spur;
    };
    if (asked.single && asked.cane[0] && bare(Side::left) && bare(Side::right))
        add(cap_side_bare, hard, "cap.side-bare", {}, {{"side", side_key(Side::none)}});
    for (const Side side : both_sides) {
        if (!asked.single && asked.cane[index_of(side)] && bare(side))
            add(cap_side_bare, hard, "cap.side-bare", {}, {{"side", side_key(side)}});
    }
    for (const Side side : both_sides)
        if (asked.cordon && asked.row[index_of(side)] > 0 && plan.sides[index_of(side)].row.empty())
            add(cap_side_bare, hard, "cap.arm-bare", {}, {{"side", side_key(side)}});
    if (!plan.clearing.old_canes_left.empty())
        add("old-cane-left", soft, "cap.old-cane-left", plan.clearing.old_canes_left[0],
            {{"parts", list_of(plan.clearing.old_canes_left)},
             {"n", Count{static_cast<std::int64_t>(plan.clearing.old_canes_left.size())}}});
    const int target = target_buds(house, plan.load.spacing);
    if (overloaded(plan.load.all, target, house))
        add(cap_overloaded, soft, "cap.overloaded", {}, {{"n", Count{plan.load.all}}, {"target", Count{target}}});
    return caps;
}

Tenths held_under(const std::vector<Cap>& caps, Tenths sum) {
    for (const Cap& cap : caps) sum = std::min(sum, cap.limit);
    return sum;
}

}  // namespace spurwright::rules
