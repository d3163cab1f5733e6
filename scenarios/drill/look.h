// Look and say: one place on one vine, one word for it. A look is an item as the crew's questions are, with its ring and
// its words always in the same order, so that the fingers learn them. The same skill, seed and house make the same look.
// Must not know: screens, who answers, time.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "scenarios/quiz/item.h"
#include "sim/rules/house_rules.h"

namespace spurwright::drill {

enum class Skill : unsigned char {
    wood_age,   // one year, two years, older
    bud_counts, // a bud that counts, or a base bud
    cane_size,  // thin, right, bull
    joints,     // short, right, long
    wire_side,  // grows from below the wire, or from above it
    cut_made,   // flush, good, too long
    live_wood,  // alive or dead
    which_job,  // as ordered, weak, young, dead
};
constexpr auto words_of(Skill) {
    return std::to_array<std::string_view>({"wood-age", "bud-counts", "cane-size", "joints", "wire-side", "cut-made", "live-wood", "which-job"});
}
inline constexpr std::size_t skill_count = 8;
inline constexpr std::array<Skill, skill_count> all_skills{Skill::wood_age,  Skill::bud_counts, Skill::cane_size, Skill::joints,
                                                           Skill::wire_side, Skill::cut_made,   Skill::live_wood, Skill::which_job};

// The words of a skill, digit 1 first.
const std::vector<TextKey>& words_of_skill(Skill skill);
// Median seconds that somebody who knows it takes; our choice.
int target_seconds(Skill skill);

struct Look {
    Skill skill{};
    std::uint64_t seed = 0;
    quiz::Item item;        // one place with words; of a pair two places, digits 1 and 2, and no words
    std::size_t right = 0;  // which word, from 0
    std::optional<std::size_t> beside; // of a pair: the word of the other place
    bool pair() const { return beside.has_value(); }
};

// `wanted`: the word that is to be right. Nothing where most_look_draws vines in a row did not carry it. What an eye cannot
// tell (the house's acceptable.see_*) is never asked, nor a bud that people count differently.
std::optional<Look> make_look(Skill skill, std::size_t wanted, std::uint64_t seed, const rules::HouseRules& house);

// The two words on one vine, side by side: which of the two places is `wanted`? Of skills whose places lie on one vine.
std::optional<Look> make_pair(Skill skill, std::size_t wanted, std::size_t other, std::uint64_t seed, const rules::HouseRules& house);
bool has_pairs(Skill skill); // not of a cut that is made for it, nor of whole vines

inline constexpr std::uint32_t most_look_draws = 120;

} // namespace spurwright::drill
