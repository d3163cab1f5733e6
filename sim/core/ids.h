// Names of the parts of one vine, for its whole life: they survive cuts and saving and are never reused, so they
// need no generation count. Not an index: look the row up with Vine::find().
#pragma once

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace spurwright {

template <class Tag>
struct Id {
    std::uint32_t value = 0;  // 0 is "none", so a zeroed record refers to nothing
    constexpr explicit operator bool() const { return value != 0; }
    constexpr auto operator<=>(const Id&) const = default;
};

using AxisId = Id<struct AxisTag>;    // a12: one shoot of one season, whatever it became
using NodeId = Id<struct NodeTag>;    // a12.3: node 3 of axis 12 and the joint below it; 0 is the crown
using BudId = Id<struct BudTag>;      // a12.3/0: a bud of that node
using WoundId = Id<struct WoundTag>;  // c5
using TieId = Id<struct TieTag>;      // t4
using BrushId = Id<struct BrushTag>;  // b2
using WireId = Id<struct WireTag>;    // w1

inline constexpr std::uint32_t highest_axis = 1'048'575;
inline constexpr std::uint32_t highest_node_index = 255;
inline constexpr std::uint32_t highest_bud_slot = 3;

// The id is the name, so tables, files, sentences and draws need no second numbering.
constexpr NodeId node_id(AxisId axis, std::uint32_t index) { return {axis.value << 8 | index}; }
constexpr BudId bud_id(NodeId node, std::uint32_t slot) { return {node.value << 2 | slot}; }
constexpr AxisId axis_of(NodeId node) { return {node.value >> 8}; }
constexpr std::uint32_t index_of(NodeId node) { return node.value & 255; }
constexpr NodeId node_of(BudId bud) { return {bud.value >> 2}; }
constexpr std::uint32_t slot_of(BudId bud) { return bud.value & 3; }

// The name people and files use; "-" for none.
std::string name_of(AxisId);
std::string name_of(NodeId);
std::string name_of(BudId);
std::string name_of(WoundId);
std::string name_of(TieId);
std::string name_of(BrushId);
std::string name_of(WireId);

// The id of a whole name, or nothing where it is not one: leading zeros, signs and numbers out of range are refused.
std::optional<AxisId> read_axis(std::string_view name);
std::optional<NodeId> read_node(std::string_view name);
// As above for "c5", "t4", "b2", "w1": `letter` is the first character wanted.
std::optional<std::uint32_t> read_row(char letter, std::string_view name);

}  // namespace spurwright
