#include <doctest/doctest.h>

#include <sys/stat.h>
#include <unistd.h>

#include <chrono>
#include <thread>

#include "scenarios/io/safe_file.h"
#include "scenarios/practice/session.h"
#include "sim/core/hash.h"
#include "sim/pruning/plan_text.h"
#include "sim/vine/canonical_text.h"
#include "tests/support/folder.h"

using namespace spurwright;
using namespace spurwright::practice;

namespace {

settings::Folders folders_in(const test::Folder& here) { return {here.file("config ñ/spurwright/settings.json"), here.file("data/spurwright/work"), here.file("config ñ/spurwright/house-rules.json")}; }

const io::Assets assets(std::string(SPURWRIGHT_SOURCE) + "/assets");

std::unique_ptr<Session> opened(const settings::Folders& folders, const Opening& opening = {}) {
    std::uint64_t next = 5;
    auto session = Session::make(assets, folders, opening, [next]() mutable { return next++; });
    REQUIRE(session.has_value());
    return *std::move(session);
}

AxisId some_cane(const Session& session) {
    for (const Axis& axis : session.practice()->now().axes)
        if (!axis.removed && axis.order > 0 && axis.state == AxisState::live) return axis.id;
    return {};
}

Opening first_scene() { return {{}, {}, "first"}; }

}  // namespace

TEST_CASE("work is kept after each act and offered back at the next start, with what was undone") {
    const test::Folder here;
    std::string plan;
    {
        const auto session = opened(folders_in(here), first_scene());
        session->carry_out(ask::SafetySeen{});
        const AxisId cane = some_cane(*session);
        session->carry_out(ask::MarkAs{cane, Role::left});
        session->carry_out(ask::MarkAs{cane, Role::spur});
        session->carry_out(ask::MarkAs{cane, Role::remove});
        session->carry_out(ask::Undo{});
        plan = print_plan(session->practice()->done());
        CHECK_FALSE(session->shell().message.has_value());
    }  // as after a crash: nothing is written at the end
    const auto again = opened(folders_in(here));
    REQUIRE(again->shell().offered);
    CHECK(again->shell().offered_acts == 2);
    CHECK(again->practice() == nullptr);
    again->carry_out(ask::OfferTaken{true});
    REQUIRE(again->practice() != nullptr);
    CHECK(print_plan(again->practice()->done()) == plan);
    CHECK(again->practice()->acts().size() == 3);
    CHECK(again->practice()->can_redo());
    CHECK(again->practice()->task().scene == "first");
}

TEST_CASE("work on a scene's vine that no code grows is kept by scene and number and taken up on the same vine") {
    const test::Folder here;
    std::uint64_t hash = 0;
    std::string plan;
    {
        const auto session = opened(folders_in(here));
        REQUIRE(session->shell().scenes.size() == 13);
        session->carry_out(ask::OpenScene{"fat-one", 2});
        REQUIRE(session->practice() != nullptr);
        CHECK(session->practice()->task().code.empty());
        CHECK(session->practice()->task().scene_number == 2);
        CHECK(session->practice()->task().task_key == "scene.fat-one.task");
        hash = vine_hash(session->practice()->start());
        session->carry_out(ask::MarkAs{some_cane(*session), Role::remove});
        plan = print_plan(session->practice()->done());
    }
    CHECK_FALSE(io::read_file(folders_in(here).work_folder + "/vine.json", 1 << 20).has_value());  // the scene grows it
    const auto again = opened(folders_in(here));
    REQUIRE(again->shell().offered);
    again->carry_out(ask::OfferTaken{true});
    REQUIRE(again->practice() != nullptr);
    CHECK(vine_hash(again->practice()->start()) == hash);
    CHECK(print_plan(again->practice()->done()) == plan);
    CHECK(again->practice()->task().scene == "fat-one");
    CHECK(again->practice()->task().learn_keys.size() == 3);
    again->carry_out(ask::GoToStep{Step::look_back});
    again->carry_out(ask::Confirm{});  // with nothing cut yet
    REQUIRE(again->shell().walked.size() == 1);
    CHECK(again->shell().walked[0] == WalkedVine{"", "fat-one", 2});
    again->carry_out(ask::NextVine{});  // the scene's next
    CHECK(again->practice()->task().scene == "fat-one");
    CHECK(again->practice()->task().scene_number == 3);
}

