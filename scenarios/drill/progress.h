// What a row of looks says: how far a skill is, what is mixed up, which look comes next and why. From the answers alone,
// so that any of it can be worked out again from the records. Must not know: vines, screens, the clock.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <vector>

#include "scenarios/drill/look.h"
#include "scenarios/quiz/results.h"

namespace spurwright::drill {

struct LookAnswer {
    Skill skill{};
    std::size_t right = 0, said = 0; // words, from 0
    std::int64_t ms = 0;             // from the picture to the answer
    std::int32_t day = 0;            // counted on, any start; 0 is no day
    bool good() const { return right == said; }
};
using LookAnswers = std::vector<LookAnswer>; // in the order they were given

// The crew's four words.
enum class Mastery : unsigned char { fresh, with_help, alone, needs_a_look };
constexpr auto words_of(Mastery) { return std::to_array<std::string_view>({"new", "with-help", "alone", "needs-a-look"}); }

struct Confused {
    std::size_t a = 0, b = 0; // words, the lower first
    int times = 0;            // of the last 30
    bool operator==(const Confused&) const = default;
};

struct SkillProgress {
    Mastery mastery{};
    int answers = 0;
    quiz::Share last;                      // of the last 20
    std::optional<std::int64_t> median_ms; // of the last 20
    int days = 0;                          // on which it was met
    std::vector<Confused> confused;        // most often first
};
// All numbers our choice: alone is 90 of 100 of the last 20, as quick as target_seconds, on two days, with 8 answers and
// more; needs a look: two of the last five wrong, or not met for 14 days.
SkillProgress progress_of(const LookAnswers& answers, Skill skill, std::int32_t today);

// Blocks of ten in order, the last one where it has five and more: how many right, how quick.
struct PlotPoint {
    double share = 0, seconds = 0;
};
std::vector<PlotPoint> plot_of(const LookAnswers& answers, std::optional<Skill> skill);

// How strong somebody is at a skill: Glicko-2, a period a day, the item's strength by its number of words.
double expected_right(const LookAnswers& answers, Skill skill);

enum class Why : unsigned char { first_block, again, side_by_side, weakest };
constexpr auto words_of(Why) { return std::to_array<std::string_view>({"first-block", "again", "side-by-side", "weakest"}); }

struct NextLook {
    Skill skill{};
    std::size_t wanted = 0;
    std::optional<std::size_t> beside; // a pair
    Why why{};
};
// `sitting`: how many of the answers are of this one. A skill nobody met begins with six of its own; what went wrong comes
// back after four others, three times a sitting at most; words mixed up three times in the last 30 are shown beside each
// other; else the skill with the lowest chance, with a draw. No word is right three times running but by chance.
NextLook next_look(const LookAnswers& answers, std::size_t sitting, const std::vector<Skill>& on, std::uint64_t seed);

} // namespace spurwright::drill
