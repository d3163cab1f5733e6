// What is finished in the window goes into the records, once, and opens again from there.
#include <doctest/doctest.h>

#include <algorithm>
#include <chrono>
#include <filesystem>
#include <set>
#include <thread>

#include "scenarios/io/safe_file.h"
#include "scenarios/practice/quiz_journals.h"
#include "scenarios/practice/session.h"
#include "scenarios/records/people.h"
#include "scenarios/records/quiz_record.h"
#include "scenarios/records/replay.h"
#include "sim/core/hash.h"
#include "sim/planning/complete.h"
#include "sim/pruning/plan_text.h"
#include "tests/support/folder.h"

using namespace spurwright;
using namespace spurwright::practice;
namespace happened = quiz::event;

namespace {

const io::Assets assets(std::string(SPURWRIGHT_SOURCE) + "/assets");

settings::Folders folders_in(const test::Folder& here) {
    return {here.file("config/settings.json"), here.file("datos ñ/spurwright/work"), here.file("config/house-rules.json"), here.file("datos ñ/spurwright/store.sqlite")};
}

std::unique_ptr<Session> session_in(const settings::Folders& folders, std::uint64_t seed = 11) {
    auto session = Session::make(assets, folders, {}, [seed]() mutable { return seed++; });
    REQUIRE(session.has_value());
    return *std::move(session);
}

void wait_until(Session& session, bool (*done)(const Session&)) {
    while (!done(session)) {
        session.poll();
        std::this_thread::sleep_for(std::chrono::milliseconds(5));
    }
}

std::vector<records::Event> events_in(const settings::Folders& folders) {
    auto store = records::Store::open_to_read(folders.store_file);
    REQUIRE(store.has_value());
    std::vector<records::Event> events;
    if (*store) REQUIRE(records::each_event(**store, "", 0, [&](const records::Event& event) { events.push_back(event); }).has_value());
    return events;
}

std::vector<records::Replayed> replayed(const settings::Folders& folders) {
    auto store = records::Store::open_to_read(folders.store_file);
    REQUIRE((store.has_value() && store->has_value()));
    auto all = records::replay(**store, std::nullopt);
    REQUIRE(all.has_value());
    return *std::move(all);
}

// Prunes the vine in hand by its second best plan and looks back.
void prune_whole(Session& session) {
    wait_until(session, [](const Session& s) { return !s.shell().searching; });
    const Plan plan = session.practice()->plans()->planning->top(2).back().plan;
    for (const Edit& edit : plan.edits) {
        (void)session.practice()->act(edit);
        if (session.practice()->waiting()) (void)session.practice()->confirm();
    }
    session.carry_out(ask::Undo{});  // so that the work is kept, as an act of the hand would
    session.carry_out(ask::Redo{});
    session.carry_out(ask::GoToStep{rules::Step::look_back});
}

void begin_quiz(Session& session, int questions) {
    session.carry_out(ask::Wall{});
    session.carry_out(ask::WallQuestions{questions});
    session.carry_out(ask::WallBegin{});
    wait_until(session, [](const Session& s) { return s.crew()->stage() != QuizStage::making; });
    REQUIRE(session.crew()->quiz());
}

void does(Session& session, quiz::Event event) { session.carry_out(ask::WallDo{std::move(event)}); }

// Persons 701, 702, 703 answer: the first rightly, the others with the lowest answer there is.
void play_to_the_end(Session& session) {
    const quiz::Quiz& quiz = *session.crew()->quiz();
    while (quiz.phase() != quiz::Phase::ended) {
        if (quiz.phase() == quiz::Phase::gathered) does(session, happened::Next{});
        const quiz::Item& item = quiz.item();
        const quiz::Answer low = item.asked() == 2 ? quiz::Answer{1, 2} : quiz::Answer{static_cast<std::uint8_t>(item.lowest())};
        does(session, happened::Answered{{quiz::Way::person, 701}, item.accepted.front()});
        does(session, happened::Answered{{quiz::Way::person, 702}, low});
        does(session, happened::Answered{{quiz::Way::person, 703}, low});
        does(session, happened::Locked{});
        does(session, happened::Revealed{});
        does(session, happened::Next{});
    }
}

std::int64_t count_of(const std::vector<records::Event>& events, std::string_view kind) {
    return std::count_if(events.begin(), events.end(), [&](const records::Event& event) { return event.kind == kind; });
}

}  // namespace