TEST_CASE("work on a vine that begins with acts is taken up after them; they stand once and are not undone") {
    const test::Folder here;
    std::string plan;
    {
        const auto session = opened(folders_in(here));
        session->carry_out(ask::OpenScene{"snapped-cane", 1});
        REQUIRE(session->practice() != nullptr);
        REQUIRE(session->practice()->done_count() == 2);
        session->carry_out(ask::Undo{});
        CHECK(session->practice()->done_count() == 2);
        session->carry_out(ask::MarkAs{some_cane(*session), Role::spur});
        plan = print_plan(session->practice()->done());
    }
    const auto again = opened(folders_in(here));
    REQUIRE(again->shell().offered);
    again->carry_out(ask::OfferTaken{true});
    REQUIRE(again->practice() != nullptr);
    CHECK(again->practice()->task().scene == "snapped-cane");
    CHECK(print_plan(again->practice()->done()) == plan);
    again->carry_out(ask::Undo{});
    CHECK(again->practice()->done_count() == 2);
    CHECK_FALSE(again->practice()->can_undo());
}

TEST_CASE("a scene that is not there is refused and leaves the vine in hand") {
    const test::Folder here;
    const auto session = opened(folders_in(here), first_scene());
    session->carry_out(ask::OpenScene{"no-such-scene", 0});
    REQUIRE(session->shell().message.has_value());
    CHECK(session->practice()->task().scene == "first");
    std::uint64_t next = 1;
    CHECK_FALSE(Session::make(assets, folders_in(here), {{}, {}, "no-such-scene"}, [&] { return next++; }).has_value());
}

TEST_CASE("saying no to work from before sticks, and deletes nothing") {
    const test::Folder here;
    {
        const auto session = opened(folders_in(here), first_scene());
        session->carry_out(ask::MarkAs{some_cane(*session), Role::left});
    }
    {
        const auto session = opened(folders_in(here));
        REQUIRE(session->shell().offered);
        session->carry_out(ask::OfferTaken{false});
    }
    CHECK_FALSE(opened(folders_in(here))->shell().offered);
    CHECK(io::read_file(folders_in(here).work_folder + "/left-1.json", 1 << 20).has_value());
}

TEST_CASE("beginning another vine while work is offered sets that work aside") {
    const test::Folder here;
    {
        const auto session = opened(folders_in(here), first_scene());
        session->carry_out(ask::MarkAs{some_cane(*session), Role::left});
    }
    const auto session = opened(folders_in(here), first_scene());
    CHECK_FALSE(session->shell().offered);
    CHECK(io::read_file(folders_in(here).work_folder + "/left-1.json", 1 << 20).has_value());
}

TEST_CASE("a second window on the same work is read-only and says so; the first one's work stays") {
    const test::Folder here;
    const auto first = opened(folders_in(here), first_scene());
    first->carry_out(ask::MarkAs{some_cane(*first), Role::left});
    const auto kept = io::read_file(folders_in(here).work_folder + "/present.json", 1 << 20);
    REQUIRE(kept.has_value());
    const auto second = opened(folders_in(here));
    CHECK(second->shell().read_only);
    REQUIRE(second->shell().message.has_value());
    CHECK(second->shell().message->key.name == "screen.message.second-window");
    second->carry_out(ask::OpenScene{"first", 0});
    second->carry_out(ask::MarkAs{some_cane(*second), Role::spur});
    CHECK(second->practice()->done_count() == 1);
    CHECK(*io::read_file(folders_in(here).work_folder + "/present.json", 1 << 20) == *kept);
}

TEST_CASE("the row goes on with the system chosen: cordons under their own house, single canes; scenes keep their own") {
    const test::Folder here;
    const auto session = opened(folders_in(here), first_scene());
    CHECK(session->shell().row_system == System::two_cane);
    session->carry_out(ask::RowOf{System::cordon});
    session->carry_out(ask::NextVine{});
    CHECK(session->practice()->start().system == System::cordon);
    CHECK(session->practice()->task().house_name == "spur-cordon");
    session->carry_out(ask::NextVine{});
    CHECK(session->practice()->start().system == System::cordon);
    session->carry_out(ask::RowOf{System::one_cane});
    session->carry_out(ask::NextVine{});
    CHECK(session->practice()->start().system == System::one_cane);
    session->carry_out(ask::OpenScene{"weak-vine", 0});
    CHECK(session->shell().row_system == System::two_cane);
    CHECK(session->shell().offers_questions);
    session->carry_out(ask::Questions{});
    CHECK(session->practice()->questions().has_value());
    session->carry_out(ask::DrillEnd{});
    CHECK_FALSE(session->practice()->hand_rests());
}

