// Generator switches after an option: "far-cane:near,old-upright:far", with their own numbers left as they are.
#pragma once

#include <string_view>
#include <vector>

#include "sim/core/error.h"
#include "sim/growth/tempt.h"

namespace spurwright::commands {

// Refused (bad_text, where the option): an unknown switch, a side that is neither near nor far.
[[nodiscard]] Result<std::vector<growth::Temptation>> read_switches(std::string_view text, std::string_view option);

} // namespace spurwright::commands
