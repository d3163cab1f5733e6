// Would the small tables catch a fault of the search? A plain decomposed search stands here with a switch for each
// fault that is easily made; with no fault it agrees with nested loops, with each fault it does not.
#include <doctest/doctest.h>

#include <map>
#include <optional>

#include "sim/planning/brute_force.h"
#include "sim/planning/pieces.h"
#include "tests/support/random_tables.h"

using namespace spurwright;
using namespace spurwright::planning;

namespace {

enum class Fault {
    none,
    no_runner_up,
    later_tie_wins,
    one_load_class,
    spurs_of_either_side,
    caps_not_apart,
    no_bare_side
};

// One best pair of spurs for each number of buds, from the best `sites` axes a side and length.
std::vector<SpurWay> kept_ways(const Tables& tables, Side side, std::uint16_t cane, Fault fault) {
    std::vector<SpurWay> all = spur_ways(tables, side, cane);
    if (fault == Fault::spurs_of_either_side)
        for (std::uint16_t row = 0; row < tables.count(); ++row)
            if (tables.candidates[row].side != side && row != cane)
                for (std::uint16_t l = 0; l < tables.candidates[row].spur.size(); ++l)
                    all.push_back({row, static_cast<std::uint16_t>(l + 1),
                                   tables.candidates[row].spur[l] + tables.beside_of(row, cane)});
    const std::size_t sites = fault == Fault::no_runner_up ? 1 : 2;
    std::vector<SpurWay> kept;
    for (std::uint16_t buds = 0; buds <= most_spur_buds; ++buds)
        for (std::size_t site = 0; site < sites; ++site) {
            const SpurWay* best = nullptr;
            for (const SpurWay& way : all) {
                bool had = way.buds != buds;
                for (const SpurWay& k : kept) had = had || (k.row == way.row && k.buds == way.buds);
                if (!had && (!best || way.worth > best->worth)) best = &way;
            }
            if (best) kept.push_back(*best);
        }
    return kept;
}

std::optional<Ranked> decomposed(const Tables& given, Fault fault) {
    Tables tables = given;
    if (fault == Fault::one_load_class)
        for (Candidate& c : tables.candidates)
            for (auto& laid : c.cane) laid[0] = laid[1];
    if (fault == Fault::no_bare_side) tables.had_cane = {};
    std::map<int, Ranked> best;  // by cap
    for (const LaidCane& a : laid_canes(tables, Side::left))
        for (const LaidCane& b : laid_canes(tables, Side::right)) {
            if (!may_stand_together(tables, a, b)) continue;
            const auto left = kept_ways(tables, Side::left, a.row, fault),
                       right = kept_ways(tables, Side::right, b.row, fault);
            for (int i = 0; i < a.cuts; ++i)
                for (int j = 0; j < b.cuts; ++j)
                    for (const SpurWay& x : left)
                        for (const SpurWay& y : right) {
                            const bool twice = (x.row != no_piece && (x.row == b.row || x.row == y.row)) ||
                                               (y.row != no_piece && y.row == a.row);
                            if (twice) continue;
                            const Pick pick{a.row,
                                            b.row,
                                            static_cast<std::uint16_t>(i),
                                            static_cast<std::uint16_t>(j),
                                            x.row,
                                            x.buds,
                                            y.row,
                                            y.buds};
                            const int cap = cap_of(tables, pick);
                            const std::int32_t sum = sum_of(tables, pick);
                            const int kind = fault == Fault::caps_not_apart ? 0 : cap;
                            const auto found = best.find(kind);
                            const Ranked now{pick, std::min<int>(sum, cap), sum};
                            const bool takes = found == best.end() || sum > found->second.sum ||
                                               (sum == found->second.sum &&
                                                (fault == Fault::later_tie_wins ? found->second.pick < pick
                                                                                : pick < found->second.pick));
                            if (takes) best.insert_or_assign(kind, now);
                        }
        }
    std::optional<Ranked> result;
    for (const auto& [cap, now] : best)
        if (!result || better(now, *result)) result = now;
    // What the fault believes, marked as it truly is.
    if (result && fault != Fault::spurs_of_either_side)
        *result = {result->pick, points_of(given, result->pick), sum_of(given, result->pick)};
    return result;
}

int differing(Fault fault) {
    int differ = 0;
    for (std::uint32_t number = 0; number < 400; ++number) {
        const Tables tables = test::small_tables(number);
        differ += decomposed(tables, fault) != best_by_force(tables);
    }
    return differ;
}

}  // namespace

TEST_SUITE("planning/search-faults") {
    TEST_CASE("the plain decomposed search without a fault agrees everywhere") { CHECK(differing(Fault::none) == 0); }
    TEST_CASE("keeping no runner-up site is caught") { CHECK(differing(Fault::no_runner_up) > 0); }
    TEST_CASE("breaking ties the other way is caught") { CHECK(differing(Fault::later_tie_wins) > 0); }
    TEST_CASE("one load class only is caught") { CHECK(differing(Fault::one_load_class) > 0); }
    TEST_CASE("taking spurs from either side is caught") { CHECK(differing(Fault::spurs_of_either_side) > 0); }
    TEST_CASE("not searching the caps apart is caught") { CHECK(differing(Fault::caps_not_apart) > 0); }
    TEST_CASE("forgetting the bare side is caught") { CHECK(differing(Fault::no_bare_side) > 0); }
}
