// The way on in the window: read from the records; a vine met before opens as it stood before what cost most.
#include <doctest/doctest.h>

#include <chrono>
#include <thread>

#include "scenarios/practice/session.h"
#include "sim/planning/charges.h"
#include "sim/planning/difficulty.h"
#include "sim/pruning/plan_text.h"
#include "sim/rules/judge.h"
#include "sim/vine/canonical_text.h"
#include "sim/vine/vine_query.h"
#include "tests/support/folder.h"

using namespace spurwright;
using namespace spurwright::practice;

namespace {

const io::Assets assets(std::string(SPURWRIGHT_SOURCE) + "/assets");

settings::Folders folders_in(const test::Folder& here) { return {here.file("c/settings.json"), here.file("d/spurwright/work"), here.file("c/house.json"), here.file("d/spurwright/store.sqlite")}; }

std::unique_ptr<Session> session_in(const settings::Folders& folders, std::uint64_t seed) {
    auto made = Session::make(assets, folders, {}, [seed]() mutable { return seed++; });
    REQUIRE(made.has_value());
    return *std::move(made);
}

void wait_for_plans(Session& session) {
    while (session.shell().searching) {
        session.poll();
        std::this_thread::sleep_for(std::chrono::milliseconds(2));
    }
}

// The best plan that lays the worst cane there is; how much it loses.
Tenths prune_badly(Session& session) {
    wait_for_plans(session);
    std::optional<planning::BestPlan> worst;
    for (const AxisId cane : cane_candidates(session.practice()->start()))
        for (const Side side : {Side::left, Side::right}) {
            const auto laid = session.practice()->plans()->planning->best_laying(cane, side);
            if (laid && (!worst || laid->points < worst->points)) worst = laid;
        }
    REQUIRE(worst);
    const Plan plan = worst->plan;
    for (const Edit& edit : plan.edits) {
        (void)session.practice()->act(edit);
        if (session.practice()->waiting()) (void)session.practice()->confirm();
    }
    session.carry_out(ask::GoToStep{rules::Step::look_back});
    return session.practice()->look()->plans->best().points - session.practice()->look()->mine.points;
}

}  // namespace

TEST_CASE("nothing done: the way begins in the shed; a vine pruned badly comes back as it stood before its first wrong act") {
    const test::Folder here;
    const settings::Folders folders = folders_in(here);
    auto session = session_in(folders, 31);
    session->carry_out(ask::Way{});
    CHECK(session->shell().screen == Screen::way);
    REQUIRE(session->way());
    CHECK(session->way()->next.thing == learning::NextThing::first_scene);
    session->carry_out(ask::TakeWay{});
    CHECK(session->practice()->task().scene == "first");
    session->carry_out(ask::NextVine{});
    session->carry_out(ask::OpenCode{"00RM-K1SX-G00Q-0004-0005-046T"});
    const std::uint64_t vine = vine_hash(session->practice()->start());
    const Tenths lost = prune_badly(*session);
    REQUIRE(lost > Tenths{20});
    const Plan plan = session->practice()->done();
    session->carry_out(ask::OpenCode{"00RM-K1SX-G00Q-0004-0005-0N2W"});  // another one, as good as can be
    wait_for_plans(*session);
    for (const Edit& edit : session->practice()->plans()->best().plan.edits) (void)session->practice()->act(edit);
    session->carry_out(ask::GoToStep{rules::Step::look_back});
    session->carry_out(ask::Way{});
    REQUIRE(session->way()->past.size() == 2);
    REQUIRE(session->way()->returning.size() == 1);
    CHECK(session->way()->past[session->way()->returning[0].at].lost() == lost);
    CHECK(session->way()->next.thing == learning::NextThing::met_vine);
    session->carry_out(ask::TakeWay{});
    REQUIRE(session->practice());
    CHECK(vine_hash(session->practice()->start()) == vine);
    CHECK_FALSE(session->practice()->finished());
    // No act that stands cost more than is as good; the next one of the old plan did.
    const Plan stands = session->practice()->done();
    REQUIRE(stands.edits.size() < plan.edits.size());
    for (std::size_t i = 0; i < stands.edits.size(); ++i) CHECK(stands.edits[i] == plan.edits[i]);
    const Task& task = session->practice()->task();
    const planning::Planning planning(task.vine, task.house);
    const auto charges = planning::charges(task.vine, task.house, planning, plan, rules::judge(task.vine, *prune(task.vine, plan), task.house));
    const Tenths tolerance = *session->way()->past[session->way()->returning[0].at].tolerance;
    bool at_the_cost = stands.edits.empty();
    for (const planning::Charge& charge : charges.edits) {
        if (charge.edit < stands.edits.size()) CHECK(charge.lost <= tolerance);
        at_the_cost = at_the_cost || (charge.edit == stands.edits.size() && charge.lost > tolerance);
    }
    CHECK(at_the_cost);
}

TEST_CASE("a new vine is sought near the wanted difficulty: nearer than the first that comes") {
    std::uint64_t seed = 100;
    const auto next = [&]() { return next_code([&seed] { return seed++; }); };
    const rules::HouseRules house;
    const auto difficulty = [&](const std::string& code) {
        const auto opened = open_code(assets, code, "general");
        REQUIRE(opened.has_value());
        const Vine& vine = opened->task.vine;
        const auto found = planning::difficulty_of(vine, house, planning::Planning(vine, house));
        return found ? found->scale / 1000.0 : 1e6;
    };
    double first_off = 0, sought_off = 0;
    for (int i = 0; i < 6; ++i) {
        const double wanted = -1.5 + 0.4 * i;
        first_off += std::abs(difficulty(*next()) - wanted);
        const auto sought = code_at_difficulty(next, house, wanted);
        REQUIRE(sought.has_value());
        sought_off += std::abs(difficulty(*sought) - wanted);
    }
    CHECK(sought_off < first_off);
}

TEST_CASE("a vine whose record is gone is refused in a sentence, and the vine in hand stays") {
    const test::Folder here;
    const settings::Folders folders = folders_in(here);
    auto session = session_in(folders, 31);
    session->carry_out(ask::OpenCode{"00RM-K1SX-G00Q-0004-0005-046T"});
    REQUIRE(prune_badly(*session) > Tenths{20});
    session->carry_out(ask::Way{});
    const std::uint64_t number = session->vine_number();
    {
        auto store = records::Store::open(folders.store_file);
        REQUIRE(store->run("DELETE FROM kept_vine").has_value());
    }
    session->carry_out(ask::OpenMet{0});
    CHECK(session->shell().message);
    CHECK(session->vine_number() == number);
    session->carry_out(ask::OpenMet{99});
}
