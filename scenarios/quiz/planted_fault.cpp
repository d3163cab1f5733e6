#include "scenarios/quiz/planted_fault.h"

#include <algorithm>

#include "sim/core/random.h"
#include "sim/planning/complete.h"
#include "sim/vine/vine_query.h"

namespace spurwright::quiz {
namespace {

using planning::Choice;

std::optional<Plan> other_cane(const Ground& ground, std::uint64_t seed) {
    const Side side = chance(draw(seed, 31, 0), 0.5) ? Side::left : Side::right;
    std::vector<std::pair<std::uint64_t, Plan>> plans;
    for (const planning::Piece& piece : ground.planning.tables().pieces) {
        if (piece.side != side || piece.sucker) continue;
        const auto plan = ground.planning.best_laying(piece.axis, side);
        if (plan && !ground.as_good(plan->points)) plans.emplace_back(draw(seed, 32, piece.axis.value), plan->plan);
    }
    const auto first = std::min_element(plans.begin(), plans.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
    return first == plans.end() ? std::nullopt : std::optional(first->second);
}

std::optional<Plan> with_choice(const Ground& ground, const Choice& choice) {
    if (!planning::pick_of(ground.planning.tables(), choice)) return std::nullopt;
    return planning::complete(ground.vine, ground.house, choice);
}

std::optional<Plan> long_spur(const Ground& ground, bool left) {
    Choice choice = ground.best.choice;
    if (!(left ? choice.left_spur : choice.right_spur)) return std::nullopt;
    (left ? choice.left_buds : choice.right_buds) = 3;
    return with_choice(ground, choice);
}

std::optional<Plan> no_spur(const Ground& ground, bool left) {
    Choice choice = ground.best.choice;
    if (!(left ? choice.left_spur : choice.right_spur)) return std::nullopt;
    (left ? choice.left_spur : choice.right_spur) = AxisId{};
    (left ? choice.left_buds : choice.right_buds) = 0;
    return with_choice(ground, choice);
}

std::optional<Plan> too_many_buds(const Ground& ground, bool left) {
    Choice choice = ground.best.choice;
    NodeId& cut = left ? choice.left_cane : choice.right_cane;
    if (!cut) return std::nullopt;
    for (const planning::Piece& piece : ground.planning.tables().pieces)
        if (piece.axis == axis_of(cut)) cut = node_id(piece.axis, piece.cut_nodes.back());
    return with_choice(ground, choice);
}

std::optional<Plan> untied(const Ground& ground, bool left) {
    Plan plan = ground.best.plan;
    const AxisId cane = axis_of(left ? ground.best.choice.left_cane : ground.best.choice.right_cane);
    const auto tie = std::find_if(plan.edits.begin(), plan.edits.end(), [&](const Edit& edit) {
        const auto* fasten = std::get_if<Fasten>(&edit);
        return fasten && axis_of(fasten->at) == cane;
    });
    if (!cane || tie == plan.edits.end()) return std::nullopt;
    plan.edits.erase(tie);
    return plan;
}

std::optional<Plan> cut_through_the_bud(const Ground& ground, bool left) {
    Plan plan = ground.best.plan;
    const NodeId end = left ? ground.best.choice.left_cane : ground.best.choice.right_cane;
    for (Edit& edit : plan.edits)
        if (auto* cut = std::get_if<Cut>(&edit); cut && cut->past == end && cut->beyond > Length{5'000}) {
            cut->beyond = Length{2'000};
            return plan;
        }
    return std::nullopt;
}

}  // namespace

std::optional<PlantedFault> planted_fault(const Ground& ground, std::uint64_t seed) {
    const bool left = chance(draw(seed, 33, 0), 0.5);
    std::optional<Plan> plan;
    switch (between(draw(seed, 34, 0), 0, 5)) {
    case 0: plan = other_cane(ground, seed); break;
    case 1: plan = long_spur(ground, left); break;
    case 2: plan = no_spur(ground, left); break;
    case 3: plan = too_many_buds(ground, left); break;
    case 4: plan = untied(ground, left); break;
    default: plan = cut_through_the_bud(ground, left); break;
    }
    if (!plan) return std::nullopt;
    auto after = prune(ground.vine, *plan);
    if (!after) return std::nullopt;
    rules::Judgement judgement = rules::judge(ground.vine, *after, ground.house, ground.offers, ground.asked);
    if (ground.as_good(judgement.points)) return std::nullopt;
    return PlantedFault{*std::move(plan), *std::move(after), std::move(judgement)};
}

}  // namespace spurwright::quiz
