// Items about somebody's finished pruning, and about what kind of work a vine asks for.
#include <algorithm>

#include "scenarios/quiz/item_maker.h"
#include "scenarios/quiz/losses.h"
#include "scenarios/quiz/planted_fault.h"
#include "scenarios/quiz/set_out.h"
#include "sim/core/random.h"
#include "sim/growth/history.h"
#include "sim/vine/vine_query.h"

namespace spurwright::quiz {
namespace {

constexpr Tenths plain_loss{20};  // less than this is no mistake that a crew should see
constexpr std::size_t rules_shown = 4;

// Text keys are literals that outlive every item.
constexpr std::array<TextKey, rules::rule_count> rule_name_keys{
    TextKey{"rule.cane-diameter.name"},    TextKey{"rule.cane-end-diameter.name"}, TextKey{"rule.internode-length.name"},
    TextKey{"rule.internode-evenness.name"}, TextKey{"rule.origin-distance.name"}, TextKey{"rule.origin-height.name"},
    TextKey{"rule.cane-side.name"},        TextKey{"rule.wood-age.name"},          TextKey{"rule.cane-health.name"},
    TextKey{"rule.bud-load.name"},         TextKey{"rule.cane-reach.name"},        TextKey{"rule.cane-count.name"},
    TextKey{"rule.spur-count.name"},       TextKey{"rule.spur-buds.name"},         TextKey{"rule.spur-place.name"},
    TextKey{"rule.spur-size.name"},        TextKey{"rule.spur-direction.name"},    TextKey{"rule.end-cut.name"},
    TextKey{"rule.old-wood-stub.name"},    TextKey{"rule.wound-size.name"},        TextKey{"rule.tool-choice.name"},
    TextKey{"rule.wood-left-behind.name"}, TextKey{"rule.suckers.name"},           TextKey{"rule.tying.name"},
    TextKey{"rule.kicker-kept.name"},      TextKey{"rule.kicker-absent.name"},     TextKey{"rule.bud-kill-adjust.name"},
    TextKey{"rule.prunings-weighed.name"}};

struct RuleLoss {
    Tenths lost;
    bool asked = false;
};

std::array<RuleLoss, rules::rule_count> losses_by_rule(const rules::Judgement& judgement) {
    std::array<RuleLoss, rules::rule_count> losses{};
    for (const rules::Finding& finding : judgement.findings) {
        RuleLoss& loss = losses[rules::index_of(finding.rule->name)];
        loss.lost = loss.lost + finding.lost();
        loss.asked = true;
    }
    return losses;
}

// The places of the pieces that were kept.
std::vector<Option> kept_pieces(const Vine& after) {
    std::vector<Option> options;
    for (const Axis& axis : after.axes) {
        if (axis.removed || is_trunk(axis) || age(after, axis) > 1 || is_lateral(after, axis)) continue;
        const TapedPlace place = tape_place(after, axis);
        options.push_back({axis.id, place, along_row(after, place), false, {}});
    }
    return options;
}

growth::Site weak_site(std::uint64_t seed) {
    growth::Site site = crew_site(seed);
    site.vigour = Vigour::low;
    site.capacity_share = 0.35;
    return site;
}

std::size_t good_canes(const rules::Offers& offers) { return offers.sides[0].canes.size() + offers.sides[1].canes.size(); }

}  // namespace

std::optional<Item> which_rule(const Ground& ground, const Wanted& wanted) {
    const auto fault = planted_fault(ground, wanted.seed ^ ground.seed);
    if (!fault) return std::nullopt;
    const auto losses = losses_by_rule(fault->judgement);
    std::optional<rules::RuleName> key;
    std::vector<std::pair<std::uint64_t, rules::RuleName>> kept;
    for (std::size_t i = 0; i < rules::rule_count; ++i) {
        const auto name = static_cast<rules::RuleName>(i);
        if (losses[i].lost >= plain_loss && (!key || losses[i].lost > losses[rules::index_of(*key)].lost)) key = name;
        if (losses[i].asked && losses[i].lost.count == 0) kept.emplace_back(draw(wanted.seed, 41, static_cast<std::uint32_t>(i)), name);
    }
    if (!key || kept.size() < rules_shown - 1) return std::nullopt;
    std::stable_sort(kept.begin(), kept.end());
    std::vector<rules::RuleName> shown;
    for (std::size_t i = 0; i + 1 < rules_shown; ++i) shown.push_back(kept[i].second);
    shown.insert(shown.begin() + static_cast<std::ptrdiff_t>(wanted.rank), *key);
    Item item;
    item.vine = fault->after;
    item.rule = *key;
    for (const rules::RuleName name : shown) item.words.push_back(rule_name_keys[rules::index_of(name)]);
    item.accepted = {{static_cast<std::uint8_t>(wanted.rank + 1)}};
    const rules::Finding* worst = nullptr;
    for (const rules::Finding& finding : fault->judgement.findings)
        if (finding.rule->name == *key && finding.lost().count > 0 && (!worst || finding.lost() > worst->lost())) worst = &finding;
    item.reveal = told(worst);
    item.why_not.assign(shown.size(), {TextKey{"quiz.why.kept"}, {}});
    return item;
}

std::optional<Item> find_the_fault(const Ground& ground, const Wanted& wanted) {
    const auto fault = planted_fault(ground, wanted.seed ^ ground.seed);
    if (!fault) return std::nullopt;
    std::vector<Option> options = kept_pieces(fault->after);
    std::optional<AxisId> guilty;
    for (Option& option : options) {
        Tenths lost;
        for (const rules::Finding& finding : fault->judgement.findings)
            if (finding.on == name_of(option.axis)) lost = lost + finding.lost();
        if (lost.count == 0) continue;
        if (guilty || lost < plain_loss) return std::nullopt;  // one mistake, and a plain one
        guilty = option.axis;
        option.good = true;  // the right answer here
    }
    if (!guilty || options.size() < 3 || options.size() > most_places_shown) return std::nullopt;
    std::stable_sort(options.begin(), options.end(), [](const Option& a, const Option& b) { return a.along_row < b.along_row; });
    const rules::Finding* worst = largest_loss(fault->judgement, name_of(*guilty));
    Item item;
    item.vine = fault->after;
    item.rule = worst->rule->name;
    fill_places(item, options);
    item.reveal = told(worst);
    item.why_not.assign(options.size(), {TextKey{"quiz.why.faultless"}, {}});
    return item;
}

std::optional<Item> which_job(std::uint64_t seed, const rules::HouseRules& house) {
    enum Job : std::int32_t { as_ordered, weak, young, dead };
    const std::array<TextKey, 4> all{TextKey{"quiz.word.as-ordered"}, TextKey{"quiz.word.weak"}, TextKey{"quiz.word.young"}, TextKey{"quiz.word.dead"}};
    const auto job = static_cast<Job>(between(draw(seed, 51, 0), as_ordered, dead));
    growth::Site site = job == weak ? weak_site(seed) : crew_site(seed);
    if (job == young) site.age = between(draw(seed, 52, 0), 1, 2);
    auto vine = job == dead ? growth::grow_dead_vine(site) : job == young ? growth::grow_vine_of_any_age(site) : growth::grow_vine(site);
    if (!vine) return std::nullopt;
    if (job == as_ordered || job == weak) {  // no borderline
        const std::size_t canes = good_canes(rules::offers(*vine, house));
        if (job == weak ? canes > 1 : canes < 5) return std::nullopt;
    }
    std::vector<std::pair<std::uint64_t, std::size_t>> order;
    for (std::size_t i = 0; i < all.size(); ++i) order.emplace_back(draw(seed, 53, static_cast<std::uint32_t>(i)), i);
    std::stable_sort(order.begin(), order.end());
    Item item;
    item.vine = *std::move(vine);
    for (std::size_t i = 0; i < order.size(); ++i) {
        item.words.push_back(all[order[i].second]);
        if (order[i].second == static_cast<std::size_t>(job)) item.accepted = {{static_cast<std::uint8_t>(i + 1)}};
    }
    item.rule = rules::RuleName::cane_count;
    const std::array<TextKey, 4> reveals{TextKey{"quiz.reveal.as-ordered"}, TextKey{"quiz.reveal.weak"}, TextKey{"quiz.reveal.young"}, TextKey{"quiz.reveal.dead"}};
    item.reveal = {reveals[static_cast<std::size_t>(job)], {}};
    return item;
}

}  // namespace spurwright::quiz
