// Clicks and keys do what they say, found by name, in both languages.
#include <doctest/doctest.h>

#include <functional>

#include "tests/ui/driver.h"
#include "tests/ui/staged.h"

using namespace spurwright;
using practice::HandTool;
using practice::Request;
namespace ask = practice::ask;
namespace key = ui::key;
using test::Driver;
using test::Staged;

namespace {

const Staged& staged(const std::string& name) {
    static const std::vector<Staged> all = test::all_staged();
    for (const Staged& one : all)
        if (one.name == name) return one;
    FAIL(name);
    return all.front();
}

// What a click on a widget of a staged screen asks.
std::optional<Request> clicked(const std::string& screen, std::string_view widget, const std::string& language = "en") {
    Driver driver({language, 100, 1920, 1080});
    driver.views = staged(screen).views;
    return driver.click(staged(screen).state(), widget);
}

std::optional<Request> pressed(const std::string& screen, ui::KeyPress press) {
    Driver driver({});
    driver.views = staged(screen).views;
    driver.settle(staged(screen).state());
    return driver.press(staged(screen).state(), press);
}

template <class R>
const R* as(const std::optional<Request>& asked) {
    return asked ? std::get_if<R>(&*asked) : nullptr;
}

template <class R>
bool asks(const std::optional<Request>& asked) {
    return as<R>(asked) != nullptr;
}

} // namespace

TEST_CASE("buttons ask what they say, in English and in Spanish") {
    for (const std::string language : {"en", "es"}) {
        CAPTURE(language);
        const auto click = [&](const char* screen, const char* widget) { return clicked(screen, widget, language); };
        CHECK(asks<ask::SafetySeen>(click("safety-first", "safety.read")));
        const auto spoken = click("safety-first", "safety.language.es");
        REQUIRE(asks<ask::Speak>(spoken));
        CHECK(as<ask::Speak>(spoken)->language == "es");
        CHECK(asks<ask::NextVine>(click("home-empty", "home.next-vine")));
        CHECK(asks<ask::NextVine>(click("home-empty", "home.row")));
        CHECK(as<ask::OpenScene>(click("home-empty", "home.shed"))->name == "first");
        CHECK(as<ask::OpenScene>(click("home-empty", "home.scene.first"))->name == "first");
        CHECK(as<ask::GoTo>(click("home-walked", "home.go-on"))->screen == practice::Screen::row);
        CHECK(as<ask::OpenCode>(click("home-walked", "home.walked.1"))->code == staged("home-walked").shell.walked[1].code);
        CHECK(as<ask::OpenScene>(click("home-walked", "home.walked.0"))->name == "first");
        CHECK(as<ask::OfferTaken>(click("home-offer", "say.go-on"))->yes);
        CHECK_FALSE(as<ask::OfferTaken>(click("home-offer", "say.begin-new"))->yes);
        CHECK(as<ask::TakeTool>(click("row-start", "row.tool.saw"))->tool == HandTool::saw);
        CHECK(as<ask::GoToStep>(click("row-start", "row.step.lengths"))->step == rules::Step::lengths);
        CHECK(asks<ask::NextStep>(click("row-start", "row.next-step")));
        CHECK(as<ask::GoTo>(click("row-start", "row.home"))->screen == practice::Screen::home);
        CHECK(asks<ask::Undo>(click("row-acts", "row.undo")));
        CHECK(asks<ask::Redo>(click("row-acts", "row.redo")));
        CHECK(as<ask::JumpTo>(click("row-acts", "row.act.2"))->done == 3);
        CHECK(as<ask::JumpTo>(click("row-acts", "row.act.none"))->done == 0);
        const auto marked = click("row-acts", "row.tape.remove");
        REQUIRE(asks<ask::MarkAs>(marked));
        CHECK(as<ask::MarkAs>(marked)->role == Role::remove);
        CHECK(as<ask::MarkAs>(marked)->axis == staged("row-acts").practice->chosen);
        CHECK(as<ask::LayTo>(click("row-card", "row.lay.far"))->side == Side::right);
        CHECK(asks<ask::Confirm>(click("row-waiting", "say.yes")));
        CHECK(asks<ask::TakeBack>(click("row-waiting", "say.no")));
        CHECK(asks<ask::CloseMessage>(click("row-message", "say.close")));
        CHECK(as<ask::NextPiece>(click("look-first", "look.next-piece"))->step == 1);
        CHECK(as<ask::NextPiece>(click("look-first", "look.previous-piece"))->step == -1);
        CHECK(asks<ask::LookAtPiece>(click("look-first", "look.go-there")));
        CHECK_FALSE(as<ask::ShowTwin>(click("look-first", "look.twin"))->on);
        CHECK(asks<ask::NextAsGood>(click("look-first", "look.as-good")));
        CHECK(asks<ask::CutAgain>(click("look-first", "look.cut-again")));
        CHECK_FALSE(as<ask::GrowOn>(click("look-grown", "look.grown-close"))->on);
        CHECK_FALSE(as<ask::GrowOn>(click("look-grown", "look.grow-on"))->on);
        CHECK(asks<ask::NextVine>(click("look-first", "look.next-vine")));
        CHECK(as<ask::Theme>(click("settings", "settings.theme.dusk"))->theme == "dusk");
        CHECK(as<ask::Units>(click("settings", "settings.units.inch"))->units == "inch");
        CHECK(as<ask::TextScale>(click("settings", "settings.text.more"))->percent == 125);
        CHECK(as<ask::TextScale>(click("settings", "settings.text.track"))->percent > 100);
        CHECK(as<ask::ReducedMotion>(click("settings", "settings.motion"))->on);
        CHECK(as<ask::StepFeedback>(click("settings", "settings.feedback"))->on);
    }
}

