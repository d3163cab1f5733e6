// The crash matrix: every writing step of every act on the store, with every fault. What is there afterwards is the store
// before the act or after it, never a third, and after it where the act was acknowledged.
#include <doctest/doctest.h>

#include <sys/wait.h>
#include <unistd.h>

#include <functional>

#include "scenarios/records/act.h"
#include "scenarios/records/answer.h"
#include "scenarios/records/restore.h"
#include "scenarios/records/events.h"
#include "scenarios/records/quiz_record.h"
#include "scenarios/io/safe_file.h"
#include "scenarios/records/roster.h"
#include "scenarios/records/weighing_record.h"
#include "scenarios/reference_vines/book_file.h"
#include "scenarios/words/load_words.h"
#include "sim/pruning/plan_text.h"
#include "sim/rules/judge.h"
#include "sim/vine/canonical_text.h"
#include "tests/records/faulty_disk.h"
#include "tests/support/folder.h"
#include "tests/support/full_size.h"
#include "tests/support/little_vine.h"

using namespace spurwright;
using namespace spurwright::records;

namespace {

constexpr const char* at_noon = "2026-01-31T12:00:00Z";

// An act on a store that was made ready for it, and what can be told of the store before and after.
struct MatrixRow {
    const char* name;
    std::function<void(Store&)> ready;
    std::function<Result<void>(Store&)> act;
    std::function<std::string(Store&)> state;
};

Roster people_from(int first, int people) {
    std::string text = "number,name,language\n";
    for (int i = 0; i < people; ++i) text += std::to_string(first + i) + ",Name " + std::to_string(i) + ",es\n";
    return *read_roster(text, "roster.csv", {}, {"es"});
}

std::string counts(Store& store) {
    std::string told;
    for (const char* table : {"person", "event", "weighing", "reference_vine", "act"}) told += std::to_string(store.whole("SELECT count(*) FROM " + std::string(table))->value_or(-1)) + " ";
    return told;
}
// Without the acts: an undone act leaves them behind.
std::string people_told(Store& store) { return std::to_string(people_of(store)->size()) + " " + std::to_string(store.whole("SELECT count(*) FROM event WHERE person = 2")->value_or(-1)); }

void some_people(Store& store) { REQUIRE(take_in(store, people_from(1, 3), at_noon)); }

Result<void> weigh_some(Store& store) {
    std::string text = "block,tag,winter,weight_kg\n";
    for (int i = 0; i < 60; ++i) text += "north," + std::to_string(i % 20) + "," + std::to_string(2020 + i / 20) + ",1.1\n";
    const auto book = reference_vines::book_of(store);
    if (!book) return failure(book.error());
    return reference_vines::take_in(store, *book, *reference_vines::read_book_file(text, "b.csv", *book, {2026, 2, 1}), at_noon);
}

void with_block(Store& store) {
    some_people(store);
    reference_vines::Block block{0, "north", from_mm(1800), std::nullopt, "", false};
    REQUIRE(put_block(store, block));
}

std::string kept_too(Store& store) {
    return counts(store) + std::to_string(store.whole("SELECT count(*) FROM kept_vine")->value_or(-1)) + " " + std::to_string(store.whole("SELECT count(*) FROM rule_set")->value_or(-1));
}

Result<void> finish_vine(Store& store) {
    static const io::Assets assets(SPURWRIGHT_SOURCE "/assets");
    static const auto words = words::load_words(assets, "en");
    FinishedVine finished;
    finished.vine = test::little_vine();
    finished.plan = *parse_plan("mark a4 left");
    finished.place = "own";
    finished.judgement = rules::judge(finished.vine, *prune(finished.vine, finished.plan), finished.house);
    const auto kept = keep_finished(store, finished, *words, at_noon);
    return kept ? Result<void>{} : failure(kept.error());
}

Result<void> finish_quiz(Store& store) {
    static const rules::HouseRules house;
    quiz::Item item;
    item.kind = quiz::Kind::wood_age;
    item.vine = test::little_vine();
    item.places.resize(3);
    item.accepted = {{1}};
    quiz::Quiz played({7, {quiz::Kind::wood_age}, 1, "general", "0123456789abcdef", "en", {0}}, {item});
    namespace happened = quiz::event;
    const std::vector<quiz::Event> events{happened::Next{}, happened::Answered{{quiz::Way::person, 2}, {1}}, happened::Answered{{quiz::Way::post, 1}, {2}}, happened::Locked{}, happened::Revealed{}, happened::Next{}};
    for (const quiz::Event& event : events) (void)played.take(event);
    const auto kept = keep_quiz(store, {played, events, house}, at_noon);
    return kept ? Result<void>{} : failure(kept.error());
}

// Weighs, as at the scale: what belongs goes into the bundle, it is tied, hung on a scale set to nothing, written down.
Result<void> weigh_vine(Store& store) {
    static const rules::HouseRules house;
    static const Plan plan = *parse_plan("cut a7.0+5.0 shears; cut a6.0+5.0 shears");
    const Vine before = test::little_vine();
    weighing::Exercise exercise(weighing::pieces_of(before, *prune(before, plan), house), vine_hash(before), house);
    for (std::size_t i = 0; i < exercise.pieces().size(); ++i)
        if (exercise.pieces()[i].belongs) REQUIRE(exercise.act({weighing::Deed::take, i}));
    if (exercise.has_long()) REQUIRE(exercise.act({weighing::Deed::shorten, 0}));
    for (const weighing::Deed deed : {weighing::Deed::tie, weighing::Deed::zero, weighing::Deed::hang}) REQUIRE(exercise.act({deed, 0}));
    REQUIRE(exercise.write(weighing::written_as(exercise), false));
    const auto kept = keep_weighing(store, {before, "", plan, house, "general"}, exercise, nullptr, 2, std::nullopt, at_noon);
    return kept ? Result<void>{} : failure(kept.error());
}

// A copy with other people than those of some_people, made once.
const std::string& copy_of_others() {
    static const test::Folder folder;
    static const std::string file = [] {
        auto store = Store::open(folder.file("others.sqlite"));
        REQUIRE(take_in(*store, people_from(21, 6), at_noon));
        REQUIRE(finish_vine(*store));
        REQUIRE(write_copy(*store, folder.file("copy.sqlite")));
        return folder.file("copy.sqlite");
    }();
    return file;
}

// What the store holds, and whether each copy beside it opens; how many there are does not count, as a second try makes one more.
std::string with_sound_copies(Store& store) {
    std::string told = kept_too(store);
    for (const std::string& file : copies_of(store)) {
        auto copy = Store::open_to_read(file);
        if (!copy || !*copy || !(*copy)->check() || people_of(**copy)->size() != 3) told += " broken copy"; // the three from before
    }
    return told;
}

std::vector<MatrixRow> matrix_rows() {
    return {{"import roster", some_people, [](Store& store) { return take_in(store, people_from(11, 4), at_noon); }, counts},
            {"acknowledge answer", some_people,
             [](Store& store) -> Result<void> {
                 const auto id = add_event(store, {0, "answer", 1, at_noon, 2, R"({"plan":"x"})", std::nullopt});
                 if (!id) return failure(id.error());
                 return {};
             },
             counts},
            {"finish vine", some_people, finish_vine, kept_too},
            {"finish quiz", some_people, finish_quiz, kept_too},
            {"import weighings", with_block, weigh_some, counts},
            {"undo", [](Store& store) {
                 with_block(store);
                 REQUIRE(weigh_some(store));
             },
             [](Store& store) -> Result<void> {
                 const auto last = last_act(store, "book-");
                 if (!last) return failure(last.error());
                 return *last ? undo(store, **last, at_noon) : Result<void>{}; // already back where the first try came that far
             },
             [](Store& store) { return std::to_string(store.whole("SELECT count(*) FROM weighing")->value_or(-1)); }},
            {"delete person",
             [](Store& store) {
                 some_people(store);
                 for (int i = 0; i < 4; ++i) REQUIRE(add_event(store, {0, "answer", 1, at_noon, 2, "{}", std::nullopt}));
             },
             [](Store& store) -> Result<void> {
                 const auto gone = forget_person(store, 2, false, at_noon);
                 if (!gone && gone.error().key.name != "error.crew.nobody") return failure(gone.error()); // nobody: the first try came that far
                 return {};
             },
             people_told},
            {"weigh", some_people, weigh_vine, kept_too},
            {"restore",
             [](Store& store) {
                 some_people(store);
                 REQUIRE(!copy_of_others().empty()); // made before the disk fails
             },
             [](Store& store) -> Result<void> {
                 auto copy = Store::open_to_read(copy_of_others());
                 if (!copy) return failure(copy.error());
                 const auto aside = people_of(store)->size() == 3 ? put_back(store, **copy, {2026, 2, 1}) : std::string(); // else the first try came that far
                 return aside ? Result<void>{} : failure(aside.error());
             },
             with_sound_copies},
            {"copy", some_people,
             [](Store& store) {
                 const std::string file = store.path() + ".copy";
                 return io::is_there(file) ? Result<void>{} : write_copy(store, file);
             },
             [](Store& store) {
                 auto copy = Store::open_to_read(store.path() + ".copy");
                 const bool sound = copy && *copy && (*copy)->check() && people_of(**copy)->size() == 3;
                 return counts(store) + (sound ? "copied" : copy && !*copy ? "none" : "broken copy");
             }},
            {"daily backup", some_people, [](Store& store) { return back_up_daily(store, {2026, 2, 1}); },
             [](Store& store) {
                 std::string told = counts(store);
                 for (const std::string& file : backups_of(store)) {
                     auto copy = Store::open_to_read(file);
                     told += copy && *copy && (*copy)->check() ? std::to_string(people_of(**copy)->size()) : "broken copy";
                 }
                 return told;
             }}};
}

struct CellOutcome {
    bool stopped = false;      // by the fault
    bool acknowledged = false; // the act said it was done
    int steps = 0;             // where there was no fault
    bool told_why = true, done_later = true;
};

// The act in a process of its own, on a disk that fails at a step.
CellOutcome run_row(const MatrixRow& row, const std::string& path, int step, test::DiskFault fault) {
    int ends[2];
    REQUIRE(::pipe(ends) == 0);
    const pid_t child = ::fork();
    if (child == 0) {
        const auto say = [&](const char* word) {
            if (::write(ends[1], word, 1) != 1) ::_exit(95);
        };
        auto store = Store::open(path);
        if (!store) ::_exit(94);
        test::fail_at(step, fault);
        const auto done = row.act(*store);
        const int steps = test::steps_so_far();
        say(done ? "y" : done.error().key.name.starts_with("error.") ? "n" : "?");
        if (test::stops_process(fault)) test::stop_now(fault); // the step after the last: what was said to be done is
        test::fail_at(0, test::DiskFault::none); // there is room again
        if (!done) say(row.act(*store) ? "y" : "n");
        if (fault == test::DiskFault::none && ::write(ends[1], &steps, sizeof steps) != sizeof steps) ::_exit(95);
        ::_exit(0);
    }
    ::close(ends[1]);
    CellOutcome outcome;
    char first = 0, second = 0;
    if (::read(ends[0], &first, 1) == 1) {
        outcome.acknowledged = first == 'y';
        outcome.told_why = first != '?';
        if (first != 'y' && ::read(ends[0], &second, 1) == 1) outcome.done_later = second == 'y';
        if (fault == test::DiskFault::none) REQUIRE(::read(ends[0], &outcome.steps, sizeof outcome.steps) == sizeof outcome.steps);
    }
    ::close(ends[0]);
    int status = 0;
    ::waitpid(child, &status, 0);
    REQUIRE(WIFEXITED(status));
    outcome.stopped = WEXITSTATUS(status) == 9;
    REQUIRE((WEXITSTATUS(status) == 0 || outcome.stopped));
    return outcome;
}

}  // namespace

