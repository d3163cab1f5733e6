// The crew's quiz through the session: a whole workshop with a dispute and a crash in the middle, kept as it happens.
#include <doctest/doctest.h>

#include <sys/stat.h>

#include <chrono>
#include <thread>

#include "scenarios/io/safe_file.h"
#include "scenarios/practice/session.h"
#include "scenarios/quiz/results.h"
#include "tests/support/folder.h"

using namespace spurwright;
using namespace spurwright::practice;
namespace happened = quiz::event;

namespace {

const io::Assets assets(std::string(SPURWRIGHT_SOURCE) + "/assets");

settings::Folders folders_in(const test::Folder& here) { return {here.file("config/settings.json"), here.file("datos ñ/spurwright/work"), here.file("config/house-rules.json")}; }

std::unique_ptr<Session> session_in(const settings::Folders& folders) {
    std::uint64_t next = 11;
    auto session = Session::make(assets, folders, {}, [next]() mutable { return next++; });
    REQUIRE(session.has_value());
    return *std::move(session);
}

void wait_for_questions(Session& session) {
    while (session.crew()->stage() == QuizStage::making) {
        session.poll();
        std::this_thread::sleep_for(std::chrono::milliseconds(5));
    }
    REQUIRE(session.crew()->quiz());
}

void does(Session& session, quiz::Event event) { session.carry_out(ask::WallDo{std::move(event)}); }

// Twelve invented people by number: person p answers rightly where (p + question) % 3 is not 0.
void crew_answers(Session& session) {
    const quiz::Quiz& quiz = *session.crew()->quiz();
    for (int person = 1; person <= 12; ++person) {
        const quiz::Item& item = quiz.item();
        quiz::Answer answer = item.accepted.front();
        if ((person + static_cast<int>(quiz.at())) % 3 == 0) {
            for (int digit = item.lowest(); digit <= item.highest(); ++digit) {
                quiz::Answer other = item.asked() == 2 ? quiz::Answer{static_cast<std::uint8_t>(digit), static_cast<std::uint8_t>(digit + 1)} : quiz::Answer{static_cast<std::uint8_t>(digit)};
                if (item.takes(other) && !item.accepts(other)) answer = other;
            }
        }
        does(session, happened::Answered{{quiz::Way::person, person}, answer});
    }
}

void play(Session& session, std::size_t to_question) {
    const quiz::Quiz& quiz = *session.crew()->quiz();
    while (quiz.phase() != quiz::Phase::ended && quiz.at() < to_question) {
        if (quiz.phase() == quiz::Phase::gathered) does(session, happened::Next{});
        crew_answers(session);
        does(session, happened::Locked{});
        if (quiz.at() == 1) {  // they talk, and answer again
            does(session, happened::Talk{});
            crew_answers(session);
            does(session, happened::Locked{});
        }
        does(session, happened::Revealed{});
        if (quiz.at() == 2) does(session, happened::Dropped{2});  // the dispute
        does(session, happened::Next{});
    }
}

}  // namespace

TEST_CASE("a workshop of twelve people and eight questions, a dispute, a crash in the middle: the results are those of one without a crash") {
    const auto workshop = [&](bool crash) {
        const test::Folder here;
        const settings::Folders folders = folders_in(here);
        auto session = session_in(folders);
        session->carry_out(ask::Wall{});
        session->carry_out(ask::WallBegin{});
        wait_for_questions(*session);
        play(*session, 4);
        if (crash) {
            crew_answers(*session);  // acknowledged, then the machine dies
            session.reset();
            session = session_in(folders);
            session->carry_out(ask::Wall{});
            REQUIRE(session->crew()->offered());
            session->carry_out(ask::WallGoOn{});
            wait_for_questions(*session);
            CHECK(session->crew()->quiz()->at() == 4);
            CHECK(session->crew()->quiz()->state().last().answers() == 12);
        }
        play(*session, 99);
        CHECK(session->crew()->quiz()->phase() == quiz::Phase::ended);
        return quiz::results_of(*session->crew()->quiz());
    };
    const quiz::Results smooth = workshop(false), crashed = workshop(true);
    CHECK(smooth == crashed);
    CHECK(smooth.items.size() == 8);
    CHECK(smooth.items[2].dropped);
    // A third of twelve are wrong on each question that counts: worked out here, apart from the results.
    int scored = 0;
    for (const quiz::ItemResult& item : smooth.items) scored += item.scored && !item.dropped;
    CHECK(smooth.all == quiz::Share{8 * scored, 12 * scored});
    CHECK(smooth.voters.size() == 12);
}

