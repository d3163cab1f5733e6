// A formula of balanced pruning as people type it: "20+10".
#pragma once

#include <string>

#include "sim/balance/bud_formula.h"
#include "sim/core/error.h"

namespace spurwright::commands {

// Refused (bad_text, "--formula"): anything else, parts below 0 or above 200 (our choice: no published one comes near).
[[nodiscard]] Result<balance::BudFormula> read_formula(const std::string& text);

} // namespace spurwright::commands
