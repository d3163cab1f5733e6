// Makes items: draws vines until one carries the question with a key that is proved, and one of the wrong places tempts.
#pragma once

#include <functional>
#include <optional>
#include <set>

#include "scenarios/quiz/ground.h"
#include "scenarios/quiz/item.h"

namespace spurwright::quiz {

// Hashes of vines that were served before: no item shows one of them.
using Served = std::set<std::uint64_t>;

// Nothing only where most_draws vines in a row did not carry it (a house that asks for the impossible).
std::optional<Item> make_item(Kind kind, std::uint64_t seed, const rules::HouseRules& house, const Served& served = {});

// `count` items of these kinds in turn, in drawn order; each vine once. Fewer where some could not be made.
// `made` hears how many there are so far.
std::vector<Item> make_items(const std::vector<Kind>& kinds, std::size_t count, std::uint64_t seed, const rules::HouseRules& house,
                             Served& served, const std::function<void(std::size_t)>& made = {});

inline constexpr int most_draws = 400;

// One try each on one vine. `rank`: which digit is to be right, from 0, of `places`.
struct Wanted {
    std::size_t places = 4, rank = 0;
    Side side{};
    std::uint64_t seed = 0;
};
std::optional<Item> pick_one(const Ground& ground, const Wanted& wanted);
std::optional<Item> pick_two(const Ground& ground, const Wanted& wanted);
std::optional<Item> never(const Ground& ground, const Wanted& wanted);
std::optional<Item> renewal_spur(const Ground& ground, const Wanted& wanted);
std::optional<Item> where_to_cut(const Ground& ground, const Wanted& wanted);
std::optional<Item> count_buds_of_one(const Ground& ground, const Wanted& wanted);
std::optional<Item> wood_age(const Ground& ground, const Wanted& wanted);
std::optional<Item> which_rule(const Ground& ground, const Wanted& wanted);
std::optional<Item> find_the_fault(const Ground& ground, const Wanted& wanted);
// Of vines that need not be whole: grown by its own draw.
std::optional<Item> which_job(std::uint64_t seed, const rules::HouseRules& house);

}  // namespace spurwright::quiz