TEST_CASE("keys ask what the one table of keys says") {
    CHECK(asks<ask::Undo>(pressed("row-acts", {'Z', true})));
    CHECK(asks<ask::Redo>(pressed("row-acts", {'Y', true})));
    CHECK(as<ask::WalkCanes>(pressed("row-start", {key::tab}))->step == 1);
    CHECK(as<ask::WalkCanes>(pressed("row-start", {key::tab, false, true}))->step == -1);
    CHECK(as<ask::WalkBuds>(pressed("row-acts", {key::period}))->step == 1);
    CHECK(as<ask::WalkBuds>(pressed("row-acts", {key::comma}))->step == -1);
    CHECK(asks<ask::CutHere>(pressed("row-acts", {'C'})));
    CHECK(as<ask::TakeTool>(pressed("row-start", {'C'}))->tool == HandTool::shears);
    CHECK(as<ask::TakeTool>(pressed("row-start", {'K'}))->tool == HandTool::calliper);
    CHECK(as<ask::TakeTool>(pressed("row-start", {'M'}))->tool == HandTool::tape);
    CHECK(asks<ask::TieHere>(pressed("row-acts", {'T'})));
    CHECK(asks<ask::LookAtChosen>(pressed("row-acts", {'V'})));
    CHECK(as<ask::Hatch>(pressed("row-start", {'H'}))->on);
    CHECK(asks<ask::TakeBack>(pressed("row-start", {key::escape})));
    CHECK(asks<ask::NextStep>(pressed("row-start", {key::enter, true})));
    CHECK(asks<ask::Confirm>(pressed("row-waiting", {key::enter})));
    CHECK(asks<ask::TakeBack>(pressed("row-waiting", {key::escape})));
    const std::pair<int, const char*> looks[] = {{key::f2, "row"},  {key::f3, "other-side"}, {key::f4, "along"},
                                                 {key::f5, "head"}, {key::f6, "cane"},       {key::f7, "above"},
                                                 {key::home, "row"}};
    for (const auto& [k, view] : looks) CHECK(as<ask::LookFrom>(pressed("row-start", {k}))->view == view);
    CHECK(as<ask::NextPiece>(pressed("look-first", {'N'}))->step == 1);
    CHECK(as<ask::NextPiece>(pressed("look-first", {'P'}))->step == -1);
    CHECK(asks<ask::LookAtPiece>(pressed("look-first", {key::enter})));
    CHECK_FALSE(as<ask::ShowTwin>(pressed("look-first", {'B'}))->on);
    CHECK(asks<ask::NextAsGood>(pressed("look-first", {'A'})));
    CHECK(asks<ask::CutAgain>(pressed("look-first", {'R'})));
    CHECK_FALSE(pressed("look-first", {'C'}).has_value()); // a finished vine is not cut
    CHECK_FALSE(pressed("home-empty", {'Z', true}).has_value());
    CHECK(asks<ask::SafetySeen>(pressed("safety-first", {key::enter})));
}

