// best: the best plans of a vine, exactly, best first.
#include "scenarios/commands/house_rules_option.h"
#include "scenarios/commands/judged.h"
#include "scenarios/commands/quantities.h"
#include "scenarios/commands/verbs.h"
#include "scenarios/words/layout.h"
#include "sim/core/hash.h"
#include "sim/pruning/plan_text.h"
#include "sim/vine/canonical_text.h"

namespace spurwright::commands {
namespace {

constexpr std::int64_t most_plans = 1'000;

io::Json spur_text(AxisId spur, int buds) {
    return spur ? io::Json(name_of(spur) + "x" + std::to_string(buds)) : io::Json();
}
io::Json cane_text(NodeId cane) { return cane ? io::Json(name_of(cane)) : io::Json(); }

io::Json plan_object(const planning::BestPlan& best) {
    io::Json choice = io::Json::object();
    choice.set("left_cane", cane_text(best.choice.left_cane));
    choice.set("right_cane", cane_text(best.choice.right_cane));
    choice.set("left_spur", spur_text(best.choice.left_spur, best.choice.left_buds));
    choice.set("right_spur", spur_text(best.choice.right_spur, best.choice.right_buds));
    io::Json o = io::Json::object();
    o.set("points", best.points);
    o.set("plan", print_plan(best.plan));
    o.set("choice", std::move(choice));
    return o;
}

Result<Answer> answer_best(const Asked& asked, const Surroundings& around) {
    const auto found = find_vine(asked.subject);
    if (!found) return failure(found.error());
    const auto house = house_rules_asked(asked, around);
    if (!house) return failure(house.error());
    std::int64_t wanted = 1;
    if (const auto top = asked.value("--top")) {
        const auto read = read_whole(*top, "--top", 1, most_plans);
        if (!read) return failure(read.error());
        wanted = *read;
    }
    if (auto fine = can_be_judged(found->vine, asked.subject); !fine) return failure(std::move(fine.error()));
    const planning::Planning planning(found->vine, house->rules);
    const auto plans = planning.top(static_cast<std::size_t>(wanted));
    const std::uint64_t counted = planning.counted();
    Answer answer;
    answer.object.set("hash", hash_text(vine_hash(found->vine)));
    answer.object.set("plans_counted", counted);
    io::Json list = io::Json::list();
    answer.text = words::wrapped(
        plans.empty() ? around.words("best.none")
                      : around.words("best.counted", {{"n", Count{static_cast<std::int64_t>(counted)}}}));
    for (std::size_t i = 0; i < plans.size(); ++i) {
        list.push(plan_object(plans[i]));
        const std::string row = around.words("best.row", {{"rank", Count{static_cast<std::int64_t>(i) + 1}},
                                                          {"points", plans[i].points},
                                                          {"plan", print_plan(plans[i].plan)}});
        answer.text += words::hanging("", row, 4);
    }
    answer.object.set("plans", std::move(list));
    return answer;
}

} // namespace

Verb best_verb() {
    return {"best", "CODE|FILE", TextKey{"verb.best"}, {{"--top", "N", TextKey{"option.top"}}, rules_option()}, answer_best};
}

} // namespace spurwright::commands
