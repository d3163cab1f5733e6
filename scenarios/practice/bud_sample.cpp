#include "scenarios/practice/bud_sample.h"

#include <algorithm>
#include <cmath>

#include "sim/growth/variety.h"
#include "sim/vine/canonical_text.h"
#include "sim/vine/vine_query.h"
#include "sim/weather/climate.h"
#include "sim/weather/spring.h"

namespace spurwright::practice {
namespace {

constexpr std::uint32_t winters_tried = 400;
constexpr double fewest_dead = 0.15, most_dead = 0.6; // of primaries

struct Winter {
    std::uint32_t draw = 1;
    weather::BudKill kill;
    weather::Temperatures temperatures;
    int open_day = 0;
    double margin_c = 0;
};

Winter winter_of(const growth::Variety& variety, const growth::Constants& c, std::uint32_t draw) {
    Winter winter;
    winter.draw = draw;
    winter.temperatures = weather::drawn_season(*weather::find_climate("inland-continental"), c, draw, 0);
    const auto open = weather::budbreak(variety, winter.temperatures, c);
    winter.open_day = open.day;
    if (const auto* row = weather::find_hardiness(variety.hardiness)) {
        winter.margin_c = weather::worst_margin(weather::harden(*row, winter.temperatures), winter.temperatures, open.day);
        winter.kill = weather::winter_kill(winter.margin_c, c);
    }
    return winter;
}

// The first in turn that asks for something; else the coldest of all.
Winter cold_winter(const growth::Variety& variety, const growth::Constants& c, std::uint64_t from) {
    Winter coldest;
    for (std::uint32_t i = 0; i < winters_tried; ++i) {
        Winter winter = winter_of(variety, c, 1 + static_cast<std::uint32_t>((from + i) % winters_tried));
        if (winter.kill.primary >= fewest_dead && winter.kill.primary <= most_dead) return winter;
        if (i == 0 || winter.kill.primary > coldest.kill.primary) coldest = std::move(winter);
    }
    return coldest;
}

const Bud* bud_of(const Vine& vine, NodeId node) {
    for (const Bud& bud : vine.buds_of(*vine.find(node)))
        if (bud.kind == BudKind::node) return &bud;
    return nullptr;
}

// Middling canes: nearest to the middle thickness of those with buds enough.
std::vector<AxisId> middling(const Vine& vine) {
    std::vector<AxisId> canes;
    for (const AxisId id : cane_candidates(vine))
        if (ripe_count_nodes(vine, *vine.find(id)).size() >= buds_a_cane) canes.push_back(id);
    std::vector<Length> thick;
    thick.reserve(canes.size());
    for (const AxisId id : canes) thick.push_back(thickness(vine, *vine.find(id)));
    if (thick.empty()) return {};
    std::stable_sort(thick.begin(), thick.end());
    const Length middle = thick[thick.size() / 2];
    const auto off = [&](AxisId id) { return std::abs(thickness(vine, *vine.find(id)).count - middle.count); };
    std::stable_sort(canes.begin(), canes.end(), [&](AxisId a, AxisId b) { return off(a) < off(b); });
    if (canes.size() > most_canes_sampled) canes.resize(most_canes_sampled);
    return canes;
}

} // namespace

int SampledCane::dead() const {
    return static_cast<int>(std::count_if(buds.begin(), buds.end(), [](const OpenedBud& b) { return !b.primary; }));
}

BudSample::BudSample(const Vine& uncut) {
    const growth::Variety* variety = growth::find_variety(uncut.variety);
    if (!variety) variety = &growth::varieties()[0];
    const growth::Constants c = growth::with_variety({}, *variety);
    const Winter winter = cold_winter(*variety, c, vine_hash(uncut));
    margin_c_ = winter.margin_c;
    Vine vine = uncut;
    const auto buds = weather::opening(vine, winter.open_day, {}, winter.temperatures, c);
    (void)weather::take_cold(vine, buds, std::vector<double>(buds.size(), 0.0), winter.kill, winter.draw);
    int dead = 0;
    for (const weather::OpenBud& open : buds) dead += !bud_of(vine, open.node)->primary;
    if (!buds.empty()) whole_share_ = static_cast<double>(dead) / static_cast<double>(buds.size());
    for (const AxisId id : middling(vine)) {
        SampledCane cane{id, {}, {}};
        for (const std::uint32_t index : ripe_count_nodes(vine, *vine.find(id))) {
            if (cane.buds.size() == buds_a_cane) break;
            const NodeId node = node_id(id, index);
            if (const Bud* bud = bud_of(vine, node)) cane.buds.push_back({node, bud->primary, bud->secondary, bud->tertiary});
        }
        canes_.push_back(std::move(cane));
    }
}

int BudSample::right() const {
    return static_cast<int>(std::count_if(canes_.begin(), canes_.end(), [](const SampledCane& c) { return c.right(); }));
}

void BudSample::answer(int dead) {
    if (here() && !answered()) canes_[at_].said = dead;
}

void BudSample::next() {
    if (answered()) ++at_;
}

int BudSample::dead() const {
    int dead = 0;
    for (const SampledCane& cane : canes_) dead += cane.dead();
    return dead;
}

int BudSample::buds() const {
    std::size_t buds = 0;
    for (const SampledCane& cane : canes_) buds += cane.buds.size();
    return static_cast<int>(buds);
}

double BudSample::share() const { return buds() > 0 ? static_cast<double>(dead()) / buds() : 0; }

} // namespace spurwright::practice
