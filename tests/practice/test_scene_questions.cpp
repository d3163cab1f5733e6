// What scenes ask before the first cut: each key worked out again by a way of its own, on every vine of the scenes that ask.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "scenarios/practice/open_vine.h"
#include "scenarios/practice/practice.h"
#include "scenarios/practice/vine_requests.h"
#include "scenarios/words/load_words.h"
#include "sim/planning/eye_noise.h"
#include "sim/rules/judge.h"
#include "sim/vine/vine_query.h"
#include "tests/support/grown.h"

using namespace spurwright;
using practice::Practice;
using practice::Question;
namespace ask = practice::ask;

namespace {

const io::Assets assets(std::string(SPURWRIGHT_SOURCE) + "/assets");

Practice scene(const std::string& name, std::size_t number) {
    auto opened = practice::open_scene(assets, name, number);
    REQUIRE(opened.has_value());
    return Practice(std::move(opened->task));
}

std::vector<Question> asked_of(const Practice& vine) {
    return practice::scene_questions(vine.start(), vine.task().house, vine.task().asks, vine.task().tag);
}

std::int64_t number(const practice::Worded& worded, std::string_view gap = "n") {
    for (const Named& named : worded.arguments)
        if (named.gap == gap) return std::get<Count>(named.value).value;
    FAIL("no number");
    return 0;
}
AxisId part(const practice::Worded& worded, std::string_view gap = "part") {
    for (const Named& named : worded.arguments)
        if (named.gap == gap) return std::get<AxisId>(named.value);
    FAIL("no part");
    return {};
}

}  // namespace

