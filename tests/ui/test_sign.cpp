// Sign-offs and consent on screen, by mouse and by keys alone, with a session behind it: what the store holds afterwards
// is what the command would have written.
#include <doctest/doctest.h>

#include "scenarios/practice/session.h"
#include "scenarios/records/act.h"
#include "scenarios/records/people.h"
#include "scenarios/records/sign_off.h"
#include "tests/support/folder.h"
#include "tests/ui/driver.h"

using namespace spurwright;
namespace ask = practice::ask;
namespace key = ui::key;

namespace {

const io::Assets sign_assets(std::string(SPURWRIGHT_SOURCE) + "/assets");

// A window on a crew of four: a leader with a name, two people, one without a name.
struct SigningWindow {
    test::Folder here;
    std::unique_ptr<practice::Session> session;
    test::Driver driver;

    explicit SigningWindow(const std::string& language = "en") : driver({language, 100, 1920, 1080}) {
        auto store = records::Store::open(file());
        REQUIRE(store.has_value());
        auto act = records::Act::begin(*store, "crew-import", "2026-11-30T07:00:00Z");
        REQUIRE(act.has_value());
        for (const records::Person& person : {records::Person{3, "Elena Ruiz", "en", "", ""}, {7, "Marisol Peña", "es", "", ""}, {8, "", "es", "", ""}, {9, "Tom Hall", "en", "", ""}})
            REQUIRE(records::put_person(*store, person).has_value());
        REQUIRE((*act)->commit().has_value());
        std::uint64_t seed = 5;
        const settings::Folders folders{here.file("settings.json"), here.file("work"), here.file("house.json"), file()};
        auto made = practice::Session::make(sign_assets, folders, {language, {}, {}}, [seed]() mutable { return seed++; });
        REQUIRE(made.has_value());
        session = *std::move(made);
        session->carry_out(ask::SafetySeen{});
        session->carry_out(ask::CrewPage{});
    }
    std::string file() const { return here.file("store.sqlite"); }
    ui::State state() const {
        ui::State state{session->shell()};
        state.crew_page = session->crew_page();
        state.sign = session->sign();
        return state;
    }
    void answer(const std::optional<ui::Request>& asked) {
        if (asked) session->carry_out(*asked);
        driver.settle(state());
    }
    void click(std::string_view widget) { answer(driver.click(state(), widget)); }
    void press(ui::KeyPress press) { answer(driver.press(state(), press)); }
    void type(const std::string& text) {
        driver.type(state(), text);
        driver.settle(state());
    }
    bool focused(std::string_view widget) const {
        const ui::Probed* found = driver.probe().find(widget);
        return found && found->focused;
    }
    // As somebody without a mouse goes there.
    void walk_to(std::string_view widget) {
        for (const auto& [arrow, most] : {std::pair{key::down, 40}, {key::up, 60}, {key::right, 8}})
            for (int i = 0; i < most && !focused(widget); ++i) press({arrow});
        CHECK_MESSAGE(focused(widget), std::string(widget));
    }
    bool says(const std::string& words) const {
        for (const ui::Probed& p : driver.probe().all())
            if (p.label == words) return true;
        return false;
    }
    std::vector<records::SignOff> standing() const {
        auto store = records::Store::open_to_read(file());
        REQUIRE((store.has_value() && store->has_value()));
        auto all = records::sign_offs(**store);
        REQUIRE(all.has_value());
        return *std::move(all);
    }
    std::optional<bool> consent(std::int64_t number) const {
        auto store = records::Store::open_to_read(file());
        REQUIRE((store.has_value() && store->has_value()));
        const auto said = records::consent_of(**store, number);
        REQUIRE(said.has_value());
        return *said;
    }
    std::string message() const { return session->shell().message ? session->words().sentence(session->shell().message->key, session->shell().message->arguments) : std::string(); }
};

} // namespace

TEST_CASE("by mouse: a skill signed off by a named person with the text in sight, then withdrawn with the reason") {
    for (const std::string language : {"en", "es"}) {
        CAPTURE(language);
        SigningWindow window(language);
        window.click("crew.sign");
        window.click("sign.person.7");
        REQUIRE(window.session->sign()->page);
        window.click("sign.skills");
        window.click("sign.skill.bud-load");
        window.type("3");
        window.click("sign.saw");
        window.type("row 4, vines 1 to 20");
        const words::Words& words = window.driver.words();
        const std::string person = words("screen.sign.number-name", {{"n", Count{7}}, {"text", std::string("Marisol Peña")}});
        CHECK(window.says(words("screen.sign.statement", {{"person", person}, {"skill", words("rule.bud-load.name")}})));
        CHECK(window.says(words("crew.no-permit")));
        CHECK(window.standing().empty()); // nothing before it is signed
        window.click("sign.sign-off");
        REQUIRE(window.standing().size() == 1);
        const records::SignOff sign = window.standing().front();
        CHECK(sign.person == 7);
        CHECK(sign.by == 3);
        CHECK(sign.skill == "bud-load");
        CHECK(sign.saw == "row 4, vines 1 to 20");
        CHECK(sign.on == records::today());
        CHECK(sign.until == records::days_after(records::today(), records::sign_off_days));
        CHECK_FALSE(window.message().empty());
        window.click("say.close");
        window.click("sign.standing." + std::to_string(sign.id));
        window.click("sign.reason");
        window.type("the wrong person");
        window.click("sign.withdraw");
        CHECK(window.standing().empty());
        window.session->carry_out(ask::WithdrawSign{sign.id, "3", "again"});
        CHECK(window.message() == words("error.crew.no-sign-off", {{"n", std::to_string(sign.id)}}));
    }
}

