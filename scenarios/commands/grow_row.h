// grow --row: a whole row of vines, listed by place, each as a vine file where a folder is named.
#pragma once

#include <optional>
#include <string>

#include "scenarios/commands/verb.h"
#include "sim/growth/site.h"

namespace spurwright::commands {

// The row of that seed with the site's settings. Without a folder nothing is written. A folder that is not there is
// made; a file of that name is refused. JSON: assets/schemas/verb-grow-row.json.
[[nodiscard]] Result<Answer> row_answer(const growth::Site& site, int places, const std::optional<std::string>& folder,
                                        const Surroundings& around);

} // namespace spurwright::commands
