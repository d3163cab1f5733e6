#include "scenarios/ahead/acts_ahead.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "sim/core/check.h"
#include "sim/planning/complete.h"

namespace spurwright::ahead {
namespace {

constexpr std::array told_figures{Figure::shoots, Figure::yield_kg, Figure::good_canes, Figure::cane_distance_mm};
constexpr double apart = 0.1;   // of the larger middle
constexpr double most_of = 0.8; // of the seasons

// Which of the charges are lived, by place.
std::vector<std::size_t> costliest(const std::vector<planning::Charge>& charges) {
    std::vector<std::size_t> found;
    for (std::size_t i = 0; i < charges.size(); ++i)
        if (charges[i].left && charges[i].lost >= least_lived) found.push_back(i);
    std::stable_sort(found.begin(), found.end(), [&](std::size_t a, std::size_t b) { return charges[a].lost > charges[b].lost; });
    found.resize(std::min(found.size(), most_acts_lived));
    std::stable_sort(found.begin(), found.end());
    return found;
}

bool is_lived(const std::optional<planning::Mending>& mending) { return mending && mending->lost >= least_lived; }

// Whether one way is ahead of the other in most seasons.
bool same_way(const ActAhead& act, Figure figure) {
    const auto at = static_cast<std::size_t>(figure);
    int more = 0, less = 0;
    for (std::size_t draw = 0; draw < std::min(act.better_draws.size(), act.left_draws.size()); ++draw) {
        const auto &better = act.better_draws[draw][at], &left = act.left_draws[draw][at];
        if (!better || !left) continue;
        more += *left > *better;
        less += *left < *better;
    }
    return std::max(more, less) >= most_of * static_cast<double>(act.better_draws.size());
}

Ahead lived(const Vine& before, const Plan& plan, const rules::HouseRules& house, const AheadWish& wish) {
    const auto pruned = prune(before, plan);
    SPURWRIGHT_CHECK(pruned.has_value(), ==, true); // plans of `complete` are legal
    return look_ahead(*pruned, house, wish);
}

} // namespace

std::vector<TwoWays> two_ways(const Vine& before, const rules::HouseRules& house, const planning::Charges& charges) {
    std::vector<TwoWays> ways;
    for (const std::size_t i : costliest(charges.edits)) {
        const planning::Charge& charge = charges.edits[i];
        ways.push_back({charge.edit, planning::complete(before, house, charge.better), planning::complete(before, house, *charge.left)});
    }
    if (is_lived(charges.mending))
        ways.push_back({std::nullopt, planning::complete(before, house, charges.mending->better), planning::complete(before, house, charges.mending->kept)});
    return ways;
}

std::vector<TwoWays> two_ways(const Vine& before, const rules::HouseRules& house, const planning::CordonCharges& charges) {
    std::vector<TwoWays> ways;
    for (const std::size_t i : costliest(charges.charges.edits))
        ways.push_back({charges.charges.edits[i].edit, planning::complete(before, house, charges.better[i]), planning::complete(before, house, charges.left[i])});
    if (is_lived(charges.charges.mending))
        ways.push_back({std::nullopt, planning::complete(before, house, charges.meant), planning::complete(before, house, charges.kept)});
    return ways;
}

ActsAhead acts_ahead(const Vine& before, const rules::HouseRules& house, const std::vector<TwoWays>& ways, const AheadWish& wish) {
    ActsAhead acts;
    for (const TwoWays& two : ways) {
        Ahead better = lived(before, two.better, house, wish), left = lived(before, two.left, house, wish);
        acts.push_back({two.edit, better.winters.front(), left.winters.front(), std::move(better.draws), std::move(left.draws)});
    }
    return acts;
}

const ActAhead* find_act(const ActsAhead& lived, std::optional<std::size_t> edit) {
    const auto found = std::find_if(lived.begin(), lived.end(), [edit](const ActAhead& act) { return act.edit == edit; });
    return found == lived.end() ? nullptr : &*found;
}

std::vector<Figure> parted(const ActAhead& act) {
    std::vector<Figure> figures;
    for (const Figure figure : told_figures) {
        // With fewer shoots far out the middle cane stands nearer: that says nothing of the head.
        if (figure == Figure::cane_distance_mm && !figures.empty() && figures.front() == Figure::shoots) continue;
        const Spread &better = act.better[figure], &left = act.left[figure];
        if (!better.known || !left.known) continue;
        const double larger = std::max(better.median, left.median);
        if (larger > 0 && std::fabs(better.median - left.median) >= apart * larger && same_way(act, figure)) figures.push_back(figure);
    }
    return figures;
}

} // namespace spurwright::ahead
