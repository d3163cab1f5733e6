// A weight written down at the scale as an event of kind "weighing": the vine, how it was pruned, what was done with its
// brush and what was written, so that years later the same bundle hangs on the same scale and is judged again. Must not
// know: screens.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "scenarios/records/events.h"
#include "scenarios/weighing/next_buds.h"
#include "sim/pruning/plan.h"

namespace spurwright::records {

inline constexpr std::string_view weighing_kind = "weighing";
inline constexpr int weighing_version = 2; // 1 told what came of it, and nothing to weigh it again by

// Whose prunings: the vine before its pruning, the plan, the rules it is weighed by.
struct WeighedVine {
    Vine vine;
    std::string code; // empty where no code grows it
    Plan plan;
    rules::HouseRules house;
    std::string house_name;
};

// Keeps the event, its vine and its rules in one act; its number. `next` where the coming winter's buds were said too: then
// `corrects` is the event of the weight alone. Needs an exercise in which a weight was written.
[[nodiscard]] Result<std::int64_t> keep_weighing(Store& store, const WeighedVine& weighed, const weighing::Exercise& exercise, const weighing::NextBuds* next,
                                                 std::optional<std::int64_t> person, std::optional<std::int64_t> corrects, const std::string& when_utc);

struct KeptNext {
    weighing::NextBudsTask task;
    std::vector<std::uint8_t> left_out;
    weighing::SaidBuds said;
};
struct KeptWeighing {
    std::string vine_hash, rule_set_hash, plan;
    int judge_version = 0;
    std::vector<weighing::Act> deeds;
    std::string typed;
    bool noted_wet = false;
    std::optional<KeptNext> next;
    std::string came; // what came of it, in one line
};
// Nothing where the body is another's or damaged.
std::optional<KeptWeighing> read_kept_weighing(const std::string& body);

// The same bundle on the same scale now; what came of it in one line. Nothing where the deeds do not fit the brush.
std::optional<std::string> weighed_again(const Vine& vine, const Plan& plan, const rules::HouseRules& house, const KeptWeighing& kept);

} // namespace spurwright::records
