// A missing cane or spur is said by every rule that would have judged it, each in its own words: whoever tells of a vine
// tells it once.
#pragma once

#include "sim/rules/findings.h"

namespace spurwright::rules {

// Whether it says that a piece is missing.
bool tells_missing(const Finding& finding);

}  // namespace spurwright::rules
