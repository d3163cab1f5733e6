// Whatever hands may do to a vine, no legal plan is worth more than the best choice: edits at random, and full plans
// gone wrong in one place, which come far closer.
#include <doctest/doctest.h>

#include "sim/growth/history.h"
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
        for (const test::NamedVine& small : test::small_vines()) {
            const Vine& vine = small.vine;
            const Attempts attempts = attempts_on(vine, rules::HouseRules{}, ++seed, 500);
            CAPTURE(small.name);
            CAPTURE(attempts.first);
            CHECK(attempts.beaten == 0);
            judged += attempts.judged;
        }
        CHECK(judged > 3'500);  // a moved cut may not be legal
    }
    TEST_CASE("5,000 lists of legal edits on twenty-five grown vines, under close-head and slow-arms habits") {
        rules::HouseRules slow_arms;
        slow_arms.origin_distance.measure = rules::OriginMeasure::creep;
        slow_arms.origin_distance.arm_to = Length{400'000};
        int judged = 0;
        for (std::uint32_t number = 0; number < 25; ++number) {
            growth::Site site;
            site.seed = 500 + number;
            site.age = 3 + static_cast<int>(number) % 17;
            site.spacing_m = 1.2 + 0.3 * (number % 5);
            site.pruner = static_cast<Pruner>(number % 6);
            site.vigour = static_cast<Vigour>(number % 3);
            site.head_below_mm = 60 + 40 * (number % 6);
            const auto vine = growth::grow_vine(site);
            REQUIRE(vine.has_value());
            const Attempts attempts =
                attempts_on(*vine, number % 2 == 0 ? rules::HouseRules{} : slow_arms, 100 + number, 100);
            CAPTURE(number);
            CAPTURE(attempts.first);
            CHECK(attempts.beaten == 0);
            judged += attempts.judged;
        }
        CHECK(judged > 3'500);
    }
}