TEST_CASE("tape by keys alone: M, arrows, Enter") {
    Driver driver({});
    const Staged& one = staged("row-acts");
    driver.settle(one.state());
    driver.press(one.state(), {'M'});
    CHECK(driver.views.takes_arrows());
    driver.press(one.state(), {key::right});
    driver.press(one.state(), {key::right});
    const auto asked = driver.press(one.state(), {key::enter});
    REQUIRE(asks<ask::MarkAs>(asked));
    CHECK(as<ask::MarkAs>(asked)->role == Role::spur);
    CHECK_FALSE(driver.views.takes_arrows());
}

TEST_CASE("laying by keys alone: L, then the arrow to a post") {
    Driver driver({});
    const Staged& one = staged("row-acts");
    driver.settle(one.state());
    CHECK_FALSE(driver.press(one.state(), {'L'}).has_value());
    CHECK(driver.views.takes_arrows());
    const auto asked = driver.press(one.state(), {key::left});
    REQUIRE(asks<ask::LayTo>(asked));
    CHECK(as<ask::LayTo>(asked)->side == Side::left);
}

TEST_CASE("a typed code is asked for by button and by Enter, and letters typed are no commands") {
    for (const bool enter : {true, false}) {
        Driver driver({"en", 100, 1920, 1080});
        const Staged& one = staged("look-first");
        driver.views.look.code.focus = true;
        driver.settle(one.state());
        driver.type(one.state(), "00RM-K1SX");
        CHECK_FALSE(asks<ask::CutAgain>(driver.press(one.state(), {'R'})));
        const auto asked =
            enter ? driver.press(one.state(), {key::enter}) : driver.click(one.state(), "look.open-code");
        REQUIRE(asks<ask::OpenCode>(asked));
        CHECK(as<ask::OpenCode>(asked)->code == "00RM-K1SX");
    }
}

TEST_CASE("what the house does otherwise is typed in one's own words") {
    Driver driver({"es"});
    const Staged& one = staged("look-first");
    driver.settle(one.state());
    driver.press(one.state(), {'D'});
    driver.settle(one.state());
    driver.type(one.state(), "Aquí dejamos una vara de más, señor");
    const auto asked = driver.press(one.state(), {key::enter});
    REQUIRE(asks<ask::Disagree>(asked));
    CHECK(as<ask::Disagree>(asked)->note == "Aquí dejamos una vara de más, señor");
}

TEST_CASE("a vine on which nothing is cut asks before the look back; from there one goes back to pruning") {
    Driver driver({});
    const Staged& one = staged("row-nothing-cut");
    driver.settle(one.state());
    CHECK(driver.probe().find("say.yes")->label == driver.words()("screen.say.look-back-all-the-same"));
    CHECK(driver.probe().find("say.no")->label == driver.words()("screen.say.go-on-pruning"));
    CHECK(asks<ask::Confirm>(pressed("row-nothing-cut", {key::enter})));
    CHECK(asks<ask::TakeBack>(pressed("row-nothing-cut", {key::escape})));
    CHECK(asks<ask::GoOnPruning>(pressed("look-first", {'Z', true})));
    CHECK(asks<ask::GoOnPruning>(clicked("look-first", "look.go-on-pruning")));
}

