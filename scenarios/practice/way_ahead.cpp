#include "scenarios/practice/way_ahead.h"

#include <cmath>

#include "scenarios/commands/vine_source.h"
#include "scenarios/io/vine_file.h"
#include "scenarios/practice/charged_look.h"
#include "scenarios/practice/look_drill.h"
#include "scenarios/records/store.h"
#include "sim/core/hash.h"
#include "sim/planning/difficulty.h"
#include "sim/pruning/plan_text.h"
#include "sim/rules/judge.h"
#include "sim/rules/rule_set_reader.h"
#include "sim/vine/canonical_text.h"

namespace spurwright::practice {
namespace {

Error no_longer_there() { return {Fault::bad_file, {"error.way.vine-gone"}, {}, {}}; }

// How many acts stand before the first that cost more than is as good; what was given stands always.
std::size_t acts_before_loss(const Vine& vine, const rules::HouseRules& house, const Plan& plan, const records::PastVine& past) {
    const auto after = prune(vine, plan);
    const PlansFound plans = search_plans(vine, house);
    if (!after || plans.none()) return past.given;
    const planning::Charges charges = charged_look(vine, house, plans, plan, rules::judge(vine, *after, house)).charges;
    std::size_t first = plan.edits.size();
    for (const planning::Charge& charge : charges.edits)
        if (charge.lost > past.tolerance.value_or(house.acceptable.within)) first = std::min(first, charge.edit);
    // Nothing that one act cost: the whole vine again.
    return std::max(first == plan.edits.size() ? 0 : first, past.given);
}

}  // namespace

Result<WayAhead> way_ahead(const std::string& store_file, std::optional<std::int64_t> person) {
    WayAhead way;
    const records::Day today = *records::read_day(records::utc_now().substr(0, 10));
    auto store = records::Store::open_to_read(store_file);
    if (!store) return failure(store.error());
    if (*store) {
        auto past = records::past_vines(**store, person);
        if (!past) return failure(past.error());
        way.past = *std::move(past);
    }
    LookDrill looks(store_file, person, "en", {}, [] { return std::int64_t{0}; }, day_today());
    if (auto read = looks.recall(); !read) return failure(read.error());
    way.looks = looks.answers();
    way.returning = learning::returning_vines(way.past, today);
    way.rules = learning::rules_to_look_at(way.past);
    way.next = learning::way_on(way.past, way.looks, today, day_today());
    return way;
}

Result<MetVine> open_met(const std::string& store_file, const records::PastVine& past) {
    auto store = records::Store::open_to_read(store_file);
    if (!store) return failure(store.error());
    if (!*store) return failure(no_longer_there());
    const auto kept = records::kept_vine(**store, past.vine_hash);
    const auto rules_kept = records::kept_rule_set(**store, past.rule_set_hash);
    if (!kept || !*kept || !rules_kept || !*rules_kept) return failure(no_longer_there());
    auto file = io::read_vine_file((*kept)->file, past.vine_hash);
    const auto house = rules::read_rule_set((*rules_kept)->lines);
    const auto plan = parse_plan(past.plan);
    if (!file || !house || !plan || hash_text(vine_hash(file->vine)) != past.vine_hash) return failure(no_longer_there());
    MetVine met{Task{std::move(file->vine), past.code, "", past.rule_set_name, *house, {}}, *plan};
    met.before.edits.resize(acts_before_loss(met.task.vine, *house, *plan, past));
    return met;
}

Result<std::string> code_at_difficulty(const std::function<Result<std::string>()>& next, const rules::HouseRules& house, double wanted) {
    std::optional<std::string> best;
    double best_off = 0;
    for (int i = 0; i < codes_tried; ++i) {
        auto code = next();
        if (!code) return code;
        const auto found = commands::vine_of_code(*code);
        const auto difficulty = found ? planning::difficulty_of(found->vine, house, planning::Planning(found->vine, house)) : std::nullopt;
        const double off = difficulty ? std::abs(difficulty->scale / 1000.0 - wanted) : 1e6;
        if (best && off >= best_off) continue;
        best = *std::move(code);
        best_off = off;
    }
    return *std::move(best);
}

}  // namespace spurwright::practice
