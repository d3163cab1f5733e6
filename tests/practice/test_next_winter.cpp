// The next winter's two vines: what is shown really grew from the two plans, what is told is what the look ahead says,
// and each can be pruned, put back and taken up again.
#include <doctest/doctest.h>

#include <chrono>
#include <thread>

#include "scenarios/practice/session.h"
#include "sim/pruning/plan_text.h"
#include "sim/vine/canonical_text.h"
#include "sim/vine/vine_check.h"
#include "sim/vine/vine_query.h"
#include "tests/support/folder.h"

using namespace spurwright;
using namespace spurwright::practice;

namespace {

const io::Assets assets(std::string(SPURWRIGHT_SOURCE) + "/assets");

std::unique_ptr<Session> opened(const test::Folder& here, const Opening& opening) {
    const settings::Folders folders{here.file("settings.json"), here.file("work")};
    std::uint64_t next = 5;
    auto session = Session::make(assets, folders, opening, [next]() mutable { return next++; });
    REQUIRE(session.has_value());
    (*session)->carry_out(ask::SafetySeen{});
    return *std::move(session);
}

void wait(Session& session) {
    const auto end = std::chrono::steady_clock::now() + std::chrono::seconds(60);
    while (session.works() && std::chrono::steady_clock::now() < end) {
        session.poll();
        std::this_thread::sleep_for(std::chrono::milliseconds(2));
    }
    REQUIRE_FALSE(session.works());
}

// The scene's vine, two canes laid badly, looked back on, with its plans.
std::unique_ptr<Session> looked_back(const test::Folder& here) {
    auto session = opened(here, {{}, {}, "first"});
    session->carry_out(ask::WatchOwn{});
    wait(*session);
    const Vine& vine = session->practice()->start();
    const auto canes = cane_candidates(vine);
    REQUIRE(canes.size() > 2);
    session->carry_out(ask::LayTo{canes.front(), vine.find(canes.front())->side});
    session->carry_out(ask::GoToStep{Step::look_back});
    REQUIRE(session->practice()->finished());
    return session;
}

} // namespace

TEST_CASE("the two vines are the two plans' own, a winter on, and what is told is the look ahead's") {
    const test::Folder here;
    const auto session = looked_back(here);
    const Vine mine_pruned = session->practice()->now(),
               best_pruned = *prune(session->practice()->start(), session->practice()->plans()->best().plan);
    session->carry_out(ask::NextWinter{});
    REQUIRE(session->shows_two());
    wait(*session);
    const NextWinter& found = *session->two_vines()->found;
    CHECK(*session->two_vines()->lived == lives_lived);
    CHECK_FALSE(found.alike);
    ahead::AheadWish wish;
    wish.variety = growth::find_variety(mine_pruned.variety);
    wish.climate = weather::find_climate(ahead::usual_climate);
    const std::array pruned{mine_pruned, best_pruned};
    for (const std::size_t which : {mine, better}) {
        const NextWinter::Life& life = found.lives[which];
        const Vine& vine = life.next->vine;
        CHECK(vine.winter == mine_pruned.winter + 1);
        CHECK_FALSE(check_vine(vine).has_value());
        const auto asked = ahead::look_ahead(pruned[which], session->practice()->task().house, wish);
        CHECK(vine_hash(asked.next->vine) == vine_hash(vine));
        for (std::size_t i = 0; i < ahead::figure_count; ++i) {
            CHECK(asked.winters[0].figures[i].median == life.told.figures[i].median);
            CHECK(asked.winters[0].figures[i].low == life.told.figures[i].low);
        }
        // What is told of the vine in sight stands on it.
        std::vector<double> far;
        for (const AxisId cane : cane_candidates(vine)) far.push_back(in_mm(distance_to_head(vine, *vine.find(cane))));
        CHECK(life.next->told[ahead::Figure::cane_distance_mm].median == ahead::spread_of(far).median);
        CHECK(life.next->told[ahead::Figure::good_canes].median ==
              life.next->told[ahead::Figure::good_left].median + life.next->told[ahead::Figure::good_right].median);
    }
    CHECK(vine_hash(found.lives[mine].next->vine) != vine_hash(found.lives[better].next->vine));
}