TEST_CASE("the weak vine: 0.30 kg ask for 13 buds by 20+20 [smith-2023], its space for 24, so it is cut short") {
    for (std::size_t i = 0; i < 5; ++i) {
        const Practice vine = scene("weak-vine", i);
        REQUIRE(vine.task().tag == Mass{300'000});
        const auto all = asked_of(vine);
        REQUIRE(all.size() == 4);
        CHECK(all[0].answers[all[0].right].key.name == "question.job.short");
        CHECK(number(all[1].answers[all[1].right]) == 13);  // 20 x 0.30 / 0.4536 = 13.2
        CHECK(number(all[2].answers[all[2].right]) == 24);  // 15 x 1.6
        CHECK(number(all[3].answers[all[3].right]) == 13);
        CHECK(number(all[3].answers[all[3].right]) == vine.asked_buds());  // as the block sheet has it
    }
}

TEST_CASE("the tight space: 1.5 kg ask for 66 buds by 20+20 [smith-2023], its space for 21, and the supervisor is told") {
    for (std::size_t i = 0; i < 5; ++i) {
        const Practice vine = scene("tight-space", i);
        const auto all = asked_of(vine);
        REQUIRE(all.size() == 4);
        CHECK(number(all[0].answers[all[0].right]) == 66);  // 20 + 20 x (1.5 - 0.4536) / 0.4536 = 66.1
        CHECK(number(all[1].answers[all[1].right]) == 21);  // 15 x 1.4
        CHECK(number(all[2].answers[all[2].right]) == vine.asked_buds());
        CHECK(all[3].answers[all[3].right].key.name == "question.tell.above");
        for (std::size_t q = 0; q < 3; ++q)
            for (std::size_t a = 1; a < all[q].answers.size(); ++a) CHECK(number(all[q].answers[a - 1]) < number(all[q].answers[a]));
    }
}

TEST_CASE("where is the spur: the cane named right allows more than the other by more than an eye can be out") {
    int asked = 0;
    for (std::size_t i = 0; i < 5; ++i) {
        const Practice vine = scene("spur-place", i);
        const auto all = asked_of(vine);
        REQUIRE_FALSE(all.empty());
        CHECK(all.back().answers[all.back().right].key.name == "question.when.together");
        if (all.size() < 2) continue;
        ++asked;
        const Question& which = all[0];
        REQUIRE(which.answers.size() == 2);
        const AxisId right = part(which.answers[which.right]), wrong = part(which.answers[1 - which.right]);
        // By the plans themselves, carried out and judged.
        const planning::Planning planning(vine.start(), vine.task().house);
        Tenths most_right, most_wrong;
        std::optional<Plan> best;
        for (const Side side : both_sides)
            for (const AxisId cane : {right, wrong}) {
                if (vine.start().find(cane)->side != side) continue;
                const auto plan = planning.best_laying(cane, side);
                REQUIRE(plan.has_value());
                const auto after = prune(vine.start(), plan->plan);
                const Tenths points = rules::judge(vine.start(), *after, vine.task().house).points;
                (cane == right ? most_right : most_wrong) = points;
                if (cane == right) best = plan->plan;
            }
        REQUIRE(best.has_value());
        CHECK(most_right - most_wrong > planning::tolerance(vine.start(), vine.task().house, *best));
        // The further one, as the scene teaches: the near, low one is kept as the spur.
        CHECK(distance_to_head(vine.start(), *vine.start().find(right)) > distance_to_head(vine.start(), *vine.start().find(wrong)));
    }
    CHECK(asked >= 4);
}

TEST_CASE("the climbed head: four cuts of the best plan, more than one tool among them, each the one its thickness wants") {
    for (std::size_t i = 0; i < 5; ++i) {
        const Practice vine = scene("climbed-head", i);
        const auto all = asked_of(vine);
        REQUIRE(all.size() == 4);
        std::vector<std::size_t> tools;
        for (const Question& one : all) {
            Length thick, shears, loppers;
            for (const Named& named : one.why.arguments) {
                if (named.gap == "measured") thick = std::get<Length>(named.value);
                if (named.gap == "shears") shears = std::get<Length>(named.value);
                if (named.gap == "loppers") loppers = std::get<Length>(named.value);
            }
            CHECK(one.right == (thick <= shears ? 0u : thick <= loppers ? 1u : 2u));
            for (const Length edge : {shears, loppers}) CHECK(std::abs((thick - edge).count) >= 2'000);  // no eye is out so far
            const Node* cut = vine.start().find(one.spot.node);
            REQUIRE(cut != nullptr);
            if (std::find(tools.begin(), tools.end(), one.right) == tools.end()) tools.push_back(one.right);
        }
        CHECK(tools.size() > 1);
    }
}

TEST_CASE("one question at a time, the first answer stands, and nothing of it is an act") {
    Practice vine = scene("weak-vine", 0);
    REQUIRE(vine.begin_questions().has_value());
    CHECK(vine.hand_rests());
    (void)practice::carry_out_on(vine, ask::QuestionNext{});
    CHECK(vine.questions()->at() == 0);  // not from an unanswered one
    (void)practice::carry_out_on(vine, ask::SayAnswer{9});
    CHECK_FALSE(vine.questions()->answered());
    for (std::size_t i = 0; i < 4; ++i) {
        const std::size_t right = vine.questions()->here()->right, said = i == 0 ? right : (right + 1) % vine.questions()->here()->answers.size();
        (void)practice::carry_out_on(vine, ask::SayAnswer{said});
        (void)practice::carry_out_on(vine, ask::SayAnswer{right});
        CHECK(vine.questions()->here()->said == said);
        (void)practice::carry_out_on(vine, ask::QuestionNext{});
    }
    CHECK(vine.questions()->here() == nullptr);
    CHECK(vine.questions()->right() == 1);
    (void)practice::carry_out_on(vine, ask::QuestionNext{});
    CHECK_FALSE(vine.questions().has_value());
    CHECK(vine.done_count() == 0);
}

TEST_CASE("a vine without questions says so; a tag is needed for the numbers") {
    Practice plain({test::grown(System::two_cane, 3, 9, 1.8), "", "", "general", {}, {}});
    CHECK_FALSE(plain.begin_questions().has_value());
    CHECK(practice::scene_questions(plain.start(), {}, {scenes::Ask::by_weight, scenes::Ask::job, scenes::Ask::tell}, std::nullopt).empty());
    // By each strength its own job.
    const auto job = [&](int grams) { return practice::scene_questions(plain.start(), {}, {scenes::Ask::job}, Mass{grams * 1'000}).at(0).right; };
    CHECK(job(300) == 1);
    CHECK(job(600) == 0);  // 26 buds by weight, 22 to 31 by space
    CHECK(job(2'000) == 2);
}

TEST_CASE("every sentence of every question exists in both languages, without a gap left open") {
    for (const std::string name : {"weak-vine", "tight-space", "spur-place", "climbed-head"})
        for (const std::string_view language : {"en", "es"}) {
            const auto words = words::load_words(assets, std::string(language));
            for (std::size_t i = 0; i < 5; ++i)
                for (const Question& one : asked_of(scene(name, i))) {
                    std::vector<practice::Worded> all = one.answers;
                    all.push_back(one.asks);
                    all.push_back(one.why);
                    for (const practice::Worded& worded : all) {
                        const std::string said = words->sentence(worded.key, worded.arguments);
                        CHECK_FALSE(said.starts_with("["));
                        CHECK(said.find('{') == std::string::npos);
                    }
                }
        }
}
