// Varieties as data: what a cultivar changes of the model's constants, each value with its status. Those that ship are
// C++ tables: every name the program offers is then known when it is built. One of one's own is the same record, kept
// with its texts (DEVELOPERS.md, 41 and 85).
#pragma once

#include <array>
#include <memory>
#include <span>
#include <string_view>

#include "sim/growth/growth_constants.h"

namespace spurwright::growth {

enum class Species : unsigned char { vinifera, labruscana, hybrid };
constexpr auto words_of(Species) { return std::to_array<std::string_view>({"vinifera", "labruscana", "hybrid"}); }
enum class Burst : unsigned char { early, late };
constexpr auto words_of(Burst) { return std::to_array<std::string_view>({"early", "late"}); }

// A value of a cultivar and where it comes from ("-": none).
struct Told {
    double value;
    ValueStatus status = ValueStatus::choice;
    std::string_view source = "-";
};

struct Variety {
    std::string_view name;  // "cabernet-sauvignon"
    std::string_view shown; // as people write it
    Species species{};
    Burst burst{};              // which heat sum opens its buds where hardiness does not decide
    std::string_view hardiness; // its row of the hardiness table, or that of the cultivar taken in its place
    bool hardiness_own = true;  // false: taken from another cultivar, our choice
    Told bunch_mass_g, noncount_f, reserve_a, ri_star;
    bool tendrils_everywhere = false; // continuous, labruscana (from memory)
};

// "plain" first: a vinifera of medium vigour. Append only: a variety's place is its number in the vine code.
std::span<const Variety> varieties();
const Variety* find_variety(std::string_view name); // null where there is none

// The values that a variety sets, by the names of files; `constant` is the row of the constants' table that each takes
// the place of, with its unit and range.
struct VarietyField {
    std::string_view name, constant;
    Told Variety::*value;
};
std::span<const VarietyField> variety_fields();

// The same variety with texts of its own: for one that no table holds.
std::shared_ptr<const Variety> kept(const Variety& variety);

// Whether vines of it are planted on a rootstock unless somebody says otherwise: vinifera (from memory). Of a name that
// is not known: as vinifera.
bool usually_grafted(const Variety& variety);
bool usually_grafted(std::string_view name);

// `base` with the cultivar's values in the places of the plain ones.
Constants with_variety(const Constants& base, const Variety& variety);

} // namespace spurwright::growth
