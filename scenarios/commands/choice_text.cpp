#include "scenarios/commands/choice_text.h"

#include "sim/pruning/plan_text.h"

namespace spurwright::commands {

io::Json cane_name(NodeId cane) { return cane ? io::Json(name_of(cane)) : io::Json(); }

io::Json spur_name(AxisId spur, int buds) {
    return spur ? io::Json(name_of(spur) + "x" + std::to_string(buds)) : io::Json();
}

io::Json choice_object(const planning::Choice& choice) {
    io::Json o = io::Json::object();
    o.set("left_cane", cane_name(choice.left_cane));
    o.set("right_cane", cane_name(choice.right_cane));
    o.set("left_spur", spur_name(choice.left_spur, choice.left_buds));
    o.set("right_spur", spur_name(choice.right_spur, choice.right_buds));
    return o;
}

io::Json plan_object(const planning::BestPlan& plan) {
    io::Json o = io::Json::object();
    o.set("points", plan.points);
    o.set("plan", print_plan(plan.plan));
    o.set("choice", choice_object(plan.choice));
    return o;
}

io::Json choice_object(const planning::CordonChoice& choice) {
    io::Json o = io::Json::object();
    for (const Side side : both_sides) {
        io::Json spurs = io::Json::list();
        for (const planning::SpurKept& spur : choice[planning::at(side)]) spurs.push(spur_name(spur.axis, spur.buds));
        o.set(side == Side::left ? "left_spurs" : "right_spurs", std::move(spurs));
    }
    return o;
}

io::Json plan_object(const planning::BestCordon& plan) {
    io::Json o = io::Json::object();
    o.set("points", plan.points);
    o.set("plan", print_plan(plan.plan));
    o.set("choice", choice_object(plan.choice));
    return o;
}

std::string cane_words(NodeId cane, const words::Words& words) {
    if (!cane) return words("choice.no-cane");
    return words("choice.cane", {{"part", axis_of(cane)}, {"node", Count{index_of(cane)}}});
}

std::string spur_words(AxisId spur, int buds, const words::Words& words) {
    if (!spur) return words("choice.no-spur");
    return words("choice.spur", {{"part", spur}, {"n", Count{buds}}});
}

} // namespace spurwright::commands
