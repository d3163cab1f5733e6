// best: the best plans of a vine, exactly, best first; or the best that is left after the acts made so far.
#include <algorithm>

#include "scenarios/commands/choice_text.h"
#include "scenarios/commands/house_rules_option.h"
#include "scenarios/commands/judged.h"
#include "scenarios/commands/quantities.h"
#include "scenarios/commands/verbs.h"
#include "scenarios/words/layout.h"
#include "sim/core/hash.h"
#include "sim/planning/cordon_charges.h"
#include "sim/planning/cordon_top.h"
#include "sim/planning/difficulty.h"
#include "sim/planning/first_pass_plan.h"
#include "sim/planning/open_choices.h"
#include "sim/planning/top_plans.h"
#include "sim/pruning/plan_text.h"
#include "sim/vine/canonical_text.h"

namespace spurwright::commands {
namespace {

constexpr std::int64_t most_plans = 1'000;

// A plan of the list; of a vine in work also what is still to be done.
struct Listed {
    planning::BestPlan plan;
    std::optional<Plan> rest;
};

std::vector<Listed> from_the_start(const planning::Planning& planning, std::size_t wanted) {
    std::vector<Listed> plans;
    for (planning::BestPlan& plan : planning.top(wanted)) plans.push_back({std::move(plan), std::nullopt});
    return plans;
}

// The best from here: of the choices still open, each finished from the vine in hand and judged as one plan.
Result<std::vector<Listed>> from_here(const Vine& before, const Pruned& so_far, const rules::HouseRules& house,
                                      const planning::Planning& planning, const planning::Tables& open, std::size_t wanted) {
    const rules::Offers offers = rules::offers(before, house);
    const rules::Asked asked = rules::asked(offers, house);
    std::vector<Listed> plans;
    for (const planning::Ranked& ranked : planning::top_picks(open, wanted)) {
        const planning::Choice choice = choice_of(planning.tables(), ranked.pick);
        Plan rest = planning::finish(before, so_far.after, house, choice), whole = so_far.plan;
        whole.edits.insert(whole.edits.end(), rest.edits.begin(), rest.edits.end());
        const auto after = prune(before, whole);
        if (!after) return failure(after.error());
        const rules::Judgement judged = rules::judge(before, *after, house, offers, asked);
        plans.push_back({{choice, std::move(whole), judged.points, judged.points_before_caps}, std::move(rest)});
    }
    std::stable_sort(plans.begin(), plans.end(),
                     [](const Listed& one, const Listed& other) { return one.plan.points > other.plan.points; });
    return plans;
}

io::Json side_object(const planning::SideDifficulty& side) {
    io::Json o = io::Json::object();
    o.set("choices", side.choices);
    o.set("good", side.good);
    o.set("tempting", side.tempting);
    o.set("margin", side.margin);
    return o;
}

// Hundredths of the scale, sign and all.
std::string scale_text(std::int32_t thousandths, const words::Words& words) {
    const std::string size = words::number_text(std::abs(thousandths), 3, 2, words.numbers());
    return (thousandths < 0 ? "-" : "") + size;
}

void tell_difficulty(Answer& answer, const planning::Difficulty& difficulty, const words::Words& words) {
    io::Json o = io::Json::object();
    o.set("scale", PerMille{difficulty.scale});
    o.set("plans_as_good", difficulty.good_plans);
    o.set("left", side_object(difficulty.sides[0]));
    o.set("right", side_object(difficulty.sides[1]));
    answer.object.set("difficulty", std::move(o));
    const auto &left = difficulty.sides[0], &right = difficulty.sides[1];
    const Arguments facts{{"scale", scale_text(difficulty.scale, words)},
                          {"left_choices", Count{left.choices}},
                          {"right_choices", Count{right.choices}},
                          {"left_good", Count{left.good}},
                          {"right_good", Count{right.good}},
                          {"left_tempting", Count{left.tempting}},
                          {"right_tempting", Count{right.tempting}},
                          {"left_margin", left.margin},
                          {"right_margin", right.margin}};
    answer.text += words::wrapped(words("best.difficulty", facts));
}

// The best rows; after some acts those still open, each finished from the vine in hand and judged as one plan.
struct RowListed {
    planning::BestCordon plan;
    std::optional<Plan> rest;
};
Result<std::vector<RowListed>> rows_listed(const Vine& before, const std::optional<Pruned>& so_far, const rules::HouseRules& house,
                                           const planning::CordonTables& open, std::size_t wanted) {
    const rules::Offers offers = rules::offers(before, house);
    const rules::Asked asked = rules::asked(offers, house);
    std::vector<RowListed> plans;
    for (const planning::CordonRanked& ranked : planning::top_picks(open, wanted)) {
        planning::CordonChoice choice = planning::choice_of(open, ranked.pick);
        if (!so_far) {
            Plan whole = planning::complete(before, house, choice);
            plans.push_back({{std::move(choice), std::move(whole), {ranked.points}, {ranked.sum}}, std::nullopt});
            continue;
        }
        Plan rest = planning::finish(before, so_far->after, house, choice), whole = so_far->plan;
        whole.edits.insert(whole.edits.end(), rest.edits.begin(), rest.edits.end());
        const auto after = prune(before, whole);
        if (!after) return failure(after.error());
        const rules::Judgement judged = rules::judge(before, *after, house, offers, asked);
        plans.push_back({{std::move(choice), std::move(whole), judged.points, judged.points_before_caps}, std::move(rest)});
    }
    std::stable_sort(plans.begin(), plans.end(),
                     [](const RowListed& one, const RowListed& other) { return one.plan.points > other.plan.points; });
    return plans;
}

Result<Answer> answer_of_cordon(const Asked& asked, const Vine& vine, const rules::HouseRules& house, std::size_t wanted,
                                const words::Words& words) {
    std::optional<Pruned> so_far;
    if (const auto done = asked.value("--after")) {
        auto pruned = prune_by_text(vine, *done);
        if (!pruned) return failure(pruned.error());
        if (auto meant = is_for_this_system(vine, pruned->plan, pruned->after); !meant) return failure(meant.error());
        so_far = *std::move(pruned);
    }
    const planning::CordonTables tables = planning::cordon_tables(vine, house),
                                 open = so_far ? planning::open_rows(tables, vine, so_far->after, house) : tables;
    const auto plans = rows_listed(vine, so_far, house, open, wanted);
    if (!plans) return failure(plans.error());
    const std::uint64_t counted = planning::count_choices(open);
    Answer answer;
    io::Json list = io::Json::list();
    answer.text = words::wrapped(words(so_far ? "best.counted-left" : "best.cordon-counted", {{"n", Count{static_cast<std::int64_t>(counted)}}}));
    for (std::size_t i = 0; i < plans->size(); ++i) {
        const RowListed& row = (*plans)[i];
        io::Json o = plan_object(row.plan);
        if (row.rest) o.set("rest", print_plan(*row.rest));
        list.push(std::move(o));
        answer.text += words::hanging("",
                                      words("best.row", {{"rank", Count{static_cast<std::int64_t>(i) + 1}},
                                                         {"points", row.plan.points},
                                                         {"plan", print_plan(row.rest ? *row.rest : row.plan.plan)}}),
                                      4);
    }
    answer.object.set("hash", hash_text(vine_hash(vine)));
    answer.object.set("after", so_far ? io::Json(print_plan(so_far->plan)) : io::Json());
    answer.object.set("plans_counted", counted);
    answer.object.set("difficulty", io::Json());
    answer.object.set("plans", std::move(list));
    return answer;
}

Result<Answer> answer_of_first_pass(const Vine& vine, const rules::HouseRules& house, const words::Words& words) {
    const Plan plan = planning::first_pass_plan(vine, house);
    const auto judged = judged_first_pass(vine, plan, house);
    if (!judged) return failure(judged.error());
    io::Json list = io::Json::list(), one = io::Json::object();
    one.set("points", judged->judgement.points);
    one.set("plan", print_plan(plan));
    one.set("choice", io::Json());
    list.push(std::move(one));
    Answer answer;
    answer.object.set("hash", hash_text(vine_hash(vine)));
    answer.object.set("after", io::Json());
    answer.object.set("plans_counted", std::int64_t{0});
    answer.object.set("difficulty", io::Json());
    answer.object.set("plans", std::move(list));
    answer.text = words::wrapped(words("best.first-pass"));
    answer.text += words::hanging("", words("best.row", {{"rank", Count{1}}, {"points", judged->judgement.points}, {"plan", print_plan(plan)}}), 4);
    return answer;
}

Result<Answer> answer_best(const Asked& asked, const Surroundings& around) {
    const auto found = find_vine(asked.subject);
    if (!found) return failure(found.error());
    const auto house = house_rules_asked(asked, around, found->vine.system);
    if (!house) return failure(house.error());
    std::int64_t wanted = 1;
    if (const auto top = asked.value("--top")) {
        const auto read = read_whole(*top, "--top", 1, most_plans);
        if (!read) return failure(read.error());
        wanted = *read;
    }
    if (auto fine = can_be_judged(found->vine, asked.subject); !fine) return failure(std::move(fine.error()));
    const auto first_pass = first_pass_asked(asked, found->vine);
    if (!first_pass) return failure(first_pass.error());
    if (*first_pass) return answer_of_first_pass(found->vine, house->rules, around.words);
    if (found->vine.system == System::cordon) return answer_of_cordon(asked, found->vine, house->rules, static_cast<std::size_t>(wanted), around.words);
    const planning::Planning planning(found->vine, house->rules);
    Answer answer;
    std::vector<Listed> plans;
    std::uint64_t counted = planning.counted();
    const auto done = asked.value("--after");
    std::string done_text;
    if (done) {
        const auto so_far = prune_by_text(found->vine, *done);
        if (!so_far) return failure(so_far.error());
        const planning::Tables open = planning::open_choices(planning.tables(), so_far->after);
        auto listed = from_here(found->vine, *so_far, house->rules, planning, open, static_cast<std::size_t>(wanted));
        if (!listed) return failure(listed.error());
        plans = *std::move(listed);
        counted = planning::count_choices(open);
        done_text = print_plan(so_far->plan);
    } else {
        plans = from_the_start(planning, static_cast<std::size_t>(wanted));
    }
    answer.object.set("hash", hash_text(vine_hash(found->vine)));
    answer.object.set("after", done ? io::Json(done_text) : io::Json());
    answer.object.set("plans_counted", counted);
    io::Json list = io::Json::list();
    const Count ways{static_cast<std::int64_t>(counted)};
    answer.text = words::wrapped(plans.empty() ? around.words(done ? "best.none-left" : "best.none")
                                               : around.words(done ? "best.counted-left" : "best.counted", {{"n", ways}}));
    // Of the uncut vine; null where it has no plan or work has begun.
    if (const auto difficulty = done ? std::nullopt : planning::difficulty_of(found->vine, house->rules, planning))
        tell_difficulty(answer, *difficulty, around.words);
    else
        answer.object.set("difficulty", io::Json());
    for (std::size_t i = 0; i < plans.size(); ++i) {
        io::Json o = plan_object(plans[i].plan);
        if (plans[i].rest) o.set("rest", print_plan(*plans[i].rest));
        list.push(std::move(o));
        const std::string row =
            around.words("best.row", {{"rank", Count{static_cast<std::int64_t>(i) + 1}},
                                      {"points", plans[i].plan.points},
                                      {"plan", print_plan(plans[i].rest ? *plans[i].rest : plans[i].plan.plan)}});
        answer.text += words::hanging("", row, 4);
    }
    answer.object.set("plans", std::move(list));
    return answer;
}

} // namespace

Verb best_verb() {
    return {"best", "CODE|FILE", TextKey{"verb.best"}, {{"--top", "N", TextKey{"option.top"}}, {"--after", "TEXT", TextKey{"option.after"}}, pass_option(), rules_option()}, answer_best};
}

} // namespace spurwright::commands
