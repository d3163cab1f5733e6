// A vine of the ladder as an event of kind "lesson": which scene's vine on which rung, and what was lost in the steps that
// were the trainee's own, with what it needs to be judged again. Whoever stands on which rung is worked out from these
// alone (learning/ladder.h). Must not know: rungs' rules, screens.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "scenarios/records/events.h"
#include "sim/core/units.h"
#include "sim/planning/planning.h"
#include "sim/pruning/plan.h"
#include "sim/rules/house_rules.h"
#include "sim/rules/rule.h"
#include "sim/vine/vine.h"

namespace spurwright::records {

inline constexpr std::string_view lesson_kind = "lesson";
inline constexpr int lesson_version = 1;

// What one step of the trainee's own cost.
struct StepResult {
    rules::Step step{};
    Tenths lost;          // against the best plan, by the choice that made each loss unavoidable
    Tenths mend_now;      // of it, what further work on the vine would win back
    bool capped = false;  // a fault of this step held the points down
    bool operator==(const StepResult&) const = default;
};

struct LadderVine {
    std::string scene;
    std::size_t number = 0;  // of the scene's vines
    int rung = 0;            // 0: watched
    Tenths tolerance{20};    // within so much is as good
    std::vector<StepResult> yours;  // by the order of work; none where it was watched
    bool operator==(const LadderVine&) const = default;
};

// What was pruned and by which rules; a watched vine has no plan and no points.
struct LessonDone {
    const Vine& vine;  // uncut this winter
    std::string code;
    Plan plan;
    std::vector<bool> shown;  // edit by edit: done for the trainee
    const rules::HouseRules& house;
    std::string house_name;
    std::optional<Tenths> points, best;
    planning::Tally tally{};  // of the points
};

// In one act. Nothing, and nothing kept, where the last lesson on that vine by that person was the same plan on the same rung.
[[nodiscard]] Result<std::optional<std::int64_t>> keep_lesson(Store& store, const LadderVine& walked, const LessonDone& done, std::optional<std::int64_t> person, const std::string& when_utc);

// Of one person, in the order they were done. What cannot be read is left out.
[[nodiscard]] Result<std::vector<LadderVine>> lessons_of(Store& store, std::int64_t person);

}  // namespace spurwright::records
