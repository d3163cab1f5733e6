// Whatever hands may do to a vine, no legal plan is worth more than the best choice: edits at random, and full plans
// gone wrong in one place, which come far closer.
#include <doctest/doctest.h>

#include "sim/planning/planning.h"
#include "sim/pruning/plan_text.h"
#include "tests/support/judged.h"
#include "tests/support/random_edits.h"
#include "tests/support/small_vines.h"

using namespace spurwright;
using namespace spurwright::planning;

namespace {

struct Attempts {
    int judged = 0, beaten = 0;
    std::string first;
};

Attempts attempts_on(const Vine& vine, const rules::HouseRules& house, std::uint64_t seed, int each) {
    const Planning planning(vine, house);
    const test::Judged judged{vine, house};
    const auto good = planning.top(40);
    Attempts attempts;
    const auto attempt = [&](const Plan& plan) {
        const auto found = judged(plan);
        if (!found) return;
        ++attempts.judged;
        if (found->points <= good.front().points || attempts.beaten++ > 0) return;
        attempts.first = std::to_string(found->points.count) + " beats " + std::to_string(good.front().points.count) +
                         ": " + print_plan(plan);
    };
    for (int i = 0; i < each; ++i) {
        const std::uint64_t number = seed * 100'000 + static_cast<std::uint64_t>(i);
        attempt(test::random_edits(vine, number, between(draw(number, 1, 0), 1, 25)));
        const int which = between(draw(number, 2, 0), 0, static_cast<int>(good.size()) - 1);
        attempt(test::spoilt(vine, good[static_cast<std::size_t>(which)].plan, number));
    }
    return attempts;
}

}  // namespace

TEST_SUITE("planning/nothing-beats-the-best") {
    TEST_CASE("5,000 lists of legal edits on the small vines") {
        int judged = 0;
        std::uint64_t seed = 0;
        for (const auto& [name, vine] : test::small_vines()) {
            const Attempts attempts = attempts_on(vine, rules::HouseRules{}, ++seed, 500);
            CAPTURE(name);
            CAPTURE(attempts.first);
            CHECK(attempts.beaten == 0);
            judged += attempts.judged;
        }
        CHECK(judged > 3'500);  // a moved cut may not be legal
    }
}
