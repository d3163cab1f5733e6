#include "sim/planning/planning.h"

#include "sim/planning/best_plan.h"
#include "sim/planning/complete.h"
#include "sim/planning/top_plans.h"

namespace spurwright::planning {

Planning::Planning(const Vine& vine, const rules::HouseRules& house)
    : vine_(vine), house_(house), tables_(vine_tables(vine_, house_)) {}

std::optional<BestPlan> Planning::best() const {
    const auto found = best_pick(tables_.tables);
    if (!found) return std::nullopt;
    return full(*found);
}

std::optional<BestPlan> Planning::best_laying(AxisId cane, Side side) const {
    // Worth less than any cane that lies there, and small enough for the search's words.
    constexpr std::int32_t bare = -1'500;
    Tables tables = tables_.tables;
    bool lies = false;
    for (std::size_t row = 0; row < tables.candidates.size(); ++row) {
        const bool wanted = tables_.pieces[row].axis == cane;
        lies = lies || (wanted && tables.candidates[row].lies(side));
        if (!wanted)
            for (auto& load : tables.candidates[row].cane[at(side)]) load.clear();
    }
    if (!lies) return std::nullopt;
    tables.no_cane[at(side)] = {bare, bare};
    const auto found = best_pick(tables);
    if (!found) return std::nullopt;
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

BestPlan Planning::full(const Ranked& ranked) const {
    const Choice choice = choice_of(tables_, ranked.pick);
    return {choice, complete(vine_, house_, choice), Tenths{ranked.points}, Tenths{ranked.sum}};
}

}  // namespace spurwright::planning
