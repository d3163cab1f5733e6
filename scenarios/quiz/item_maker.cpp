#include "scenarios/quiz/item_maker.h"

#include <algorithm>

#include "scenarios/quiz/set_out.h"
#include "sim/core/random.h"
#include "sim/vine/canonical_text.h"

namespace spurwright::quiz {
namespace {

enum class Drawn : std::uint32_t { rank = 1, side, vine, order, own };
std::uint64_t item_draw(std::uint64_t seed, Drawn what, std::uint32_t part = 0) { return draw(seed, static_cast<std::uint32_t>(what), part); }

std::size_t places_of(Kind kind) { return kind == Kind::pick_two ? 3 : 4; }

std::optional<Item> tried(Kind kind, const Ground& ground, const Wanted& wanted) {
    switch (kind) {
    case Kind::pick_two: return pick_two(ground, wanted);
    case Kind::pick_one: return pick_one(ground, wanted);
    case Kind::never: return never(ground, wanted);
    case Kind::spur: return renewal_spur(ground, wanted);
    case Kind::where_to_cut: return where_to_cut(ground, wanted);
    case Kind::count: return count_buds_of_one(ground, wanted);
    case Kind::wood_age: return wood_age(ground, wanted);
    case Kind::which_rule: return which_rule(ground, wanted);
    case Kind::find_the_fault: return find_the_fault(ground, wanted);
    case Kind::which_job: break;
    }
    return std::nullopt;
}

std::optional<Item> one_try(Kind kind, std::uint64_t vine_seed, const Wanted& wanted, const rules::HouseRules& house) {
    if (kind == Kind::which_job) return which_job(vine_seed, house);
    const auto ground = ground_of(vine_seed, house);
    if (!ground) return std::nullopt;
    auto item = tried(kind, *ground, wanted);
    if (!item) return item;
    item->code = ground->code;
    if (kind == Kind::where_to_cut) return item;  // all places on one cane
    call_by_digits(*item, item->reveal);
    for (Told& why : item->why_not) call_by_digits(*item, why);
    return item;
}

bool fit_to_ask(const Item& item) { return !item.accepted.empty() && std::all_of(item.accepted.begin(), item.accepted.end(), [&](const Answer& a) { return item.takes(a); }); }

}  // namespace

std::optional<Item> make_item(Kind kind, std::uint64_t seed, const rules::HouseRules& house, const Served& served) {
    Wanted wanted{places_of(kind), 0, chance(item_draw(seed, Drawn::side), 0.5) ? Side::left : Side::right, seed};
    wanted.rank = static_cast<std::size_t>(between(item_draw(seed, Drawn::rank), 0, static_cast<std::int32_t>(wanted.places) - 1));
    std::optional<Item> talk;  // the first that is only good to talk about
    for (std::uint32_t i = 0; i < most_draws; ++i) {
        auto item = one_try(kind, item_draw(seed, Drawn::vine, i), wanted, house);
        if (!item) continue;
        item->kind = kind;
        item->seed = seed;
        if (!fit_to_ask(*item) || served.count(vine_hash(item->vine)) > 0) continue;
        if (item->scored) return item;
        if (!talk) talk = std::move(item);
    }
    return talk;
}

std::vector<Item> make_items(const std::vector<Kind>& kinds, std::size_t count, std::uint64_t seed, const rules::HouseRules& house, Served& served,
                             const std::function<void(std::size_t)>& made) {
    std::vector<std::pair<std::uint64_t, Kind>> order;
    for (std::size_t i = 0; i < count && !kinds.empty(); ++i)
        order.emplace_back(item_draw(seed, Drawn::order, static_cast<std::uint32_t>(i)), kinds[i % kinds.size()]);
    std::stable_sort(order.begin(), order.end());
    std::vector<Item> items;
    for (std::size_t i = 0; i < order.size(); ++i) {
        auto item = make_item(order[i].second, item_draw(seed, Drawn::own, static_cast<std::uint32_t>(i)), house, served);
        if (!item) continue;
        served.insert(vine_hash(item->vine));
        items.push_back(*std::move(item));
        if (made) made(items.size());
    }
    return items;
}

}  // namespace spurwright::quiz