TEST_CASE("a finished vine goes into the records once, and is judged there to the same tenth") {
    const test::Folder here;
    const settings::Folders folders = folders_in(here);
    std::string plan;
    {
        auto session = session_in(folders);
        session->carry_out(ask::NextVine{});
        prune_whole(*session);
        REQUIRE(session->practice()->look()->plans);
        CHECK_FALSE(session->shell().message);
        plan = print_plan(session->practice()->done());
        session->carry_out(ask::GoToStep{rules::Step::choose});
        session->carry_out(ask::GoToStep{rules::Step::look_back});
        CHECK(events_in(folders).size() == 1);
        const io::Json body = *io::read_json(events_in(folders).front().body, "body");
        CHECK(body.find("plan")->text == plan);
        CHECK(body.find("marks_tenths")->text == std::to_string(session->practice()->look()->mine.points.count));
        CHECK(body.find("best_tenths")->text == std::to_string(session->practice()->look()->plans->best().points.count));
        CHECK(body.find("rule_set_hash")->text == hash_text(rules::rule_set_hash(session->practice()->task().house)));
    }
    {  // the window died: the work is offered back, taken up and finished again
        auto session = session_in(folders);
        session->carry_out(ask::OfferTaken{true});
        REQUIRE(session->practice());
        wait_until(*session, [](const Session& s) { return !s.shell().searching; });
        session->carry_out(ask::GoToStep{rules::Step::look_back});
        CHECK(print_plan(session->practice()->done()) == plan);
        CHECK(events_in(folders).size() == 1);
    }
    const auto again = replayed(folders);
    REQUIRE(again.size() == 1);
    CHECK_MESSAGE(again[0].outcome == records::Outcome::same, again[0].was, " | ", again[0].is, " ", again[0].why.name);
}

TEST_CASE("what is done is that of the one who sits here; a new number is nobody else's, and nobody sits after a start") {
    const test::Folder here;
    const settings::Folders folders = folders_in(here);
    {
        auto session = session_in(folders);
        session->carry_out(ask::Seat{});
        CHECK(session->shell().screen == Screen::seat);
        CHECK(session->shell().people.empty());
        session->carry_out(ask::Sits{7});
        REQUIRE(session->shell().message);
        CHECK(session->shell().message->key.name == "error.crew.nobody");
        CHECK(session->shell().screen == Screen::seat);
        session->carry_out(ask::SitsNew{});
        REQUIRE(session->shell().sits);
        CHECK(session->shell().sits->number == 1);
        CHECK(session->shell().screen == Screen::home);
        session->carry_out(ask::NextVine{});
        prune_whole(*session);
        session->carry_out(ask::Sits{});
        CHECK_FALSE(session->shell().sits);
        session->carry_out(ask::NextVine{});
        prune_whole(*session);
        const auto events = events_in(folders);
        REQUIRE(events.size() == 2);
        CHECK(events[0].person == 1);
        CHECK_FALSE(events[1].person);
    }
    {
        auto store = records::Store::open(folders.store_file);
        REQUIRE(store.has_value());
        REQUIRE(records::put_person(*store, {41, "Inés", "es-CL", "Norte", ""}).has_value());
        REQUIRE(records::add_event(*store, {0, "answer", 1, "2026-11-30T10:00:00Z", 90, "{}", {}}).has_value());  // of somebody who is not on the list
    }
    auto session = session_in(folders);
    CHECK_FALSE(session->shell().sits);
    session->carry_out(ask::Seat{});
    CHECK(session->shell().people.size() == 2);
    session->carry_out(ask::Sits{41});
    CHECK(session->words().language() == "es-CL");
    session->carry_out(ask::Way{});
    CHECK(session->way()->past.empty());  // number 1's vine is not Inés's
    session->carry_out(ask::Seat{});
    session->carry_out(ask::SitsNew{});
    CHECK(session->shell().sits->number == 91);
    session->carry_out(ask::Seat{});
    session->carry_out(ask::Sits{1});
    session->carry_out(ask::Way{});
    CHECK(session->way()->past.size() == 1);
}

