#include "sim/planning/charged_caps.h"

#include <algorithm>
#include <tuple>

#include "sim/core/check.h"
#include "sim/rules/caps.h"
#include "sim/rules/say.h"

namespace spurwright::planning {
namespace {

// Of a bare one; none of other limits and of a single cane, whose two sides are one.
Side bare_side_of(const rules::Cap& cap) {
    for (const Named& argument : cap.arguments)
        if (const auto* key = std::get_if<TextKey>(&argument.value); key && argument.gap == "side")
            for (const Side side : both_sides)
                if (*key == rules::side_key(side)) return side;
    return Side::none;
}

// Further cuts always lift these.
bool work_left_undone(const rules::Cap& cap) { return cap.cap == "old-cane-left" || cap.cap == rules::cap_overloaded; }

// The same fault, not the same numbers in it.
bool same_fault(const rules::Cap& one, const rules::Cap& other) {
    return one.cap == other.cap && bare_side_of(one) == bare_side_of(other) && (work_left_undone(one) || one.on == other.on);
}
bool stands_among(const rules::Cap& cap, const std::vector<rules::Cap>& caps) {
    return std::any_of(caps.begin(), caps.end(), [&](const rules::Cap& other) { return same_fault(cap, other); });
}

// By more work, so it is no act's yet: of a bare side while something good still stands there.
bool may_still_be_lifted(const rules::Cap& cap, const rules::PlanFacts& facts) {
    if (work_left_undone(cap)) return true;
    if (cap.cap != rules::cap_side_bare) return false;
    const rules::SidePieces& pieces = facts.sides[bare_side_of(cap) == Side::right ? 1 : 0];  // of a single cane both are alike
    return pieces.good_cane_stands || pieces.good_spur_stands;
}

}  // namespace

std::vector<ChargedCap> charged_caps(const Vine& before, const rules::HouseRules& house, const Plan& plan,
                                     const rules::Judgement& mine, const std::vector<rules::Cap>& of_best) {
    std::vector<ChargedCap> charged(mine.caps.size());
    if (charged.empty()) return charged;
    const rules::Offers offers = rules::offers(before, house);
    const rules::Asked asked = rules::asked(offers, house);
    std::vector<bool> stood(charged.size());
    Vine hand = before;
    const auto look = [&](auto came) {
        const rules::PlanFacts facts = rules::measure_plan(before, hand, house, offers);
        const std::vector<rules::Cap> caps = rules::caps_of(facts, asked, house);
        for (std::size_t i = 0; i < charged.size(); ++i) {
            const bool stands = stands_among(mine.caps[i], caps) && !may_still_be_lifted(mine.caps[i], facts);
            if (stands && !stood[i]) came(charged[i]);
            if (!stands) charged[i].to = LostTo::open;
            stood[i] = stands;
        }
    };
    look([](ChargedCap& cap) { cap.to = LostTo::open; });
    for (std::size_t edit = 0; edit < plan.edits.size(); ++edit) {
        const auto fine = prune_one(hand, plan.edits[edit], before);
        SPURWRIGHT_CHECK(fine.has_value(), ==, true);
        look([edit](ChargedCap& cap) { cap = {LostTo::act, edit, {}}; });
    }
    std::vector<std::size_t> in_order;
    for (std::size_t i = 0; i < charged.size(); ++i) {
        if (stands_among(mine.caps[i], of_best)) charged[i] = {LostTo::vine, 0, {}};
        in_order.push_back(i);
    }
    const auto comes_before = [&](std::size_t one, std::size_t other) {
        return std::tuple{charged[one].to, charged[one].edit} < std::tuple{charged[other].to, charged[other].edit};
    };
    std::stable_sort(in_order.begin(), in_order.end(), comes_before);
    Tenths held = mine.points_before_caps;
    for (const std::size_t i : in_order) {
        const Tenths now = std::min(held, mine.caps[i].limit);
        charged[i].taken = held - now;
        held = now;
    }
    return charged;
}

}  // namespace spurwright::planning
