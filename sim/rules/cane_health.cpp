#include "sim/rules/cane_health.h"

namespace spurwright::rules {

PerMille mark_cane_health(const CaneFacts& cane, const HouseRules& house) {
    const HealthFacts& is = cane.health;
    if (is.spot || is.wound || is.cracked || is.dead_buds > 1) return no_mark;
    const PerMille flags = is.dead_buds == 1 || is.twin ? half_mark : full_mark;
    return smaller(flags, mark_from(whole, house.cane_health.ripe_share, is.ripe_share));
}

Said say_cane_health(const CaneFacts& cane, const HouseRules& house) {
    const HealthFacts& is = cane.health;
    const PerMille least = house.cane_health.ripe_share;
    const PerMille ripe = mark_from(whole, least, is.ripe_share);
    struct Case {
        bool holds;
        std::string_view key, word;
    };
    const Case cases[] = {
        {is.spot, "rule.cane-health.spot", "spot"},
        {is.wound, "rule.cane-health.wound", "wound"},
        {is.cracked, "rule.cane-health.cracked", "cracked"},
        {is.dead_buds > 1, "rule.cane-health.dead-buds", "dead buds"},
        {is.ripe_share < least, "rule.cane-health.unripe", ""},
        {ripe < half_mark, "rule.cane-health.unripe-end", ""},
        {is.twin, "rule.cane-health.twin", "double cane"},
        {is.dead_buds == 1, "rule.cane-health.dead-bud", "dead bud"},
        {ripe < full_mark, "rule.cane-health.unripe-end", ""},
        {true, "rule.cane-health.full", ""},
    };
    const Case* now = cases;
    while (!now->holds) ++now;
    Said said =
        measured_in(Unit::share, is.ripe_share, at_least(whole), at_least(least), now->key,
                    {{"part", cane.axis}, {"n", Count{is.dead_buds}}, {"measured", is.ripe_share}, {"least", least}});
    said.measured_word = now->word;
    return said;
}

const Rule cane_health{
    RuleName::cane_health, {"rule.cane-health.asks"}, Group::cane_choice,          Step::choose, Per::cane,
    Status::choice,        cane_health_claims,        {"rule.cane-health.missing"}};

}  // namespace spurwright::rules
