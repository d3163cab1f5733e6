// Strength, difficulty and what counts prove, held to published worked examples and to arithmetic that can be repeated.
#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <limits>
#include <tuple>

#include "scenarios/learning/success.h"
#include "sim/core/random.h"

using namespace spurwright;
using namespace spurwright::learning;

namespace {

double drawn(std::uint32_t part, double low, double high) { return low + (high - low) * static_cast<double>(draw(7, 1, part) >> 11) / 9007199254740992.0; }

}  // namespace

TEST_CASE("Glicko-2's worked example [glickman-2022]: 1464.06, 151.52, 0.05999") {
    const Strength after = after_period({1500, 200, 0.06}, {{{1400, 30, 0.06}, 1}, {{1550, 100, 0.06}, 0}, {{1700, 300, 0.06}, 0}});
    CHECK(std::abs(after.rating - 1464.06) < 0.02);
    CHECK(std::abs(after.deviation - 151.52) < 0.02);
    CHECK(std::abs(after.volatility - 0.05999) < 0.00001);
}

TEST_CASE("a period without an answer only makes it less sure: 200 to 200.271 (computed from the note's step 6)") {
    const Strength after = after_period({1500, 200, 0.06}, {});
    CHECK(after.rating == 1500);
    CHECK(std::abs(after.deviation - 200.271) < 0.001);
    CHECK(after.volatility == 0.06);
}

TEST_CASE("a right answer never lowers strength, a wrong one never raises it, whatever the item; all stays finite, in any order") {
    for (std::uint32_t i = 0; i < 3000; ++i) {
        const Strength one{drawn(5 * i, 400, 2800), drawn(5 * i + 1, 30, 350), drawn(5 * i + 2, 0.02, 0.3)};
        const Strength item{drawn(5 * i + 3, 400, 2800), drawn(5 * i + 4, 30, 350), 0.06};
        const Strength right = after_period(one, {{item, 1}}), wrong = after_period(one, {{item, 0}});
        CHECK(right.rating >= one.rating);
        CHECK(wrong.rating <= one.rating);
        CHECK(std::isfinite(right.rating + right.deviation + right.volatility + wrong.rating + wrong.deviation + wrong.volatility));
        const std::vector<Met> met{{item, 1}, {{1500, 80, 0.06}, 0}, {{1700, 60, 0.06}, 0.5}}, turned(met.rbegin(), met.rend());
        CHECK(std::abs(after_period(one, met).rating - after_period(one, turned).rating) < 1e-6);
        const double p = expected_score(one, item);
        CHECK(p >= 0.001);
        CHECK(p <= 0.999);
    }
    const double none = std::numeric_limits<double>::quiet_NaN(), endless = std::numeric_limits<double>::infinity();
    for (const double odd : {none, endless, -endless, 1e300, 0.0, -1.0}) {
        const Strength after = after_period({odd, odd, odd}, {{{odd, odd, odd}, odd}}, odd);
        CHECK(std::isfinite(after.rating + after.deviation + after.volatility));
    }
}

