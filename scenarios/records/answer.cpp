#include "scenarios/records/answer.h"

#include "scenarios/io/vine_file.h"
#include "scenarios/records/act.h"
#include "scenarios/records/readable_body.h"
#include "sim/core/hash.h"
#include "sim/pruning/plan_text.h"
#include "sim/rules/judge.h"
#include "sim/rules/rule.h"
#include "sim/vine/canonical_text.h"

namespace spurwright::records {
namespace {

using io::Json;

// What cost points, in words of the language it was told in: they open even where the vine is lost.
Json lost_findings(const rules::Judgement& judgement, const words::Words& words) {
    Json list = Json::list();
    for (const rules::Finding& f : judgement.findings) {
        if (f.lost().count <= 0) continue;
        Json o = Json::object();
        o.set("rule", f.rule->key());
        o.set("on", f.on);
        o.set("side", word_of(f.side));
        o.set("lost_tenths", f.lost().count);
        o.set("mend", word_of(f.mend));
        o.set("step", word_of(f.step));
        o.set("sentence", words.sentence(f.said.key, f.said.arguments));
        list.push(std::move(o));
    }
    for (const rules::Cap& cap : judgement.caps) {
        Json o = Json::object();
        o.set("cap", cap.cap);
        o.set("on", cap.on);
        o.set("limit_tenths", cap.limit.count);
        o.set("sentence", words.sentence(cap.key, cap.arguments));
        list.push(std::move(o));
    }
    return list;
}

Json answer_body(const FinishedVine& f, const words::Words& words) {
    const auto tenths = [](const std::optional<Tenths>& value) { return value ? Json(value->count) : Json(); };
    Json o = Json::object();
    o.set("vine_hash", hash_text(vine_hash(f.vine)));
    o.set("vine_code", f.code.empty() ? Json() : Json(f.code));
    o.set("plan", print_plan(f.plan));
    o.set("plan_prefix", static_cast<std::int64_t>(f.given));
    o.set("report", Json());
    o.set("rule_set_hash", hash_text(rules::rule_set_hash(f.house)));
    o.set("rule_set_name", f.house_name);
    o.set("judge_version", rules::judge_version);
    o.set("program_version", program_version());
    o.set("place", f.place);
    o.set("item_kind", "whole-vine");
    o.set("language", words.language());
    o.set("mode", f.mode);
    o.set("view", f.view);
    o.set("sure", Json());
    o.set("ms", Json()); // no clock runs on a whole vine
    o.set("marks_tenths", f.judgement.points.count);
    o.set("best_tenths", tenths(f.best));
    o.set("as_good_tenths", tenths(f.tolerance));
    o.set("difficulty", f.difficulty ? Json(std::int64_t{*f.difficulty}) : Json());
    o.set("plans_counted", f.tally.counted);
    o.set("plans_better", f.tally.better);
    o.set("plans_equal", f.tally.equal);
    o.set("findings", lost_findings(f.judgement, words));
    return o;
}

Result<bool> is_there_already(Store& store, const FinishedVine& f) {
    const std::string vine = hash_text(vine_hash(f.vine)), plan = print_plan(f.plan), rules = hash_text(rules::rule_set_hash(f.house));
    bool same = false;
    auto read = store.each("SELECT " + in_body("plan") + ", " + in_body("rule_set_hash") + " FROM event WHERE kind = 'answer' AND " + in_body("vine_hash") + " = ?1 "
                           "AND person IS ?2 ORDER BY id DESC LIMIT 1",
                           {vine, value_of(f.person)}, 2, [&](const Row& row) { same = row.text(0) == plan && row.text(1) == rules; });
    if (!read) return failure(read.error());
    return same;
}

} // namespace

Result<void> keep_what_it_needs(Store& store, const Vine& vine, const std::string& code, const rules::HouseRules& house, const std::string& house_name) {
    io::VineFile file;
    file.vine = vine; // without its code: the file opens when what grew it is gone
    if (auto kept = keep_vine(store, hash_text(vine_hash(vine)), {code.empty() ? std::nullopt : std::optional(code), io::print_vine_file(file)}); !kept) return kept;
    return keep_rule_set(store, hash_text(rules::rule_set_hash(house)), {house_name, rules::judge_version, rules::rule_set_text(house)});
}

Result<std::optional<std::int64_t>> keep_finished(Store& store, const FinishedVine& f, const words::Words& words, const std::string& when_utc) {
    const auto act = Act::begin(store, "answer", when_utc);
    if (!act) return failure(act.error());
    const auto there = is_there_already(store, f);
    if (!there) return failure(there.error());
    if (*there) return std::optional<std::int64_t>();
    if (auto kept = keep_what_it_needs(store, f.vine, f.code, f.house, f.house_name); !kept) return failure(kept.error());
    const auto id = add_event(store, {0, std::string(answer_kind), answer_version, when_utc, f.person, io::print_json_line(answer_body(f, words)), std::nullopt});
    if (!id) return failure(id.error());
    if (auto done = (*act)->commit(); !done) return failure(done.error());
    return std::optional(*id);
}

} // namespace spurwright::records
