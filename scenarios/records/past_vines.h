// Vines that were pruned before, from the records: what the way on and the vines met before are worked out from.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "scenarios/records/clock.h"
#include "scenarios/records/events.h"
#include "sim/core/units.h"
#include "sim/rules/rule.h"

namespace spurwright::records {

struct PastVine {
    std::int64_t id = 0; // of its event
    Day day;
    std::string vine_hash, code, rule_set_hash, rule_set_name, plan;
    std::size_t given = 0;
    Tenths marks;
    std::optional<Tenths> best, tolerance;
    std::optional<std::int32_t> difficulty; // thousandths on the scale of answers
    std::optional<rules::RuleName> worst;   // the rule that took most; none: nothing was lost
    std::vector<rules::RuleName> lost_by;   // rules that took more than the tolerance, or capped it

    Tenths lost() const { return best ? std::max(Tenths{0}, *best - marks) : Tenths{0}; }
    bool as_good() const { return !best || lost() <= tolerance.value_or(Tenths{20}); }
};

// Of one person, or of nobody; in the order they were done. What cannot be read is left out.
[[nodiscard]] Result<std::vector<PastVine>> past_vines(Store& store, std::optional<std::int64_t> person);

} // namespace spurwright::records
