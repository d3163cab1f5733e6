// The first scene's whole job without a picture: its vine, a beginner's plan and the best plan, judged side by side.
#pragma once

#include <string>

#include "scenarios/commands/judged.h"
#include "scenarios/commands/verb.h"

namespace spurwright::commands {

struct Job {
    FoundVine found;
    io::Json house; // name of the set
    Judged beginner, best;
    rules::HouseRules rules;
    std::vector<std::string> learn_keys;
};

// `number`: which of the scene's vines, from 1.
[[nodiscard]] Result<Job> first_job(const Surroundings& around, std::size_t number);
std::string job_text(const Job& job, const words::Words& words);

} // namespace spurwright::commands
