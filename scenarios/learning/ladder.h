// Who stands on which rung of the ladder, and which lesson comes next: worked out from the vines walked on it alone. A rung is
// a suggestion: any vine may be opened on any rung. Must not know: what a rung leaves to the trainee, screens, the store.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "scenarios/records/lesson_record.h"
#include "sim/core/text_key.h"

namespace spurwright::learning {

using records::LadderVine;

// Our choice, all of them; one vine is a little evidence, two running in the same step are a reason.
inline constexpr Tenths most_to_mend{60};  // lost by what can be mended now, where nothing else is
inline constexpr Tenths much_lost{150};    // more than this in one step is a reason to go down
inline constexpr std::size_t vines_to_move = 2, vines_of_lesson = 5;

// In the trainee's own steps as good as the best, or with nothing lost beyond that but what can be mended now, and little of it.
bool went_well(const LadderVine& vine);
// Own steps with a fault that held the points down, or with much lost.
std::vector<rules::Step> poor_steps(const LadderVine& vine);

enum class Moved : unsigned char { begins, stays, up, down };

struct Standing {
    int rung = 0;  // suggested for the next vine
    Moved moved{}; // by the last vine walked
    std::optional<rules::Step> step;  // in which it went wrong twice, where it went down
    TextKey why;
    Arguments arguments;
};
// Up after two vines running that went well on this rung or a higher one: to the one above the lower of the two, as whoever
// can do the whole needs no steps between. Down after two running on this rung with the same step poor; then one that goes
// well leads up again. A vine watched leads from 0 to 1; vines of a lower rung than one stands on move nothing.
// `from`: where it goes on from, of nobody's work taken up again.
Standing standing(const std::vector<LadderVine>& walked, int top, int from = 0);

struct LessonProgress {
    std::size_t walked = 0, well = 0;  // vines of it that were not watched; of them, those that went well
    std::size_t next = 0;              // number of its next vine: past every one walked
    bool through() const { return well >= vines_to_move || walked >= vines_of_lesson; }
};
LessonProgress progress_of(const std::vector<LadderVine>& walked, const std::string& scene);

// The lesson at hand until it is through; then the next in order that is not; all through: the one walked longest ago.
std::size_t next_lesson(const std::vector<LadderVine>& walked, const std::vector<std::string>& scenes);

}  // namespace spurwright::learning
