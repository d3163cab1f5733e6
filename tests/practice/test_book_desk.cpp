// The book of reference vines through the session, as the window asks: blocks, weights in walking order, the question about
// one that stands apart, taking back; refusals change nothing.
#include <doctest/doctest.h>

#include <chrono>
#include <cmath>
#include <thread>

#include "scenarios/io/safe_file.h"
#include "scenarios/practice/session.h"
#include "scenarios/records/clock.h"
#include "scenarios/records/events.h"
#include "sim/vine/vine_query.h"
#include "tests/practice/book_wait.h"
#include "tests/support/folder.h"

using namespace spurwright;
using namespace spurwright::practice;

namespace {

const io::Assets shed_assets(std::string(SPURWRIGHT_SOURCE) + "/assets");

struct Shed {
    test::Folder here;
    settings::Folders folders{here.file("config/settings.json"), here.file("data/work"), here.file("config/house-rules.json"), here.file("data/records.sqlite")};
    std::unique_ptr<Session> session;
    Shed() {
        std::uint64_t next = 21;
        auto made = Session::make(shed_assets, folders, {}, [next]() mutable { return next++; });
        REQUIRE(made.has_value());
        session = *std::move(made);
        session->carry_out(ask::SafetySeen{});
    }
    const BookDesk& book() const { return *session->book(); }
    void does(BookAct act) {
        session->carry_out(ask::BookDo{std::move(act)});
        test::wait_for_file(*session);
    }
    std::string said() const { return session->shell().message ? std::string(session->shell().message->key.name) : std::string(); }
    void weight(const std::string& typed) { does(desk::Enter{typed, {}, {}, {}, {}}); }
};

// A block of vines weighed for seven winters before this one, about 0.8 kg, read from a file as a house would bring it.
void bring_block(Shed& shed, int vines) {
    shed.session->carry_out(ask::Book{});
    shed.does(desk::NewBlock{"north", "1.8 m"});
    REQUIRE(shed.said().empty());
    std::string csv = "block,row,tag,place,winter,weight_kg\n";
    const int newest = shed.book().newest_winter();
    for (int vine = 1; vine <= vines; ++vine)
        for (int back = 7; back >= 1; --back)
            csv += "north," + std::to_string(1 + (vine - 1) / 10) + ",t" + std::to_string(vine) + "," + std::to_string(1 + (vine - 1) % 10) + "," + std::to_string(newest - back) + ",0." + std::to_string(70 + (vine * 7 + back * 5) % 23) + "\n";
    const std::string path = shed.here.file("north.csv");
    REQUIRE(io::write_file(path, csv).has_value());
    shed.does(desk::ReadIn{path});
    REQUIRE(shed.book().preview().has_value());
    CHECK(shed.book().preview()->counts.added == 7 * vines);
    CHECK(shed.book().open()->vines.empty());  // looked into, not taken in
    shed.does(desk::ReadIn{path});
    REQUIRE(shed.book().open()->vines.size() == static_cast<std::size_t>(vines));
    shed.does(desk::Open{"north"});
}

}  // namespace

TEST_CASE("twenty vines keyed in walking order: each is in the store when the next stands there, and all are there when the book is opened again") {
    Shed shed;
    bring_block(shed, 20);
    for (int i = 0; i < 20; ++i) {
        REQUIRE(shed.book().at() == static_cast<std::size_t>(i));
        const auto& vine = *shed.book().vine();
        if (i > 0) CHECK_FALSE(reference_vines::walked_before(vine, shed.book().open()->vines[static_cast<std::size_t>(i) - 1]));
        shed.weight("0." + std::to_string(75 + i % 9));
        CHECK(shed.said().empty());
        CHECK(shed.book().keyed() == static_cast<std::size_t>(i) + 1);
    }
    CHECK(shed.book().vine() == nullptr);  // past the last
    auto again = Session::make(shed_assets, shed.folders, {}, [] { return std::uint64_t{1}; });
    REQUIRE(again.has_value());
    (*again)->carry_out(ask::Book{});
    CHECK((*again)->book()->keyed() == 20);
    CHECK(BookDesk::weighed((*again)->book()->open()->vines[3], shed.book().winter())->typed == "0.78 kg");
}

