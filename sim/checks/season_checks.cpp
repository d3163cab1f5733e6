// Checks 7 to 11, 28, 31, 44: cold, budbreak, frost and the days of shoots.
#include <algorithm>
#include <cmath>
#include <cstdlib>

#include "sim/checks/compared.h"
#include "sim/growth/history.h"
#include "sim/growth/history_pruner.h"
#include "sim/vine/vine_query.h"
#include "sim/weather/climate.h"
#include "sim/weather/spring.h"

namespace spurwright::checks {
namespace {

using namespace weather;

const Climate& inland() { return *find_climate("inland-test"); }
const growth::Variety& variety_of(std::string_view name) { return *growth::find_variety(name); }

double step_of(double hardiness, double mean_c, Dormancy phase) {
    return hardiness_step(*find_hardiness("cabernet-sauvignon"), hardiness, mean_c, phase);
}

int smooth_budbreak(std::string_view name) {
    return budbreak(variety_of(name), smooth_season(inland()), growth::Constants{}).day;
}

// Without the laid canes' frost and dates changed: pairs of buds that differ, and how many were compared.
struct KickerCount {
    int differ = 0, compared = 0, buds = 0;
};

KickerCount beside_a_kicker(std::uint64_t seed) {
    const growth::Constants c;
    growth::Site site;
    site.seed = seed;
    const Vine vine = *growth::grow_vine(site);
    const Plan plan = growth::history_plan(vine, growth::habits_of(Pruner::good));
    const Vine without = *prune(vine, plan);
    // A cane that the plan does not use stays whole: every cut that would take it is left out.
    AxisId kicker;
    for (const AxisId id : cane_candidates(vine))
        if (without.find(id)->removed) kicker = id;
    Vine with = vine;
    for (const Edit& edit : plan.edits) {
        Vine tried = with;
        if (prune_one(tried, edit, vine) && !tried.find(kicker)->removed) with = std::move(tried);
    }
    if (!kicker || !prune_one(with, Mark{kicker, Role::kicker}, vine)) return {};
    const Temperatures t = drawn_season(*find_climate("inland-continental"), c, seed, 1);
    const int burst = budbreak(growth::varieties()[0], t, c).day;
    const auto a = opening(without, burst, {}, t, c), b = opening(with, burst, {}, t, c);
    const auto lost_a = frost_losses(a, burst, growth::Species::vinifera, t, c),
               lost_b = frost_losses(b, burst, growth::Species::vinifera, t, c);
    KickerCount count;
    for (std::size_t i = 0; i < a.size(); ++i) {
        if (a[i].kept_as != KeptAs::laid) continue;
        ++count.buds;
        for (std::size_t k = 0; k < b.size(); ++k) {
            if (a[i].node != b[k].node) continue;
            ++count.compared;
            count.differ += a[i].day != b[k].day || lost_a[i] != lost_b[k];
        }
    }
    return count;
}

} // namespace

Numbers hardiness_steps() {
    return {near("endo, -10.3 at 0 C", -0.96603, 1e-4, step_of(-10.3, 0, Dormancy::endo)),
            near("eco, -20 at 10 C", 0.49999, 1e-4, step_of(-20, 10, Dormancy::eco)),
            near("eco, -3 at 10 C", 0.21098, 1e-4, step_of(-3, 10, Dormancy::eco))};
}

Numbers hardiest_bud() {
    Numbers numbers;
    for (const auto& [name, expected] :
         {std::pair{"cabernet-sauvignon", -25.1}, std::pair{"riesling", -26.1}, std::pair{"concord", -29.5}})
        numbers.push_back(
            near(name, expected, 0.3, harden(*find_hardiness(name), smooth_season(inland())).hardiest()));
    return numbers;
}

Numbers budbreak_order() {
    const int concord = smooth_budbreak("concord"), chardonnay = smooth_budbreak("chardonnay"),
              riesling = smooth_budbreak("riesling"), cabernet = smooth_budbreak("cabernet-sauvignon"),
              merlot = smooth_budbreak("merlot");
    return {within("chardonnay - concord, d", 1, no_limit, chardonnay - concord),
            within("riesling - chardonnay, d", 1, no_limit, riesling - chardonnay),
            within("cabernet-sauvignon - riesling, d", 0, no_limit, cabernet - riesling),
            none("merlot - cabernet-sauvignon, d", merlot - cabernet)};
}

Numbers budbreak_day() {
    constexpr int winters = 200;
    const growth::Constants c;
    Numbers numbers;
    for (const auto& [name, expected] : {std::pair{"cabernet-sauvignon", 117}, std::pair{"chardonnay", 109},
                                         std::pair{"riesling", 112}, std::pair{"merlot", 117}, std::pair{"concord", 106}}) {
        double sum = 0;
        for (std::uint32_t year = 0; year < winters; ++year)
            sum += budbreak(variety_of(name), drawn_season(inland(), c, 1, year), c).day;
        numbers.push_back(near(name, expected, 14, sum / winters));
    }
    return numbers;
}

Numbers frost_at_burst() {
    const growth::Constants c;
    return {near("vinifera", -2.2, 1e-12, frost_limit(growth::Species::vinifera, Stage::burst, c).lt50_c),
            near("concord", -6.4, 1e-12, frost_limit(growth::Species::labruscana, Stage::burst, c).lt50_c)};
}

Numbers cutting_delay() {
    const growth::Constants c;
    // 7.9 C d a day, the rate that the trial's own two delays imply (computed).
    Temperatures t;
    t.mean.assign(season_days, c.gdd_base + 7.9);
    t.lowest = t.mean;
    constexpr int burst = 100;
    Numbers numbers;
    for (const auto& [unfolded, delay] : {std::pair{2, 17}, std::pair{7, 31}}) {
        int cut = burst;
        while (leaves(burst, cut, t, c) < unfolded) ++cut;
        numbers.push_back(near(std::to_string(unfolded) + " leaves, d", delay, 5, released_day(cut, t, c) - burst));
    }
    return numbers;
}

Numbers nodes_at_bloom() {
    const growth::Constants c;
    const Temperatures t = smooth_season(*find_climate("inland-continental"));
    const int burst = budbreak(growth::varieties()[0], t, c).day;
    const int bloom = bloom_day(burst, t, c).value_or(burst);
    return {within("", 16, 19, std::floor(nodes_on(burst, bloom, t, c)))};
}

Numbers kicker_delays_nothing() {
    KickerCount all;
    for (std::uint64_t seed = 0; seed < 20; ++seed) {
        const KickerCount one = beside_a_kicker(seed);
        all.differ += one.differ;
        all.compared += one.compared;
        all.buds += one.buds;
    }
    return {none("buds of laid canes that differ", all.differ), none("buds not compared", all.buds - all.compared),
            within("buds compared", 200, no_limit, all.compared)};
}

} // namespace spurwright::checks
