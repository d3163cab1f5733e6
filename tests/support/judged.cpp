#include "tests/support/judged.h"

#include "sim/pruning/plan_text.h"
#include "tests/support/random_edits.h"

namespace spurwright::test {

using planning::no_piece;
using planning::Pick;
using planning::Tables;
using planning::VineTables;

bool agrees(const VineTables& tables, const Judged& judged, const Pick& pick) {
    const auto found = judged(planning::complete(judged.vine, judged.house, planning::choice_of(tables, pick)));
    return found && found->points_before_caps.count == planning::sum_of(tables.tables, pick) &&
           found->points.count == planning::points_of(tables.tables, pick);
}

std::string difference(const VineTables& tables, const Judged& judged, const Pick& pick) {
    const Plan plan = planning::complete(judged.vine, judged.house, planning::choice_of(tables, pick));
    std::string text = print_plan(plan) + "\ntable " + std::to_string(planning::sum_of(tables.tables, pick)) + " -> " +
                       std::to_string(planning::points_of(tables.tables, pick));
    const auto found = judged(plan);
    if (!found) {
        const auto refused = prune(judged.vine, plan);
        return text + ", refused in step " + std::to_string(refused.error().where.step);
    }
    text += ", judge " + std::to_string(found->points_before_caps.count) + " -> " + std::to_string(found->points.count);
    for (const rules::Finding& f : found->findings)
        if (f.lost().count > 0)
            text += "\n  " + std::string(f.rule->key()) + " " + f.on + " " + std::to_string(f.points.count) + " of " +
                    std::to_string(f.out_of.count);
    for (const rules::Cap& cap : found->caps) text += "\n  cap " + std::string(cap.cap);
    return text;
}

std::optional<Pick> random_pick(const Tables& tables, std::uint64_t seed) {
    std::uint32_t nth = 0;
    const auto in = [&](int low, int high) { return between(draw(seed, 1, 0, nth++), low, high); };
    const auto row = [&] {
        const int drawn = in(0, tables.count());
        return drawn == tables.count() ? no_piece : static_cast<std::uint16_t>(drawn);
    };
    for (int attempt = 0; attempt < 1'000; ++attempt) {
        Pick pick;
        pick.left_cane = row();
        pick.right_cane = row();
        pick.left_spur = row();
        pick.right_spur = row();
        const auto cut = [&](std::uint16_t cane, Side side) {
            const int cuts = cane == no_piece ? 0 : tables.candidates[cane].cut_count(side);
            return static_cast<std::uint16_t>(cuts > 1 ? in(0, cuts - 1) : 0);
        };
        pick.left_cut = cut(pick.left_cane, Side::left);
        pick.right_cut = cut(pick.right_cane, Side::right);
        pick.left_buds = static_cast<std::uint16_t>(pick.left_spur == no_piece ? 0 : in(1, 3));
        pick.right_buds = static_cast<std::uint16_t>(pick.right_spur == no_piece ? 0 : in(1, 3));
        if (planning::is_choice(tables, pick)) return pick;
    }
    return std::nullopt;
}

Plan spoilt(const Vine& vine, Plan plan, std::uint64_t seed) {
    const auto in = [&](std::uint32_t nth, int low, int high) { return between(draw(seed, 2, 0, nth), low, high); };
    const auto any = [&](std::uint32_t nth) {
        return static_cast<std::size_t>(in(nth, 0, static_cast<int>(plan.edits.size()) - 1));
    };
    switch (in(0, 0, 3)) {
    case 0: plan.edits.erase(plan.edits.begin() + static_cast<std::ptrdiff_t>(any(1))); break;
    case 1: {
        const auto after = prune(vine, plan);
        if (!after) break;
        for (const Edit& edit : random_edits(*after, seed, in(2, 1, 3)).edits) plan.edits.push_back(edit);
        break;
    }
    case 2:  // one cut, anywhere near
        if (auto* cut = std::get_if<Cut>(&plan.edits[any(3)])) {
            cut->past.value += static_cast<std::uint32_t>(in(4, -1, 2));
            cut->beyond.count = in(5, 0, 300) * 100;
        }
        break;
    default:  // every cut a little longer or shorter than the careful hand makes it
        for (std::uint32_t i = 0; i < plan.edits.size(); ++i)
            if (auto* cut = std::get_if<Cut>(&plan.edits[i])) cut->beyond.count += in(6 + i, -100, 150) * 100;
    }
    return plan;
}

}  // namespace spurwright::test
