// review: the look back on a plan, as text, as JSON, as one page.
#include "scenarios/commands/choice_text.h"
#include "scenarios/commands/house_rules_option.h"
#include "scenarios/commands/judged.h"
#include "scenarios/commands/judgement_text.h"
#include "scenarios/commands/verbs.h"
#include "scenarios/commands/winter_object.h"
#include "scenarios/io/safe_file.h"
#include "scenarios/review/page.h"
#include "scenarios/words/layout.h"
#include "sim/core/hash.h"
#include "sim/pruning/plan_text.h"
#include "sim/vine/canonical_text.h"

namespace spurwright::commands {
namespace {

using io::Json;
using review::Review;

// The finding of a step that lost most, and the best plan: what a person who goes back there should look at.
Json step_object(const Review& r, rules::Step step, Tenths lost) {
    Json o = Json::object(), findings = Json::list(), better = Json::object();
    o.set("step", word_of(step));
    o.set("lost", lost);
    std::string on;
    Tenths most;
    for (std::size_t i = 0; i < r.mine.findings.size(); ++i) {
        const rules::Finding& f = r.mine.findings[i];
        if (f.step != step || f.lost().count <= 0) continue;
        findings.push(static_cast<std::int64_t>(i));
        if (f.lost() > most) on = f.on;
        most = std::max(most, f.lost());
    }
    better.set("on", on);
    better.set("plan", print_plan(r.best_plan.plan));
    o.set("findings", std::move(findings));
    o.set("better", std::move(better));
    return o;
}

// What an act means next season; null where it was not lived.
Json season_object(const Review& r, std::optional<std::size_t> edit, const words::Words& words) {
    const ahead::ActAhead* lived = ahead::find_act(r.seasons, edit);
    if (!lived) return {};
    Json o = Json::object(), sentences = Json::list();
    o.set("left", winter_object(lived->left));
    o.set("better", winter_object(lived->better));
    for (const std::string& line : review::season_sentences(*lived, words)) sentences.push(line);
    o.set("sentences", std::move(sentences));
    return o;
}

Json charge_object(std::size_t nth, const Review& r, const words::Words& words) {
    const planning::Charge& charge = r.charges.edits[nth];
    Json o = Json::object();
    o.set("edit", static_cast<std::int64_t>(charge.edit) + 1);
    o.set("act", print_edit(r.plan.edits[charge.edit]));
    o.set("on", name_of(charge.on));
    o.set("step", word_of(charge.step));
    o.set("lost", charge.lost);
    o.set("missed", charge.missed ? Json(name_of(charge.missed)) : Json());
    o.set("better", r.row ? choice_object(r.row->better[nth]) : choice_object(charge.better));
    o.set("left", !charge.left ? Json() : r.row ? choice_object(r.row->left[nth]) : choice_object(*charge.left));
    o.set("sentence", review::charge_sentence(charge, r, words));
    o.set("next_season", season_object(r, charge.edit, words));
    return o;
}

Json cap_object(std::size_t nth, const Review& r, const words::Words& words) {
    const planning::ChargedCap& charged = r.charged_caps[nth];
    const bool act = charged.to == planning::LostTo::act;
    Json o = Json::object();
    o.set("cap", r.mine.caps[nth].cap);
    o.set("to", word_of(charged.to));
    o.set("edit", act ? Json(static_cast<std::int64_t>(charged.edit) + 1) : Json());
    o.set("act", act ? Json(print_edit(r.plan.edits[charged.edit])) : Json());
    o.set("taken", charged.taken);
    o.set("sentence", review::cap_charge_sentence(charged, r.plan, r.after, words));
    return o;
}

Json mending_object(const planning::Mending& mending, const Review& r, const words::Words& words) {
    Json o = Json::object();
    o.set("step", word_of(mending.step));
    o.set("lost", mending.lost);
    o.set("kept", r.row ? choice_object(r.row->mine) : choice_object(mending.kept));
    o.set("better", r.row ? choice_object(r.row->meant) : choice_object(mending.better));
    o.set("sentence", review::mending_sentence(mending, words));
    o.set("next_season", season_object(r, std::nullopt, words));
    return o;
}

// Of a cordon its choice is a row.
Json plan_in(const planning::BestPlan& plan, const planning::CordonChoice* row) {
    return row ? plan_object(planning::BestCordon{*row, plan.plan, plan.points, plan.sum}) : plan_object(plan);
}

Json end_object(const planning::WhatIf& end, const words::Words& words) {
    Json o = Json::object();
    o.set("last", name_of(end.last));
    o.set("points", end.points);
    o.set("gained", end.gained);
    o.set("sentence", review::end_sentence(end, words));
    return o;
}

Json tolerance_object(const Review& r) {
    Json o = Json::object();
    o.set("within", r.within);
    o.set("noise", r.noise);
    o.set("least_points", r.least());
    return o;
}

void set_review(Json& o, const Review& r, const words::Words& words) {
    o.set("best", plan_in(r.best_plan, r.row ? &r.row->best : nullptr));
    o.set("tolerance", tolerance_object(r));
    o.set("mine_as_good", r.as_good());
    o.set("as_good_count", r.as_good_count);
    Json plans = Json::list(), steps = Json::list(), charges = Json::list(), hand = Json::list(), twins = Json::list(),
         mistakes = Json::list(), ends = Json::list(), houses = Json::list(), caps = Json::list();
    for (std::size_t i = 0; i < r.plans_as_good.size(); ++i)
        plans.push(plan_in(r.plans_as_good[i], r.row ? &r.row->as_good[i] : nullptr));
    for (std::size_t s = 0; s < r.charges.by_step.size(); ++s)
        if (r.charges.by_step[s].count != 0) steps.push(step_object(r, static_cast<rules::Step>(s), r.charges.by_step[s]));
    for (std::size_t i = 0; i < r.charges.edits.size(); ++i) charges.push(charge_object(i, r, words));
    for (std::size_t i = 0; i < r.charged_caps.size(); ++i) caps.push(cap_object(i, r, words));
    for (const planning::HandLoss& loss : r.charges.hand) {
        Json one = Json::object();
        one.set("finding", static_cast<std::int64_t>(loss.finding));
        one.set("lost", loss.lost);
        hand.push(std::move(one));
    }
    for (const review::TwinPiece& twin : r.twins) {
        Json one = Json::object();
        one.set("side", word_of(twin.side));
        one.set("piece", twin.spur ? "spur" : "cane");
        one.set("mine", cane_name(twin.mine));
        one.set("best", cane_name(twin.best));
        one.set("same", twin.same());
        twins.push(std::move(one));
    }
    for (const rules::Mistake& mistake : r.mistakes) {
        Json one = Json::object();
        one.set("mistake", word_of(mistake.name));
        one.set("rule", rules::key_of(mistake.rule));
        one.set("on", mistake.on ? Json(name_of(mistake.on)) : Json());
        one.set("side", word_of(mistake.side));
        one.set("sentence", review::mistake_sentence(mistake, words));
        mistakes.push(std::move(one));
    }
    for (const planning::WhatIf& end : r.ends) ends.push(end_object(end, words));
    for (const std::string& house : r.other_houses) houses.push(house);
    o.set("as_good", std::move(plans));
    o.set("steps", std::move(steps));
    o.set("charges", std::move(charges));
    o.set("mending", r.charges.mending ? mending_object(*r.charges.mending, r, words) : Json());
    o.set("hand", std::move(hand));
    o.set("caps_lost", r.charges.caps);
    o.set("charged_caps", std::move(caps));
    o.set("mistakes", std::move(mistakes));
    o.set("twins", std::move(twins));
    o.set("ends", std::move(ends));
    o.set("other_houses", std::move(houses));
}

std::string section(std::string_view key, const std::vector<std::string>& lines, const words::Words& words) {
    if (lines.empty()) return {};
    std::string out = "\n" + words(key) + "\n";
    for (const std::string& line : lines) out += words::hanging("  ", line, 4);
    return out;
}

std::string review_text(const Review& r, const words::Words& words) {
    const review::Told told = review::told(r, words);
    std::string out;
    for (const std::string& line : told.head) out += words::wrapped(line);
    out += section("review.caps", told.caps, words);
    if (!told.steps.empty()) {
        out += "\n" + words("review.steps") + "\n";
        for (const auto& step : told.steps) out += "  " + words::padded(step.step, 18) + words::padded_left(step.lost, 6) + "\n";
        for (const review::Told::Act& act : told.acts) {
            out += words::hanging("  ", act.text, 4);
            for (const std::string& line : act.season) out += words::hanging("      ", line, 8);
        }
        if (!told.season_how.empty()) out += words::hanging("  ", told.season_how, 4);
    }
    out += "\n" + words(told.losses.empty() ? "judge.nothing-lost" : "judge.lost") + "\n";
    for (const auto& loss : told.losses) {
        out += words::hanging(words::padded_left(loss.lost, 6) + "  ", loss.sentence + " (" + loss.mend + ")", 8);
        out += words::hanging("        ", loss.source, 10);
    }
    if (!told.folded.empty()) out += words::hanging("        ", told.folded, 8);
    out += "\n" + words("review.twin.head") + "\n";
    words::Table table;
    table.rows.push_back({"", words("review.page.mine"), words("review.page.best")});
    table.right = {false, false, false};
    for (const auto& twin : told.twins)
        table.rows.push_back({"  " + twin.where, twin.mine, twin.same ? words("review.twin.same") : twin.best});
    out += words::table_text(table);
    out += section("review.mistakes", told.mistakes, words) + section("review.ends", told.ends, words) + section("judge.remarks", told.remarks, words);
    return out + "\n" + words::wrapped(words("safety.line"));
}

// The own plan with one cut moved.
struct Moved {
    planning::WhatIf end;
    Plan plan;
};
Result<std::optional<Moved>> move_asked(const Asked& asked, const Vine& vine, const rules::HouseRules& house, const Review& r) {
    const auto text = asked.value("--move");
    if (!text) return std::optional<Moved>{};
    const auto node = read_node(*text);
    if (!node) return failure(refusal(Fault::bad_text, "error.what-if.node", {{"text", *text}}, "--move"));
    auto plan = planning::with_cut_moved(vine, house, r.plan, *node);
    if (!plan) {
        Error error = std::move(plan.error());
        error.where = {"--move", 0, 0, 0};
        return failure(std::move(error));
    }
    const auto after = prune(vine, *plan);
    if (!after) return failure(after.error());
    const Tenths points = rules::judge(vine, *after, house).points;
    return std::optional<Moved>{{{*node, points, points - r.mine.points}, *std::move(plan)}};
}

Json moved_object(const std::optional<Moved>& moved, const words::Words& words) {
    if (!moved) return {};
    Json o = end_object(moved->end, words);
    o.set("plan", print_plan(moved->plan));
    return o;
}

// Nothing where the vine has no plan.
std::optional<Review> review_of(const Vine& vine, const Plan& plan, const io::HouseRulesFile& house, const io::Assets& assets) {
    if (vine.system == System::cordon) return review::review_of_cordon(vine, plan, house);
    const planning::Planning planning(vine, house.rules);
    if (!planning.best()) return std::nullopt;
    return review::review(vine, plan, house, planning, assets);
}

Result<Answer> answer_review(const Asked& asked, const Surroundings& around) {
    const auto found = find_vine(asked.subject);
    if (!found) return failure(found.error());
    const auto house = house_rules_asked(asked, around, found->vine.system);
    if (!house) return failure(house.error());
    if (auto fine = can_be_judged(found->vine, asked.subject); !fine) return failure(std::move(fine.error()));
    const auto pruned = prune_by_text(found->vine, *asked.value("--plan"));
    if (!pruned) return failure(pruned.error());
    if (auto meant = is_for_this_system(found->vine, pruned->plan, pruned->after); !meant) return failure(meant.error());
    const auto looked_back = review_of(found->vine, pruned->plan, *house, around.assets);
    if (!looked_back) return failure(refusal(Fault::not_allowed, "error.vine.no-plan", {}, asked.subject));
    const Review& r = *looked_back;
    const auto moved = move_asked(asked, found->vine, house->rules, r);
    if (!moved) return failure(moved.error());
    const auto html = asked.value("--html");
    if (html) {
        const std::string title = found->code.empty() ? asked.subject : found->code;
        const auto written = io::write_file(*html, review::page(r, found->vine, title, house->name, around.words));
        if (!written) return failure(written.error());
    }
    Answer answer;
    Json& o = answer.object;
    o.set("code", found->code.empty() ? Json() : Json(found->code));
    o.set("hash", hash_text(vine_hash(found->vine)));
    o.set("plan", print_plan(r.plan));
    o.set("best_points", r.best_plan.points);
    o.set("plans_counted", r.tally.counted);
    o.set("plans_better", r.tally.better);
    o.set("plans_equal", r.tally.equal);
    set_judgement(o, r.mine, around.words);
    set_review(o, r, around.words);
    o.set("moved", moved_object(*moved, around.words));
    o.set("html", html ? Json(*html) : Json());
    o.set("rule_set", house->name);
    o.set("rule_set_hash", hash_text(rules::rule_set_hash(house->rules)));
    o.set("judge_version", rules::judge_version);
    o.set("language", around.words.language());
    answer.text = review_text(r, around.words);
    if (*moved) answer.text += "\n" + words::wrapped(review::end_sentence((*moved)->end, around.words));
    return answer;
}

} // namespace

Verb review_verb() {
    return {"review",
            "CODE|FILE",
            TextKey{"verb.review"},
            {{"--plan", "TEXT", TextKey{"option.plan"}, true},
             {"--html", "FILE", TextKey{"option.html"}},
             {"--move", "NODE", TextKey{"option.move"}},
             rules_option()},
            answer_review};
}

} // namespace spurwright::commands