TEST_CASE("a scene's vine, one that begins with acts made among them, is judged again as it was") {
    for (const char* scene : {"first", "snapped-cane"}) {
        CAPTURE(scene);
        const test::Folder here;
        const settings::Folders folders = folders_in(here);
        auto session = session_in(folders);
        session->carry_out(ask::OpenScene{scene, 0});
        if (!session->practice()) continue;  // no scene of that name
        prune_whole(*session);
        wait_until(*session, [](const Session& s) { return !s.shell().searching; });
        const auto again = replayed(folders);
        REQUIRE(again.size() == 1);
        CHECK_MESSAGE(again[0].outcome == records::Outcome::same, again[0].was, " | ", again[0].is, " ", again[0].why.name);
    }
}

TEST_CASE("a quiz at its end is in the records once, also after a crash between its end and its page; a dispute after it corrects it") {
    const test::Folder here;
    const settings::Folders folders = folders_in(here);
    {
        auto session = session_in(folders);
        begin_quiz(*session, 3);
        play_to_the_end(*session);
        CHECK_FALSE(session->shell().message);
        CHECK(count_of(events_in(folders), "quiz") == 1);
        CHECK(count_of(events_in(folders), "quiz-answers") == 3);
    }  // the window dies with its results page on
    auto session = session_in(folders);
    session->carry_out(ask::Wall{});
    REQUIRE(session->crew()->offered());
    session->carry_out(ask::WallGoOn{});
    wait_until(*session, [](const Session& s) { return s.crew()->stage() != QuizStage::making; });
    CHECK(session->crew()->quiz()->phase() == quiz::Phase::ended);
    CHECK(count_of(events_in(folders), "quiz") == 1);
    // The house disagrees with the first question, after the end.
    const quiz::Share before = quiz::results_of(*session->crew()->quiz()).all;
    does(*session, happened::Dropped{0});
    const quiz::Share after = quiz::results_of(*session->crew()->quiz()).all;
    CHECK(after.of < before.of);
    auto events = events_in(folders);
    REQUIRE(count_of(events, "quiz") == 2);
    CHECK(count_of(events, "quiz-answers") == 6);
    const auto last = std::find_if(events.rbegin(), events.rend(), [](const records::Event& event) { return event.kind == "quiz"; });
    CHECK(last->corrects == events.front().id);
    CHECK(io::read_json(last->body, "body")->find("results")->find("all")->find("of")->text == std::to_string(after.of));
    for (const records::Replayed& one : replayed(folders)) {
        CHECK_MESSAGE(one.outcome == records::Outcome::same, one.was, " | ", one.is, " ", one.why.name);
        CHECK(one.keys_proved);
    }
    // Closed: its journal, which names people by number, is gone; nothing is offered.
    session->carry_out(ask::WallClose{});
    CHECK_FALSE(io::is_there(folders.work_folder + "/wall.journal"));
    session->carry_out(ask::Wall{});
    CHECK_FALSE(session->crew()->offered());
}

TEST_CASE("in the quiz's own event nobody has a number of the roster; each person's results stand under the person") {
    const test::Folder here;
    const settings::Folders folders = folders_in(here);
    auto session = session_in(folders);
    begin_quiz(*session, 3);
    play_to_the_end(*session);
    const quiz::Results results = quiz::results_of(*session->crew()->quiz());
    std::set<std::string> aliases;
    for (const records::Event& event : events_in(folders)) {
        const io::Json body = *io::read_json(event.body, "body");
        if (event.kind == "quiz") {
            CHECK_FALSE(event.person);
            for (const char* number : {"701", "702", "703"}) CHECK(event.body.find("\"number\": " + std::string(number)) == std::string::npos);
            continue;
        }
        REQUIRE(event.person);
        const quiz::Share own = results.voters.at({quiz::Way::person, static_cast<int>(*event.person)});
        CHECK(body.find("right")->text == std::to_string(own.right));
        CHECK(body.find("of")->text == std::to_string(own.of));
        aliases.insert(body.find("as")->text);
    }
    CHECK(aliases == std::set<std::string>{"1", "2", "3"});
}