TEST_CASE("either can be pruned and looked back on, put back as it was, and taken up again") {
    const test::Folder here;
    const auto session = looked_back(here);
    const std::string first_plan = print_plan(session->practice()->done());
    session->carry_out(ask::NextWinter{});
    wait(*session);
    session->carry_out(ask::CutHere{}); // the hand rests while both are shown
    CHECK(session->shell().message->key.name == "error.practice.hand-rests");
    const auto before = session->vine_number();
    session->carry_out(ask::PruneOfTwo{mine});
    REQUIRE_FALSE(session->shows_two());
    CHECK(session->vine_number() > before);
    const Practice* vine = session->practice();
    CHECK(vine_hash(vine->start()) == vine_hash(session->two_vines()->found->lives[mine].next->vine));
    CHECK_FALSE(vine->finished());
    CHECK(vine->asked_buds() == session->two_vines()->from->asked_buds());
    const AxisId cane = cane_candidates(vine->start()).front();
    session->carry_out(ask::MarkAs{cane, Role::spur});
    session->carry_out(ask::MarkAs{cane, Role::remove});
    session->carry_out(ask::Undo{});
    const std::string plan = print_plan(vine->done());
    session->carry_out(ask::BackToTwo{});
    REQUIRE(session->shows_two());
    CHECK(session->practice()->finished());
    CHECK(print_plan(session->practice()->done()) == first_plan);
    session->carry_out(ask::PruneOfTwo{better});
    CHECK(session->practice()->done_count() == 0);
    session->carry_out(ask::BackToTwo{});
    session->carry_out(ask::PruneOfTwo{mine});
    CHECK(print_plan(session->practice()->done()) == plan);
    CHECK(session->practice()->can_redo());
    wait(*session);
    REQUIRE(session->practice()->plans().has_value()); // its own, not those of the vine looked at meanwhile
    CHECK(session->practice()->plans()->planning->best()->points == planning::Planning(session->practice()->start(), session->practice()->task().house).best()->points);
    session->carry_out(ask::GoToStep{Step::look_back});
    session->carry_out(ask::Confirm{});  // with nothing cut yet
    CHECK(session->practice()->finished());
    // And so on from there, and all the way back.
    session->carry_out(ask::NextWinter{});
    wait(*session);
    CHECK(session->winters() == 2);
    CHECK(session->two_vines()->found->lives[mine].next->vine.winter == session->practice()->start().winter + 1);
    session->carry_out(ask::LeaveTwo{});
    CHECK(session->winters() == 1);
    CHECK(print_plan(session->practice()->done()) == plan);
    session->carry_out(ask::BackToTwo{});
    session->carry_out(ask::LeaveTwo{});
    CHECK(session->two_vines() == nullptr);
    CHECK(print_plan(session->practice()->done()) == first_plan);
    CHECK(session->practice()->task().scene == "first");
}

TEST_CASE("left while the years are lived, nothing is shown later; the next vine is the scene's next") {
    const test::Folder here;
    const auto session = looked_back(here);
    session->carry_out(ask::NextWinter{});
    session->carry_out(ask::PruneOfTwo{mine}); // not there yet
    CHECK(session->shows_two());
    session->carry_out(ask::LeaveTwo{});
    for (int i = 0; i < 100; ++i) {
        session->poll();
        std::this_thread::sleep_for(std::chrono::milliseconds(5));
    }
    CHECK(session->two_vines() == nullptr);
    session->carry_out(ask::NextWinter{});
    wait(*session);
    session->carry_out(ask::PruneOfTwo{better});
    session->carry_out(ask::NextVine{});
    CHECK(session->two_vines() == nullptr);
    CHECK(session->practice()->task().scene == "first");
    CHECK(session->practice()->task().scene_number == 1);
}

TEST_CASE("work on next winter's vine is kept with the vine itself and offered back after a crash") {
    const test::Folder here;
    std::uint64_t hash = 0;
    {
        const auto session = looked_back(here);
        session->carry_out(ask::NextWinter{});
        wait(*session);
        session->carry_out(ask::PruneOfTwo{mine});
        session->carry_out(ask::MarkAs{cane_candidates(session->practice()->start()).front(), Role::spur});
        hash = vine_hash(session->practice()->start());
    }
    const auto again = opened(here, {});
    REQUIRE(again->shell().offered);
    again->carry_out(ask::OfferTaken{true});
    REQUIRE(again->practice() != nullptr);
    CHECK(vine_hash(again->practice()->start()) == hash);
    CHECK(again->practice()->done_count() == 1);
}

TEST_CASE("pruned as the best plan does, both are one vine and it is said") {
    const test::Folder here;
    const auto session = opened(here, {{}, {}, "first"});
    session->carry_out(ask::WatchOwn{});
    session->carry_out(ask::NextWinter{}); // nothing is looked back on
    CHECK(session->shell().message->key.name == "error.practice.no-next-winter");
    wait(*session);
    const Plan best = session->practice()->plans()->best().plan;
    for (const Edit& edit : best.edits) REQUIRE(session->practice()->act(edit).has_value());
    session->carry_out(ask::GoToStep{Step::look_back});
    session->carry_out(ask::NextWinter{});
    wait(*session);
    CHECK(session->two_vines()->found->alike);
}