TEST_CASE("a look is gone on from by Space and by Enter") {
    for (const int on : {key::space, key::enter}) CHECK(asks<ask::LookNext>(pressed("looks-told", {on})));
    CHECK(asks<ask::LookNext>(clicked("looks-told", "looks.look-next")));
    const std::string first = "looks-" + std::string(word_of(drill::all_skills[0]));
    for (const int on : {key::space, key::enter}) CHECK_FALSE(asks<ask::LookNext>(pressed(first, {on})));
}

TEST_CASE("a vine that goes without a word says so before its first act, in both languages") {
    for (const char* language : {"en", "es"})
        for (const int percent : {100, 250}) {  // folded cards too
            Driver driver({language, percent, 1280, 720});
            driver.settle(staged("row-silent").state());
            bool said = false;
            for (const ui::Probed& p : driver.probe().all()) said |= p.label == driver.words()("screen.row.silent") && p.seen.height() > 2;
            CHECK_MESSAGE(said, language, " ", percent);
            driver.settle(staged("row-start").state());
            for (const ui::Probed& p : driver.probe().all()) CHECK(p.label != driver.words()("screen.row.silent"));
        }
}

TEST_CASE("while a vine is sought nothing else can be asked, and Esc leaves it") {
    CHECK(asks<ask::StopGrowing>(pressed("growing", {key::escape})));
    CHECK(asks<ask::StopGrowing>(clicked("growing", "growing.growing-leave")));
    CHECK_FALSE(pressed("growing", {'W'}).has_value());
    CHECK_FALSE(pressed("growing", {key::enter, true}).has_value());
}

TEST_CASE("a page of results longer than the window is walked by arrows and by the page keys, to its foot and back") {
    Driver driver({"es", 250, 1280, 720});
    const Staged& one = staged("wall-results");
    const auto foot = [&] {
        driver.settle(one.state());
        for (const ui::Probed& p : driver.probe().all())
            if (p.label == driver.words()("screen.wall.not-for-pay")) return p.box.y0;
        FAIL("no foot");
        return 0.0f;
    };
    const float below = foot();
    CHECK(below > 720);
    for (const auto& [forth, back] : {std::pair{key::down, key::up}, {key::page_down, key::page_up}}) {
        CHECK_FALSE(driver.press(one.state(), {forth}).has_value());
        const float once = foot();
        CHECK(once < below);
        CHECK_FALSE(driver.press(one.state(), {back}).has_value());
        CHECK(foot() > once); // a button that takes the focus on the way is brought into sight
    }
    for (int i = 0; i < 60; ++i) driver.press(one.state(), {key::page_down});
    CHECK(foot() < 720);
    for (int i = 0; i < 60; ++i) driver.press(one.state(), {key::up});
    CHECK(foot() == doctest::Approx(below));
}

TEST_CASE("Find runs a command by the first letters of its words, accents or not") {
    const std::pair<const char*, const char*> typed[] = {{"en", "sa take"}, {"es", "serr"}};
    for (const auto& [language, text] : typed) {
        Driver driver({language});
        const Staged& one = staged("row-start");
        driver.settle(one.state());
        driver.press(one.state(), {'F', true});
        CHECK(driver.views.sheet == ui::Sheet::find);
        driver.settle(one.state());
        driver.type(one.state(), text);
        driver.settle(one.state());
        const auto asked = driver.press(one.state(), {key::enter});
        REQUIRE(asks<ask::TakeTool>(asked));
        CHECK(as<ask::TakeTool>(asked)->tool == HandTool::saw);
        CHECK(driver.views.sheet == ui::Sheet::none);
    }
    CHECK(ui::found_by("Número de árbol", "arb num"));
    CHECK_FALSE(ui::found_by("Cut here", "her cutt"));
    CHECK(ui::found_by("Cut here", ""));
}

