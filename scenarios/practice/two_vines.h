// Next winter's two vines beside each other, from one vine that was looked back on; one of them may be in hand
// meanwhile, the other waits as it was left. Must not know: screens, threads, where work is kept.
#pragma once

#include <optional>

#include "scenarios/practice/next_winter.h"
#include "scenarios/practice/practice.h"

namespace spurwright::practice {

inline constexpr std::size_t most_winters_on = 8; // one after another, each from the vine in hand (our choice)

struct TwoVines {
    std::optional<NextWinter> found;                  // none: the seasons are being lived
    std::shared_ptr<std::atomic<int>> lived = std::make_shared<std::atomic<int>>(0); // of lives_lived
    std::optional<std::size_t> in_hand;               // which of the two; none: both are shown
    std::optional<Practice> from;                     // the winter before, while one of the two is in hand
    std::array<std::optional<Practice>, 2> left;      // those taken in hand before, as they were left
};

// What is asked of the two vines of the one looked back on. Needs its plans.
NextWinterWish next_winter_wish(const Practice& looked_back);
// One of the two, uncut, under the same house.
Practice next_practice(const Practice& from, const NextWinter& found, std::size_t which);

} // namespace spurwright::practice