TEST_CASE("by keys alone: somebody picked by number, signed off, the sign-off taken back, yes and no to the name") {
    SigningWindow window;
    window.walk_to("crew.sign");
    window.press({key::enter});
    window.type("7"); // the field waits for it
    window.press({key::enter});
    REQUIRE(window.session->sign()->page);
    CHECK(window.session->sign()->page->person.number == 7);
    window.walk_to("sign.skills");
    window.press({key::enter});
    window.walk_to("sign.skill.origin-distance");
    window.press({key::enter});
    window.type("3");
    window.press({key::enter}); // on to what is not said yet
    window.type("row 2, all of it");
    window.press({key::enter, true});
    REQUIRE(window.standing().size() == 1);
    CHECK(window.standing().front().skill == "origin-distance");
    CHECK(window.standing().front().saw == "row 2, all of it");
    window.press({key::escape}); // what was said
    CHECK(window.message().empty());
    REQUIRE(window.session->sign()->page); // still this page
    window.press({'Y'});
    CHECK(window.consent(7) == std::optional(true));
    window.press({'N'});
    CHECK(window.consent(7) == std::optional(false));
    window.walk_to("sign.standing." + std::to_string(window.standing().front().id));
    window.press({key::enter});
    window.type("mistaken"); // who signs is known
    window.press({key::enter});
    CHECK(window.standing().empty());
    window.press({key::escape});
    window.press({key::escape});
    CHECK_FALSE(window.session->sign()->page);
}

TEST_CASE("the notice is said in the person's language, the answer kept with it; the last word counts") {
    SigningWindow window("en");
    window.session->carry_out(ask::Sign{});
    window.session->carry_out(ask::SignOf{8});
    window.driver.settle(window.state());
    CHECK(window.says(test::words_of_language("es")("crew.notice")));
    CHECK(window.says(test::words_of_language("es")("words.unchecked")));
    CHECK(window.says(window.driver.words()("crew.consent-none")));
    window.click("sign.sign-yes");
    CHECK(window.consent(8) == std::optional(true));
    CHECK(window.says(window.driver.words()("crew.consent-yes")));
    auto store = records::Store::open_to_read(window.file());
    CHECK((*store)->text("SELECT body FROM event WHERE kind = 'consent'")->value_or("").find("\"es\"") != std::string::npos);
    window.click("sign.sign-no");
    CHECK(window.consent(8) == std::optional(false));
}

TEST_CASE("what the store refuses is said on the screen, and nothing is written") {
    SigningWindow window;
    window.session->carry_out(ask::Sign{});
    window.session->carry_out(ask::SignOf{7});
    const ask::SignOff good{rules::RuleName::bud_load, "3", "row 4", "2026-11-30", "2027-11-30"};
    const auto refused = [&](auto change, const std::string& words) {
        ask::SignOff typed = good;
        change(typed);
        window.session->carry_out(typed);
        CHECK_MESSAGE(window.message() == words, words);
        CHECK(window.standing().empty());
    };
    const words::Words& words = window.session->words();
    refused([](auto& s) { s.by = "8"; }, words("error.crew.unnamed", {{"n", std::string("8")}}));
    refused([](auto& s) { s.by = "7"; }, words("error.crew.signs-herself"));
    refused([](auto& s) { s.by = "44"; }, words("error.crew.nobody", {{"n", std::string("44")}}));
    refused([](auto& s) { s.by = "Elena"; }, words("error.value.whole", {{"text", std::string("Elena")}}));
    refused([](auto& s) { s.saw = "  "; }, words("error.crew.saw-nothing"));
    refused([](auto& s) { s.on = "2026-02-30"; }, words("error.crew.no-day", {{"text", std::string("2026-02-30")}}));
    refused([](auto& s) { s.until = "2026-11-29"; }, words("error.crew.ends-before", {{"text", std::string("2026-11-29")}}));
    window.session->carry_out(good);
    REQUIRE(window.standing().size() == 1);
    window.session->carry_out(ask::WithdrawSign{window.standing().front().id, "3", " "});
    CHECK(window.message() == words("error.crew.no-reason"));
    CHECK(window.standing().size() == 1);
    window.session->carry_out(ask::SignOf{55});
    CHECK(window.message() == words("error.crew.nobody", {{"n", std::string("55")}}));
}

TEST_CASE("a long note is cut between letters, and the sign-off is read again") {
    SigningWindow window;
    window.session->carry_out(ask::Sign{});
    window.session->carry_out(ask::SignOf{9});
    std::string saw = "x";
    for (int i = 0; i < 300; ++i) saw += "ñ";
    window.session->carry_out(ask::SignOff{rules::RuleName::bud_load, "3", saw, "2026-11-30", "2027-11-30"});
    REQUIRE(window.standing().size() == 1);
    CHECK(window.standing().front().saw == saw.substr(0, 399));
}
