// acceptable: the plans as good as the best of a vine, counted exactly and grouped; and whether a plan is one of them.
#include "scenarios/commands/acceptable_cordon.h"
#include "scenarios/commands/choice_text.h"
#include "scenarios/commands/house_rules_option.h"
#include "scenarios/commands/judged.h"
#include "scenarios/commands/my_plan.h"
#include "scenarios/commands/verbs.h"
#include "scenarios/words/layout.h"
#include "sim/core/hash.h"
#include "sim/planning/eye_noise.h"
#include "sim/planning/open_choices.h"
#include "sim/pruning/plan_text.h"
#include "sim/vine/canonical_text.h"

namespace spurwright::commands {
namespace {

using io::Json;
using planning::PlanGroup;

// What stands at a row of the tables.
struct Rows {
    const planning::VineTables& tables;

    AxisId axis(std::uint16_t row) const { return row == planning::no_piece ? AxisId{} : tables.pieces[row].axis; }
    NodeId cane(std::uint16_t row, std::uint16_t cut) const {
        return row == planning::no_piece ? NodeId{} : node_id(axis(row), tables.pieces[row].cut_nodes[cut]);
    }
    Json axis_json(std::uint16_t row) const { return axis(row) ? Json(name_of(axis(row))) : Json(); }
    // [first node, last node] of the cuts of a side; null where no cane lies there.
    Json cuts_json(std::uint16_t row, PlanGroup::Span span) const {
        if (row == planning::no_piece) return {};
        return pair(Json(std::int64_t{index_of(cane(row, span.low))}), Json(std::int64_t{index_of(cane(row, span.high))}));
    }
    static Json buds_json(std::uint16_t row, PlanGroup::Span span) {
        return row == planning::no_piece ? Json() : pair(Json(std::int64_t{span.low}), Json(std::int64_t{span.high}));
    }
    static Json pair(Json low, Json high) {
        Json list = Json::list();
        list.push(std::move(low));
        list.push(std::move(high));
        return list;
    }
};

Json group_object(const PlanGroup& group, const Rows& rows, bool mine) {
    Json o = Json::object(), cuts = Json::list(), buds = Json::list();
    o.set("left_cane", rows.axis_json(group.left_cane));
    o.set("right_cane", rows.axis_json(group.right_cane));
    o.set("left_spur", rows.axis_json(group.left_spur));
    o.set("right_spur", rows.axis_json(group.right_spur));
    cuts.push(rows.cuts_json(group.left_cane, group.cuts[0]));
    cuts.push(rows.cuts_json(group.right_cane, group.cuts[1]));
    buds.push(Rows::buds_json(group.left_spur, group.buds[0]));
    buds.push(Rows::buds_json(group.right_spur, group.buds[1]));
    o.set("cut_nodes", std::move(cuts));
    o.set("spur_buds", std::move(buds));
    o.set("count", group.count);
    o.set("points", Rows::pair(Json(Tenths{group.low}), Json(Tenths{group.high})));
    o.set("mine", mine);
    return o;
}

// "7", "6-8", "-".
std::string span_text(std::optional<std::pair<std::uint32_t, std::uint32_t>> span) {
    if (!span) return "";
    return std::to_string(span->first) + (span->first == span->second ? "" : "-" + std::to_string(span->second));
}

std::string cane_cell(std::uint16_t row, PlanGroup::Span span, const Rows& rows) {
    if (row == planning::no_piece) return "-";
    return name_of(rows.axis(row)) + "." + span_text(std::pair{index_of(rows.cane(row, span.low)), index_of(rows.cane(row, span.high))});
}
std::string spur_cell(std::uint16_t row, PlanGroup::Span span, const Rows& rows) {
    if (row == planning::no_piece) return "-";
    return name_of(rows.axis(row)) + "x" + span_text(std::pair<std::uint32_t, std::uint32_t>{span.low, span.high});
}

std::string groups_text(const planning::AsGood& good, const Rows& rows, const std::optional<planning::Pick>& mine,
                        const words::Words& words) {
    words::Table table;
    table.rows.push_back({words("acceptable.column.points"), words("acceptable.column.near-cane"),
                          words("acceptable.column.far-cane"), words("acceptable.column.near-spur"),
                          words("acceptable.column.far-spur"), words("acceptable.column.ways"), ""});
    table.right = {true, false, false, false, false, true, false};
    for (const PlanGroup& group : good.shown) {
        const std::string high = words::points_text({group.high}, words.numbers());
        std::string points = words::points_text({group.low}, words.numbers());
        if (group.low != group.high) points.append(" - ").append(high);
        table.rows.push_back({points, cane_cell(group.left_cane, group.cuts[0], rows),
                              cane_cell(group.right_cane, group.cuts[1], rows),
                              spur_cell(group.left_spur, group.buds[0], rows),
                              spur_cell(group.right_spur, group.buds[1], rows),
                              words.measure(Count{static_cast<std::int64_t>(group.count)}),
                              mine && group.holds(*mine) ? words("acceptable.mine") : ""});
    }
    return words::table_text(table);
}

struct Mine {
    MyPlan plan;
    std::optional<planning::Pick> pick; // none: it keeps no choice of the space
};

Result<std::optional<Mine>> plan_asked(const Asked& asked, const Vine& vine, const rules::HouseRules& house,
                                       const planning::Planning& planning) {
    auto pruned = plan_beside(asked, vine);
    if (!pruned) return failure(std::move(pruned.error()));
    if (!*pruned) return std::optional<Mine>{};
    const Vine& after = (*pruned)->after;
    const rules::Offers offers = rules::offers(vine, house);
    const auto kept = planning::kept_choice(vine, rules::measure_plan(vine, after, house, offers), house);
    const Tenths points = rules::judge(vine, after, house).points;
    return std::optional<Mine>{{{(*pruned)->plan, points, planning.count(points)}, pick_of(planning.tables(), kept)}};
}

Result<Answer> answer_acceptable(const Asked& asked, const Surroundings& around) {
    const auto found = find_vine(asked.subject);
    if (!found) return failure(found.error());
    const auto house = house_rules_asked(asked, around, found->vine.system);
    if (!house) return failure(house.error());
    if (auto fine = can_be_judged(found->vine, asked.subject); !fine) return failure(std::move(fine.error()));
    if (found->vine.system == System::cordon) return acceptable_of_cordon(asked, found->vine, *house, around.words);
    const planning::Planning planning(found->vine, house->rules);
    const auto best = planning.best();
    if (!best)
        return failure(refusal(Fault::not_allowed, "error.vine.no-plan", {}, asked.subject));
    const auto mine = plan_asked(asked, found->vine, house->rules, planning);
    if (!mine) return failure(mine.error());
    const auto measured = measured_asked(asked, found->vine);
    if (!measured) return failure(measured.error());
    const Tenths within = house->rules.acceptable.within;
    const Tenths noise = planning::eye_noise(found->vine, house->rules, best->plan, *measured);
    const Tenths least = best->points - std::max(within, noise);
    const planning::AsGood good = planning.as_good(least, most_groups);
    const auto other = planning.best_with_other_canes(best->choice);
    const std::uint64_t counted = planning.counted();
    const Rows rows{planning.tables()};
    const std::optional<planning::Pick> my_pick = *mine ? (*mine)->pick : std::nullopt;

    Answer answer;
    Json& o = answer.object;
    o.set("hash", hash_text(vine_hash(found->vine)));
    o.set("rule_set", house->name);
    o.set("rule_set_hash", hash_text(rules::rule_set_hash(house->rules)));
    o.set("best_points", best->points);
    o.set("within", within);
    o.set("noise", noise);
    o.set("least_points", least);
    o.set("clear_by", other ? Json(best->points - other->points) : Json());
    o.set("plans_counted", counted);
    o.set("count", good.count);
    o.set("share", share_of(good.count, counted));
    o.set("groups_counted", good.groups);
    Json groups = Json::list();
    for (const PlanGroup& group : good.shown) groups.push(group_object(group, rows, my_pick && group.holds(*my_pick)));
    o.set("groups", std::move(groups));
    o.set("more", good.groups - good.shown.size());
    o.set("mine", *mine ? my_plan_object((*mine)->plan, best->points, least) : Json());

    const words::Words& words = around.words;
    const auto number = [](std::uint64_t n) { return Count{static_cast<std::int64_t>(n)}; };
    answer.text = words::wrapped(words("acceptable.head", {{"best", best->points},
                                                           {"least", least},
                                                           {"within", within},
                                                           {"noise", noise}}));
    answer.text += words::wrapped(words("acceptable.count", {{"count", number(good.count)},
                                                             {"counted", number(counted)},
                                                             {"n", number(good.groups)}}));
    if (other)
        answer.text += words::wrapped(
            words("acceptable.clear-by", {{"lead", best->points - other->points}, {"other", other->points}}));
    answer.text += "\n";
    if (*mine) answer.text += my_plan_text((*mine)->plan, best->points, least, words);
    answer.text += groups_text(good, rows, my_pick, words);
    if (good.groups > good.shown.size())
        answer.text += words("acceptable.more", {{"n", number(good.groups - good.shown.size())}}) + "\n";
    return answer;
}

} // namespace

Verb acceptable_verb() {
    return {"acceptable",
            "CODE|FILE",
            TextKey{"verb.acceptable"},
            {{"--plan", "TEXT", TextKey{"option.plan"}}, {"--measured", "PARTS", TextKey{"option.measured"}}, rules_option()},
            answer_acceptable};
}

} // namespace spurwright::commands
