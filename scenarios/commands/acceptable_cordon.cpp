#include "scenarios/commands/acceptable_cordon.h"

#include <algorithm>

#include "scenarios/commands/choice_text.h"
#include "scenarios/commands/my_plan.h"
#include "scenarios/words/layout.h"
#include "sim/core/hash.h"
#include "sim/planning/cordon_charges.h"
#include "sim/planning/cordon_groups.h"
#include "sim/planning/eye_noise.h"
#include "sim/rules/judge.h"
#include "sim/vine/canonical_text.h"

namespace spurwright::commands {
namespace {

using io::Json;
using planning::CordonGroup;
using planning::CordonTables;

struct MyRow {
    MyPlan plan;
    std::optional<planning::CordonPick> pick; // none: it keeps no choice of the space
};

Result<std::optional<MyRow>> row_asked(const Asked& asked, const Vine& vine, const rules::HouseRules& house,
                                       const CordonTables& tables) {
    const auto pruned = plan_beside(asked, vine);
    if (!pruned) return failure(pruned.error());
    if (!*pruned) return std::optional<MyRow>{};
    const Vine& after = (*pruned)->after;
    const Tenths points = rules::judge(vine, after, house).points;
    const auto facts = rules::measure_plan(vine, after, house, rules::offers(vine, house));
    return std::optional<MyRow>{{{(*pruned)->plan, points, planning::tally(tables, points.count)},
                                 pick_of(tables, planning::kept_row(facts))}};
}

Json axes_json(const CordonTables& tables, const CordonGroup& group, std::size_t side) {
    Json list = Json::list();
    for (const planning::RowPick& spur : group.best.spurs[side]) list.push(name_of(tables.arms[side].canes[spur.row].axis));
    return list;
}

Json group_in_row(const CordonTables& tables, const CordonGroup& group, bool mine) {
    Json o = Json::object(), points = Json::list();
    o.set("left_spurs", axes_json(tables, group, 0));
    o.set("right_spurs", axes_json(tables, group, 1));
    o.set("best", choice_object(planning::choice_of(tables, group.best)));
    o.set("count", group.count);
    points.push(Tenths{group.low});
    points.push(Tenths{group.high});
    o.set("points", std::move(points));
    o.set("mine", mine);
    return o;
}

// "a4x2 a9x2", as the best plan of the set cuts them.
std::string row_cell(const CordonTables& tables, const CordonGroup& group, std::size_t side) {
    std::string cell;
    const auto choice = planning::choice_of(tables, group.best);
    for (const planning::SpurKept& spur : choice[side])
        cell += (cell.empty() ? "" : " ") + name_of(spur.axis) + "x" + std::to_string(spur.buds);
    return cell.empty() ? "-" : cell;
}

std::string row_groups_text(const CordonTables& tables, const std::vector<CordonGroup>& groups,
                            const std::optional<planning::CordonPick>& mine, const words::Words& words) {
    std::string out;
    for (const CordonGroup& group : groups) {
        const std::string high = words::points_text({group.high}, words.numbers());
        std::string points = words::points_text({group.low}, words.numbers());
        if (group.low != group.high) points.append(" - ").append(high);
        out += words::hanging("  ",
                              words("acceptable.row",
                                    {{"points", points},
                                     {"near", row_cell(tables, group, 0)},
                                     {"far", row_cell(tables, group, 1)},
                                     {"n", Count{static_cast<std::int64_t>(group.count)}}}) +
                                  (mine && group.holds(*mine) ? " " + words("acceptable.mine") : ""),
                              4);
    }
    return out;
}

} // namespace

Result<Answer> acceptable_of_cordon(const Asked& asked, const Vine& vine, const io::HouseRulesFile& file,
                                    const words::Words& words) {
    const rules::HouseRules& house = file.rules;
    const CordonTables tables = planning::cordon_tables(vine, house);
    const planning::BestCordon best = planning::best_of_cordon(vine, house);
    const auto mine = row_asked(asked, vine, house, tables);
    if (!mine) return failure(mine.error());
    const auto measured = measured_asked(asked, vine);
    if (!measured) return failure(measured.error());
    const Tenths within = house.acceptable.within, noise = planning::eye_noise(vine, house, best.plan, *measured);
    const Tenths least = best.points - std::max(within, noise);
    const planning::Tally tally = planning::tally(tables, least.count);
    const std::uint64_t good = tally.better + tally.equal;
    auto groups = planning::cordon_groups(tables, least.count, most_groups + 1);
    const bool all = groups.size() <= most_groups;
    groups.resize(std::min(groups.size(), most_groups));
    const std::optional<planning::CordonPick> my_pick = *mine ? (*mine)->pick : std::nullopt;

    Answer answer;
    Json& o = answer.object;
    o.set("hash", hash_text(vine_hash(vine)));
    o.set("rule_set", file.name);
    o.set("rule_set_hash", hash_text(rules::rule_set_hash(house)));
    o.set("best_points", best.points);
    o.set("within", within);
    o.set("noise", noise);
    o.set("least_points", least);
    o.set("clear_by", Json());
    o.set("plans_counted", tally.counted);
    o.set("count", good);
    o.set("share", share_of(good, tally.counted));
    o.set("groups_counted", all ? Json(static_cast<std::int64_t>(groups.size())) : Json());
    Json list = Json::list();
    for (const CordonGroup& group : groups) list.push(group_in_row(tables, group, my_pick && group.holds(*my_pick)));
    o.set("groups", std::move(list));
    o.set("more", all ? Json(0) : Json());
    o.set("mine", *mine ? my_plan_object((*mine)->plan, best.points, least) : Json());

    const auto number = [](std::uint64_t n) { return Count{static_cast<std::int64_t>(n)}; };
    answer.text = words::wrapped(
        words("acceptable.head", {{"best", best.points}, {"least", least}, {"within", within}, {"noise", noise}}));
    answer.text += words::wrapped(words("acceptable.row-count", {{"n", number(good)}, {"counted", number(tally.counted)}}));
    answer.text += "\n";
    if (*mine) answer.text += my_plan_text((*mine)->plan, best.points, least, words);
    answer.text += row_groups_text(tables, groups, my_pick, words);
    if (!all) answer.text += words::wrapped(words("acceptable.row-more", {{"n", number(groups.size())}}));
    return answer;
}

} // namespace spurwright::commands
