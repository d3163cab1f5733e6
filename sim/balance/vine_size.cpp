#include "sim/balance/vine_size.h"

namespace spurwright::balance {

double size_of(double prunings_kg, double spacing_m) { return prunings_kg / spacing_m; }

SizeClass size_class(double kg_per_m, SizeSet set) {
    constexpr double hair = 1e-9; // an end that was worked out belongs where a typed one does
    if (set == SizeSet::warm)
        return kg_per_m < 0.5 - hair ? SizeClass::small : kg_per_m <= 1.0 + hair ? SizeClass::target : SizeClass::excessive;
    return kg_per_m < 0.3 - hair    ? SizeClass::small
           : kg_per_m <= 0.6 + hair ? SizeClass::target
           : kg_per_m <= 1.0 + hair ? SizeClass::large
                                    : SizeClass::excessive;
}

std::optional<double> crop_to_prunings(double crop_kg, double prunings_kg) {
    if (!(prunings_kg > 0)) return std::nullopt;
    return crop_kg / prunings_kg;
}

} // namespace spurwright::balance
