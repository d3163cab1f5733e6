// What can be said of a pruned cordon: its plans as good by sets of canes, against plain recursion; its losses charged to
// acts, which sum to what the best plan has more; and what an eye misreads of a row.
#include <doctest/doctest.h>

#include <algorithm>
#include <map>

#include "sim/planning/charged_findings.h"
#include "sim/planning/cordon_charges.h"
#include "sim/planning/cordon_groups.h"
#include "sim/core/random.h"
#include "sim/planning/eye_noise.h"
#include "sim/rules/judge.h"
#include "tests/support/cordons.h"
#include "tests/support/full_size.h"
#include "tests/support/grown.h"
#include "tests/support/random_edits.h"
#include "tests/support/small_vines.h"

using namespace spurwright;
using namespace spurwright::planning;

namespace {

using Set = std::array<std::vector<std::uint16_t>, 2>;
Set set_of(const CordonPick& pick) {
    Set set;
    for (std::size_t side = 0; side < 2; ++side)
        for (const RowPick& spur : pick.spurs[side]) set[side].push_back(spur.row);
    return set;
}

// The same by plain recursion.
std::vector<CordonGroup> groups_by_force(const CordonTables& tables, int points) {
    std::map<Set, CordonGroup> sets;
    for_each_pick(tables, [&](const CordonPick& pick) {
        const int here = points_of(tables, pick);
        if (here < points) return;
        const auto [at, fresh] = sets.try_emplace(set_of(pick), CordonGroup{pick, 0, here, here});
        CordonGroup& group = at->second;
        ++group.count;
        group.low = std::min(group.low, here);
        const CordonRanked now{pick, here, sum_of(tables, pick)};
        const CordonRanked best{group.best, points_of(tables, group.best), sum_of(tables, group.best)};
        if (!fresh && ranks_above(now, best)) group.best = pick;
        group.high = std::max(group.high, here);
    });
    std::vector<CordonGroup> all;
    for (const auto& [set, group] : sets) all.push_back(group);
    std::stable_sort(all.begin(), all.end(), [&](const CordonGroup& one, const CordonGroup& other) {
        return ranks_above({one.best, points_of(tables, one.best), sum_of(tables, one.best)},
                           {other.best, points_of(tables, other.best), sum_of(tables, other.best)});
    });
    return all;
}

struct ChargedPlans {
    int plans = 0, sums_differ = 0, rises = 0, charged = 0, mended = 0, handed = 0, by_edits_wrong = 0, shares_wrong = 0, of_acts = 0;

    // By rule and side every loss is the sum of its shares, and an act's shares over all are its charge.
    void look_at_shares(const CordonCharges& found, const std::vector<FindingShares>& shares, const rules::Judgement& mine) {
        std::map<std::pair<std::size_t, Side>, Tenths> left;
        std::map<std::size_t, Tenths> by_act;
        REQUIRE(shares.size() == mine.findings.size());
        const auto place = [&](std::size_t i) { return std::pair{rules::index_of(mine.findings[i].rule->name), mine.findings[i].side}; };
        for (std::size_t i = 0; i < mine.findings.size(); ++i) {
            const bool fresh = left.find(place(i)) == left.end();
            left[place(i)] += mine.findings[i].lost();
            for (const FindingShare& share : shares[i]) {
                if (!fresh) continue;  // told once for all spurs of the row
                left[place(i)] -= share.lost;
                if (share.to == LostTo::act) by_act[share.edit] += share.lost;
            }
        }
        for (const Charge& charge : found.charges.edits) by_act[charge.edit] -= charge.lost;
        for (const auto& [where, lost] : left) shares_wrong += lost != Tenths{};
        for (const auto& [edit, lost] : by_act) shares_wrong += lost != Tenths{};
        of_acts += static_cast<int>(by_act.size());
    }

    void look_at(const Vine& vine, const rules::HouseRules& house, const CordonTables& tables, const Plan& plan) {
        const auto after = prune(vine, plan);
        if (!after) return;
        ++plans;
        const rules::Judgement mine = rules::judge(vine, *after, house);
        const CordonCharges found = charges_of_cordon(vine, house, tables, plan, mine);
        look_at_shares(found, charged_findings(vine, house, tables, found, mine), mine);
        Tenths steps, edits;
        for (const Tenths lost : found.charges.by_step) steps += lost;
        for (const Charge& charge : found.charges.edits) edits += charge.lost;
        const CordonRanked best = best_pick(tables);
        sums_differ += steps != Tenths{best.sum} - mine.points_before_caps;
        const CordonRanked open = best_pick(open_rows(tables, vine, *after, house));
        by_edits_wrong += edits != Tenths{best.sum - open.sum};
        for (std::size_t i = 1; i < found.charges.open_after.size(); ++i)
            rises += found.charges.open_after[i] > found.charges.open_after[i - 1];
        charged += !found.charges.edits.empty();
        mended += found.charges.mending.has_value();
        handed += !found.charges.hand.empty();
    }
};

}  // namespace