TEST_CASE("settings are kept; nonsense in their file means defaults for this run and the file untouched") {
    const test::Folder here;
    const std::string file = folders_in(here).settings_file;
    {
        const auto session = opened(folders_in(here));
        CHECK(session->shell().screen == Screen::safety);
        session->carry_out(ask::SafetySeen{});
        session->carry_out(ask::Speak{"es"});
        session->carry_out(ask::TextScale{200});
        session->carry_out(ask::Theme{"dusk"});
        session->carry_out(ask::Theme{"no theme"});
        CHECK(session->words().language() == "es");
    }
    {
        const auto session = opened(folders_in(here));
        CHECK(session->shell().screen == Screen::home);
        CHECK(session->words().language() == "es");
        CHECK(session->shell().settings.text_percent == 200);
        CHECK(session->shell().settings.theme == settings::ThemeName::dusk);
    }
    CHECK(opened(folders_in(here), {"en", {}, {}})->words().language() == "en");  // asked for at the start: for this sitting
    CHECK(opened(folders_in(here))->words().language() == "es");
    for (const std::string nonsense : {"", "{", "[]", "{\"kind\": \"spurwright-settings\", \"version\": 1, \"text_percent\": 5000}",
                                       "{\"kind\": \"spurwright-settings\", \"version\": 7}", "{\"kind\": \"spurwright-settings\", \"version\": 1, \"language\": \"xx\"}"}) {
        REQUIRE(io::write_file(file, nonsense).has_value());
        const auto session = opened(folders_in(here));
        CHECK(session->shell().settings == settings::Settings{});
        REQUIRE(session->shell().message.has_value());
        CHECK(session->shell().message->key.name == "screen.message.settings-unread");
        session->carry_out(ask::SafetySeen{});
        session->carry_out(ask::TextScale{150});
        CHECK(*io::read_file(file, 1 << 20) == nonsense);
    }
}

