#include "tests/support/random_tables.h"

#include <algorithm>

#include "sim/core/random.h"

namespace spurwright::test {
namespace {

using planning::Candidate;
using planning::Tables;

class Draws {
public:
    explicit Draws(std::uint64_t seed) : seed_(seed) {}
    int in(int low, int high) { return between(draw(seed_, 1, 0, nth_++), low, high); }
    bool chance(int percent) { return in(1, 100) <= percent; }

private:
    std::uint64_t seed_;
    std::uint32_t nth_ = 0;
};

Candidate candidate(Draws& draws, Side side, const TableWishes& wishes) {
    Candidate c;
    c.side = side;
    c.first_buds = wishes.plain ? 4 : draws.in(1, 4);
    c.sucker = !wishes.plain && draws.chance(15);
    const int cuts = draws.in(wishes.cuts_low, wishes.cuts_high);
    for (auto& laid : c.cane) {
        if (!wishes.plain && draws.chance(15)) continue;
        for (auto& load : laid)
            for (int i = 0; i < cuts; ++i) load.push_back(draws.in(0, wishes.range));
        if (draws.chance(30)) laid[0] = laid[1];  // most canes are worth the same in both load classes
    }
    const int lengths = wishes.plain ? 3 : draws.in(0, 3);
    for (int l = 0; l < lengths; ++l) c.spur.push_back(draws.in(0, wishes.range));
    return c;
}

}  // namespace

Tables random_tables(std::uint64_t seed, const TableWishes& wishes) {
    Draws draws(seed);
    Tables tables;
    int left = wishes.left, right = wishes.right;
    while (left + right > 0) {  // the sides come mixed, as axes do
        const bool to_left = draws.in(1, left + right) <= left;
        --(to_left ? left : right);
        tables.candidates.push_back(candidate(draws, to_left ? Side::left : Side::right, wishes));
    }
    if (wishes.plain && !tables.candidates.empty()) tables.candidates.back().sucker = true;
    planning::shape_matrices(tables);
    for (auto& v : tables.beside) v = draws.in(0, wishes.range);
    for (auto& v : tables.pair) v = draws.in(0, wishes.range);
    for (auto& v : tables.totals) v = draws.in(0, wishes.range);
    if (draws.chance(50))
        for (std::size_t s = 0; s < 2; ++s) {
            for (auto& v : tables.no_cane[s]) v = draws.in(0, wishes.range);
            tables.no_spur[s] = draws.in(0, wishes.range);
        }
    tables.constant = draws.in(0, wishes.range);
    const int most = tables.fruiting_totals + planning::spur_states;
    tables.enough_from = draws.in(0, most);
    tables.over_from = draws.chance(20)   ? planning::no_cap
                       : draws.chance(10) ? draws.in(0, most)
                                          : tables.enough_from + draws.in(0, 8);
    for (bool& had : tables.had_cane) had = draws.chance(60);
    tables.single = wishes.single;
    tables.hard_cap = draws.in(wishes.range * 2, wishes.range * 7);
    tables.soft_cap = draws.in(wishes.range * 3, wishes.range * 8);
    return tables;
}

Tables small_tables(std::uint32_t number, bool single) {
    constexpr std::array ranges{3, 12, 60, 200, 420};
    Draws draws(mix(number + 1u));
    TableWishes wishes;
    const int canes = draws.in(2, 6);
    wishes.left = draws.in(0, canes);
    wishes.right = canes - wishes.left;
    wishes.range = ranges[number % ranges.size()];
    wishes.single = single;
    return random_tables(number, wishes);
}

Tables reference_tables(std::uint64_t seed, int left, int right, int cuts) {
    TableWishes wishes;
    wishes.left = left;
    wishes.right = right;
    wishes.cuts_low = wishes.cuts_high = cuts;
    wishes.range = 60;
    wishes.plain = true;
    Tables tables = random_tables(seed, wishes);
    tables.no_cane = {};
    tables.no_spur = {};
    tables.had_cane = {true, true};
    tables.enough_from = 17;
    tables.over_from = 28;
    tables.hard_cap = 250;
    tables.soft_cap = 330;
    return tables;
}

}  // namespace spurwright::test
