// Spring frost on opening buds and young shoots: critical temperatures by stage, and how cold a still night is near
// the ground.
#pragma once

#include <span>
#include <string_view>

#include "sim/growth/growth_constants.h"
#include "sim/growth/variety.h"

namespace spurwright::weather {

enum class Stage : unsigned char { first_swell, late_swell, burst, first_leaf, second_leaf, third_leaf, fourth_leaf };
constexpr auto words_of(Stage) {
    return std::to_array<std::string_view>(
        {"first-swell", "late-swell", "burst", "first-leaf", "second-leaf", "third-leaf", "fourth-leaf"});
}

// Published temperatures at which a tenth, half and nine tenths die (C), and the values the model takes. Concord
// [proebsting-1978], Pinot noir [gardea-1987], both read through [ferguson-2014]; swell and third leaf [fao-frost].
// The model's labruscana is the mean of 10 and 90 %, rounded to a tenth; a value that no work gives is put between its
// neighbours (computed).
struct FrostRow {
    Stage stage{};
    double concord_10, concord_90;
    double vinifera, labruscana; // LT50
    growth::ValueStatus vinifera_status;
    std::string_view concord_source; // proebsting-1978, or fao-frost for the stages it alone gives
};
std::span<const FrostRow> frost_table();

struct FrostLimit {
    double lt50_c, sd_c;
};
// sd from two points, (LT10 - LT90) / 2.563; vinifera has one point only, its sd is our choice. Hybrids as vinifera
// (our choice).
FrostLimit frost_limit(growth::Species species, Stage stage, const growth::Constants& c);

// The stage of a shoot with so many unfolded leaves (below 0: not open yet).
Stage stage_of(double leaves);

// C at `height_m`, where the fruiting wire's height has `at_wire_c`: a still night is colder near the ground.
double at_height(double at_wire_c, double height_m, const growth::Constants& c);

} // namespace spurwright::weather
