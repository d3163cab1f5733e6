// Items about which wood is kept: their keys are what the exact search finds for each place.
#include <algorithm>
#include <functional>

#include "scenarios/quiz/item_maker.h"
#include "scenarios/quiz/losses.h"
#include "scenarios/quiz/set_out.h"
#include "sim/core/random.h"
#include "sim/rules/measure_pieces.h"
#include "sim/vine/vine_query.h"

namespace spurwright::quiz {
namespace {

Option option_of(const Vine& vine, AxisId axis) {
    const TapedPlace place = tape_place(vine, *vine.find(axis));
    return {axis, place, along_row(vine, place), false, {}};
}

// Why a wrong place is wrong: the finding about that piece in the best plan that keeps it.
struct WrongPlace {
    Told why;
    std::optional<rules::RuleName> rule;
};
WrongPlace wrong_place(const Ground& ground, const planning::BestPlan& plan, AxisId axis) {
    const rules::Judgement judgement = judged(ground.vine, plan.plan, ground.house);
    const rules::Finding* most = largest_loss(judgement, name_of(axis));
    if (most) return {told(most), most->rule->name};
    return {{TextKey{"quiz.why.worse"}, {{"points", ground.best.points - plan.points}}}, {}};  // what is lost then lies elsewhere
}

// The best plan that keeps this wood for what is asked about; nothing where it cannot be that.
using BestWith = std::function<std::optional<planning::BestPlan>(AxisId)>;

std::vector<Option> options_of_side(const Ground& ground, Side side, const BestWith& best_with) {
    std::vector<Option> options;
    for (const planning::Piece& piece : ground.planning.tables().pieces) {
        if (piece.side != side || piece.sucker) continue;
        const auto plan = best_with(piece.axis);
        if (!plan) continue;
        Option option = option_of(ground.vine, piece.axis);
        option.points = plan->points;
        option.good = ground.as_good(plan->points);
        options.push_back(option);
    }
    return options;
}

BestWith laid_to(const Ground& ground, Side side) {
    return [&ground, side](AxisId cane) { return ground.planning.best_laying(cane, side); };
}

// One place of a side. It turns on the rule by which the best of the wrong places falls short.
std::optional<Item> one_place(const Ground& ground, const Wanted& wanted, const BestWith& best_with, rules::RuleName otherwise, std::string_view reveal) {
    const auto shown = set_out(options_of_side(ground, wanted.side, best_with), wanted.places, wanted.rank, wanted.seed);
    if (!shown) return std::nullopt;
    Item item;
    item.vine = ground.vine;
    item.side = wanted.side;
    fill_places(item, *shown);
    item.scored = item.margin >= ground.tolerance;
    item.rule = otherwise;
    item.reveal = {TextKey{reveal}, {{"side", TextKey{wanted.side == Side::left ? "side.left" : "side.right"}}}};
    std::optional<Tenths> best_wrong;
    for (const Option& option : *shown) {
        const WrongPlace wrong = option.good ? WrongPlace{} : wrong_place(ground, *best_with(option.axis), option.axis);
        item.why_not.push_back(wrong.why);
        if (option.good || (best_wrong && option.points <= *best_wrong)) continue;
        best_wrong = option.points;
        item.rule = wrong.rule.value_or(otherwise);
    }
    return item;
}

bool never_by_wood(const Ground& ground, const Axis& axis, Told& why) {
    if (age(ground.vine, axis) > 1) {
        why = {TextKey{"quiz.never.older"}, {{"years", Count{age(ground.vine, axis)}}}};
        return true;
    }
    if (on_rootstock(ground.vine, axis)) {
        why = {TextKey{"quiz.never.rootstock"}, {}};
        return true;
    }
    if (ripe_count_nodes(ground.vine, axis, ground.house.habits()).size() < 2 && axis.ripe < Length{150'000}) {
        why = {TextKey{"quiz.never.unripe"}, {}};
        return true;
    }
    const Length thick = thickness(ground.vine, axis);
    if (thick > ground.house.cane_diameter.band.half.high + ground.house.acceptable.see_diameter + ground.house.acceptable.see_diameter) {
        why = {TextKey{"quiz.never.bull"}, {{"measured", thick}}};
        return true;
    }
    return false;
}

// As thick as the house wants it, not only just: nobody's eye can take it for wrong wood.
bool plainly_good(const Ground& ground, AxisId axis) {
    const Length thick = thickness(ground.vine, *ground.vine.find(axis));
    const auto& full = ground.house.cane_diameter.band.full;
    return thick >= full.low && thick <= full.high;
}

}  // namespace

std::optional<Item> pick_one(const Ground& ground, const Wanted& wanted) {
    return one_place(ground, wanted, laid_to(ground, wanted.side), rules::RuleName::origin_distance, "quiz.reveal.pick-one");
}

std::optional<Item> renewal_spur(const Ground& ground, const Wanted& wanted) {
    if (!ground.asked.spur[rules::index_of(wanted.side)]) return std::nullopt;
    const auto kept = [&](AxisId spur) { return ground.planning.best_keeping_spur(spur, wanted.side); };
    return one_place(ground, wanted, kept, rules::RuleName::spur_place, "quiz.reveal.spur");
}

std::optional<Item> pick_two(const Ground& ground, const Wanted& wanted) {
    const auto left = set_out(options_of_side(ground, Side::left, laid_to(ground, Side::left)), wanted.places, wanted.rank, wanted.seed);
    const auto right = set_out(options_of_side(ground, Side::right, laid_to(ground, Side::right)), wanted.places, wanted.places - 1 - wanted.rank, mix(wanted.seed));
    if (!left || !right) return std::nullopt;
    std::vector<Option> shown = *left;
    shown.insert(shown.end(), right->begin(), right->end());
    std::vector<std::pair<Length, std::size_t>> order;  // a base may stand over on the other side
    for (std::size_t i = 0; i < shown.size(); ++i) order.emplace_back(shown[i].along_row, i);
    std::stable_sort(order.begin(), order.end());
    Item item;
    item.vine = ground.vine;
    item.rule = rules::RuleName::cane_count;
    item.reveal = {TextKey{"quiz.reveal.pick-two"}, {}};
    std::optional<Tenths> worst_right, best_wrong;
    for (const auto& [along, row] : order) item.places.push_back(shown[row].place);
    const auto digit_of = [&](std::size_t row) {
        std::uint8_t digit = 1;
        for (std::size_t i = 0; i < order.size(); ++i)
            if (order[i].second == row) digit = static_cast<std::uint8_t>(i + 1);
        return digit;
    };
    for (std::size_t a = 0; a < left->size(); ++a)
        for (std::size_t b = left->size(); b < shown.size(); ++b) {
            const auto plan = ground.planning.best_laying_both(shown[a].axis, shown[b].axis);
            if (!plan) continue;
            if (!ground.as_good(plan->points)) {
                best_wrong = std::max(best_wrong.value_or(plan->points), plan->points);
                continue;
            }
            worst_right = std::min(worst_right.value_or(plan->points), plan->points);
            item.accepted.push_back({std::min(digit_of(a), digit_of(b)), std::max(digit_of(a), digit_of(b))});
        }
    std::stable_sort(item.accepted.begin(), item.accepted.end());
    if (!worst_right || !best_wrong) return std::nullopt;
    item.margin = *worst_right - *best_wrong;
    item.scored = item.margin >= ground.tolerance;
    for (const auto& [along, row] : order) {
        const Side side = row < left->size() ? Side::left : Side::right;
        const auto plan = ground.planning.best_laying(shown[row].axis, side);
        item.why_not.push_back(plan ? wrong_place(ground, *plan, shown[row].axis).why : Told{});
    }
    return item;
}

std::optional<Item> never(const Ground& ground, const Wanted& wanted) {
    std::vector<Option> options;
    Told why;
    std::size_t bad = 0;
    for (const rules::SideOffers& side : ground.offers.sides)
        for (const AxisId cane : side.canes)
            if (plainly_good(ground, cane)) options.push_back(option_of(ground.vine, cane));
    // The one that must not: of those that there are, by the draw.
    std::vector<std::pair<std::uint64_t, AxisId>> wrong;
    for (const Axis& axis : ground.vine.axes) {
        Told reason;
        if (axis.removed || is_trunk(axis) || is_lateral(ground.vine, axis) || axis.state != AxisState::live) continue;
        if (age(ground.vine, axis) > 1 ? !was_laid_last_winter(ground.vine, axis) : !is_cane(ground.vine, axis)) continue;
        if (never_by_wood(ground, axis, reason)) wrong.emplace_back(mix(wanted.seed ^ axis.id.value), axis.id);
    }
    if (wrong.empty()) return std::nullopt;
    const AxisId key = std::min_element(wrong.begin(), wrong.end())->second;
    never_by_wood(ground, *ground.vine.find(key), why);
    Option option = option_of(ground.vine, key);
    option.good = true;  // the right answer here
    options.push_back(option);
    for (const Option& o : options) bad += o.good;
    const auto shown = set_out(std::move(options), wanted.places, wanted.rank, wanted.seed);
    if (!shown || bad != 1) return std::nullopt;
    Item item;
    item.vine = ground.vine;
    fill_places(item, *shown);
    item.rule = age(ground.vine, *ground.vine.find(key)) > 1 ? rules::RuleName::wood_age : rules::RuleName::cane_health;
    item.reveal = why;
    item.why_not.assign(shown->size(), {TextKey{"quiz.never.sound"}, {}});
    return item;
}

}  // namespace spurwright::quiz
