// Cordons for the tests: the house's way with them, and drawn tables of their search.
#pragma once

#include <array>

#include "sim/core/random.h"
#include "sim/planning/cordon.h"
#include "sim/rules/house_rules.h"

namespace spurwright::test {

// The shipped set's way with cordons (assets/house-rules/spur-cordon.json; tests/scenarios hold the file to it).
inline rules::HouseRules spur_cordon() {
    rules::HouseRules house;
    house.spur_buds.full = {{2}, {2}};
    house.spur_direction.upright = true;
    house.weighed[rules::index_of(rules::RuleName::spur_direction)] = {30, true};
    return house;
}

// `least`: of lengths that each cane may be kept at; 0: some are no spur at all.
inline planning::CordonTables random_cordon_tables(std::uint64_t seed, int least) {
    using planning::CordonTables;
    using planning::no_cap;
    std::uint32_t nth = 0;
    const auto in = [&](int low, int high) { return between(draw(seed, 7, 0, nth++), low, high); };
    const int range = std::array{2, 9, 60}[static_cast<std::size_t>(in(0, 2))];
    CordonTables tables;
    std::size_t most = 0;
    for (CordonTables::Arm& arm : tables.arms) {
        const auto canes = static_cast<std::size_t>(in(0, 5));
        arm.asked = in(0, 3);
        most += static_cast<std::size_t>(3 * arm.asked);
        for (std::size_t x = 0; x < canes; ++x) {
            CordonTables::Cane cane{AxisId{static_cast<std::uint32_t>(x + 1)}, {}};
            for (int n = in(least, 3); n > 0; --n) cane.worth.push_back(in(0, range));
            arm.canes.push_back(cane);
        }
        for (std::size_t i = 0; i < canes * (canes + 1); ++i) arm.place.push_back(in(0, range));
    }
    for (std::size_t buds = 0; buds <= most; ++buds) tables.totals.push_back(in(0, 3 * range));
    tables.constant = in(0, range);
    tables.over_from = in(0, 3) ? in(4, 20) : no_cap;
    tables.hard_cap = in(range, 6 * range);
    tables.soft_cap = in(range, 9 * range);
    return tables;
}

} // namespace spurwright::test
