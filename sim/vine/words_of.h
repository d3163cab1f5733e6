// The words of every closed list of the tables, once: files, canonical text, plans and JSON all read and write them
// here. An enum is a word in every file, never a number.
#pragma once

#include <array>
#include <optional>
#include <string_view>

namespace spurwright {

enum class System : unsigned char { two_cane, one_cane, cordon, head_canes, head_spurs };
enum class Vigour : unsigned char { low, moderate, high };
enum class Side : unsigned char { none, left, right };  // left is towards -X seen from +Z; people read near post, far post
enum class WireKind : unsigned char { fruiting, catching, drip };
enum class WireState : unsigned char { up, down };
enum class NeighbourKind : unsigned char { vine, none, end_post };
enum class CaneClass : unsigned char { ordinary, bull, shaded };
enum class AxisEnd : unsigned char { tip, hedge, cut, broken };
enum class AxisState : unsigned char { live, dead };
enum class Role : unsigned char { none, left, right, spur, kicker, spare, remove };
enum class Tendril : unsigned char { none, scar, loose, gripping };
enum class Bunch : unsigned char { none, stub, rachis, mummy };
enum class Lateral : unsigned char { none, scar, axis };
enum class Harm : unsigned char { none, spot, scar, cracked };
enum class BudKind : unsigned char { node, crown, latent };
enum class Points : unsigned char { up, down, outward, inward, across };
enum class Tool : unsigned char { shears, loppers, saw };
enum class LaidState : unsigned char { held, skin_crack, snapped };
enum class TieState : unsigned char { on, sunk, cut };

constexpr auto words_of(System) { return std::to_array<std::string_view>({"two-cane", "one-cane", "cordon", "head-canes", "head-spurs"}); }
constexpr auto words_of(Vigour) { return std::to_array<std::string_view>({"low", "moderate", "high"}); }
constexpr auto words_of(Side) { return std::to_array<std::string_view>({"none", "left", "right"}); }
constexpr auto words_of(WireKind) { return std::to_array<std::string_view>({"fruiting", "catch", "drip"}); }
constexpr auto words_of(WireState) { return std::to_array<std::string_view>({"up", "down"}); }
constexpr auto words_of(NeighbourKind) { return std::to_array<std::string_view>({"vine", "none", "end-post"}); }
constexpr auto words_of(CaneClass) { return std::to_array<std::string_view>({"ordinary", "bull", "shaded"}); }
constexpr auto words_of(AxisEnd) { return std::to_array<std::string_view>({"tip", "hedge", "cut", "broken"}); }
constexpr auto words_of(AxisState) { return std::to_array<std::string_view>({"live", "dead"}); }
constexpr auto words_of(Role) { return std::to_array<std::string_view>({"none", "left", "right", "spur", "kicker", "spare", "remove"}); }
constexpr auto words_of(Tendril) { return std::to_array<std::string_view>({"none", "scar", "loose", "gripping"}); }
constexpr auto words_of(Bunch) { return std::to_array<std::string_view>({"none", "stub", "rachis", "mummy"}); }
constexpr auto words_of(Lateral) { return std::to_array<std::string_view>({"none", "scar", "axis"}); }
constexpr auto words_of(Harm) { return std::to_array<std::string_view>({"none", "spot", "scar", "cracked"}); }
constexpr auto words_of(BudKind) { return std::to_array<std::string_view>({"node", "crown", "latent"}); }
constexpr auto words_of(Points) { return std::to_array<std::string_view>({"up", "down", "outward", "inward", "across"}); }
constexpr auto words_of(Tool) { return std::to_array<std::string_view>({"shears", "loppers", "saw"}); }
constexpr auto words_of(LaidState) { return std::to_array<std::string_view>({"held", "skin-crack", "snapped"}); }
constexpr auto words_of(TieState) { return std::to_array<std::string_view>({"on", "sunk", "cut"}); }

template <class E>
constexpr std::string_view word_of(E value) {
    return words_of(E{})[static_cast<std::size_t>(value)];
}

template <class E>
constexpr std::optional<E> read_word(std::string_view word) {
    const auto words = words_of(E{});
    for (std::size_t i = 0; i < words.size(); ++i)
        if (words[i] == word) return static_cast<E>(i);
    return std::nullopt;
}

constexpr Side other(Side side) { return side == Side::left ? Side::right : side == Side::right ? Side::left : Side::none; }
constexpr double sign_of(Side side) { return side == Side::left ? -1.0 : side == Side::right ? 1.0 : 0.0; }  // along X
inline constexpr std::array both_sides{Side::left, Side::right};

}  // namespace spurwright
