// The next winter of one vine pruned in two ways, mine and the better one: each really grown through drawn seasons, the
// same weather for both, and what came of each with its spread: the numbers of the verb `ahead`. Pure: any thread, own
// copies. Must not know: screens, sentences, whose hand prunes them then.
#pragma once

#include <array>
#include <atomic>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "scenarios/ahead/look_ahead.h"
#include "scenarios/practice/plan_search.h"

namespace spurwright::practice {

inline constexpr std::size_t mine = 0, better = 1; // of the two vines

struct NextWinter {
    struct Life {
        std::shared_ptr<const ahead::NextVine> next; // the vine that is shown: the first draw's
        ahead::AheadWinter told;                     // over all draws
    };
    std::array<Life, 2> lives; // mine, better
    bool alike = false;        // both were pruned to the same vine
    std::string variety;       // as people name it
    std::string climate;       // a word of weather::climates()
};

struct NextWinterWish {
    std::array<Vine, 2> pruned; // mine, better; of one vine, this winter
    rules::HouseRules house;
    std::string climate = std::string(ahead::usual_climate);
    int kickers_until = 0; // day of the year on which canes left standing for the frost are looked at; 0: none are
};

inline constexpr int lives_lived = 2 * ahead::weather_draws;

// `lived` counts up to lives_lived, for whoever waits.
NextWinter next_winter(const NextWinterWish& wish, std::atomic<int>& lived);

} // namespace spurwright::practice