TEST_SUITE("records/crash-matrix") {
    TEST_CASE("every step of every act with every fault: old or new, never a third") {
        const test::FaultyDisk disk; // without a fault here, only quicker
        for (const MatrixRow& row : matrix_rows()) {
            CAPTURE(std::string(row.name));
            const test::Folder start;
            std::string before, after;
            {
                auto store = Store::open(start.file("s.sqlite"));
                REQUIRE(store);
                row.ready(*store);
                before = row.state(*store);
            }
            const std::string ready = test::file_text(start.file("s.sqlite")); // whole: its log went with the last that had it open
            const int steps = run_row(row, start.file("s.sqlite"), 0, test::DiskFault::none).steps;
            {
                auto store = Store::open(start.file("s.sqlite"));
                after = row.state(*store);
            }
            CHECK(before != after);
            REQUIRE(steps > 0);
            int cells = 0, acknowledged = 0;
            const int stride = std::max(1, steps / test::sized(4, 100'000)); // all of them under SPURWRIGHT_FULL
            for (const test::DiskFault fault : test::all_disk_faults)
                for (int step = 1 + static_cast<int>(fault) % stride; step <= steps + stride; step += stride) {
                    const test::Folder folder;
                    folder.write("s.sqlite", ready);
                    const CellOutcome outcome = run_row(row, folder.file("s.sqlite"), step, fault);
                    CAPTURE(step);
                    CAPTURE(static_cast<int>(fault));
                    CHECK(outcome.told_why);
                    CHECK(outcome.done_later);
                    auto store = Store::open(folder.file("s.sqlite"));
                    REQUIRE(store);
                    CHECK(store->check().has_value());
                    const std::string now = row.state(*store);
                    CHECK((now == before || now == after));
                    if (outcome.acknowledged || !outcome.stopped) CHECK(now == after); // at once, or when there was room again
                    acknowledged += outcome.stopped && outcome.acknowledged;
                    ++cells;
                }
            MESSAGE(std::string(row.name), ": ", steps, " steps, ", cells, " cells, stopped ", acknowledged, " times once it was done");
            CHECK(acknowledged >= 6); // each way of stopping
        }
    }
}
