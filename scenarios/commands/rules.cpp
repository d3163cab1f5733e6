// rules: every rule of a house set, what it asks, what it weighs and where its numbers come from. With --check a file of
// house rules is read whole first and refused by key and line where it cannot be used.
#include "scenarios/commands/cite.h"
#include "scenarios/commands/house_rules_option.h"
#include "scenarios/commands/verbs.h"
#include "scenarios/words/layout.h"
#include "sim/core/hash.h"
#include "sim/rules/rule_list.h"
#include "sim/rules/threshold.h"

namespace spurwright::commands {
namespace {

using io::Json;
using rules::HouseRules;
using rules::Rule;
using rules::Threshold;
using rules::Wanted;

Status status_in_force(const Rule& rule, const HouseRules& house) {
    return house.set_by_house[rules::index_of(rule.name)] ? Status::house : rule.status;
}

std::string list_text(const std::vector<std::string_view>& keys) {
    std::string all;
    for (const std::string_view key : keys) all += (all.empty() ? "" : ", ") + std::string(key);
    return all;
}

std::string source_text(const Rule& rule, const HouseRules& house, const words::Words& words) {
    return words.sentence(rules::source_line(rule, status_in_force(rule, house)),
                          {{"sources", list_text(rules::source_keys(rule))}});
}

Json ends_of(const std::optional<Wanted>& range) {
    if (!range) return {};
    Json list = Json::list();
    for (const auto& end : {range->low, range->high}) list.push(end ? Json::decimal(*end, 3) : Json());
    return list;
}

// An open end of a claim is null; a claim in words has two.
Json end_of_claim(double value) { return Json::number(value, 6); }

Json claim_object(const Claim& claim) {
    Json o = Json::object();
    o.set("source", claim.source->key);
    o.set("cite", claim.source->cite);
    o.set("weight", std::string(1, claim.source->weight));
    o.set("place", claim.place);
    o.set("low", end_of_claim(claim.low));
    o.set("high", end_of_claim(claim.high));
    o.set("unit", claim.unit);
    return o;
}

Json rule_object(const Rule& rule, const HouseRules& house, const Json& values, const words::Words& words) {
    const Threshold asks = rules::threshold_of(rule.name, house);
    Json o = Json::object();
    o.set("rule", rule.key());
    o.set("name", words("rule." + std::string(rule.key()) + ".name"));
    o.set("group", word_of(rule.group));
    o.set("step", word_of(rule.step));
    o.set("per", word_of(rule.per));
    o.set("on", house.of(rule.name).on);
    o.set("weight", std::int64_t{house.weight(rule.name)});
    o.set("full", ends_of(asks.full));
    o.set("half", ends_of(asks.half));
    o.set("unit", word_of(asks.unit));
    Json parameters = Json::object();
    if (const Json* own = values.find(rule.key()))
        for (std::size_t i = 0; i < own->keys.size(); ++i)
            if (own->keys[i] != "weight" && own->keys[i] != "on") parameters.set(own->keys[i], own->items[i]);
    o.set("parameters", std::move(parameters));
    o.set("source", source_text(rule, house, words));
    Json keys = Json::list(), claims = Json::list();
    for (const std::string_view key : rules::source_keys(rule)) keys.push(key);
    for (const Claim& claim : rule.claims) claims.push(claim_object(claim));
    o.set("sources", std::move(keys));
    o.set("claims", std::move(claims));
    o.set("status", word_of(status_in_force(rule, house)));
    o.set("sentence", words.sentence(rule.asks));
    return o;
}

// A share stands in percent.
std::string number(std::int64_t thousandths, rules::Unit unit, const words::Words& words) {
    return words::number_text(thousandths, unit == rules::Unit::share ? 1 : 3, 3, words.numbers());
}

// "8 to 12 mm", "at least 6 mm", "up to 80 mm", "1".
std::string range_text(const std::optional<Wanted>& range, rules::Unit unit, const words::Words& words) {
    if (!range || (!range->low && !range->high)) return "-";
    const Arguments gaps{{"low", range->low ? number(*range->low, unit, words) : ""},
                         {"high", range->high ? number(*range->high, unit, words) : ""}};
    const std::string_view key = !range->high                ? "rules.at-least"
                                 : !range->low               ? "rules.up-to"
                                 : *range->low == *range->high ? "rules.exactly"
                                                             : "rules.from-to";
    const std::string text = words(key, gaps);
    return unit == rules::Unit::none ? text : text + " " + words("unit." + std::string(word_of(unit)));
}

std::string rule_group_text(rules::Group group, const HouseRules& house, const words::Words& words) {
    words::Table table;
    table.rows.push_back({words("rules.column.rule"), words("rules.column.points"), words("rules.column.full"),
                          words("rules.column.part")});
    table.right = {false, true, false, false};
    std::string sentences;
    for (const Rule* rule : rules::all_rules) {
        if (rule->group != group) continue;
        const Threshold asks = rules::threshold_of(rule->name, house);
        const std::string key(rule->key());
        table.rows.push_back({key, words::points_text(Tenths{house.weight(rule->name)}, words.numbers()),
                              range_text(asks.full, asks.unit, words), range_text(asks.half, asks.unit, words)});
        sentences += words::hanging("  ", words("rules.says", {{"rule", key},
                                                               {"name", words("rule." + key + ".name")},
                                                               {"sentence", words.sentence(rule->asks)},
                                                               {"source", source_text(*rule, house, words)}}),
                                    4);
    }
    return words("group." + std::string(word_of(group))) + "\n" + words::table_text(table) + "\n" + sentences + "\n";
}

Result<io::HouseRulesFile> set_asked(const Asked& asked, const Surroundings& around) {
    const auto file = asked.value("--check");
    if (!file) return house_rules_asked(asked, around);
    if (asked.has("--rules")) return failure(refusal(Fault::bad_text, "error.rules.both", {}, "rules"));
    return io::load_house_rules_file(*file, around.assets);
}

Result<Answer> answer_rules(const Asked& asked, const Surroundings& around) {
    const auto set = set_asked(asked, around);
    if (!set) return failure(set.error());
    const HouseRules& house = set->rules;
    const words::Words& words = around.words;
    const auto checked = asked.value("--check");
    const std::string hash = hash_text(rules::rule_set_hash(house));
    Answer answer;
    Json& o = answer.object;
    o.set("checked", checked ? Json(*checked) : Json());
    o.set("rule_set", set->name);
    o.set("rule_set_hash", hash);
    o.set("judge_version", rules::judge_version);
    o.set("language", words.language());
    Json own = Json::list();
    for (const std::string& key : set->own) own.push(key);
    o.set("own", std::move(own));
    const Json values = io::parameter_values(house);
    Json list = Json::list();
    for (const Rule* rule : rules::all_rules) list.push(rule_object(*rule, house, values, words));
    o.set("rules", std::move(list));
    if (checked)
        answer.text += words::wrapped(words("rules.in-order", {{"file", *checked}})) + "\n";
    answer.text += words::wrapped(words("rules.head", {{"name", set->name},
                                                       {"hash", hash},
                                                       {"version", Count{rules::judge_version}}})) +
                   "\n";
    for (std::size_t g = 0; g < rules::words_of(rules::Group{}).size(); ++g)
        answer.text += rule_group_text(static_cast<rules::Group>(g), house, words);
    answer.text += words::wrapped(words("rules.about"));
    return answer;
}

} // namespace

Verb rules_verb() {
    return {"rules",
            "",
            TextKey{"verb.rules"},
            {rules_option(), {"--check", "FILE", TextKey{"option.check-rules"}}},
            answer_rules};
}

} // namespace spurwright::commands
