#include "scenarios/records/weighing_record.h"

#include "scenarios/commands/formula_option.h"
#include "scenarios/io/json_fields.h"
#include "scenarios/records/act.h"
#include "scenarios/records/answer.h"
#include "sim/core/hash.h"
#include "sim/pruning/plan_text.h"
#include "sim/vine/canonical_text.h"

namespace spurwright::records {
namespace {

using io::Json;
using weighing::Exercise;
using weighing::NextBuds;

constexpr std::size_t longest_deed = 60, longest_typed = 200, longest_came = 2'000;

std::string grams(Mass mass) { return Json(mass).text; }

// "written 740 g, bundle 752.3 g, within; ends -12.1 g; next 33 30 33"
std::string what_came(const Exercise& exercise, const NextBuds* next) {
    const weighing::Verdict& verdict = *exercise.verdict();
    std::string came = "written " + grams(verdict.written) + " g, bundle " + grams(verdict.truly.mass) + " g, " + (verdict.within ? "within" : "off") + (verdict.for_the_trend ? "" : ", not for the trend");
    for (const weighing::FoundSlip& slip : verdict.slips) came += "; " + std::string(word_of(slip.slip)) + " " + grams(slip.by) + " g";
    if (!next || !next->verdict()) return came;
    const balance::BudTarget& buds = next->verdict()->of_written;
    came += "; next " + std::to_string(balance::whole_buds(buds.by_weight)) + " " + std::to_string(balance::whole_buds(buds.by_space.house)) + " " + std::to_string(balance::whole_buds(buds.smaller));
    for (const weighing::FoundNextSlip& slip : next->verdict()->slips) came += ", " + std::string(word_of(slip.slip));
    return came;
}

std::string deed_text(const weighing::Act& act) { return std::string(word_of(act.deed)) + " " + std::to_string(act.piece); }

std::optional<weighing::Act> read_deed(const std::string& text) {
    const auto blank = text.find(' ');
    if (blank == std::string::npos) return std::nullopt;
    const auto deed = read_word<weighing::Deed>(text.substr(0, blank));
    std::size_t piece = 0;
    for (std::size_t i = blank + 1; i < text.size(); ++i) {
        if (text[i] < '0' || text[i] > '9' || piece > 100'000) return std::nullopt;
        piece = 10 * piece + static_cast<std::size_t>(text[i] - '0');
    }
    if (!deed || blank + 1 == text.size()) return std::nullopt;
    return weighing::Act{*deed, piece};
}

Json next_object(const NextBuds& next) {
    Json o = Json::object(), log = Json::list();
    o.set("formula", next.task().formula);
    o.set("spacing_um", std::int64_t{next.task().spacing.count});
    for (std::size_t i = 0; i < next.task().log.size(); ++i) {
        const weighing::LoggedWinter& one = next.task().log[i];
        Json winter = Json::object();
        winter.set("winter", one.winter);
        winter.set("prunings_mg", std::int64_t{one.prunings.count});
        winter.set("wet", one.wet);
        winter.set("left_out", next.left_out(i));
        log.push(std::move(winter));
    }
    o.set("log", std::move(log));
    o.set("by_weight", next.said().by_weight);
    o.set("by_space", next.said().by_space);
    o.set("keep", next.said().keep);
    return o;
}

KeptNext read_next(io::Refusal& refusal, const Json& object) {
    io::Fields fields(refusal, object);
    KeptNext kept;
    kept.task.formula = fields.text("formula", longest_deed);
    const auto formula = commands::read_formula(kept.task.formula);
    if (formula) kept.task.numbers = *formula;
    else if (!refusal.any()) refusal.add(formula.error());
    kept.task.spacing = Length{static_cast<std::int32_t>(fields.whole("spacing_um", 1, 100'000'000))};
    for (const Json& one : fields.list("log", true)) {
        io::Fields winter(refusal, one);
        weighing::LoggedWinter logged;
        logged.winter = static_cast<int>(winter.whole("winter", 1, 9'999));
        logged.prunings = Mass{static_cast<std::int32_t>(winter.whole("prunings_mg", 0, 1'000'000'000))};
        logged.wet = winter.yes("wet");
        kept.left_out.push_back(winter.yes("left_out"));
        winter.end();
        kept.task.log.push_back(logged);
    }
    kept.said = {fields.whole("by_weight", 1, 1'000), fields.whole("by_space", 1, 1'000), fields.whole("keep", 1, 1'000)};
    fields.end();
    return kept;
}

Json weighing_body(const WeighedVine& weighed, const Exercise& exercise, const NextBuds* next) {
    const weighing::Verdict& verdict = *exercise.verdict();
    Json o = Json::object(), deeds = Json::list(), slips = Json::list();
    o.set("vine_hash", hash_text(vine_hash(weighed.vine)));
    o.set("vine_code", weighed.code.empty() ? Json() : Json(weighed.code));
    o.set("plan", print_plan(weighed.plan));
    o.set("rule_set_hash", hash_text(rules::rule_set_hash(weighed.house)));
    o.set("rule_set_name", weighed.house_name);
    o.set("judge_version", rules::judge_version);
    o.set("program_version", program_version());
    for (const weighing::Act& act : exercise.deeds()) deeds.push(deed_text(act));
    o.set("deeds", std::move(deeds));
    o.set("typed", exercise.written()->typed);
    o.set("noted_wet", exercise.written()->noted_wet);
    o.set("written_g", verdict.written);
    o.set("bundle_g", verdict.truly.mass);
    o.set("within", verdict.within);
    for (const weighing::FoundSlip& slip : verdict.slips) slips.push(std::string(word_of(slip.slip)));
    o.set("slips", std::move(slips));
    const bool said = next && next->verdict();
    o.set("next_buds", said ? next_object(*next) : Json());
    o.set("came", what_came(exercise, next));
    return o;
}

} // namespace

Result<std::int64_t> keep_weighing(Store& store, const WeighedVine& weighed, const Exercise& exercise, const NextBuds* next, std::optional<std::int64_t> person, std::optional<std::int64_t> corrects, const std::string& when_utc) {
    const auto act = Act::begin(store, "weighing", when_utc);
    if (!act) return failure(act.error());
    if (auto kept = keep_what_it_needs(store, weighed.vine, weighed.code, weighed.house, weighed.house_name); !kept) return failure(kept.error());
    auto id = add_event(store, {0, std::string(weighing_kind), weighing_version, when_utc, person, io::print_json_line(weighing_body(weighed, exercise, next)), corrects});
    if (!id) return id;
    if (auto done = (*act)->commit(); !done) return failure(done.error());
    return id;
}

std::optional<KeptWeighing> read_kept_weighing(const std::string& body) {
    const auto json = io::read_json(body, "event");
    if (!json) return std::nullopt;
    io::Refusal refusal("event");
    io::Fields fields(refusal, *json);
    KeptWeighing kept;
    kept.vine_hash = fields.text("vine_hash", 16);
    kept.rule_set_hash = fields.text("rule_set_hash", 16);
    kept.plan = fields.text("plan", longest_plan_text);
    kept.judge_version = static_cast<int>(fields.whole("judge_version", 1, 1'000'000));
    for (const Json& one : fields.list("deeds", true)) {
        const auto deed = read_deed(fields.text_of(one, "deeds", longest_deed));
        if (!deed) return std::nullopt;
        kept.deeds.push_back(*deed);
    }
    kept.typed = fields.text("typed", longest_typed);
    kept.noted_wet = fields.yes("noted_wet");
    if (!fields.required("next_buds").is(Json::Kind::null)) kept.next = read_next(refusal, fields.required("next_buds"));
    kept.came = fields.text("came", longest_came);
    if (refusal.any()) return std::nullopt;
    return kept;
}

std::optional<std::string> weighed_again(const Vine& vine, const Plan& plan, const rules::HouseRules& house, const KeptWeighing& kept) {
    const auto pruned = prune(vine, plan);
    if (!pruned) return std::nullopt;
    Exercise exercise(weighing::pieces_of(vine, *pruned, house), vine_hash(vine), house);
    for (const weighing::Act& act : kept.deeds)
        if (!exercise.act(act)) return std::nullopt;
    if (!exercise.write(kept.typed, kept.noted_wet)) return std::nullopt;
    if (!kept.next) return what_came(exercise, nullptr);
    NextBuds next(kept.next->task, *exercise.verdict());
    for (std::size_t i = 0; i < kept.next->left_out.size(); ++i) next.leave_out(i, kept.next->left_out[i] != 0);
    next.say(kept.next->said);
    return what_came(exercise, &next);
}

} // namespace spurwright::records
