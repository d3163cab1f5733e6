// How a vine begins and ends: the look back asks where nothing is cut yet and can be gone back from; every second vine that
// would be told about step by step goes without a word; a vine past a scene's own is sought beside the picture.
#include <doctest/doctest.h>

#include <chrono>
#include <thread>

#include "scenarios/practice/session.h"
#include "scenarios/scenes/drawn_vine.h"
#include "sim/pruning/plan_text.h"
#include "sim/vine/canonical_text.h"
#include "sim/vine/vine_query.h"
#include "tests/support/folder.h"

using namespace spurwright;
using namespace spurwright::practice;

namespace {

const io::Assets between_assets(std::string(SPURWRIGHT_SOURCE) + "/assets");

std::unique_ptr<Session> session_in(const test::Folder& here) {
    std::uint64_t seed = 5;
    const settings::Folders folders{here.file("settings.json"), here.file("work"), here.file("house.json"), here.file("store.sqlite")};
    auto session = Session::make(between_assets, folders, {}, [seed]() mutable { return seed++; });
    REQUIRE(session.has_value());
    (*session)->carry_out(ask::SafetySeen{});
    return *std::move(session);
}

void await_grown(Session& session) {
    for (int i = 0; i < 6'000 && session.shell().growing; ++i) {
        (void)session.poll();
        std::this_thread::sleep_for(std::chrono::milliseconds(10));
    }
    REQUIRE_FALSE(session.shell().growing.has_value());
}

}  // namespace

TEST_CASE("with tapes alone the look back asks once; no goes on with them, yes looks back, and from there one goes on pruning") {
    const test::Folder here;
    const auto session = session_in(here);
    session->carry_out(ask::OpenScene{"first", 0});
    session->carry_out(ask::WatchOwn{});
    const AxisId cane = cane_candidates(session->practice()->start()).front();
    session->carry_out(ask::MarkAs{cane, Role::left});
    for (int time = 0; time < 2; ++time) {
        if (time == 0) session->carry_out(ask::GoToStep{Step::look_back});
        else
            while (!session->practice()->waiting()) session->carry_out(ask::NextStep{});  // the strip's way
        CHECK_FALSE(session->practice()->finished());
        REQUIRE(session->practice()->waiting().has_value());
        CHECK(session->practice()->waiting()->key == TextKey{"act.warn.nothing-cut"});
        CHECK_FALSE(session->practice()->waiting()->edit.has_value());
        session->carry_out(ask::TakeBack{});
        CHECK_FALSE(session->practice()->waiting().has_value());
        CHECK(session->practice()->done_count() == 1);
    }
    session->carry_out(ask::GoToStep{Step::look_back});
    session->carry_out(ask::MarkAs{cane, Role::spur});  // going on with the work is an answer too
    CHECK_FALSE(session->practice()->waiting().has_value());
    CHECK(session->practice()->done_count() == 2);
    CHECK(session->shell().walked.empty());
    const std::string plan = print_plan(session->practice()->done());
    session->carry_out(ask::GoToStep{Step::look_back});
    session->carry_out(ask::Confirm{});
    CHECK(session->practice()->finished());
    CHECK(session->shell().walked.size() == 1);
    session->carry_out(ask::GoOnPruning{});
    CHECK_FALSE(session->practice()->finished());
    CHECK(print_plan(session->practice()->done()) == plan);
    session->carry_out(ask::Undo{});
    CHECK(session->practice()->done_count() == 1);
    session->carry_out(ask::Redo{});
    CHECK(print_plan(session->practice()->done()) == plan);
}

TEST_CASE("with a cut, a laid cane or a tie the look back asks nothing; acts made before the vine was handed over do not count") {
    const test::Folder here;
    const auto session = session_in(here);
    session->carry_out(ask::OpenScene{"first", 0});
    const AxisId cane = cane_candidates(session->practice()->start()).front();
    session->carry_out(ask::LayTo{cane, session->practice()->start().find(cane)->side});
    REQUIRE(session->practice()->done_count() == 1);
    session->carry_out(ask::GoToStep{Step::look_back});
    CHECK(session->practice()->finished());
    session->carry_out(ask::OpenScene{"snapped-cane", 1});
    REQUIRE(session->practice()->done_count() == 2);
    session->carry_out(ask::GoToStep{Step::look_back});
    CHECK_FALSE(session->practice()->finished());
    CHECK(session->practice()->waiting().has_value());
}

TEST_CASE("told after each step, every second vine of a sitting goes without a word, and whoever sits down begins with one that is told") {
    const test::Folder here;
    const auto session = session_in(here);
    session->carry_out(ask::OpenScene{"first", 0});  // before it was asked for: does not count
    session->carry_out(ask::StepFeedback{true});
    CHECK(session->practice()->step_feedback);
    for (std::size_t vine = 1; vine <= 6; ++vine) {
        CAPTURE(vine);
        session->carry_out(ask::OpenScene{"first", vine % 5});
        const Practice& practice = *session->practice();
        CHECK(practice.silent == (vine % 2 == 0));
        CHECK(practice.step_feedback != practice.silent);
        const AxisId cane = cane_candidates(practice.start()).back();
        session->carry_out(ask::MarkAs{cane, Role::left});
        if (practice.silent) CHECK(practice.feedback(Step::choose).empty());
        session->carry_out(ask::CutAgain{});
        CHECK(practice.silent == (vine % 2 == 0));  // the same vine again
    }
    session->carry_out(ask::OpenScene{"first", 2});
    session->carry_out(ask::Seat{});
    session->carry_out(ask::SitsNew{});
    session->carry_out(ask::OpenScene{"first", 3});
    CHECK_FALSE(session->practice()->silent);
    session->carry_out(ask::OpenScene{"first", 4});
    CHECK(session->practice()->silent);
    session->carry_out(ask::StepFeedback{true});  // asked for on this very vine
    CHECK_FALSE(session->practice()->silent);
    CHECK(session->practice()->step_feedback);
    session->carry_out(ask::StepFeedback{false});
    for (int vine = 0; vine < 2; ++vine) {
        session->carry_out(ask::OpenScene{"first", 1});
        CHECK_FALSE(session->practice()->silent);
        CHECK_FALSE(session->practice()->step_feedback);
    }
}