TEST_SUITE("planning/cordon-review") {
    const rules::HouseRules house = test::spur_cordon();

    TEST_CASE("on random tables the best sets, their plans and their points are what plain recursion finds") {
        int differ = 0, many = 0, none = 0;
        for (std::uint64_t seed = 0; seed < test::sized<std::uint64_t>(300, 3'000); ++seed) {
            const CordonTables tables = test::random_cordon_tables(seed, 0);
            const int best = best_pick(tables).points;
            for (const int points : {best, best - 4, 0, best + 1}) {
                std::vector<CordonGroup> forced = groups_by_force(tables, points);
                many += forced.size() > 20;
                none += forced.empty();
                forced.resize(std::min<std::size_t>(forced.size(), 20));
                differ += cordon_groups(tables, points, 20) != forced;
            }
        }
        CHECK(differ == 0);
        CHECK(many > 50);
        CHECK(none > 100);
    }
    TEST_CASE("on grown cordons every group's best plan is worth what the tables say, and the first is the best") {
        for (std::uint32_t seed = 1; seed <= 6; ++seed) {
            const Vine vine = test::grown(System::cordon, seed, 10, 1.8);
            const CordonTables tables = cordon_tables(vine, house);
            const CordonRanked best = best_pick(tables);
            const auto groups = cordon_groups(tables, best.points - 20, 20);
            REQUIRE_FALSE(groups.empty());
            CHECK(groups.front().best == best.pick);
            for (const CordonGroup& group : groups) {
                const auto after = prune(vine, complete(vine, house, choice_of(tables, group.best)));
                REQUIRE(after.has_value());
                const rules::Judgement judged = rules::judge(vine, *after, house);
                CHECK(judged.points.count == group.high);
                const auto kept = kept_row(rules::measure_plan(vine, *after, house, rules::offers(vine, house)));
                CHECK(pick_of(tables, kept) == std::optional(group.best));
            }
        }
    }
    TEST_CASE("charges of acts, what can be mended and what the hand cost sum to what the best plan has more") {
        ChargedPlans found;
        for (std::uint32_t seed = 1; seed <= test::sized<std::uint32_t>(6, 40); ++seed) {
            const Vine vine = test::grown(System::cordon, seed, 5 + static_cast<int>(seed % 9), 1.8);
            const CordonTables tables = cordon_tables(vine, house);
            found.look_at(vine, house, tables, {});
            const BestCordon whole = best_of_cordon(vine, house);
            const Plan& best = whole.plan;
            found.look_at(vine, house, tables, best);
            for (std::uint64_t n = 0; n < 6; ++n) {
                // The best plan with some of its acts forgotten, and one spur of it cut off.
                Plan some;
                for (std::size_t i = 0; i < best.edits.size(); ++i)
                    if (between(draw(seed, 18, static_cast<std::uint32_t>(n), static_cast<std::uint32_t>(i)), 0, 3))
                        some.edits.push_back(best.edits[i]);
                found.look_at(vine, house, tables, some);
                const std::vector<SpurKept>& spurs = whole.choice[n % 2];
                if (spurs.empty()) continue;
                Plan worse{{Cut{node_id(spurs[n % spurs.size()].axis, 0), Length{3'000}, Tool::shears, {}}}};
                const AxisId gone = spurs[n % spurs.size()].axis;
                for (const Edit& edit : some.edits) {
                    const auto* cut = std::get_if<Cut>(&edit);
                    if (!cut || axis_of(cut->past) != gone) worse.edits.push_back(edit);
                }
                found.look_at(vine, house, tables, worse);
            }
        }
        CHECK(found.plans > 50);
        CHECK(found.sums_differ == 0);
        CHECK(found.by_edits_wrong == 0);
        CHECK(found.rises == 0);
        CHECK(found.shares_wrong == 0);
        CHECK(found.of_acts > 10);
        CHECK(found.charged > 10);
        CHECK(found.mended > 10);
        CHECK(found.handed > 10);
    }
    TEST_CASE("an eye misreads the places of a row, and less of a spur that was measured") {
        int some = 0;
        for (std::uint32_t seed = 1; seed <= 8; ++seed) {
            const Vine vine = test::grown(System::cordon, seed, 12, 1.8);
            const BestCordon best = best_of_cordon(vine, house);
            const Tenths noise = eye_noise(vine, house, best.plan);
            std::vector<AxisId> all;
            for (const auto& row : best.choice)
                for (const SpurKept& spur : row) all.push_back(spur.axis);
            CHECK(eye_noise(vine, house, best.plan, all) <= noise);
            some += noise.count > 0;
        }
        CHECK(some > 0);
    }
}