TEST_CASE("Find carries out the command whose whole words were typed, walked to by arrows or not") {
    const auto found = [](const char* text, int downs) {
        Driver driver({});
        const Staged& one = staged("row-start");
        driver.settle(one.state());
        driver.press(one.state(), {'F', true});
        driver.type(one.state(), text);  // at once, as quick hands do
        for (int i = 0; i < downs; ++i) driver.press(one.state(), {key::down});
        const auto asked = driver.press(one.state(), {key::enter});
        CHECK(driver.views.sheet == ui::Sheet::none);
        return asked;
    };
    CHECK(asks<ask::NextVine>(found("next vine", 0)));
    CHECK(asks<ask::NextStep>(found("next", 0)));
    CHECK(asks<ask::WalkCanes>(found("next", 1)));
}

TEST_CASE("Esc always closes a sheet, and the picture's keys rest while it is open") {
    for (const ui::KeyPress open : {ui::KeyPress{'F', true}, ui::KeyPress{key::f1}}) {
        Driver driver({});
        const Staged& one = staged("row-acts");
        driver.settle(one.state());
        driver.press(one.state(), open);
        CHECK(driver.views.sheet != ui::Sheet::none);
        driver.settle(one.state());
        CHECK_FALSE(asks<ask::CutHere>(driver.press(one.state(), {'C'})));
        CHECK_FALSE(driver.press(one.state(), {key::escape}).has_value());
        CHECK(driver.views.sheet == ui::Sheet::none);
    }
}

TEST_CASE("home, safety and settings are worked by arrows and Enter, with the focus shown") {
    for (const char* screen : {"home-empty", "safety-again", "settings"}) {
        CAPTURE(screen);
        Driver driver({});
        const Staged& one = staged(screen);
        driver.settle(one.state());
        driver.press(one.state(), {key::down});
        driver.press(one.state(), {key::down});
        driver.settle(one.state());
        int focused = 0;
        for (const ui::Probed& p : driver.probe().all()) focused += p.focused ? 1 : 0;
        CHECK(focused == 1);
        const auto asked = driver.press(one.state(), {key::enter});
        CHECK((asked.has_value() || driver.views.sheet != ui::Sheet::none));
    }
}

TEST_CASE("watching and touching go by buttons and by keys alone") {
    for (const std::string language : {"en", "es"}) {
        CAPTURE(language);
        const auto click = [&](const char* screen, const char* widget) { return clicked(screen, widget, language); };
        const auto watch = click("row-offer", "offer.watch");
        REQUIRE(asks<ask::Watch>(watch));
        CHECK(as<ask::Watch>(watch)->on);
        CHECK(asks<ask::WatchOwn>(click("row-offer", "offer.own")));
        CHECK(asks<ask::Drill>(click("row-offer-drill", "offer.drill")));
        CHECK(asks<ask::WatchNext>(click("watch-3", "watch.watch-next")));
        CHECK(asks<ask::WatchBack>(click("watch-3", "watch.watch-back")));
        CHECK(asks<ask::WatchOwn>(click("watch-3", "watch.watch-own")));
        const auto older = click("drill-asks", "drill.drill-older");
        REQUIRE(asks<ask::DrillAnswer>(older));
        CHECK(as<ask::DrillAnswer>(older)->older);
        const auto younger = click("drill-asks", "drill.drill-one-year");
        REQUIRE(asks<ask::DrillAnswer>(younger));
        CHECK_FALSE(as<ask::DrillAnswer>(younger)->older);
        CHECK(asks<ask::DrillNext>(click("drill-told-0", "drill.drill-next")));
        CHECK(asks<ask::DrillEnd>(click("drill-end", "drill.drill-end")));
    }
    CHECK(asks<ask::Watch>(pressed("row-start", {'W'})));
    CHECK(asks<ask::Drill>(pressed("row-start", {'O'})));
    CHECK(asks<ask::Watch>(pressed("row-offer", {key::enter})));
    CHECK(asks<ask::TakeBack>(pressed("row-offer", {key::escape})));
    for (const int on : {key::space, key::right}) CHECK(asks<ask::WatchNext>(pressed("watch-3", {on})));
    for (const int back : {key::backspace, key::left}) CHECK(asks<ask::WatchBack>(pressed("watch-3", {back})));
    CHECK_FALSE(pressed("watch-0", {key::backspace}).has_value());
    for (const int own : {key::enter, key::escape}) CHECK(asks<ask::WatchOwn>(pressed("watch-3", {own})));
    CHECK(asks<ask::WatchOwn>(pressed("watch-looking", {key::enter})));
    CHECK(asks<ask::DrillAnswer>(pressed("drill-asks", {'1'})));
    CHECK(as<ask::DrillAnswer>(pressed("drill-asks", {'2'}))->older);
    CHECK_FALSE(pressed("drill-asks", {key::space}).has_value());
    CHECK_FALSE(pressed("drill-told-0", {'1'}).has_value());
    for (const int on : {key::space, key::enter}) CHECK(asks<ask::DrillNext>(pressed("drill-told-0", {on})));
    CHECK(asks<ask::DrillEnd>(pressed("drill-asks", {key::escape})));
    CHECK_FALSE(pressed("watch-3", {'C'}).has_value()); // the hand rests
    CHECK_FALSE(pressed("drill-asks", {'M'}).has_value());
}

