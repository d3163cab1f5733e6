// kill -9 at random moments, over and over: what was acknowledged is there, whole, and nothing is half. Each scenario is a
// process of its own that says each act once it is done; who killed it looks at what is left. 20 rounds a scenario, 500
// under SPURWRIGHT_FULL.
#include <doctest/doctest.h>

#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <filesystem>
#include <functional>
#include <thread>

#include "scenarios/io/safe_file.h"
#include "scenarios/practice/crew_quiz.h"
#include "scenarios/records/answer.h"
#include "scenarios/records/restore.h"
#include "scenarios/records/people.h"
#include "scenarios/records/replay.h"
#include "scenarios/records/weighing_record.h"
#include "scenarios/words/load_words.h"
#include "sim/core/random.h"
#include "sim/pruning/plan_text.h"
#include "sim/rules/judge.h"
#include "sim/vine/canonical_text.h"
#include "tests/cli/shed.h"
#include "tests/support/full_size.h"
#include "tests/support/little_vine.h"

using namespace spurwright;
using namespace spurwright::records;
using test::Shed;

namespace {

constexpr const char* then_utc = "2026-01-31T12:00:00Z";
int kill_rounds() { return test::sized(20, 500); }

// The moment of round `round`: microseconds from 0 to `most`, drawn.
useconds_t moment_of(int round, std::uint64_t most) { return static_cast<useconds_t>(draw(4711, static_cast<std::uint32_t>(round), 1) % most); }

// A process that does one act after another and says each; killed at the moment of the round. How many it said. Every
// other round waits for the first, so that some always are.
int said_until_killed(int round, std::uint64_t most, const std::function<bool(int)>& act) {
    int ends[2];
    REQUIRE(::pipe(ends) == 0);
    const pid_t child = ::fork();
    if (child == 0) {
        ::close(ends[0]);
        for (int i = 0; i < 100'000; ++i)
            if (!act(i) || ::write(ends[1], "y", 1) != 1) ::_exit(98);
        ::_exit(0);
    }
    ::close(ends[1]);
    int said = 0;
    char byte = 0;
    if (round % 2 == 0) said += ::read(ends[0], &byte, 1) == 1;
    ::usleep(moment_of(round, most));
    ::kill(child, SIGKILL);
    while (::read(ends[0], &byte, 1) == 1) ++said;
    ::close(ends[0]);
    int status = 0;
    ::waitpid(child, &status, 0);
    CHECK_MESSAGE((WIFSIGNALED(status) || WEXITSTATUS(status) == 0), "the act itself was refused");
    return said;
}

// Verbs killed at moments from their start to past their end, however slow the machine is just now: of four rounds one is
// waited for, one is killed at once, and two anywhere in the time that such a verb took lately.
class Pace {
public:
    // Whether the verb came to its end first.
    bool ended(const Shed& shed, const std::vector<std::string>& words, int round) {
        test::Running running(SPURWRIGHT_PROGRAM, words, {"XDG_DATA_HOME=" + shed.folder.file("data"), "XDG_CONFIG_HOME=" + shed.folder.file("config")});
        const auto begun = std::chrono::steady_clock::now();
        if (round % 4 == 0) {
            CHECK(running.wait().status == 0);
            took_ = std::max<std::uint64_t>(2'000, static_cast<std::uint64_t>(std::chrono::duration_cast<std::chrono::microseconds>(std::chrono::steady_clock::now() - begun).count()));
            return true;
        }
        ::usleep(round % 4 == 1 ? moment_of(round, 2'000) : moment_of(round, took_ + took_ / 4));
        const bool ended = running.ended();
        running.kill();
        return ended;
    }

private:
    std::uint64_t took_ = 50'000; // microseconds
};

std::string kept_store(const Shed& shed) { return shed.folder.file("data/spurwright/store.sqlite"); }
std::string people_list(int first, int people) {
    std::string text = "number,name,language\n";
    for (int i = 0; i < people; ++i) text += std::to_string(first + i) + ",Zzyzx" + std::to_string(first + i) + ",es\n";
    return text;
}
std::size_t people_kept(const std::string& path) {
    auto store = Store::open_to_read(path);
    REQUIRE(store);
    if (!*store) return 0;
    CHECK((*store)->check());
    return people_of(**store)->size();
}
bool is_found_in(const std::string& folder, const std::string& text) {
    for (const auto& entry : std::filesystem::recursive_directory_iterator(folder))
        if (entry.is_regular_file() && test::file_text(entry.path().string()).find(text) != std::string::npos) return true;
    return false;
}

FinishedVine vine_finished(int person) {
    FinishedVine finished;
    finished.vine = test::little_vine();
    finished.plan = *parse_plan("mark a4 left");
    finished.place = "own";
    finished.person = person;
    finished.judgement = rules::judge(finished.vine, *prune(finished.vine, finished.plan), finished.house);
    return finished;
}

bool questions_made(practice::CrewQuiz& crew) {
    for (int i = 0; i < 20'000 && crew.stage() == practice::QuizStage::making; ++i) {
        crew.poll();
        std::this_thread::sleep_for(std::chrono::milliseconds(1));
    }
    return crew.stage() == practice::QuizStage::on;
}

} // namespace

TEST_SUITE("records/kill loop") {
    TEST_CASE("a quiz of the crew: every answer that was acknowledged is there when the window comes again, in its order") {
        const test::Folder folder;
        const std::string journal = folder.file("año nuevo/wall.journal");
        const rules::HouseRules house;
        const auto answer_of = [](int i) { return quiz::Event{quiz::event::Answered{{quiz::Way::person, 1 + i % 9'000}, {static_cast<std::uint8_t>(1 + i % 2)}}}; };
        int acknowledged = 0;
        std::size_t kept_before = 0;
        for (int round = 0; round < kill_rounds(); ++round) {
            CAPTURE(round);
            std::unique_ptr<practice::CrewQuiz> crew; // of the child alone: its worker is a thread
            std::size_t from = 0;
            const int said = said_until_killed(round, 40'000, [&](int i) {
                if (!crew) {
                    crew = std::make_unique<practice::CrewQuiz>(journal, std::nullopt);
                    crew->setup.kinds = {quiz::Kind::wood_age};
                    crew->setup.questions = practice::fewest_questions;
                    if (crew->offered()) {
                        if (!crew->go_on(house)) return false;
                    } else
                        crew->begin(5, "general", house, "en");
                    if (!questions_made(*crew)) return false;
                    if (crew->quiz()->phase() == quiz::Phase::gathered && !crew->take(quiz::event::Next{})) return false;
                    from = crew->happened().size() - 1; // answers so far
                }
                return crew->take(answer_of(static_cast<int>(from) + i)).has_value();
            });
            acknowledged += said;
            practice::CrewQuiz again(journal, std::nullopt);
            if (!again.offered()) {
                CHECK(said == 0); // killed before it began
                continue;
            }
            REQUIRE(again.go_on(house));
            REQUIRE(questions_made(again));
            const auto& happened = again.happened();
            CHECK(happened.size() >= kept_before + static_cast<std::size_t>(said));
            for (std::size_t i = 1; i < happened.size(); ++i) CHECK(happened[i] == answer_of(static_cast<int>(i) - 1));
            kept_before = std::max<std::size_t>(1, happened.size());
        }
        MESSAGE(kill_rounds(), " rounds, ", acknowledged, " answers acknowledged, ", kept_before, " events kept");
        CHECK(acknowledged >= kill_rounds() / 2);
    }
    TEST_CASE("finished vines and weighings: each that was acknowledged is there with its vine and its rules") {
        static const io::Assets assets(SPURWRIGHT_SOURCE "/assets");
        const auto words = words::load_words(assets, "en");
        const rules::HouseRules house;
        const Plan plan = *parse_plan("cut a7.0+5.0 shears; cut a6.0+5.0 shears");
        const Vine before = test::little_vine();
        weighing::Exercise exercise(weighing::pieces_of(before, *prune(before, plan), house), vine_hash(before), house);
        for (std::size_t i = 0; i < exercise.pieces().size(); ++i)
            if (exercise.pieces()[i].belongs) REQUIRE(exercise.act({weighing::Deed::take, i}));
        if (exercise.has_long()) REQUIRE(exercise.act({weighing::Deed::shorten, 0}));
        for (const weighing::Deed deed : {weighing::Deed::tie, weighing::Deed::zero, weighing::Deed::hang}) REQUIRE(exercise.act({deed, 0}));
        REQUIRE(exercise.write(weighing::written_as(exercise), false));
        for (const bool weighs : {false, true}) {
            const test::Folder folder;
            const std::string path = folder.file("s.sqlite");
            int acknowledged = 0;
            std::int64_t before_round = 0;
            for (int round = 0; round < kill_rounds(); ++round) {
                CAPTURE(round);
                std::optional<Store> store;
                const int said = said_until_killed(round, 60'000, [&](int i) {
                    if (!store) {
                        auto opened = Store::open(path);
                        if (!opened) return false;
                        store = std::move(*opened);
                    }
                    if (weighs) return keep_weighing(*store, {before, "", plan, house, "general"}, exercise, nullptr, 7, std::nullopt, then_utc).has_value();
                    const auto kept = keep_finished(*store, vine_finished(1 + round * 1'000 + i), *words, then_utc);
                    return kept && kept->has_value();
                });
                auto left = Store::open(path);
                REQUIRE(left);
                const std::int64_t now = left->whole("SELECT count(*) FROM event")->value_or(-1);
                CHECK(now >= before_round + said);
                CHECK(now <= before_round + said + 1);
                before_round = now;
                acknowledged += said;
            }
            auto left = Store::open(path);
            CHECK(check_records(*left)->damaged.empty());
            const auto again = replay(*left, 1);
            REQUIRE(again);
            CHECK(again->front().outcome != Outcome::unreadable);
            MESSAGE(kill_rounds(), " rounds, ", acknowledged, std::string(weighs ? " weighings" : " finished vines"), " acknowledged");
            CHECK(acknowledged >= kill_rounds() / 2);
        }
    }
    TEST_CASE("crew import: the whole list or none of it, the whole once it said so") {
        const Shed shed;
        Pace pace;
        int none = 0, whole = 0;
        std::size_t before = 0;
        for (int round = 0; round < kill_rounds(); ++round) {
            CAPTURE(round);
            const std::string list = shed.folder.write("crew.csv", people_list(1 + 400 * round, 400));
            const bool said = pace.ended(shed, {"crew", "import", list}, round);
            const std::size_t now = people_kept(kept_store(shed));
            CHECK((now == before || now == before + 400));
            if (said) CHECK(now == before + 400);
            ++(now == before ? none : whole);
            before = now;
        }
        MESSAGE(kill_rounds(), " rounds: ", whole, " lists whole, ", none, " not there");
        CHECK(none > 0);
        CHECK(whole > 0);
    }
    TEST_CASE("crew forget: there with all or gone; gone once it said so; what it left half is finished by the next act, to the last byte") {
        const Shed shed;
        Pace pace;
        int there = 0, gone = 0;
        for (int round = 0; round < kill_rounds(); ++round) {
            CAPTURE(round);
            shed.object({"crew", "import", shed.folder.write("crew.csv", people_list(1000 + round, 1))}, "verb-crew-import");
            REQUIRE(std::filesystem::remove(shed.folder.file("crew.csv")));
            const std::string number = std::to_string(1000 + round);
            {
                auto store = Store::open(kept_store(shed));
                for (int i = 0; i < 3; ++i) REQUIRE(add_event(*store, {0, "look", 1, then_utc, 1000 + round, "{}", std::nullopt}));
                REQUIRE(back_up_daily(*store, {2026, 1, 1 + round % 28})); // a copy that holds the name
            }
            const bool said = pace.ended(shed, {"crew", "forget", number}, round);
            {
                auto store = Store::open(kept_store(shed));
                const auto people = store->whole("SELECT count(*) FROM person WHERE number = " + number)->value_or(-1), events = store->whole("SELECT count(*) FROM event WHERE person = " + number)->value_or(-1);
                CHECK(((people == 1 && events == 3) || (people == 0 && events == 0)));
                if (said) CHECK(people == 0);
                ++(people == 1 ? there : gone);
            }
            if (!said) { // again, as a person would: it goes or is gone
                const test::Ran ran = shed.run({"crew", "forget", number});
                CHECK((ran.status == 0 || ran.err.find("Nobody has the number") != std::string::npos));
            }
            CHECK(!is_found_in(shed.folder.path(), "Zzyzx" + number));
        }
        MESSAGE(kill_rounds(), " rounds: ", gone, " gone, ", there, " still there with all");
        CHECK(there > 0);
        CHECK(gone > 0);
    }
    TEST_CASE("records backup: no file of that name or a whole one, a whole one once it said so; the records stay") {
        const Shed shed;
        shed.object({"crew", "import", shed.folder.write("crew.csv", people_list(1, 3'000))}, "verb-crew-import");
        Pace pace;
        int none = 0, whole = 0;
        for (int round = 0; round < kill_rounds(); ++round) {
            CAPTURE(round);
            const std::string copy = shed.folder.file("copia ñ " + std::to_string(round) + ".sqlite");
            const bool said = pace.ended(shed, {"records", "backup", "-o", copy}, round);
            const bool is_there = io::is_there(copy);
            if (said) CHECK(is_there);
            if (is_there) CHECK(people_kept(copy) == 3'000);
            CHECK(people_kept(kept_store(shed)) == 3'000);
            ++(is_there ? whole : none);
            for (const auto& entry : std::filesystem::directory_iterator(shed.folder.path())) // room for the next
                if (entry.path().filename().string().starts_with("copia")) std::filesystem::remove(entry.path());
        }
        MESSAGE(kill_rounds(), " rounds: ", whole, " copies whole, ", none, " not there");
        CHECK(none > 0);
        CHECK(whole > 0);
    }
    TEST_CASE("records restore: the records from before or those of the copy, those of the copy once it said so, and what was there is never lost") {
        const Shed shed;
        const std::size_t sizes[2] = {1'500, 3'000};
        std::string copies[2];
        for (int i = 0; i < 2; ++i) {
            const Shed other;
            other.object({"crew", "import", other.folder.write("crew.csv", people_list(1, static_cast<int>(sizes[i])))}, "verb-crew-import");
            copies[i] = shed.folder.file("copy " + std::to_string(i) + ".sqlite");
            other.object({"records", "backup", "-o", copies[i]}, "verb-records-backup");
        }
        shed.object({"records", "restore", copies[0]}, "verb-records-restore");
        Pace pace;
        int old = 0, changed = 0, damaged = 0;
        std::size_t before = sizes[0];
        for (int round = 0; round < kill_rounds(); ++round) {
            CAPTURE(round);
            const std::size_t wanted = before == sizes[0] ? 1 : 0;
            const bool spoilt = round % 4 == 3; // a store that cannot be opened goes aside as it is
            const std::string junk = "no records " + std::to_string(round);
            if (spoilt) shed.folder.write("data/spurwright/store.sqlite", junk);
            const bool said = pace.ended(shed, {"records", "restore", copies[wanted]}, round);
            if (spoilt && test::file_text(kept_store(shed)) == junk) {
                CHECK(!said);
                ++old;
                shed.object({"records", "restore", copies[0]}, "verb-records-restore");
                before = sizes[0];
                continue;
            }
            if (spoilt) {
                CHECK(is_found_in(shed.folder.file("data/spurwright/backups"), junk));
                ++damaged;
            }
            const std::size_t now = people_kept(kept_store(shed));
            if (spoilt) CHECK(now == sizes[wanted]);
            CHECK((now == before || now == sizes[wanted]));
            if (said) CHECK(now == sizes[wanted]);
            if (now != before) { // the last that was put aside is what was there
                auto store = Store::open(kept_store(shed));
                std::size_t like_before = 0;
                for (const std::string& aside : copies_of(*store)) like_before += people_kept(aside) == before;
                if (!spoilt) CHECK(like_before > 0);
            }
            ++(now == before ? old : changed);
            before = now;
            std::error_code fault; // room for the next
            std::filesystem::remove_all(shed.folder.file("data/spurwright/backups"), fault);
        }
        MESSAGE(kill_rounds(), " rounds: ", changed, " were those of the copy, ", old, " those from before; over damaged ones ", damaged);
        CHECK(old > 0);
        CHECK(changed > 0);
    }
}
