// Spreads and tests as programs and people read them. The same for every verb that compares vines.
#pragma once

#include "scenarios/io/json.h"
#include "scenarios/words/words.h"
#include "sim/balance/spread.h"

namespace spurwright::commands {

// {"n", "least", "low", "median", "high", "most", "mean", "deviation"}; null of nothing.
io::Json vine_spread_object(const balance::VineSpread& spread);

// "0.012", or "< 0.001".
std::string chance_text(double p, const words::Words& words);

// Kilograms with two decimals, as in columns.
std::string kg_column(double kg, const words::Words& words, int decimals = 2);

} // namespace spurwright::commands
