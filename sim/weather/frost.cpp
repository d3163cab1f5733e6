#include "sim/weather/frost.h"

#include "sim/core/numeric.h"

namespace spurwright::weather {
namespace {

using growth::Species;
constexpr auto read = growth::ValueStatus::read, computed = growth::ValueStatus::computed;

// Swell of vinifera before wool shows: as much hardier than late swell as Concord is.
constexpr auto frost_rows = std::to_array<FrostRow>({
    {Stage::first_swell, -10.6, -19.4, -9.2, -15.0, computed, "fao-frost"},
    {Stage::late_swell, -6.1, -12.2, -3.4, -9.2, read, "proebsting-1978"},
    {Stage::burst, -3.9, -8.9, -2.2, -6.4, read, "proebsting-1978"},
    {Stage::first_leaf, -2.8, -6.1, -2.0, -4.5, read, "proebsting-1978"},
    {Stage::second_leaf, -2.2, -5.6, -1.7, -3.9, read, "proebsting-1978"},
    {Stage::third_leaf, -2.2, -3.3, -1.45, -2.75, computed, "fao-frost"},
    {Stage::fourth_leaf, -2.2, -2.8, -1.2, -2.5, read, "proebsting-1978"},
});

constexpr double between_10_and_90 = 2.563; // in sd of a normal law

} // namespace

std::span<const FrostRow> frost_table() { return frost_rows; }

FrostLimit frost_limit(Species species, Stage stage, const growth::Constants& c) {
    const FrostRow& row = frost_rows[static_cast<std::size_t>(stage)];
    if (species == Species::labruscana) return {row.labruscana, (row.concord_10 - row.concord_90) / between_10_and_90};
    return {row.vinifera, c.frost_sd_vinifera};
}

Stage stage_of(double leaves) {
    if (leaves < 0) return Stage::late_swell;
    const int whole_leaves = leaves < 4 ? static_cast<int>(leaves) : 4;
    return static_cast<Stage>(static_cast<int>(Stage::burst) + whole_leaves);
}

double at_height(double at_wire, double height, const growth::Constants& c) {
    const double colder =
        numeric::clamp(c.still_night_lapse * (c.still_night_wire - height), -c.still_night_most, c.still_night_most);
    return at_wire - colder;
}

} // namespace spurwright::weather