TEST_CASE("while watching no points and no marks of the judge are shown; before the answer nothing tells the wood") {
    for (const char* language : {"en", "es"}) {
        Driver driver({language, 100, 1920, 1080});
        const auto shown = [&](const std::string& screen) {
            driver.views = staged(screen).views;
            driver.settle(staged(screen).state());
            std::string all;
            for (const ui::Probed& p : driver.probe().all()) all += p.label + "\n";
            return all;
        };
        for (const char* screen : {"watch-0", "watch-2", "watch-8"}) {
            const std::string all = shown(screen);
            CHECK(all.find("point") == std::string::npos);
            CHECK(all.find("punto") == std::string::npos);
        }
        const auto& drill = *staged("drill-asks").practice->drill();
        const std::string asked = shown("drill-asks"), told = shown("drill-told-0");
        const std::string says = driver.words().sentence(drill.here()->key, drill.here()->arguments);
        CHECK(asked.find(says) == std::string::npos);
        CHECK(asked.find(name_of(drill.here()->spot.axis)) == std::string::npos);
        CHECK(told.find(says) != std::string::npos);
    }
}

TEST_CASE("the scale: each deed by its button and by its key; a piece pressed goes into the bundle, pressed there out of it") {
    using weighing::Deed;
    const auto deed = [](const std::optional<Request>& asked) {
        REQUIRE(asks<ask::WeighDo>(asked));
        return as<ask::WeighDo>(asked)->act.deed;
    };
    CHECK(asks<ask::Weigh>(clicked("home-walked", "home.weigh")));
    CHECK(asks<ask::Weigh>(clicked("look-first", "look.weigh")));
    CHECK(asks<ask::Weigh>(pressed("look-first", {'E'})));
    CHECK(deed(pressed("weigh-start", {key::enter})) == Deed::take);
    CHECK(deed(pressed("weigh-start", {'S'})) == Deed::strip);
    CHECK(deed(pressed("weigh-start", {'0'})) == Deed::zero);
    CHECK(deed(pressed("weigh-start", {'K'})) == Deed::turn_unit);
    CHECK(deed(pressed("weigh-start", {'D'})) == Deed::let_dry);
    CHECK(deed(pressed("weigh-some", {'C'})) == Deed::shorten);
    CHECK(deed(pressed("weigh-some", {'T'})) == Deed::tie);
    CHECK(deed(pressed("weigh-some", {'H'})) == Deed::hang);
    CHECK(deed(pressed("weigh-hung", {'H', false, true})) == Deed::take_down);
    CHECK(asks<ask::WeighUndo>(pressed("weigh-some", {'Z', true})));
    CHECK(asks<ask::WeighClose>(pressed("weigh-some", {key::escape})));
    CHECK(asks<ask::WeighAgain>(pressed("weigh-written", {'R'})));
    CHECK(asks<ask::Weigh>(pressed("weigh-written", {'N'})));
    for (const auto& [screen, taken] : {std::pair{"weigh-start", false}, {"weigh-hung", true}}) {
        const auto& exercise = *staged(screen).weighing;
        for (std::size_t i = 0; i < exercise.pieces().size(); ++i) {
            if (exercise.still_on(i) || (exercise.lies(i) == weighing::Lies::bundle) != taken) continue;
            const auto asked = clicked(screen, "weigh.piece." + std::to_string(i));
            CHECK(deed(asked) == (taken ? Deed::put_back : Deed::take));
            CHECK(as<ask::WeighDo>(asked)->act.piece == i);
        }
    }
    const auto& exercise = *staged("weigh-start").weighing;
    for (std::size_t i = 0; i < exercise.pieces().size(); ++i)
        if (exercise.canes_on(i) > 0) CHECK(deed(clicked("weigh-start", "weigh.strip." + std::to_string(i))) == Deed::strip);
    Driver driver({"en", 100, 1920, 1080});
    driver.settle(staged("weigh-hung").state());
    driver.press(staged("weigh-hung").state(), {'W'});
    driver.settle(staged("weigh-hung").state());
    driver.type(staged("weigh-hung").state(), "0.74 kg");
    const auto wrote = driver.press(staged("weigh-hung").state(), {key::enter});
    REQUIRE(asks<ask::WeighWrite>(wrote));
    CHECK(as<ask::WeighWrite>(wrote)->typed == "0.74 kg");
}

