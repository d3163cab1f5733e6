// CODE|FILE: 24 characters of the alphabet are grown, anything else is read as a path. And the plan that goes with it.
#pragma once

#include <optional>
#include <string>

#include "scenarios/io/vine_file.h"
#include "sim/growth/site.h"
#include "sim/pruning/plan.h"

namespace spurwright::commands {

struct FoundVine {
    Vine vine;
    std::string code;                 // empty for a vine that no code grows
    std::optional<growth::Site> site; // where a code says it
};

[[nodiscard]] Result<FoundVine> find_vine(const std::string& subject);

// Grown from what a code says; `code` is the canonical spelling.
[[nodiscard]] Result<FoundVine> vine_of_code(std::string_view code);

// A plan and the vine after it. A refusal names edit and column.
struct Pruned {
    Plan plan;
    Vine after;
};
[[nodiscard]] Result<Pruned> prune_by_text(const Vine& before, const std::string& plan_text);

// Refuses a vine that was cut, laid or tied this winter: what is judged and searched is the vine before any cut.
[[nodiscard]] Result<void> must_be_uncut(const Vine& vine, const std::string& subject);

} // namespace spurwright::commands