TEST_CASE("a weight that stands apart is asked about once: kept by a word, else nothing was kept") {
    Shed shed;
    bring_block(shed, 3);
    shed.weight("3.1");
    REQUIRE(shed.book().odd().has_value());
    CHECK(shed.book().odd()->of_vine);
    CHECK(shed.book().keyed() == 0);
    shed.does(desk::Keep{false});
    CHECK_FALSE(shed.book().odd().has_value());
    CHECK(shed.book().keyed() == 0);
    CHECK(shed.book().at() == 0);
    shed.weight("3.1");
    shed.does(desk::Walk{1});  // gone on without a word: not kept
    CHECK_FALSE(shed.book().odd().has_value());
    shed.does(desk::Keep{true});
    CHECK(shed.book().keyed() == 0);
    shed.does(desk::At{0});
    shed.weight("3.1");
    shed.does(desk::Keep{true});
    CHECK(shed.book().keyed() == 1);
    CHECK(shed.book().at() == 1);
}

TEST_CASE("what is no weight is refused with a sentence, and the vine stays at hand") {
    Shed shed;
    bring_block(shed, 2);
    for (const char* typed : {"", "abc", "0,74", "-1", "0", "99", "=1+1", "0.001", "1e999", "0.7 stone", "\"", "0.7\n1"}) {
        CAPTURE(typed);
        shed.weight(typed);
        CHECK_FALSE(shed.said().empty());
        CHECK(shed.book().keyed() == 0);
        CHECK(shed.book().at() == 0);
        const words::Words& words = shed.session->words();
        const std::string sentence = words.sentence(shed.session->shell().message->key, shed.session->shell().message->arguments);
        CHECK(sentence.find('[') == std::string::npos);
        CHECK(sentence.find('{') == std::string::npos);
    }
    shed.does(desk::Enter{"0.74", "two", {}, {}, {}});
    CHECK(shed.book().keyed() == 0);
    shed.does(desk::Unit{WeightUnit::lb});
    shed.does(desk::Enter{"1.63", "2", "24", "4.1 kg", "near the post"});
    CHECK(shed.said().empty());
    const auto* weighed = BookDesk::weighed(shed.book().open()->vines[0], shed.book().winter());
    REQUIRE(weighed);
    CHECK(weighed->typed == "1.63 lb");
    CHECK(std::abs(weighed->prunings.count - 739'356) <= 1);  // 1.63 x 453.59237 g
    CHECK(weighed->buds == 24);
    CHECK(weighed->crop_typed == "4.1 kg");
    CHECK(weighed->note == "near the post");
}

TEST_CASE("taken back, a weight is gone and its vine comes next; the act stays in the history") {
    Shed shed;
    bring_block(shed, 2);
    shed.weight("0.75");
    shed.weight("0.77");
    CHECK(shed.book().keyed() == 2);
    shed.does(desk::TakeBack{});
    CHECK(shed.said().empty());  // it is seen on the card
    CHECK(shed.book().keyed() == 1);
    CHECK(shed.book().at() == 1);
    shed.weight("0.78");
    CHECK(shed.book().keyed() == 2);
    CHECK(BookDesk::weighed(shed.book().open()->vines[1], shed.book().winter())->typed == "0.78 kg");
    shed.does(desk::Page{BookPage::blocks});
    for (int i = 0; i < 2; ++i) shed.does(desk::TakeBack{});
    shed.does(desk::TakeBack{});  // the import, which is told
    CHECK(shed.said() == "book.taken-back");
    CHECK(shed.book().open()->vines.empty());
}

TEST_CASE("a new vine is keyed at the end of the block, and a tag that is there is gone to") {
    Shed shed;
    bring_block(shed, 2);
    shed.does(desk::NewVine{"t2", {}, {}});
    CHECK(shed.book().at() == 1);
    shed.does(desk::NewVine{"x1", "1", "9"});
    REQUIRE(shed.book().begun_vine());
    CHECK(shed.book().open()->vines.size() == 2);  // none before its first weight
    shed.weight("0.9 kg");
    REQUIRE(shed.book().open()->vines.size() == 3);
    shed.does(desk::Tag{"x1"});
    CHECK(shed.book().vine()->place == 9);
    shed.does(desk::NewVine{{}, {}, {}});
    CHECK(shed.said() == "error.book.tag-missing");
    shed.does(desk::Tag{"nobody"});
    CHECK(shed.said() == "error.book.no-tag");
}

TEST_CASE("blocks: a name or spacing that cannot be is refused; one of a name there is opened") {
    Shed shed;
    shed.session->carry_out(ask::Book{});
    for (const auto& [name, spacing] : {std::pair{"", "1.8 m"}, {"=1+1", "1.8 m"}, {"ok", "1.8"}, {"ok", "0.1 m"}, {"ok", "1,8 m"}}) {
        shed.does(desk::NewBlock{name, spacing});
        CHECK_FALSE(shed.said().empty());
        CHECK(shed.book().book().empty());
    }
    shed.does(desk::NewBlock{"ok", "1.8 m"});
    shed.does(desk::NewBlock{"ok", "2 m"});
    CHECK(shed.book().book().size() == 1);
    CHECK(shed.book().open()->block.spacing == Length{1'800'000});
}

TEST_CASE("the invented block opens by one press, labelled invented, and compares as the verb does") {
    Shed shed;
    shed.session->carry_out(ask::Book{});
    shed.does(desk::Demo{});
    CHECK(shed.session->works());
    while (shed.book().making_demo()) {
        shed.session->poll();
        std::this_thread::sleep_for(std::chrono::milliseconds(20));
    }
    REQUIRE(shed.book().open());
    CHECK(shed.book().open()->block.invented);
    CHECK(shed.book().open()->vines.size() == 60);
    CHECK(shed.book().page() == BookPage::compare);
    CHECK(shed.book().comparison().winters.size() == 8);
    CHECK(shed.book().comparison().rows.size() == 3);
    const double all = shed.book().comparison().winters.back().kg.median;
    shed.does(desk::Row{1});
    CHECK(shed.book().comparison().vines == 20);
    shed.does(desk::Row{-1});
    CHECK_FALSE(shed.book().compared_row().has_value());
    CHECK(shed.book().comparison().winters.back().kg.median == all);
    CHECK(shed.book().suggestion().vines.size() == 60);
    const auto out = shed.here.file("all.csv");
    shed.does(desk::WriteOut{out});
    CHECK(shed.said() == "book.exported");
    shed.does(desk::ReadIn{out});  // what it wrote changes nothing
    REQUIRE(shed.book().preview().has_value());
    CHECK(shed.book().preview()->counts.same == 480);
    CHECK(shed.book().preview()->counts.added + shed.book().preview()->counts.changed == 0);
    shed.does(desk::WriteOut{shed.here.file("all.txt")});
    CHECK(shed.said() == "error.book.export-kind");
    shed.does(desk::ReadIn{shed.here.file("nothing.csv")});
    CHECK_FALSE(shed.said().empty());
}

TEST_CASE("while a file is taken in nothing else is done in the book; while it is only looked into anything may be") {
    Shed shed;
    bring_block(shed, 3);
    const std::string path = shed.here.file("more.csv");
    REQUIRE(io::write_file(path, "block,row,tag,place,winter,weight_kg\nnorth,9,new,1," + std::to_string(shed.book().newest_winter()) + ",0.8\n").has_value());
    const auto begin = [&](BookAct act) { shed.session->carry_out(ask::BookDo{std::move(act)}); };
    begin(desk::ReadIn{path});
    CHECK(shed.book().reading());
    CHECK(shed.session->works());
    begin(desk::Row{1});  // forgets the file
    CHECK_FALSE(shed.book().works());
    shed.session->poll();
    CHECK_FALSE(shed.book().preview().has_value());
    shed.does(desk::ReadIn{path});
    REQUIRE(shed.book().preview().has_value());
    begin(desk::ReadIn{path});
    CHECK(shed.book().taking_in());
    begin(desk::Row{1});
    CHECK(shed.said() == "error.book.taking-in");
    begin(desk::ReadIn{path});
    CHECK(shed.said() == "error.book.taking-in");
    test::wait_for_file(*shed.session);
    CHECK(shed.said() == "screen.book.read-in");
    CHECK(shed.book().open()->vines.size() == 4);
    CHECK(shed.book().can_take_back());
    shed.weight("0.9 kg");  // the book writes again itself
    CHECK(shed.book().entered() == 7 * 3 + 2);
}

TEST_CASE("where no folder is known the book can be looked at, and says that nothing can be kept") {
    Shed shed;
    shed.folders.store_file.clear();
    auto made = Session::make(shed_assets, shed.folders, {}, [] { return std::uint64_t{1}; });
    REQUIRE(made.has_value());
    (*made)->carry_out(ask::Book{});
    CHECK((*made)->book()->book().empty());
    (*made)->carry_out(ask::BookDo{desk::NewBlock{"ok", "1.8 m"}});
    REQUIRE((*made)->shell().message.has_value());
    CHECK((*made)->shell().message->key.name == "error.book.nothing-kept");
}

TEST_CASE("a weight written down at the scale goes into the records as an event; the vine weighed is the one pruned") {
    Shed shed;
    shed.session->carry_out(ask::Weigh{});  // none in hand: one more, pruned already
    REQUIRE(shed.session->weighing());
    CHECK(shed.session->shell().screen == Screen::weigh);
    const weighing::Exercise& exercise = *shed.session->weighing();
    const auto does = [&](weighing::Deed deed, std::size_t piece = 0) { shed.session->carry_out(ask::WeighDo{{deed, piece}}); };
    for (std::size_t i = 0; i < exercise.pieces().size(); ++i)
        if (exercise.canes_on(i)) does(weighing::Deed::strip, i);
    for (std::size_t i = 0; i < exercise.pieces().size(); ++i)
        if (exercise.pieces()[i].belongs) does(weighing::Deed::take, i);
    if (exercise.has_long()) does(weighing::Deed::shorten);
    if (exercise.wet()) does(weighing::Deed::let_dry);
    does(weighing::Deed::zero);
    does(weighing::Deed::tie);
    does(weighing::Deed::hang);
    shed.session->carry_out(ask::WeighWrite{"no weight", false});
    CHECK_FALSE(shed.said().empty());
    shed.session->carry_out(ask::WeighWrite{weighing::written_as(exercise), false});
    CHECK(shed.said().empty());
    REQUIRE(exercise.verdict().has_value());
    CHECK(exercise.verdict()->within);
    auto store = records::Store::open_to_read(shed.folders.store_file);
    REQUIRE(store.has_value());
    REQUIRE(store->has_value());
    int events = 0;
    const auto read = records::each_event(**store, "weighing", 0, [&](const records::Event& event) {
        ++events;
        CHECK(event.body.find("\"within\": true") != std::string::npos);
        CHECK(event.version == 2);
        CHECK_FALSE(event.person.has_value());
    });
    CHECK(read.has_value());
    CHECK(events == 1);
    shed.session->carry_out(ask::WeighAgain{});
    CHECK_FALSE(exercise.written().has_value());
    CHECK(exercise.acts() == 0);
    shed.session->carry_out(ask::WeighClose{});
    CHECK(shed.session->weighing() == nullptr);
    CHECK(shed.session->shell().screen == Screen::home);
}

TEST_CASE("from the look back the brush of the vine in hand is weighed, and the way back is the look back") {
    Shed shed;
    shed.session->carry_out(ask::OpenScene{"first", 0});
    Practice& vine = *shed.session->practice();
    shed.session->carry_out(ask::Weigh{});  // not finished: another vine's
    CHECK(shed.session->weighing() != nullptr);
    shed.session->carry_out(ask::WeighClose{});
    const auto canes = cane_candidates(vine.start());
    shed.session->carry_out(ask::CutHere{{canes[0], node_id(canes[0], 0), {}}, HandTool::shears});
    if (vine.waiting()) shed.session->carry_out(ask::Confirm{});
    shed.session->carry_out(ask::GoToStep{rules::Step::look_back});
    REQUIRE(vine.finished());
    shed.session->carry_out(ask::Weigh{});
    REQUIRE(shed.session->weighing());
    CHECK(std::abs(weighing::true_bundle(shed.session->weighing()->pieces()).mass.count - weighing::true_bundle(weighing::pieces_of(vine.start(), vine.now(), vine.task().house)).mass.count) == 0);
    shed.session->carry_out(ask::WeighClose{});
    CHECK(shed.session->shell().screen == Screen::row);
    CHECK(vine.finished());
}
