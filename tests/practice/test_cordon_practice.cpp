// A cordon pruned by hand, from the first look to the look back: its own steps, its own words, its best plan watched.
#include <doctest/doctest.h>

#include "scenarios/practice/practice.h"
#include "scenarios/practice/open_vine.h"
#include "scenarios/words/load_words.h"
#include "sim/planning/cordon.h"
#include "sim/vine/canonical_text.h"
#include "tests/support/cordons.h"
#include "tests/support/grown.h"

using namespace spurwright;
using practice::Practice;
using practice::Step;

namespace {

Practice cordon(std::uint32_t seed) {
    return Practice({test::grown(System::cordon, seed, 6 + static_cast<int>(seed % 12), 1.8), "", "", "spur-cordon", test::spur_cordon(), {}});
}

const practice::StepSaid& of(const Practice& vine, Step step) { return vine.strip()[static_cast<std::size_t>(step)]; }

}  // namespace

TEST_CASE("the steps of a cordon are look, choose, clear, spurs and look back; nothing is cut to length and nothing laid") {
    const Practice vine = cordon(1);
    CHECK(vine.tape == Role::spur);
    CHECK(vine.asked_row_spurs() > 4);
    for (const Step step : {Step::look, Step::choose, Step::clear, Step::spurs, Step::look_back}) CHECK(of(vine, step).asked);
    for (const Step step : {Step::lengths, Step::lay_and_tie}) CHECK_FALSE(of(vine, step).asked);
    CHECK(practice::step_after(vine.strip(), Step::spurs) == Step::look_back);
    CHECK(practice::step_after(vine.strip(), Step::look) == Step::choose);
    CHECK(vine.next() == Step::look);
}

TEST_CASE("no cane is laid on a cordon: refused by name, and the vine stays as it was") {
    Practice vine = cordon(2);
    const planning::BestCordon best = planning::best_of_cordon(vine.start(), vine.task().house);
    const auto refused = vine.act(Lay{best.choice[0].at(0).axis, Side::left, 2});
    REQUIRE_FALSE(refused.has_value());
    CHECK(refused.error().key.name == "error.practice.cordon-lays-none");
    CHECK(vine.done_count() == 0);
}

TEST_CASE("the best plan of a cordon carried out act by act leaves every step done, and the look back finds nothing to charge") {
    for (std::uint32_t seed = 1; seed <= 8; ++seed) {
        Practice vine = cordon(seed);
        const planning::BestCordon best = planning::best_of_cordon(vine.start(), vine.task().house);
        CHECK(vine.asked_row_spurs() == rules::asked(vine.start(), vine.task().house).spurs());
        for (const Edit& edit : best.plan.edits) {
            REQUIRE(vine.act(edit).has_value());
            if (vine.waiting()) REQUIRE(vine.confirm().has_value());
        }
        for (const practice::StepSaid& said : vine.strip())
            if (said.step != Step::look_back) CHECK_MESSAGE(said.done, seed, " ", word_of(said.step));
        vine.finish();
        vine.add_plans(practice::search_plans(vine.start(), vine.task().house));
        const practice::LookBack& look = *vine.look();
        CHECK(look.mine.points == best.points);
        CHECK(look.plans->best().points == best.points);
        CHECK(look.plans->best().plan == best.plan);
        CHECK(look.tally.better == 0);
        CHECK(look.mine_as_good);
        CHECK(look.plans->as_good_count >= look.plans->as_good.size());
        CHECK(look.charged->charges.edits.empty());
        CHECK_FALSE(look.charged->charges.mending.has_value());
        CHECK(look.twins[0].size() == best.choice[0].size() + best.choice[1].size());
        for (const practice::Twin& twin : look.twins[0]) CHECK(twin.spur);
    }
}

TEST_CASE("the best plan of a cordon watched to the end is the best plan, and every act has its reason in both languages") {
    const io::Assets assets(std::string(SPURWRIGHT_SOURCE) + "/assets");
    int rows = 0;
    for (std::uint32_t seed = 1; seed <= 6; ++seed) {
        Practice vine = cordon(seed);
        vine.add_plans(practice::search_plans(vine.start(), vine.task().house));
        REQUIRE(vine.watch().has_value());
        const auto pruned = prune(vine.start(), vine.plans()->best().plan);
        for (const practice::WatchedAct& act : vine.watching()->acts()) {
            REQUIRE_FALSE(act.why.empty());
            CHECK_FALSE(act.why.front().lacks);
            CHECK(act.step != Step::lengths);
            CHECK(act.step != Step::lay_and_tie);
            for (const practice::Reason& why : act.why) {
                rows += why.key.name == "watch.off.beside" || why.key.name == "watch.off.same-place";
                for (const std::string_view language : {"en", "es"}) {
                    const auto words = words::load_words(assets, std::string(language));
                    CHECK_FALSE(words->sentence(why.key, why.arguments).starts_with("["));
                }
            }
        }
        while (vine.watching()->shown()) vine.watch_next();
        CHECK(vine_hash(vine.now()) == vine_hash(*pruned));
    }
    CHECK(rows > 0);
}

TEST_CASE("a code of a cordon opens under the house's way with cordons, and the row goes on with cordons") {
    const io::Assets assets(std::string(SPURWRIGHT_SOURCE) + "/assets");
    std::uint64_t seed = 40;
    const auto code = practice::next_code([&] { return ++seed; }, System::cordon);
    REQUIRE(code.has_value());
    const auto opened = practice::open_code(assets, *code, "general");
    REQUIRE(opened.has_value());
    CHECK(opened->task.vine.system == System::cordon);
    CHECK(opened->task.house_name == "spur-cordon");
}
