#include "sim/planning/planning.h"

#include "sim/planning/best_plan.h"
#include "sim/planning/complete.h"
#include "sim/planning/open_choices.h"
#include "sim/planning/top_plans.h"

namespace spurwright::planning {
namespace {

// Worth less than any piece of a plan that can be had, and small enough for the search's words.
constexpr std::int32_t ruled_out = -1'500;

// The row of this axis, where it may lie to that side.
std::optional<std::size_t> lying_row(const VineTables& tables, AxisId cane, Side side) {
    for (std::size_t row = 0; row < tables.pieces.size(); ++row)
        if (tables.pieces[row].axis == cane && tables.tables.candidates[row].lies(side)) return row;
    return std::nullopt;
}

}  // namespace

Planning::Planning(const Vine& vine, const rules::HouseRules& house)
    : vine_(vine), house_(house), tables_(vine_tables(vine_, house_)) {}

Planning::Planning(const Vine& vine, const rules::HouseRules& house, const Vine& now) : Planning(vine, house) {
    tables_.tables = open_choices(tables_, now);
}

std::optional<BestPlan> Planning::best() const {
    const auto found = best_pick(tables_.tables);
    if (!found) return std::nullopt;
    return full(*found);
}

std::optional<BestPlan> Planning::best_laying(AxisId cane, Side side) const {
    Tables tables = tables_.tables;
    bool lies = false;
    for (std::size_t row = 0; row < tables.candidates.size(); ++row) {
        const bool wanted = tables_.pieces[row].axis == cane;
        lies = lies || (wanted && tables.candidates[row].lies(side));
        if (!wanted)
            for (auto& load : tables.candidates[row].cane[at(side)]) load.clear();
    }
    if (!lies) return std::nullopt;
    tables.no_cane[at(side)] = {ruled_out, ruled_out};
    const auto found = best_pick(tables);
    if (!found) return std::nullopt;
    return full(*found);
}

std::optional<BestPlan> Planning::best_laying_both(AxisId left, AxisId right) const {
    const auto left_row = lying_row(tables_, left, Side::left), right_row = lying_row(tables_, right, Side::right);
    if (!left_row || !right_row || *left_row == *right_row) return std::nullopt;
    Tables tables = tables_.tables;
    const std::size_t wanted = *left_row * (tables.candidates.size() + 1) + *right_row;
    for (std::size_t i = 0; i < tables.pair.size(); ++i)
        if (i != wanted) tables.pair[i] = ruled_out;
    const auto found = best_pick(tables);
    if (!found || found->pick.left_cane != *left_row || found->pick.right_cane != *right_row) return std::nullopt;
    return full(*found);
}

std::optional<BestPlan> Planning::best_keeping_spur(AxisId spur, Side side) const {
    Tables tables = tables_.tables;
    bool may = false;
    for (std::size_t row = 0; row < tables.candidates.size(); ++row) {
        Candidate& candidate = tables.candidates[row];
        if (candidate.side != side) continue;
        if (tables_.pieces[row].axis == spur) may = !candidate.spur.empty();
        else candidate.spur.clear();
    }
    if (!may) return std::nullopt;
    tables.no_spur[at(side)] = ruled_out;
    const auto found = best_pick(tables);
    if (!found || (side == Side::left ? found->pick.left_spur : found->pick.right_spur) == no_piece) return std::nullopt;
    return full(*found);
}

std::optional<BestPlan> Planning::best_with_other_canes(const Choice& choice) const {
    const auto pick = pick_of(tables_, choice);
    if (!pick) return best();
    Tables tables = tables_.tables;
    tables.pair[tables.column(pick->left_cane) * (tables.candidates.size() + 1) + tables.column(pick->right_cane)] = ruled_out;
    const auto found = best_pick(tables);
    if (!found || (found->pick.left_cane == pick->left_cane && found->pick.right_cane == pick->right_cane))
        return std::nullopt;
    return full(*found);
}

std::vector<BestPlan> Planning::top(std::size_t wanted) const {
    std::vector<BestPlan> plans;
    for (const Ranked& ranked : top_picks(tables_.tables, wanted)) plans.push_back(full(ranked));
    return plans;
}

Tally Planning::count(Tenths points) const { return tally(tables_.tables, points.count); }
std::uint64_t Planning::counted() const { return count_choices(tables_.tables); }
std::uint64_t Planning::at_least(Tenths points) const { return count_at_least(tables_.tables, points.count); }

AsGood Planning::as_good(Tenths points, std::size_t most_groups) const {
    return planning::as_good(tables_.tables, points.count, most_groups);
}

BestPlan Planning::full(const Ranked& ranked) const {
    const Choice choice = choice_of(tables_, ranked.pick);
    return {choice, complete(vine_, house_, choice), Tenths{ranked.points}, Tenths{ranked.sum}};
}

}  // namespace spurwright::planning
