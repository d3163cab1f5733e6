// Checks 40 to 43 and 47 to 49: crowds of vines grown by their history.
#include <cmath>

#include "sim/checks/census.h"
#include "sim/checks/compared.h"
#include "sim/core/numeric.h"
#include "sim/growth/row.h"
#include "sim/pruning/prunings.h"
#include "sim/rules/judge.h"
#include "sim/vine/canonical_text.h"
#include "sim/vine/vine_check.h"

namespace spurwright::checks {
namespace {

using growth::Site;

Site crowd_site(std::uint64_t seed, Pruner pruner = Pruner::good, int age = 12) {
    Site site;
    site.seed = seed;
    site.pruner = pruner;
    site.age = age;
    return site;
}

// Things on this vine that its history cannot have made.
int untrue(const Vine& vine) {
    int count = check_vine(vine).has_value();
    for (const Laid& laid : vine.laid) count += laid.winter == vine.winter - 1 && age(vine, *vine.find(laid.axis)) != 2;
    for (const Axis& axis : vine.axes) {
        count += axis.removed;
        if (!axis.parent) continue;
        const Axis& bearer = *vine.find(axis_of(axis.parent));
        count += axis.born < bearer.born;
        count += was_laid_last_winter(vine, bearer) && age(vine, axis) != 1;
    }
    return count;
}

struct Origins {
    double distance = 0, below = 0; // mm, means over both sides
};

// In the winter after the pruner's `own` winters (it begins in winter 5).
Origins origins_after(Pruner pruner, int own, int seeds) {
    Origins mean;
    double distances = 0, canes = 0;
    for (int seed = 0; seed < seeds; ++seed) {
        const Vine vine = *growth::grow_vine(crowd_site(static_cast<std::uint64_t>(seed), pruner, 5 + own));
        for (const auto& origin : {vine.origin_left, vine.origin_right})
            if (origin) mean.distance += in_mm(*origin), ++distances;
        for (const Axis& axis : vine.axes)
            if (was_laid_last_winter(vine, axis)) mean.below += in_mm(below_wire(vine, axis)), ++canes;
    }
    return {mean.distance / distances, mean.below / canes};
}

struct Crowd {
    int vines = 0;
    Tally diameter, joint, evenness;
    double full_on_both = 0, tempted = 0, canes = 0, kept = 0, water_shoots = 0, blind = 0;
};

const Crowd& thousand() {
    static const Crowd counted = [] {
        Crowd c;
        c.vines = 1000;
        for (int seed = 0; seed < c.vines; ++seed) {
            const Grown g = grown(crowd_site(static_cast<std::uint64_t>(seed)));
            bool full[3] = {false, false, false};
            int tempting_ones = 0;
            for (const Measured& m : candidates(g.vine)) {
                c.diameter.add(diameter_share(m.diameter, m.ratio, m.joint));
                c.joint.add(joint_share(m.joint));
                c.evenness.add(evenness_share(m.variation));
                if (full_mark(m)) full[static_cast<int>(m.axis->side)] = true;
                tempting_ones += tempting(m);
            }
            c.full_on_both += full[1] && full[2];
            c.tempted += tempting_ones >= 2;
            c.kept += g.notes.count_nodes;
            c.blind += g.notes.blind;
            for (const Axis& axis : g.vine.axes) {
                c.canes += is_cane(g.vine, axis);
                c.water_shoots += is_water_shoot(g.vine, axis);
            }
        }
        return c;
    }();
    return counted;
}

// Every number of the house rules that can be moved, moved.
rules::HouseRules other_house() {
    rules::HouseRules house;
    for (rules::Weighed& weighed : house.weighed) weighed = {weighed.weight / 2 + 7, !weighed.on};
    house.cane_diameter.band = {{{5'000}, {7'000}}, {{4'000}, {9'000}}};
    house.cane_end_diameter = {{9'000}, {8'000}};
    house.internode_length = {{{30'000}, {50'000}}, {{20'000}, {60'000}}};
    house.internode_evenness = {{100}, {200}};
    return house;
}

double one_year_kg(const Vine& vine) { return prunings(vine, vine).before.one_year_mg / 1e6; }

double variance(const std::vector<double>& values) {
    double sum = 0, squares = 0;
    for (const double v : values) sum += v, squares += v * v;
    const auto n = static_cast<double>(values.size());
    return squares / n - (sum / n) * (sum / n);
}

} // namespace

Numbers history_true() {
    int wrong = 0, changed = 0;
    for (std::uint64_t seed = 0; seed < 100; ++seed)
        for (std::size_t pruner = 0; pruner < words_of(Pruner{}).size(); ++pruner) {
            const Site site = crowd_site(seed, static_cast<Pruner>(pruner), 9 + static_cast<int>(seed % 4));
            const auto winters = growth::grow_winters(site);
            for (const Vine& vine : *winters) wrong += untrue(vine);
            changed += vine_hash(winters->back()) != vine_hash(*growth::grow_vine(site));
        }
    const Origins good = origins_after(Pruner::good, 8, 100), far = origins_after(Pruner::far_canes, 8, 100);
    return {none("untrue wood", wrong), none("codes that grew another vine", changed),
            within("far canes further out, mm", 150, no_limit, far.distance - good.distance),
            within("far canes higher, mm", 0, no_limit, good.below - far.below)};
}

Numbers default_vines() {
    const Crowd& c = thousand();
    return {
        within("diameter none, %", 5, 25, c.diameter.percent(Share::none)),
        within("diameter part, %", 15, 45, c.diameter.percent(Share::part)),
        within("joints none, %", 3, 15, c.joint.percent(Share::none)),
        within("joints part, %", 20, 45, c.joint.percent(Share::part)),
        within("evenness part or none, %", 5, 25, c.evenness.percent(Share::none) + c.evenness.percent(Share::part)),
        within("full marks on each side, %", 80, 100, 100 * c.full_on_both / c.vines),
        within("two tempting ones, %", 80, 100, 100 * c.tempted / c.vines)};
}

Numbers cane_count() {
    const Crowd& c = thousand();
    return {within("buds kept", 24, 28, c.kept / c.vines), within("canes", 26, 35, c.canes / c.vines),
            within("water shoots", 1, 6, c.water_shoots / c.vines), within("blind nodes", 1, 6, c.blind / c.vines)};
}

Numbers rules_unheard() {
    const rules::HouseRules other = other_house();
    int moved = 0, unmarked = 0;
    for (std::uint64_t seed = 0; seed < 32; ++seed) {
        const Site site = crowd_site(seed, static_cast<Pruner>(seed % 8));
        const Vine vine = *growth::grow_vine(site);
        const Vine after = *prune(vine, growth::history_plan(vine, growth::habits_of(Pruner::good)));
        const bool heard =
            rules::judge(vine, after, rules::HouseRules{}).points != rules::judge(vine, after, other).points;
        unmarked += !heard;
        moved += vine_hash(*growth::grow_vine(site)) != vine_hash(vine);
    }
    return {none("vines moved", moved), none("judgements the other rules left as they were", unmarked)};
}

Numbers studied_diameters() {
    int laid = 0, inside = 0;
    for (std::uint64_t seed = 0; seed < 300; ++seed) {
        Site site = crowd_site(seed);
        site.vigour = Vigour::high;
        const Vine vine = *growth::grow_vine(site);
        const Vine cut = *prune(vine, growth::history_plan(vine, growth::habits_of(Pruner::good)));
        for (const Laid& row : cut.laid) {
            if (row.winter != cut.winter) continue;
            const double d = in_mm(thickness(cut, *cut.find(row.axis)));
            ++laid;
            inside += d >= 7.9 && d <= 16.3;
        }
    }
    return {within("% within 7.9 to 16.3 mm", 90, 100, 100.0 * inside / laid)};
}

Numbers row_variance() {
    constexpr int row_length = 2000;
    const auto patches = growth::row_patches(48, row_length, growth::Constants{});
    std::vector<double> single, pairs;
    for (int place = 0; place < row_length; ++place) {
        Site site = crowd_site(static_cast<std::uint64_t>(place), Pruner::good, 8); // grown up: in full capacity
        site.capacity_share = patches[static_cast<std::size_t>(place)];
        single.push_back(one_year_kg(*growth::grow_vine(site)));
        if (place % 2 == 1) pairs.push_back((single[single.size() - 2] + single.back()) / 2);
    }
    return {within("variance of pairs / singles", 0.45, 0.70, variance(pairs) / variance(single))};
}

Numbers head_held() {
    double early = 0, late = 0, e = 0, l = 0;
    for (std::uint64_t seed = 0; seed < 100; ++seed) {
        const auto winters = growth::grow_winters(crowd_site(seed, Pruner::good, 16));
        for (const Vine& vine : *winters)
            for (const auto& origin : {vine.origin_left, vine.origin_right}) {
                if (origin && vine.winter == 6) early += in_mm(*origin), ++e;
                if (origin && vine.winter == 16) late += in_mm(*origin), ++l;
            }
    }
    const double good = std::fabs(late / l - early / e) / 10;
    const double far =
        (origins_after(Pruner::far_canes, 8, 100).distance - origins_after(Pruner::far_canes, 1, 100).distance) / 7;
    return {within("good, mm a winter", 0, 3, good), within("far canes, mm a winter", 30, 60, far)};
}

} // namespace spurwright::checks
