#include "scenarios/records/past_vines.h"

#include <algorithm>
#include <map>

#include "scenarios/io/json_fields.h"
#include "scenarios/records/answer.h"
#include "sim/pruning/plan_text.h"

namespace spurwright::records {
namespace {

using io::Json;

constexpr std::int64_t tenths_bound = 10'000;

std::optional<rules::RuleName> rule_named(const std::string& key) {
    for (std::size_t i = 0; i < rules::rule_count; ++i)
        if (rules::key_of(static_cast<rules::RuleName>(i)) == key) return static_cast<rules::RuleName>(i);
    return std::nullopt;
}

std::optional<Tenths> tenths_or_none(io::Fields& fields, std::string_view key) {
    const Json* value = fields.optional(key);
    if (!value || value->is(Json::Kind::null)) return std::nullopt;
    return Tenths{static_cast<std::int32_t>(fields.whole(key, -tenths_bound, tenths_bound))};
}

void take_losses(io::Fields& body, PastVine& past) {
    std::map<rules::RuleName, std::int64_t> lost;
    for (const Json& finding : body.list("findings", true)) {
        const Json* rule = finding.find("rule");
        const auto name = rule ? rule_named(rule->text) : std::nullopt;
        if (name) lost[*name] += io::Fields(body.refusal(), finding).whole("lost_tenths", 0, tenths_bound);
    }
    std::int64_t most = 0;
    for (const auto& [rule, tenths] : lost) {
        if (tenths > past.tolerance.value_or(Tenths{20}).count) past.lost_by.push_back(rule);
        if (tenths <= most) continue;
        most = tenths;
        past.worst = rule;
    }
}

std::optional<PastVine> read_past(const Event& event) {
    const auto json = io::read_json(event.body, "event");
    const auto day = read_day(event.when_utc.substr(0, 10));
    if (!json || !day || event.version != answer_version) return std::nullopt;
    io::Refusal refusal("event");
    io::Fields fields(refusal, *json);
    PastVine past;
    past.id = event.id;
    past.day = *day;
    past.vine_hash = fields.text("vine_hash", 16);
    if (const Json* code = fields.optional("vine_code"); code && code->is(Json::Kind::text)) past.code = code->text;
    past.rule_set_hash = fields.text("rule_set_hash", 16);
    past.rule_set_name = fields.text("rule_set_name", 200);
    past.plan = fields.text("plan", longest_plan_text);
    past.given = static_cast<std::size_t>(fields.whole("plan_prefix", 0, 10'000));
    past.marks = Tenths{static_cast<std::int32_t>(fields.whole("marks_tenths", -tenths_bound, tenths_bound))};
    past.best = tenths_or_none(fields, "best_tenths");
    past.tolerance = tenths_or_none(fields, "as_good_tenths");
    if (const Json* difficulty = fields.optional("difficulty"); difficulty && difficulty->is(Json::Kind::number))
        past.difficulty = static_cast<std::int32_t>(fields.whole("difficulty", -100'000, 100'000));
    take_losses(fields, past);
    if (refusal.any()) return std::nullopt;
    return past;
}

} // namespace

Result<std::vector<PastVine>> past_vines(Store& store, std::optional<std::int64_t> person) {
    std::vector<PastVine> all;
    auto read = each_event(store, answer_kind, 0, [&](const Event& event) {
        if (event.person != person) return;
        if (auto past = read_past(event)) all.push_back(*std::move(past));
    });
    if (!read) return failure(read.error());
    return all;
}

} // namespace spurwright::records
