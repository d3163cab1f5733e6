// Look and say in the window: answered once each, timed from when it is seen, kept as it goes, never the same vine twice.
#include <doctest/doctest.h>

#include <chrono>
#include <set>
#include <thread>

#include "scenarios/practice/session.h"
#include "scenarios/records/events.h"
#include "sim/vine/canonical_text.h"
#include "tests/support/folder.h"

using namespace spurwright;
using namespace spurwright::practice;

namespace {

const io::Assets assets(std::string(SPURWRIGHT_SOURCE) + "/assets");

struct Clock {
    std::int64_t ms = 1'000;
};

LookDrill drill_with(const std::string& store, Clock& clock, std::int32_t today = 20'000) {
    LookDrill looks(store, std::nullopt, "en", rules::HouseRules{}, [&clock] { return clock.ms; }, today);
    looks.on = {drill::Skill::wood_age, drill::Skill::cane_size};
    return looks;
}

void wait_for_look(LookDrill& looks) {
    while (looks.stage() == LookStage::making) {
        looks.poll();
        std::this_thread::sleep_for(std::chrono::milliseconds(1));
    }
}

std::size_t right_of(const LookDrill& looks) { return looks.look()->item.accepted.front().front() - 1u; }

std::vector<records::Event> looks_kept(const std::string& path) {
    auto store = records::Store::open_to_read(path);
    REQUIRE(store.has_value());
    std::vector<records::Event> events;
    if (*store) REQUIRE(records::each_event(**store, "look", 0, [&](const records::Event& event) { events.push_back(event); }).has_value());
    return events;
}

}  // namespace

TEST_CASE("a sitting of thirty looks: each is answered once, its time runs from when it stood before the eye, each answer is kept at once") {
    const test::Folder here;
    const std::string store = here.file("datos ñ/store.sqlite");
    Clock clock;
    LookDrill looks = drill_with(store, clock);
    looks.begin(3);
    std::set<std::uint64_t> vines;
    for (int i = 0; i < looks_a_sitting; ++i) {
        wait_for_look(looks);
        REQUIRE(looks.stage() == LookStage::asking);
        CHECK(vines.insert(vine_hash(looks.look()->item.vine)).second);
        looks.next();  // not before it is answered
        CHECK(looks.stage() == LookStage::asking);
        clock.ms += 5'000;  // the picture is still being drawn
        looks.seen();
        looks.seen();
        clock.ms += 1'500 + i;
        const std::size_t right = right_of(looks), said = i % 5 == 4 ? (right + 1) % 2 : right;
        REQUIRE(looks.answer(said).has_value());
        CHECK(looks.was_right() == (i % 5 != 4));
        REQUIRE(looks.answer(1 - said % 2).has_value());  // the first answer stands
        CHECK(looks.said() == said);
        CHECK(looks.answers().back().ms == 1'500 + i);
        CHECK(looks_kept(store).size() == static_cast<std::size_t>(i) + 1);
        looks.next();
    }
    CHECK(looks.stage() == LookStage::over);
    CHECK(looks.asked() == looks_a_sitting);
    CHECK(looks.right() == looks_a_sitting - looks_a_sitting / 5);
}

TEST_CASE("the next sitting knows what was answered before, and shows none of its vines") {
    const test::Folder here;
    const std::string store = here.file("store.sqlite");
    Clock clock;
    std::set<std::uint64_t> before;
    drill::LookAnswers answered;
    {
        LookDrill looks = drill_with(store, clock);
        looks.begin(3);
        for (int i = 0; i < 5; ++i) {
            wait_for_look(looks);
            before.insert(vine_hash(looks.look()->item.vine));
            looks.seen();
            REQUIRE(looks.answer(right_of(looks)).has_value());
            looks.next();
        }
        answered = looks.answers();
    }  // the window died: nothing more was written
    LookDrill again = drill_with(store, clock);
    REQUIRE(again.recall().has_value());
    REQUIRE(again.answers().size() == answered.size());
    for (std::size_t i = 0; i < answered.size(); ++i) {
        CHECK(again.answers()[i].skill == answered[i].skill);
        CHECK(again.answers()[i].right == answered[i].right);
        CHECK(again.answers()[i].ms == answered[i].ms);
    }
    again.begin(3);  // the very same seed
    for (int i = 0; i < 5; ++i) {
        wait_for_look(again);
        CHECK(before.count(vine_hash(again.look()->item.vine)) == 0);
        again.seen();
        REQUIRE(again.answer(right_of(again)).has_value());
        again.next();
    }
}

TEST_CASE("where answers cannot be kept it is said and the sitting goes on") {
    Clock clock;
    LookDrill looks = drill_with("/proc/nowhere/store.sqlite", clock);
    looks.begin(1);
    wait_for_look(looks);
    looks.seen();
    CHECK_FALSE(looks.answer(0).has_value());
    CHECK(looks.stage() == LookStage::told);
    CHECK(looks.asked() == 1);
}

TEST_CASE("in the session: to it, a look before the eye, said, next, ended, closed; the vine in hand stays as it was") {
    const test::Folder here;
    const settings::Folders folders{here.file("c/settings.json"), here.file("d/spurwright/work"), here.file("c/house.json"), here.file("d/spurwright/store.sqlite")};
    std::uint64_t seed = 5;
    auto made = Session::make(assets, folders, {}, [&seed] { return seed++; });
    REQUIRE(made.has_value());
    Session& session = **made;
    session.carry_out(ask::NextVine{});
    const std::uint64_t vine = session.vine_number();
    session.carry_out(ask::Looks{});
    CHECK(session.shell().screen == Screen::looks);
    CHECK(session.shown_item() == nullptr);
    for (const drill::Skill skill : drill::all_skills)
        if (session.looks()->has(skill)) session.carry_out(ask::LooksSkill{skill});
    CHECK(session.looks()->on.size() == 1);  // the last one stays on
    session.carry_out(ask::LooksBegin{});
    while (!session.shown_item()) {
        session.poll();
        std::this_thread::sleep_for(std::chrono::milliseconds(1));
    }
    const std::uint64_t first = session.shown_item_number();
    session.item_seen();
    session.carry_out(ask::LookSaid{0});
    CHECK(session.looks()->stage() == LookStage::told);
    session.carry_out(ask::LookNext{});
    while (!session.shown_item()) {
        session.poll();
        std::this_thread::sleep_for(std::chrono::milliseconds(1));
    }
    CHECK(session.shown_item_number() != first);
    session.carry_out(ask::LooksEnd{});
    CHECK(session.looks()->stage() == LookStage::over);
    CHECK(session.shown_item() == nullptr);
    session.carry_out(ask::LooksClose{});
    CHECK(session.looks() == nullptr);
    CHECK(session.vine_number() == vine);
    CHECK(looks_kept(folders.store_file).size() == 1);
}