TEST_CASE("on the ladder the whole vine with its steps told is silent every second time; rungs whose words explain each step never are") {
    const test::Folder here;
    const auto session = session_in(here);
    session->carry_out(ask::Ladder{});
    for (int vine = 1; vine <= 4; ++vine) {
        session->carry_out(ask::LadderVine{0, 5});
        CHECK(session->practice()->silent == (vine % 2 == 0));
        session->carry_out(ask::LadderVine{0, 2});
        CHECK_FALSE(session->practice()->silent);
        CHECK(session->practice()->step_feedback);
        session->carry_out(ask::LadderVine{0, 6});
        CHECK_FALSE(session->practice()->silent);
        CHECK_FALSE(session->practice()->step_feedback);
    }
}

TEST_CASE("a vine past a scene's own is sought beside the picture: told how far, the same vine as ever, left at will") {
    const test::Folder here;
    const auto session = session_in(here);
    session->carry_out(ask::OpenScene{"first", 0});
    const std::uint64_t in_hand = session->vine_number();
    session->carry_out(ask::OpenScene{"first", 7});
    REQUIRE(session->shell().growing.has_value());
    CHECK(session->works());
    CHECK(session->shell().growing->of == scenes::most_drawn);
    CHECK(session->vine_number() == in_hand);
    const auto tried = session->shell().growing->tried;
    await_grown(*session);
    CHECK(session->vine_number() > in_hand);
    CHECK(session->practice()->task().scene_number == 7);
    CHECK(*tried < scenes::most_drawn);
    const auto same = open_scene(between_assets, "first", 7);
    REQUIRE(same.has_value());
    CHECK(vine_hash(same->task.vine) == vine_hash(session->practice()->start()));

    session->carry_out(ask::OpenScene{"first", 8});
    session->carry_out(ask::StopGrowing{});
    CHECK_FALSE(session->shell().growing.has_value());
    session->carry_out(ask::OpenScene{"first", 9});  // asked while the one before is still being grown
    await_grown(*session);
    CHECK(session->practice()->task().scene_number == 9);
    session->carry_out(ask::OpenScene{"first", 10});
    session->carry_out(ask::OpenScene{"first", 1});  // at hand at once: what was sought is not wanted any more
    CHECK_FALSE(session->shell().growing.has_value());
    CHECK(session->practice()->task().scene_number == 1);
    std::this_thread::sleep_for(std::chrono::milliseconds(200));
    (void)session->poll();
    CHECK(session->practice()->task().scene_number == 1);
}

TEST_CASE("work on a sought vine is offered until it is there; left, it is still offered; taken up, it is the same work") {
    const test::Folder here;
    std::string plan;
    {
        const auto session = session_in(here);
        session->carry_out(ask::OpenScene{"spur-place", 6});
        await_grown(*session);
        session->carry_out(ask::MarkAs{cane_candidates(session->practice()->start()).front(), Role::left});
        plan = print_plan(session->practice()->done());
    }
    const auto again = session_in(here);
    REQUIRE(again->shell().offered);
    again->carry_out(ask::OfferTaken{true});
    REQUIRE(again->shell().growing.has_value());
    again->carry_out(ask::StopGrowing{});
    CHECK(again->shell().offered);
    CHECK(again->practice() == nullptr);
    again->carry_out(ask::OfferTaken{true});
    await_grown(*again);
    REQUIRE(again->practice() != nullptr);
    CHECK_FALSE(again->shell().offered);
    CHECK(again->practice()->task().scene_number == 6);
    CHECK(print_plan(again->practice()->done()) == plan);
}

TEST_CASE("the ladder's vines past the scene's own come onto their rung") {
    const test::Folder here;
    const auto session = session_in(here);
    session->carry_out(ask::Ladder{});
    for (std::size_t vine = 0; vine < 5; ++vine) {  // its own, watched
        session->carry_out(ask::LadderVine{0, 0});
        REQUIRE_FALSE(session->shell().growing.has_value());
        for (int i = 0; i < 6'000 && session->shell().searching; ++i) {
            (void)session->poll();
            std::this_thread::sleep_for(std::chrono::milliseconds(10));
        }
        session->carry_out(ask::WatchRest{});
    }
    REQUIRE(session->ladder()->progress[0].next == 5);
    session->carry_out(ask::LadderVine{0, 3});
    REQUIRE(session->shell().growing.has_value());
    await_grown(*session);
    CHECK(session->practice()->task().scene_number == 5);
    REQUIRE(session->practice()->on_ladder());
    CHECK(session->practice()->task().ladder->number == 3);
}
