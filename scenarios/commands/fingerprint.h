// The fixed vines of the fingerprint and their lines, for the verb and for the tests.
#pragma once

#include <string>
#include <vector>

#include "sim/core/error.h"
#include "sim/vine/vine_code.h"

namespace spurwright::commands {

// 64 sites: ages 3 to 30, every vigour, character, neighbour and many spacings; seeds fixed for good.
std::vector<CodedSite> fingerprint_sites();

// planning::fingerprint_line of the first `count` of them, under the general house rules.
[[nodiscard]] Result<std::string> fingerprint_lines(std::size_t count);

} // namespace spurwright::commands