TEST_CASE("the book: pages by keys, a weight typed and entered, the question answered by keys, a vine pointed at on the map") {
    namespace desk = practice::desk;
    const auto act = [](const std::optional<Request>& asked) -> practice::BookAct {
        REQUIRE(asks<ask::BookDo>(asked));
        return as<ask::BookDo>(asked)->act;
    };
    CHECK(asks<ask::Book>(clicked("home-walked", "home.book")));
    CHECK(std::get<desk::Page>(act(pressed("book-entry", {key::f4}))).page == practice::BookPage::compare);
    CHECK(std::get<desk::Page>(act(pressed("book-compare", {key::f5}))).page == practice::BookPage::map);
    CHECK(std::get<desk::Open>(act(clicked("book-blocks", "book.block.1"))).block == "north");
    CHECK(std::holds_alternative<desk::Demo>(act(clicked("book-blocks", "book.book-demo"))));
    CHECK(std::holds_alternative<desk::TakeBack>(act(pressed("book-entry", {key::f6}))));
    CHECK(std::get<desk::Walk>(act(pressed("book-entry", {key::down}))).step == 1);
    CHECK(std::get<desk::Unit>(act(clicked("book-entry", "book.unit.lb"))).unit == practice::WeightUnit::lb);
    CHECK(std::get<desk::At>(act(clicked("book-map", "book.map.7"))).vine == 7);
    CHECK(std::get<desk::Row>(act(clicked("book-compare", "book.next-row"))).step == 1);
    CHECK_FALSE(std::get<desk::Keep>(act(pressed("book-odd", {key::escape}))).yes);
    CHECK(std::get<desk::Keep>(act(pressed("book-odd", {key::enter, true}))).yes);
    Driver driver({});
    const Staged& one = staged("book-entry");
    driver.settle(one.state());
    driver.type(one.state(), "0.81");  // what stood there is replaced
    const auto entered = act(driver.press(one.state(), {key::enter}));
    CHECK(std::get<desk::Enter>(entered).weight == "0.81");
    CHECK(std::get<desk::Enter>(entered).buds == "30");
}
