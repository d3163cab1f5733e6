#include "scenarios/practice/spring_visit.h"

#include <algorithm>
#include <cmath>

#include "scenarios/ahead/drawn_spring.h"
#include "scenarios/ahead/kickers.h"
#include "sim/vine/vine_query.h"

namespace spurwright::practice {
namespace {

void count(SpringVisit::Wood& wood, const Vine& after, const weather::OpenBud& bud, int day) {
    ++wood.buds;
    wood.open += bud.day <= day;
    const auto here = after.buds_of(*after.find(bud.node));
    wood.dead += std::none_of(here.begin(), here.end(), [](const Bud& b) { return b.kind == BudKind::node && !b.harmed && b.primary; });
}

ahead::AheadWish wish_of(const SpringVisitWish& visit) {
    ahead::AheadWish wish;
    wish.variety = growth::find_variety(visit.pruned.variety);
    if (!wish.variety) wish.variety = &growth::varieties()[0];
    wish.climate = weather::find_climate(visit.frost.climate);
    if (!wish.climate) wish.climate = weather::find_climate(ahead::usual_climate);
    return wish;
}

void look_at_night(SpringVisit& visit, const ahead::DrawnSpring& spring) {
    const weather::Temperatures& t = spring.temperatures;
    visit.frost_day = spring.open.day;
    for (int day = spring.open.day; day < std::min(visit.day, t.end_day()); ++day)
        if (t.lowest_on(day) < t.lowest_on(visit.frost_day)) visit.frost_day = day;
    visit.frost_c = t.lowest_on(std::clamp(visit.frost_day, weather::first_day, t.end_day() - 1));
}

} // namespace

std::vector<AxisId> standing_canes(const Vine& uncut, const Vine& pruned) {
    std::vector<AxisId> standing;
    for (const AxisId id : cane_candidates(uncut)) {
        const Axis& cane = *pruned.find(id);
        if (cane.removed) continue;
        const auto this_winter = [&](const auto& row) { return row.axis == id && row.winter == pruned.winter; };
        const auto nodes = pruned.nodes_of(cane);
        const bool cut = std::any_of(nodes.begin(), nodes.end(), [](const Node& n) { return n.removed; }) ||
                         std::any_of(pruned.wounds.begin(), pruned.wounds.end(), this_winter);
        const bool laid = std::any_of(pruned.laid.begin(), pruned.laid.end(), this_winter);
        const bool tied = std::any_of(pruned.ties.begin(), pruned.ties.end(), [&](const Tie& tie) { return axis_of(tie.node) == id; });
        if (!cut && !laid && !tied) standing.push_back(id);
    }
    std::stable_sort(standing.begin(), standing.end(), [&](AxisId a, AxisId b) {
        return distance_to_head(pruned, *pruned.find(a)) < distance_to_head(pruned, *pruned.find(b));
    });
    return standing;
}

Vine without_standing(const Vine& pruned, const std::vector<AxisId>& standing) {
    Vine vine = pruned;
    for (const AxisId cane : standing)
        for (const Edit& edit : ahead::plan_off(cane).edits) (void)prune_one(vine, edit, pruned);
    return vine;
}

SpringVisit spring_visit(const SpringVisitWish& wish, std::atomic<int>& lived) {
    SpringVisit visit;
    visit.day = wish.frost.over_day;
    const ahead::AheadWish seasons = wish_of(wish);
    const growth::Constants constants = growth::with_variety({}, *seasons.variety);
    const auto draw = static_cast<std::uint32_t>(wish.draw);
    const ahead::DrawnSpring spring = ahead::drawn_spring(wish.pruned, seasons, constants, draw, 0);
    Vine after = wish.pruned;
    (void)weather::take_cold(after, spring.buds, spring.frost_share, spring.kill, draw);
    const ahead::LaidBuds laid = ahead::laid_buds(after, spring.buds);
    visit.open_day = laid.buds > 0 ? static_cast<int>(std::lround(laid.mean_day)) : spring.open.day;
    visit.laid_sound = laid.sound();
    visit.kickers = ahead::kickers_of(after, spring.buds);
    const auto stands = [&](AxisId cane) { return std::find(visit.kickers.begin(), visit.kickers.end(), cane) != visit.kickers.end(); };
    for (const weather::OpenBud& bud : spring.buds) {
        if (bud.kept_as == weather::KeptAs::laid) count(visit.laid, after, bud, visit.day);
        if (bud.kept_as == weather::KeptAs::spur) count(visit.spurs, after, bud, visit.day);
        if (bud.kept_as == weather::KeptAs::upright && stands(axis_of(bud.node))) count(visit.standing, after, bud, visit.day);
    }
    look_at_night(visit, spring);
    if (laid.buds == 0) {
        lived = springs_lived;
        return visit;
    }

    const Vine alone = without_standing(wish.pruned, visit.kickers);
    for (std::size_t i = 0; i < frost_way_count; ++i) {
        const auto way = static_cast<FrostWay>(i);
        ahead::AheadWish late = seasons;
        if (way == FrostWay::laid_late || way == FrostWay::cut_late) late.late.laid_day = visit.day;
        if (way == FrostWay::cut_late) late.late.cut_day = visit.day;
        if (way == FrostWay::kicker) {
            late.kickers = true;
            late.late.upright_cut = visit.day;
        }
        if (way == FrostWay::kicker && visit.kickers.empty()) {
            lived += ahead::weather_draws;
            continue;
        }
        ahead::Ahead life = ahead::look_ahead(way == FrostWay::kicker ? wish.pruned : alone, wish.house, late, [&] { ++lived; });
        visit.ways[i] = SpringVisit::Way{life.winters.front(), life.kickers_laid};
    }
    return visit;
}

} // namespace spurwright::practice
