// How many buds a reference vine's last weight asks for, and a vine of about that weight to practise it on. Must not know:
// the store, screens.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>

#include "sim/balance/bud_target.h"
#include "sim/core/error.h"
#include "sim/core/units.h"

namespace spurwright::reference_vines {

struct Block;
struct ReferenceVine;

// One that asks nothing of its block, for whoever keeps it.
inline constexpr std::string_view usual_formula = "20+20"; // vinifera [smith-2023]

// What the number follows from: enough to work it out again and to say where it comes from.
struct VineTarget {
    std::string block, tag;
    bool invented = false;
    int winter = 0;        // of the weight
    Mass prunings{};
    Length spacing{};      // of the block
    std::string formula;   // "20+20"
    bool operator==(const VineTarget&) const = default;
};

// Of the vine's last weight; nothing where it was never weighed.
std::optional<VineTarget> target_of(const Block& block, const ReferenceVine& vine);

// By weight, by space and the smaller, which is the number; whole, and at least 1. Needs a formula that reads.
struct AskedBuds {
    balance::BudTarget buds;
    int number = 0;
    bool small_vine = false;
};
AskedBuds asked_buds(const VineTarget& target);

// The code of a grown vine at the block's spacing (to 0.05 m, within what codes say) with canes enough to choose among:
// of several drawn the one whose prunings, pruned as a good pruner does, weigh nearest to the target's.
[[nodiscard]] Result<std::string> vine_like(const VineTarget& target, const std::function<std::uint64_t()>& fresh_seed);

} // namespace spurwright::reference_vines