TEST_CASE("the vine in hand stays as it was while the wall is on, and afterwards") {
    const test::Folder here;
    auto session = session_in(folders_in(here));
    session->carry_out(ask::NextVine{});
    const std::uint64_t vine = session->vine_number();
    session->carry_out(ask::Wall{});
    session->carry_out(ask::WallQuestions{3});
    session->carry_out(ask::WallBegin{});
    wait_for_questions(*session);
    CHECK(session->on_wall() == nullptr);
    does(*session, happened::Next{});
    CHECK(session->on_wall() != nullptr);
    session->carry_out(ask::WallClose{});
    CHECK(session->crew() == nullptr);
    CHECK(session->vine_number() == vine);
    CHECK(session->practice()->done_count() == 0);
}

TEST_CASE("what is set is held within bounds, and at least one kind of question stays on") {
    const test::Folder here;
    auto session = session_in(folders_in(here));
    session->carry_out(ask::Wall{});
    session->carry_out(ask::WallQuestions{1'000});
    session->carry_out(ask::WallPosts{-4});
    for (const quiz::Kind kind : quiz::all_kinds)
        if (session->crew()->setup.has(kind)) session->carry_out(ask::WallKind{kind});
    CHECK(session->crew()->setup.questions == most_questions);
    CHECK(session->crew()->setup.posts == 0);
    CHECK(session->crew()->setup.kinds.size() == 1);
}

TEST_CASE("a quiz begun under other rules is put aside, not counted by these") {
    const test::Folder here;
    const settings::Folders folders = folders_in(here);
    {
        auto session = session_in(folders);
        session->carry_out(ask::Wall{});
        session->carry_out(ask::WallQuestions{3});
        session->carry_out(ask::WallBegin{});
        wait_for_questions(*session);
        does(*session, happened::Next{});
    }
    auto session = session_in(folders);
    session->carry_out(ask::HouseStep{{"cane-diameter", "full", true}, 2});
    session->carry_out(ask::Wall{});
    REQUIRE(session->crew()->offered());
    session->carry_out(ask::WallGoOn{});
    CHECK(session->shell().message);
    CHECK(session->crew()->stage() == QuizStage::setting_up);
    CHECK_FALSE(io::is_there(folders.work_folder + "/wall.journal"));
}

TEST_CASE("where the journal cannot be written the workshop goes on, and it is said") {
    const test::Folder here;
    const settings::Folders folders = folders_in(here);
    auto session = session_in(folders);
    session->carry_out(ask::Wall{});
    session->carry_out(ask::WallQuestions{3});
    REQUIRE(::mkdir((folders.work_folder + "/wall.journal").c_str(), 0700) == 0);  // a folder stands in its place
    session->carry_out(ask::WallBegin{});
    wait_for_questions(*session);
    does(*session, happened::Next{});
    CHECK(session->shell().message);
    CHECK(session->crew()->quiz()->phase() == quiz::Phase::open);
    // Room again: everything unkept is written with the next.
    REQUIRE(std::system(("rmdir '" + folders.work_folder + "'/wall-*.journal '" + folders.work_folder + "/wall.journal' 2>/dev/null; true").c_str()) == 0);
    does(*session, happened::Locked{});
    CHECK_FALSE(session->shell().message);
    const auto bytes = io::read_file(folders.work_folder + "/wall.journal", 1 << 20);
    REQUIRE(bytes);
    CHECK(io::read_entries(*bytes).entries.size() == 3);
}
