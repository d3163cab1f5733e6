// The crew's four words, what is mixed up, the plot and which look comes next: from answers written by hand.
#include <doctest/doctest.h>

#include <map>

#include "scenarios/drill/progress.h"

using namespace spurwright;
using namespace spurwright::drill;

namespace {

// `text`: a letter an answer, + right, - wrong, of wood age with the word 0 meant and 1 said.
LookAnswers answers(const std::string& text, std::int32_t day = 1, std::int64_t ms = 2'000, Skill skill = Skill::wood_age) {
    LookAnswers all;
    for (const char c : text) all.push_back({skill, 0, c == '+' ? 0u : 1u, ms, day});
    return all;
}
LookAnswers joined(LookAnswers a, const LookAnswers& b) {
    a.insert(a.end(), b.begin(), b.end());
    return a;
}
Mastery mastery(const LookAnswers& all, std::int32_t today) { return progress_of(all, Skill::wood_age, today).mastery; }

} // namespace

TEST_CASE("new, with help, alone, needs a look (our choice)") {
    CHECK(mastery({}, 1) == Mastery::fresh);
    CHECK(mastery(answers("+"), 1) == Mastery::with_help);
    CHECK(mastery(answers("++++++++++++++++++++"), 1) == Mastery::with_help); // one day is not enough
    const LookAnswers two_days = joined(answers("++++++++++"), answers("++++++++++", 2));
    CHECK(mastery(two_days, 2) == Mastery::alone);
    CHECK(mastery(joined(two_days, answers("-", 2)), 2) == Mastery::alone);        // 19 of the last 20
    CHECK(mastery(joined(two_days, answers("--+++++++", 2)), 2) == Mastery::alone); // 18 of 20, none of the last five
    CHECK(mastery(joined(two_days, answers("---++++++", 2)), 2) == Mastery::with_help);
    CHECK(mastery(joined(answers("++++++++++", 1, 5'000), answers("++++++++++", 2, 5'000)), 2) == Mastery::with_help); // right, and slow: 5 s for 3
    CHECK(mastery(joined(two_days, answers("-+-", 2)), 2) == Mastery::needs_a_look);
    CHECK(mastery(two_days, 15) == Mastery::alone);
    CHECK(mastery(two_days, 16) == Mastery::needs_a_look); // 14 days not met
    CHECK(mastery(joined(answers("---"), answers("----", 2)), 2) == Mastery::with_help); // too few to name a weakness
}

TEST_CASE("what is mixed up is counted both ways round, in the last 30, most often first") {
    LookAnswers all{{Skill::wood_age, 0, 1, 1'000, 1}, {Skill::wood_age, 1, 0, 1'000, 1}, {Skill::wood_age, 2, 1, 1'000, 1}};
    const auto found = progress_of(all, Skill::wood_age, 1).confused;
    REQUIRE(found.size() == 2);
    CHECK(found[0] == Confused{0, 1, 2});
    CHECK(found[1] == Confused{1, 2, 1});
    CHECK(progress_of(joined(all, answers(std::string(30, '+'))), Skill::wood_age, 1).confused.empty());
}

TEST_CASE("the plot: a point for ten looks, the last one from five on, the median time") {
    CHECK(plot_of(answers("++++"), {}).empty());
    LookAnswers all = joined(answers("++++++++--", 1, 3'000), answers("+++++", 1, 1'000));
    const auto points = plot_of(all, Skill::wood_age);
    REQUIRE(points.size() == 2);
    CHECK(points[0].share == doctest::Approx(0.8));
    CHECK(points[0].seconds == doctest::Approx(3));
    CHECK(points[1].share == doctest::Approx(1));
    CHECK(points[1].seconds == doctest::Approx(1));
    CHECK(plot_of(all, Skill::joints).empty());
}

TEST_CASE("a new skill begins with six looks of its own, then all are mixed") {
    const std::vector<Skill> on{Skill::wood_age, Skill::joints};
    LookAnswers all;
    std::map<Skill, int> asked;
    for (int i = 0; i < 60; ++i) {
        const NextLook next = next_look(all, all.size(), on, static_cast<std::uint64_t>(i) + 1);
        if (i > 0 && i < 6) CHECK(next.skill == all.front().skill);
        ++asked[next.skill];
        all.push_back({next.skill, next.wanted, next.wanted, 1'500, 1});
    }
    CHECK(asked[Skill::wood_age] >= 15);
    CHECK(asked[Skill::joints] >= 15);
}

TEST_CASE("what went wrong comes back after four others, three times a sitting at most") {
    const std::vector<Skill> on{Skill::wood_age};
    LookAnswers all = answers("++++++-+++");
    CHECK(next_look(all, all.size(), on, 3).why == Why::weakest); // four others have to lie between
    all = answers("++++++-++++");
    const NextLook next = next_look(all, all.size(), on, 3);
    CHECK(next.why == Why::again);
    CHECK(next.wanted == 0);
    CHECK(next_look(all, 3, on, 3).why != Why::again); // of an earlier sitting
    CHECK(next_look(answers("++++++-+++++"), 12, on, 3).why != Why::again); // the same word was asked again
    // Five wrong ones, each answered well when it comes back: it comes back three times, no more.
    all = answers("++++++");
    LookAnswers wrong{{Skill::wood_age, 1, 2, 1'000, 1}, {Skill::wood_age, 2, 1, 1'000, 1}, {Skill::wood_age, 0, 1, 1'000, 1}, {Skill::wood_age, 1, 0, 1'000, 1}, {Skill::wood_age, 2, 0, 1'000, 1}};
    all = joined(all, wrong);
    int back = 0;
    for (int i = 0; i < 30; ++i) {
        const NextLook one = next_look(all, all.size(), on, static_cast<std::uint64_t>(i));
        back += one.why == Why::again;
        all.push_back({one.skill, one.wanted, one.wanted, 1'000, 1});
    }
    CHECK(back <= 3);
    CHECK(back >= 1);
}

TEST_CASE("two words mixed up three times in the last 30 are shown side by side, not at every turn") {
    const std::vector<Skill> on{Skill::wood_age, Skill::joints};
    LookAnswers all = joined(answers("---+++"), answers("++++++++", 1, 2'000, Skill::joints));
    const NextLook next = next_look(all, 8, on, 1);
    CHECK(next.why == Why::side_by_side);
    CHECK(next.skill == Skill::wood_age);
    REQUIRE(next.beside);
    CHECK(next.wanted + *next.beside == 1);
    all = joined(all, answers("+"));
    CHECK(next_look(all, 8, on, 1).why != Why::side_by_side);
}

TEST_CASE("the weaker skill comes more often, the stronger not never; no word is right three times running") {
    const std::vector<Skill> on{Skill::wood_age, Skill::joints};
    LookAnswers all = joined(answers(std::string(20, '+')), answers("+-+-+-+-+-+-+-+-+-+-", 1, 2'000, Skill::joints));
    CHECK(expected_right(all, Skill::wood_age) > expected_right(all, Skill::joints) + 0.1);
    std::map<Skill, int> asked;
    for (std::uint64_t seed = 1; seed <= 400; ++seed) ++asked[next_look(all, 0, on, seed).skill];
    CHECK(asked[Skill::joints] > asked[Skill::wood_age]);
    CHECK(asked[Skill::wood_age] > 20);
    LookAnswers row = answers("++++++++");
    for (std::uint64_t seed = 1; seed <= 60; ++seed) CHECK(next_look(row, 0, {Skill::wood_age}, seed).wanted != 0);
}