TEST_CASE("where the records cannot be written the vine and the quiz go on, it is said, and the quiz stays in its journal") {
    const test::Folder here;
    settings::Folders folders = folders_in(here);
    folders.store_file = "/proc/nowhere/store.sqlite";
    auto session = session_in(folders);
    begin_quiz(*session, 3);
    play_to_the_end(*session);
    CHECK(session->crew()->quiz()->phase() == quiz::Phase::ended);
    CHECK(session->shell().message);
    session->carry_out(ask::WallClose{});
    CHECK(io::is_there(folders.work_folder + "/wall.journal"));
    // With a place to write, going on with it brings it in.
    folders.store_file = here.file("store.sqlite");
    session.reset();
    session = session_in(folders);
    session->carry_out(ask::Wall{});
    session->carry_out(ask::WallGoOn{});
    wait_until(*session, [](const Session& s) { return s.crew()->stage() != QuizStage::making; });
    CHECK(count_of(events_in(folders), "quiz") == 1);
}

TEST_CASE("somebody forgotten is found nowhere any more: not in the store, not in the journal of a quiz that goes on") {
    const test::Folder here;
    const settings::Folders folders = folders_in(here);
    {
        auto session = session_in(folders);
        begin_quiz(*session, 3);
        play_to_the_end(*session);
        session->carry_out(ask::WallClose{});
        begin_quiz(*session, 3);
        does(*session, happened::Next{});
        const quiz::Answer answer = session->crew()->quiz()->item().accepted.front();
        for (const int number : {702, 703}) does(*session, happened::Answered{{quiz::Way::person, number}, answer});
        CHECK_FALSE(practice::forget_in_journals(folders.work_folder, 702));  // the window has the folder
    }
    {
        auto store = records::Store::open(folders.store_file);
        REQUIRE(store.has_value());
        REQUIRE(records::forget_person(*store, 702, false, "2026-11-30T12:00:00Z").has_value());
        CHECK(*practice::forget_in_journals(folders.work_folder, 702) == 1);
    }
    for (const auto& entry : std::filesystem::recursive_directory_iterator(here.path())) {
        if (!entry.is_regular_file()) continue;
        CAPTURE(entry.path().string());
        const std::string bytes = test::file_text(entry.path().string());
        CHECK(bytes.find("702,") == std::string::npos);
        CHECK(bytes.find("\"number\": 702") == std::string::npos);
    }
    for (const records::Event& event : events_in(folders)) CHECK(event.person != 702);
    CHECK(count_of(events_in(folders), "quiz-answers") == 2);
    auto session = session_in(folders);
    session->carry_out(ask::Wall{});
    session->carry_out(ask::WallGoOn{});
    wait_until(*session, [](const Session& s) { return s.crew()->stage() != QuizStage::making; });
    CHECK(session->crew()->quiz()->state().last().answers() == 1);
}

TEST_CASE("a vine or rules that are damaged or gone: the record says so, and check names the place") {
    const test::Folder here;
    const settings::Folders folders = folders_in(here);
    auto session = session_in(folders);
    session->carry_out(ask::NextVine{});
    prune_whole(*session);
    const auto spoilt = [&](std::string_view sql) {
        auto store = records::Store::open(folders.store_file);
        REQUIRE(store.has_value());
        REQUIRE(store->run(sql).has_value());
        const auto again = records::replay(*store, std::nullopt);
        const auto checked = records::check_records(*store);
        REQUIRE(again.has_value());
        REQUIRE(checked.has_value());
        CHECK(again->front().outcome != records::Outcome::same);
        return std::pair(std::string(again->front().why.name), checked->damaged.size());
    };
    {
        auto store = records::Store::open(folders.store_file);
        CHECK(records::check_records(*store)->damaged.empty());
    }
    CHECK(spoilt("UPDATE event SET body = json_set(body, '$.marks_tenths', 1)") == std::pair(std::string(), std::size_t{0}));
    CHECK(spoilt("UPDATE rule_set SET lines = replace(lines, 'cane-diameter.full.low=8000', 'cane-diameter.full.low=7000')").first == "records.lost.rules-damaged");
    CHECK(spoilt("DELETE FROM rule_set").first == "records.lost.rules");
    CHECK(spoilt("UPDATE kept_vine SET file = x'00'").first == "records.lost.vine-damaged");
    const auto gone = spoilt("DELETE FROM kept_vine");
    CHECK(gone.first == "records.lost.vine");
    CHECK(gone.second == 2);  // the vine and the rules that the event needs
}
