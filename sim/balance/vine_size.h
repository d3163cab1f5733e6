// How big a vine is by its prunings, and how its crop stands to them.
#pragma once

#include <array>
#include <optional>
#include <string_view>

namespace spurwright::balance {

// One-year prunings a metre of row, kg/m. Needs spacing_m > 0.
double size_of(double prunings_kg, double spacing_m);

enum class SizeSet : unsigned char { cool, warm };
enum class SizeClass : unsigned char { small, target, large, excessive };
constexpr auto words_of(SizeSet) { return std::to_array<std::string_view>({"cool", "warm"}); }
constexpr auto words_of(SizeClass) { return std::to_array<std::string_view>({"small", "target", "large", "excessive"}); }

// cool: 0.3 to 0.6 is the target, to 1.0 large; warm: 0.5 to 1.0 [kliewer-2005 gives 0.5 to 1.0 for a single canopy]. The
// sets and what an end belongs to are our choice.
SizeClass size_class(double kg_per_m, SizeSet set);

// Crop over prunings of the same vine; none where there are no prunings. 5 to 10 is in balance [trought-2017].
std::optional<double> crop_to_prunings(double crop_kg, double prunings_kg);

} // namespace spurwright::balance
