// Measures as people read them: whole units where that is fine enough, and never two different measures of one
// sentence printed alike. Must not know: keys, languages' sentences.
#pragma once

#include <string>
#include <vector>

#include "sim/core/text_key.h"

namespace spurwright::words {

// How a language writes numbers.
struct NumberStyle {
    std::string point = "."; // between whole and fraction
    std::string group = ","; // between thousands, from 10,000 on
};

// A number with its unit: "8.5 mm", "1.8 m", "680 g", "1.25 kg", "35°", "62 %", "12.5" (points), "6480".
// `finer` adds decimals to the usual ones, up to what the measure holds. Empty for texts, keys and parts.
std::string measure_text(const Argument& value, const NumberStyle& style, int finer = 0);

// One text for each argument that is a measure: usual decimals, more where two different values of the same kind would
// print alike ("7.96 mm is below 8 mm", not "8 mm is below 8 mm").
std::vector<std::string> measure_texts(const Arguments& arguments, const NumberStyle& style);

// Points with one decimal always, for columns: "3.0".
std::string points_text(Tenths points, const NumberStyle& style);

// `value` with `decimals` places, rounded half away from zero, without trailing zeros. `scale`: value / 10^scale.
std::string number_text(std::int64_t value, int scale, int decimals, const NumberStyle& style);

} // namespace spurwright::words
