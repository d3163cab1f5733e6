// What the hand holds and what it points at: names of parts and a place along the wood, never a place on the screen.
// Must not know: rules, pictures, screens.
#pragma once

#include <array>
#include <string_view>

#include "sim/pruning/plan.h"

namespace spurwright::practice {

// The row of hand tools. `none`: the hand points and chooses.
enum class HandTool : unsigned char { none, tape, shears, loppers, saw, hands, ties, calliper };
constexpr auto words_of(HandTool) {
    return std::to_array<std::string_view>({"none", "tape", "shears", "loppers", "saw", "hands", "ties", "calliper"});
}
inline constexpr std::size_t hand_tool_count = 8;

constexpr bool cuts(HandTool tool) { return tool == HandTool::shears || tool == HandTool::loppers || tool == HandTool::saw; }
constexpr Tool tool_of(HandTool tool) { return tool == HandTool::saw ? Tool::saw : tool == HandTool::loppers ? Tool::loppers : Tool::shears; }

// A place on the vine: an axis, its node there, and how far past that node. No axis: nothing is pointed at.
struct Spot {
    AxisId axis;
    NodeId node;         // none: the axis as a whole
    Length beyond{-1};   // below 0: no place was picked, the default counts
    explicit operator bool() const { return bool(axis); }
    bool operator==(const Spot&) const = default;
};

// A cane in the hand on its way to the wire: nothing of it is done until it is laid.
struct Pull {
    AxisId cane;     // none: none is held
    NodeId node;     // where the hand holds it
    Side side{};
    PerMille share;  // of the way to the wire
    explicit operator bool() const { return bool(cane); }
    bool operator==(const Pull&) const = default;
};

}  // namespace spurwright::practice