TEST_CASE("printed settings and work read back the same") {
    settings::Settings s;
    s.language = "es-CL";
    s.text_percent = 175;
    s.units = settings::UnitsName::inch;
    s.reduced_motion = s.step_feedback = s.safety_seen = true;
    CHECK(*settings::read_settings(settings::print_settings(s), "there") == s);
    settings::Work w{"CODE", "", "", {}, "general", {}, *parse_plan("cut a12.4+20.0 shears; lay a12 left wraps 1"), 1};
    CHECK(*settings::read_work(settings::print_work(w), "there") == w);
    w.from_book = reference_vines::VineTarget{"Norte ñ", "t 7", true, 2026, Mass{754'321}, Length{1'800'000}, "20+10"};
    CHECK(*settings::read_work(settings::print_work(w), "there") == w);
    const std::string text = settings::print_work(w);
    for (const auto& [was, is] : {std::pair{"\"20+10\"", "\"twenty\""}, {"754321", "-1"}, {"\"winter\": 2026", "\"winter\": 20.5"}}) {
        const std::size_t at = text.find(was);
        REQUIRE(at != std::string::npos);
        std::string broken = text;
        CHECK_FALSE(settings::read_work(broken.replace(at, std::string_view(was).size(), is), "there").has_value());
    }
    w.from_book.reset();
    w.code.clear();
    w.scene = "first";
    w.number = 3;
    CHECK(*settings::read_work(settings::print_work(w), "there") == w);
}

TEST_CASE("work that cannot be read is set aside, and newer work is left where it is") {
    for (const bool newer : {false, true}) {
        const test::Folder here;
        const std::string file = folders_in(here).work_folder + "/present.json";
        REQUIRE(settings::make_folder(folders_in(here).work_folder).has_value());
        const std::string bytes = newer ? "{\"kind\": \"spurwright-work\", \"version\": 5, \"house\": \"general\", \"plan\": \"\", \"done\": 0}" : "{\"kind\": \"spurw";
        REQUIRE(io::write_file(file, bytes).has_value());
        const auto session = opened(folders_in(here), first_scene());
        session->carry_out(ask::MarkAs{some_cane(*session), Role::left});
        CHECK(*io::read_file(newer ? file : folders_in(here).work_folder + "/left-1.json", 1 << 20) == bytes);
    }
}

TEST_CASE("work of version 1, which names its vine by code alone, is offered and taken up") {
    const test::Folder here;
    const std::string code = "00RM-K1SX-G00Q-0004-0005-0SST";
    REQUIRE(settings::make_folder(folders_in(here).work_folder).has_value());
    REQUIRE(io::write_file(folders_in(here).work_folder + "/present.json", "{\"kind\": \"spurwright-work\", \"version\": 1, \"code\": \"" + code +
                                                                              "\", \"scene\": \"first\", \"house\": \"general\", \"plan\": \"mark a726 left; mark a727 right\", \"done\": 1}")
                .has_value());
    const auto session = opened(folders_in(here));
    REQUIRE(session->shell().offered);
    CHECK(session->shell().offered_acts == 1);
    session->carry_out(ask::OfferTaken{true});
    REQUIRE(session->practice() != nullptr);
    CHECK(session->practice()->task().code == code);
    CHECK(print_plan(session->practice()->done()) == "mark a726 left");
    CHECK(session->practice()->can_redo());
}

TEST_CASE("work that cannot be saved is said once and goes on in memory") {
    const test::Folder here;
    settings::Folders folders = folders_in(here);
    REQUIRE(io::write_file(here.file("data"), "a file where a folder should be").has_value());
    const auto session = opened(folders, first_scene());
    session->carry_out(ask::MarkAs{some_cane(*session), Role::left});
    CHECK(session->practice()->done_count() == 1);
}

TEST_CASE("the search finds the best plan beside the work; the look back shows it once it is there") {
    const test::Folder here;
    const auto session = opened(folders_in(here), first_scene());
    session->carry_out(ask::GoToStep{Step::look_back});
    session->carry_out(ask::Confirm{});  // with nothing cut yet
    REQUIRE(session->practice()->finished());
    for (int i = 0; i < 600 && session->shell().searching; ++i) {
        session->poll();
        ::usleep(50'000);
    }
    REQUIRE_FALSE(session->shell().searching);
    REQUIRE(session->practice()->look()->plans.has_value());
    CHECK(session->practice()->look()->best->points > session->practice()->look()->mine.points);
    CHECK(session->shell().walked.size() == 1);
    const std::string code = session->practice()->task().code;
    session->carry_out(ask::NextStep{});  // on a finished vine: the next
    CHECK(session->practice()->task().code != code);
    CHECK_FALSE(session->practice()->finished());
}

TEST_CASE("a typed code opens its vine, and a slip in it is said without losing the vine in hand") {
    const test::Folder here;
    const auto session = opened(folders_in(here), first_scene());
    const std::string code = session->practice()->task().code;
    session->carry_out(ask::OpenCode{"00RM-K1SX-G00Q-0004-0005-046X"});
    REQUIRE(session->shell().message.has_value());
    CHECK(session->shell().message->key.name.starts_with("error.code."));
    CHECK(session->practice()->task().code == code);
    session->carry_out(ask::OpenCode{code});
    CHECK_FALSE(session->shell().message.has_value());
}

TEST_CASE("folders follow XDG: absolute paths only, else those of the home folder") {
    const auto none = settings::folders_of([](const char*) { return std::nullopt; });
    CHECK(none.settings_file.empty());
    CHECK(none.work_folder.empty());
    const auto home = settings::folders_of([](const char* name) -> std::optional<std::string> {
        if (std::string(name) == "HOME") return "/home/someone";
        if (std::string(name) == "XDG_DATA_HOME") return "relative";
        return std::nullopt;
    });
    CHECK(home.settings_file == "/home/someone/.config/spurwright/settings.json");
    CHECK(home.house_file == "/home/someone/.config/spurwright/house-rules.json");
    CHECK(home.work_folder == "/home/someone/.local/share/spurwright/work");
}

TEST_CASE("the first scene offers to watch it once; watching keeps no work, and the vine then lies uncut in hand") {
    const test::Folder here;
    const auto session = opened(folders_in(here), first_scene());
    session->carry_out(ask::SafetySeen{});
    CHECK(session->shell().offers_watch);
    session->carry_out(ask::Watch{true});
    CHECK_FALSE(session->shell().offers_watch);
    for (int i = 0; i < 2000 && session->shell().searching; ++i) {
        session->poll();
        std::this_thread::sleep_for(std::chrono::milliseconds(5));
    }
    REQUIRE(session->practice()->watching().has_value());
    const std::size_t acts = session->practice()->watching()->acts().size();
    for (std::size_t i = 0; i < acts; ++i) session->carry_out(ask::WatchNext{});
    CHECK(session->practice()->watching()->shown() == nullptr);
    session->carry_out(ask::WatchBack{});
    CHECK(session->practice()->watching()->at() == acts - 1);
    session->carry_out(ask::MarkAs{some_cane(*session), Role::left});  // the hand rests, and says so
    REQUIRE(session->shell().message.has_value());
    CHECK(session->shell().message->key.name == "error.practice.hand-rests");
    CHECK(session->practice()->done_count() == 0);
    session->carry_out(ask::WatchOwn{});
    CHECK_FALSE(session->practice()->hand_rests());
    CHECK_FALSE(session->shell().message.has_value());
    CHECK(session->practice()->acts().empty());
    session->carry_out(ask::MarkAs{some_cane(*session), Role::left});
    session->carry_out(ask::Watch{true});
    REQUIRE(session->shell().message.has_value());
    CHECK(session->shell().message->key.name == "error.practice.watch-own-acts");
    CHECK(session->practice()->done_count() == 1);
    session->carry_out(ask::CutAgain{});
    session->carry_out(ask::Watch{true});
    CHECK(session->practice()->watching().has_value());
    session->carry_out(ask::NextVine{});
    CHECK_FALSE(session->practice()->hand_rests());
    CHECK_FALSE(session->shell().offers_watch);  // watched once in this sitting
}

TEST_CASE("what is offered goes away with Esc, with doing it oneself and with the first act") {
    const test::Folder here;
    for (const Request& request : {Request{ask::TakeBack{}}, Request{ask::WatchOwn{}}}) {
        const auto session = opened(folders_in(here), first_scene());
        session->carry_out(request);
        CHECK_FALSE(session->shell().offers_watch);
        CHECK_FALSE(session->practice()->hand_rests());
    }
    const auto session = opened(folders_in(here), first_scene());
    session->carry_out(ask::MarkAs{some_cane(*session), Role::left});
    CHECK_FALSE(session->shell().offers_watch);
}

TEST_CASE("twelve places are asked, counted and left for the vine to prune") {
    const test::Folder here;
    const auto session = opened(folders_in(here), first_scene());
    session->carry_out(ask::Drill{});
    REQUIRE(session->practice()->drill().has_value());
    session->carry_out(ask::DrillNext{});  // not before an answer
    CHECK(session->practice()->drill()->at() == 0);
    while (session->practice()->drill()->here()) {
        session->carry_out(ask::DrillAnswer{session->practice()->drill()->here()->older});
        session->carry_out(ask::DrillNext{});
    }
    CHECK(session->practice()->drill()->right() == 12);
    session->carry_out(ask::DrillNext{});  // past the last place
    CHECK_FALSE(session->practice()->drill().has_value());
    session->carry_out(ask::Drill{});
    session->carry_out(ask::DrillEnd{});
    CHECK_FALSE(session->practice()->hand_rests());
    CHECK(session->practice()->acts().empty());
}

TEST_CASE("what the acts of a look back mean next season comes from a worker, once, and anew for each look back") {
    const test::Folder here;
    const auto session = opened(folders_in(here), first_scene());
    session->carry_out(ask::SafetySeen{});
    const auto wait = [&](const auto& done) {
        for (int i = 0; i < 3000 && !done(); ++i) {
            session->poll();
            std::this_thread::sleep_for(std::chrono::milliseconds(10));
        }
        return done();
    };
    REQUIRE(wait([&] { return session->practice()->plans().has_value(); }));
    CHECK_FALSE(session->practice()->awaits_seasons());
    for (const Edit& edit : session->practice()->plans()->best().plan.edits)  // the canes to lay, off
        if (const auto* lay = std::get_if<Lay>(&edit)) (void)session->practice()->act(Cut{node_id(lay->cane, 0), Length{8'000}, Tool::loppers, {}});
    for (int round = 0; round < 2; ++round) {
        session->practice()->finish();
        REQUIRE(session->practice()->look()->charged.has_value());
        CHECK(session->practice()->awaits_seasons());
        CHECK(session->works());
        REQUIRE(wait([&] { return !session->practice()->awaits_seasons(); }));
        CHECK_FALSE(session->works());
        const auto& charged = *session->practice()->look()->charged;
        CHECK(charged.seasons->size() == charged.ways.size());
        CHECK_FALSE(charged.ways.empty());
        CHECK_FALSE(session->practice()->take_acts_wish().has_value());
    }
}