TEST_CASE("many answers bring a strength near the true one, and it says how sure it is") {
    // A trainee whose true strength is 1700 meets items of every difficulty, ten a period, forty periods.
    Strength strength;
    const Strength truth{1700, 30, 0.06};
    for (std::uint32_t period = 0; period < 40; ++period) {
        std::vector<Met> met;
        for (std::uint32_t i = 0; i < 10; ++i) {
            const Strength item{drawn(10'000 + 20 * period + 2 * i, 1300, 2000), 30, 0.06};
            const double p = 1 / (1 + std::exp(-(truth.rating - item.rating) / 173.7178));
            met.push_back({item, drawn(10'001 + 20 * period + 2 * i, 0, 1) < p ? 1.0 : 0.0});
        }
        strength = after_period(strength, met);
    }
    CHECK(std::abs(strength.rating - truth.rating) < 2 * strength.deviation);
    CHECK(strength.deviation < 80);
}

TEST_CASE("the two-parameter model [birnbaum-1968]: a 1.5, b 0.5 (computed)") {
    for (const auto& [theta, p, information] : {std::tuple{-1.0, 0.09535, 0.19408}, std::tuple{0.0, 0.32082, 0.49026}, std::tuple{1.0, 0.67918, 0.49026}}) {
        CHECK(std::abs(two_pl(theta, 1.5, 0.5) - p) < 1e-5);
        CHECK(std::abs(two_pl_information(theta, 1.5, 0.5) - information) < 1e-5);
    }
    CHECK(two_pl(1e9, 1, 0) == 0.999);
    CHECK(two_pl(-1e9, 1, 0) == 0.001);
}

TEST_CASE("difficulty from the margin (our choice, computed): 1 to 32 points give 1.5 to -2.25, and 0.182 to 0.905 right at ability 0") {
    double b = 1.5;
    const std::array<double, 6> right{0.182, 0.321, 0.500, 0.679, 0.818, 0.905};
    for (std::size_t i = 0; i < right.size(); ++i, b -= 0.75) {
        const double found = prior_difficulty({Tenths{10 << i}, 4, false, false});
        CHECK(std::abs(found - b) < 1e-12);
        CHECK(std::abs(two_pl(0, 1, found) - right[i]) < 5e-4);
    }
    CHECK(std::abs(prior_difficulty({Tenths{40}, 6, true, true}) - 1.4) < 1e-12);
    CHECK(std::isfinite(prior_difficulty({Tenths{0}, 4, false, false})));
}

TEST_CASE("guessing (computed): 0.85 right of two answers is 0.70 known, of four 0.80; the difficulty that is wanted for it") {
    CHECK(std::abs(*known_share(0.85, 2) - 0.70) < 1e-12);
    CHECK(std::abs(*known_share(0.85, 4) - 0.80) < 1e-12);
    CHECK_FALSE(known_share(0.2, 4));
    for (const auto& [known, logit] : {std::pair{0.80, 1.386}, std::pair{0.85, 1.735}, std::pair{0.90, 2.197}}) CHECK(std::abs(wanted_difficulty(0, known) + logit) < 5e-4);
    CHECK(std::abs(with_guessing(0.7, 2) - 0.85) < 1e-12);
}

TEST_CASE("a loss as a share of a win (our choice, computed)") {
    for (const auto& [points, score] : {std::pair{0, 1.0}, std::pair{1, 0.96079}, std::pair{2, 0.92312}, std::pair{5, 0.81873}, std::pair{10, 0.67032}, std::pair{20, 0.44933}, std::pair{40, 0.20190}})
        CHECK(std::abs(graded_outcome(Tenths{10 * points}) - score) < 1e-5);
}

TEST_CASE("18 of 20 prove 70 to 97 % [wilson-1927], (computed) 0.699 to 0.972; nothing proves nothing") {
    const ShareInterval found = wilson(18, 20);
    CHECK(std::abs(found.low - 0.699) < 5e-4);
    CHECK(std::abs(found.high - 0.972) < 5e-4);
    CHECK(wilson(0, 0).low == 0);
    CHECK(wilson(0, 0).high == 1);
    CHECK(wilson(20, 20).high == 1);
}

TEST_CASE("how well somebody knows what they know [brier-1950]: sure and right, fairly and wrong, guessing and right: 0.271667 (computed)") {
    CHECK(std::abs(*brier({{0.95, true}, {0.75, false}, {0.50, true}}) - 0.271667) < 1e-6);
    CHECK_FALSE(brier({}));
}

TEST_CASE("predicted against found: simulated learners in ten bins lie within 5 points of 100 at 2,000 answers") {
    // Abilities and items drawn; answers by the model with guessing left out: what is tested is the arithmetic of both scales.
    std::array<double, 10> said{}, came{};
    std::array<int, 10> many{};
    for (std::uint32_t i = 0; i < 20'000; ++i) {
        const Strength learner{drawn(100'000 + 3 * i, 1200, 1900), 30, 0.06};
        const double b = drawn(100'001 + 3 * i, -2, 2), p = two_pl(ability_of(learner), 1, b);
        const auto bin = static_cast<std::size_t>(std::min(9.0, p * 10));
        said[bin] += p;
        came[bin] += drawn(100'002 + 3 * i, 0, 1) < p ? 1 : 0;
        ++many[bin];
    }
    for (std::size_t bin = 0; bin < 10; ++bin) {
        REQUIRE(many[bin] > 300);
        CHECK(std::abs(said[bin] - came[bin]) / many[bin] < 0.05);
    }
}
