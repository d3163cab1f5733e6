#include "sim/planning/difficulty.h"

#include <algorithm>
#include <cmath>

#include "sim/core/check.h"
#include "sim/core/numeric.h"
#include "sim/planning/eye_noise.h"
#include "sim/vine/vine_query.h"

namespace spurwright::planning {
namespace {

constexpr double margin_weight = 0.75, choice_weight = 0.3, tempting_weight = 0.8;
constexpr double middle = 2; // log2 of 4 points, and of one good cane in four

struct CaneOnWire {
    std::optional<Tenths> points; // none: it would break
    Length thickness;
    std::size_t ripe_buds = 0;
};

SideDifficulty side_of(const std::vector<CaneOnWire>& canes, Tenths best, Tenths tolerance) {
    SideDifficulty side;
    side.choices = static_cast<int>(canes.size());
    side.margin = best;
    std::optional<Length> thinnest;
    std::size_t fewest = 0;
    const auto is_good = [&](const CaneOnWire& cane) { return cane.points && *cane.points + tolerance >= best; };
    for (const CaneOnWire& cane : canes) {
        if (!is_good(cane)) {
            if (cane.points) side.margin = std::min(side.margin, best - *cane.points);
            continue;
        }
        ++side.good;
        thinnest = std::min(thinnest.value_or(cane.thickness), cane.thickness);
        fewest = side.good == 1 ? cane.ripe_buds : std::min(fewest, cane.ripe_buds);
    }
    for (const CaneOnWire& cane : canes)
        side.tempting += !is_good(cane) && thinnest && cane.thickness >= *thinnest && cane.ripe_buds >= fewest;
    return side;
}

} // namespace

std::int32_t scale_of(const SideDifficulty& side) {
    SPURWRIGHT_CHECK(side.choices, >, 0);
    SPURWRIGHT_CHECK(side.good, >, 0);
    const double margin = std::max(0.1, side.margin.count / 10.0);
    const double a_good = static_cast<double>(side.choices) / side.good;
    const double looks_right_but_wrong = static_cast<double>(side.tempting) / (side.tempting + side.good);
    return rounded(1000 * (margin_weight * (middle - numeric::log2(margin)) +
                           choice_weight * (numeric::log2(a_good) - middle) + tempting_weight * looks_right_but_wrong));
}

std::optional<Difficulty> difficulty_of(const Vine& vine, const rules::HouseRules& house, const Planning& planning) {
    const auto least_buds = static_cast<std::size_t>(std::max(1, house.cane_count.floor_buds));
    const auto best = planning.best();
    if (!best) return std::nullopt;
    Difficulty difficulty;
    difficulty.plans = planning.counted();
    difficulty.tolerance = tolerance(vine, house, best->plan);
    difficulty.good_plans = planning.at_least(best->points - difficulty.tolerance);
    std::int64_t sum = 0;
    int sides = 0;
    for (const Side side : both_sides) {
        std::vector<CaneOnWire> canes;
        for (const Piece& piece : planning.tables().pieces) {
            const auto laid = planning.best_laying(piece.axis, side);
            const Axis& axis = *vine.find(piece.axis);
            const std::size_t buds = ripe_count_nodes(vine, axis, house.habits()).size();
            if (!laid && (piece.side != side || buds < least_buds)) continue;
            canes.push_back({laid ? std::optional(laid->points) : std::nullopt, thickness(vine, axis), buds});
        }
        SideDifficulty& found = difficulty.sides[at(side)];
        found = side_of(canes, best->points, difficulty.tolerance);
        if (found.good == 0) continue; // nothing to choose: the best plan lays no cane there
        sum += scale_of(found);
        ++sides;
    }
    if (sides > 0) difficulty.scale = static_cast<std::int32_t>(sum / sides);
    return difficulty;
}

} // namespace spurwright::planning
