// The plan somebody asks about beside those as good: where it stands among all ways, and what was measured on the vine.
#pragma once

#include <optional>
#include <vector>

#include "scenarios/commands/verb.h"
#include "scenarios/commands/vine_source.h"
#include "sim/planning/plan_count.h"

namespace spurwright::commands {

struct MyPlan {
    Plan plan;
    Tenths points;
    planning::Tally tally;
};
io::Json my_plan_object(const MyPlan& mine, Tenths best, Tenths least);
std::string my_plan_text(const MyPlan& mine, Tenths best, Tenths least, const words::Words& words);

// --plan TEXT, carried out; nothing where it is not asked. Refused where it is for another system.
[[nodiscard]] Result<std::optional<Pruned>> plan_beside(const Asked& asked, const Vine& vine);

// --measured a4,a7: pieces on which calliper and ruler were used.
[[nodiscard]] Result<std::vector<AxisId>> measured_asked(const Asked& asked, const Vine& vine);

PerMille share_of(std::uint64_t part, std::uint64_t of);

} // namespace spurwright::commands
