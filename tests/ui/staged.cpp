#include "tests/support/cordons.h"
#include "tests/support/folder.h"
#include "tests/ui/driver.h"
#include "tests/ui/staged.h"

#include <algorithm>
#include <chrono>
#include <thread>

#include <doctest/doctest.h>

#include "render/ui/fonts.h"
#include "scenarios/commands/vine_source.h"
#include "scenarios/practice/open_vine.h"
#include "scenarios/scenes/beginner.h"
#include "sim/growth/history.h"
#include "sim/growth/tempt.h"
#include "sim/pruning/legal_edits.h"
#include "sim/pruning/plan.h"
#include "sim/vine/vine_code.h"
#include "sim/vine/vine_query.h"

namespace spurwright::test {

using practice::HandTool;
using practice::Practice;
using practice::Screen;
using practice::Shell;

namespace {

constexpr const char* code = "00RM-K1SX-G00Q-0004-0005-046T";

Shell at(Screen screen) {
    Shell shell;
    shell.screen = screen;
    shell.settings.safety_seen = true;
    for (const std::string name : {"first", "old-or-new", "fat-one", "spur-place", "far-beauty", "weak-vine", "tight-space", "climbed-head", "frost", "wrong-cane", "no-spur", "snapped-cane"})
        shell.scenes.push_back({name, "scene." + name + ".title", "scene." + name + ".task", 5});
    return shell;
}

template <class Change>
std::shared_ptr<Practice> changed(const Practice& from, Change change) {
    auto copy = std::make_shared<Practice>(from);
    change(*copy);
    return copy;
}

ui::Marks some_marks() {
    ui::Marks marks;
    marks.tapes = {{{420, 300}, ui::tape_of(Role::left), 36, "", false},
                   {{470, 310}, ui::tape_of(Role::spur), 36, "", false},
                   {{520, 300}, ui::tape_of(Role::remove), 40, "", false},
                   {{570, 305}, ui::tape_of(Role::spare), 36, "", false},
                   {{640, 320}, ui::tape_of(rules::Mend::now), 44, "", true}};
    marks.cuts = {{{700, 360}, {0.2f, -0.98f}, 14, false}, {{740, 420}, {1, 0}, 10, true}};
    marks.ticks = {{{800, 300}, {1, 0}, 1},
                   {{803, 320}, {-1, 0}, 2},
                   {{806, 340}, {1, 0}, 3},
                   {{809, 360}, {-1, 0}, 4},
                   {{812, 380}, {1, 0}, 5}};
    marks.twins = {{{{860, 480}, {880, 420}, {930, 380}, {1000, 372}, {1060, 370}}, "better"}};
    marks.arrows = {{{450, 470}, {-1, 0}}};
    marks.labels = {{{700, 360}, "½ thumb past node 9, 2 buds kept", "7 buds come off", false}};
    return marks;
}

} // namespace

Practice grown_practice() {
    auto found = commands::vine_of_code(code);
    REQUIRE(found.has_value());
    return Practice({found->vine,
                     code,
                     "first",
                     "general",
                     {},
                     {"scene.first.learn-1", "scene.first.learn-2", "scene.first.learn-3"}});
}

Practice finished_practice() {
    Practice practice = grown_practice();
    const Plan plan = scenes::beginners_plan(practice.start(), {Pruner::thin_wood, Pruner::too_many_buds});
    for (const Edit& edit : plan.edits) REQUIRE(practice.act(edit).has_value());
    practice.finish();
    practice.add_plans(practice::search_plans(practice.start(), practice.task().house));
    return practice;
}

// A far choice beside a near one, grown on.
Practice grown_on_practice() {
    const auto found = commands::vine_of_code("00MC-K1SX-G00Q-0004-0005-4V24");
    REQUIRE(found.has_value());
    const auto near = growth::tempted(found->vine, growth::PlainNearCane{});
    REQUIRE(near.has_value());
    const auto far = growth::tempted(near->vine, growth::FarCane{});
    REQUIRE(far.has_value());
    practice::Task task{far->vine, {}, "far-beauty", "general", {}, {}};
    task.task_key = "scene.far-beauty.task";
    task.grow_on = {5, near->axis, far->axis};
    Practice practice(std::move(task));
    practice::PlansFound plans = practice::search_plans(practice.start(), practice.task().house);
    for (const Edit& edit : plans.best().plan.edits) REQUIRE(practice.act(edit).has_value());
    practice.finish();
    practice.add_plans(std::move(plans));
    practice.grow_on(true);
    return practice;
}

// A vine of a cold hollow where one cane is to stand: the best plan done, looked back on.
Practice frost_practice() {
    growth::Site site;
    site.seed = 4;
    site.age = 7;
    site.frost = true;
    auto vine = growth::grow_vine(site);
    REQUIRE(vine.has_value());
    practice::Task task{*std::move(vine), {}, "frost", "general", {}, {}};
    task.task_key = "scene.frost.task";
    task.learn_keys = {"scene.frost.learn-1", "scene.frost.learn-2", "scene.frost.learn-3"};
    task.frost = scenes::Frost{"cool-maritime", 140, 1};
    task.spring = 3;
    task.house.standing.kickers = 1;
    Practice practice(std::move(task));
    practice::PlansFound plans = practice::search_plans(practice.start(), practice.task().house);
    for (const Edit& edit : plans.best().plan.edits) REQUIRE(practice.act(edit).has_value());
    practice.finish();
    practice.add_plans(std::move(plans));
    REQUIRE(practice.may_visit_in_spring());
    return practice;
}

const practice::LadderDesk& shed_ladder() {
    static const practice::LadderDesk desk = [] {
        auto made = practice::ladder_desk(io::Assets(std::string(SPURWRIGHT_SOURCE) + "/assets"), "", std::nullopt);
        REQUIRE(made.has_value());
        return *std::move(made);
    }();
    return desk;
}

// Somebody who went up twice, then down for the lengths.
std::shared_ptr<practice::LadderDesk> ladder_walked() {
    auto desk = std::make_shared<practice::LadderDesk>(shed_ladder());
    const auto walk = [&](std::size_t lesson, std::size_t number, int rung, Tenths lost) {
        desk->walked.push_back({desk->lessons.lessons[lesson].scene, number, rung, Tenths{20}, {{rules::Step::lengths, lost, Tenths{0}, false}}});
    };
    for (std::size_t i = 0; i < 3; ++i) walk(0, i, i == 0 ? 0 : 1, Tenths{0});
    for (std::size_t i = 0; i < 2; ++i) walk(1, i, 2, Tenths{0});
    for (std::size_t i = 0; i < 2; ++i) walk(2, i, 3, Tenths{180});
    desk->reckon();
    return desk;
}

// On a rung, with the best plan's pieces taped.
std::shared_ptr<Practice> on_rung(int rung) {
    auto opened = practice::open_on_rung(io::Assets(std::string(SPURWRIGHT_SOURCE) + "/assets"), shed_ladder(), 0, 1, rung);
    REQUIRE(opened.has_value());
    auto vine = std::make_shared<Practice>(std::move(opened->task));
    vine->add_plans(practice::search_plans(vine->start(), vine->task().house));
    if (rung == 0) return vine;
    const planning::Choice choice = vine->plans()->best().choice;
    REQUIRE(vine->mark(axis_of(choice.left_cane), Role::left).has_value());
    REQUIRE(vine->mark(axis_of(choice.right_cane), Role::right).has_value());
    REQUIRE(vine->mark(choice.left_spur, Role::spur).has_value());
    REQUIRE(vine->mark(choice.right_spur, Role::spur).has_value());
    return vine;
}

// A scene's vine with what it asks before the first cut.
std::shared_ptr<Practice> asking(const std::string& scene, std::size_t answered) {
    auto opened = practice::open_scene(io::Assets(std::string(SPURWRIGHT_SOURCE) + "/assets"), scene, 0);
    REQUIRE(opened.has_value());
    auto vine = std::make_shared<Practice>(std::move(opened->task));
    REQUIRE(vine->begin_questions().has_value());
    for (std::size_t i = 0; i < answered; ++i) {
        if (i > 0) vine->questions()->next();
        vine->questions()->answer(i % 2);
    }
    return vine;
}

// A cordon with some of its best plan done, looked back on or not.
std::shared_ptr<Practice> cordon_practice(bool finished) {
    growth::Site site;
    site.system = System::cordon;
    site.seed = 1;
    site.age = 9;
    site.spacing_m = 1.5;
    auto vine = growth::grow_vine(site);
    REQUIRE(vine.has_value());
    auto practice = std::make_shared<Practice>(practice::Task{*std::move(vine), "", "", "spur-cordon", spur_cordon(), {}});
    practice::PlansFound plans = practice::search_plans(practice->start(), practice->task().house);
    int nth = 0;
    for (const Edit& edit : plans.best().plan.edits) {
        const bool left_out = std::holds_alternative<Cut>(edit) && nth++ % 5 == 2;  // slips: some cuts forgotten
        if (left_out) continue;
        REQUIRE(practice->act(edit).has_value());
        if (practice->waiting()) REQUIRE(practice->confirm().has_value());
    }
    if (!finished) return practice;
    practice->finish();
    practice->add_plans(std::move(plans));
    return practice;
}

// Questions of these kinds, one each, and what happened so far.
// Look and say with these skills, so many looks answered: every third wrongly.
std::shared_ptr<practice::LookDrill> look_drill(std::vector<drill::Skill> on, int answered) {
    auto looks = std::make_shared<practice::LookDrill>("", std::nullopt, "en", rules::HouseRules{}, [now = std::int64_t{0}]() mutable { return now += 1700; }, 100);
    looks->on = std::move(on);
    looks->begin(5);
    const auto wait = [&] {
        while (looks->stage() == practice::LookStage::making && !looks->poll()) std::this_thread::sleep_for(std::chrono::milliseconds(2));
    };
    for (int i = 0; i < answered; ++i) {
        wait();
        looks->seen();
        const std::size_t right = looks->look()->item.accepted.front().front() - 1u;
        REQUIRE(looks->answer(i % 3 == 2 ? (right + 1) % 2 : right).has_value());
        looks->next();
    }
    wait();
    looks->seen();
    return looks;
}

std::shared_ptr<practice::CrewQuiz> crew_quiz(std::vector<quiz::Kind> kinds, const std::vector<quiz::Event>& events) {
    auto crew = std::make_shared<practice::CrewQuiz>("", words_of_language("es"));
    crew->setup.questions = static_cast<int>(kinds.size());
    crew->setup.kinds = std::move(kinds);
    if (crew->setup.kinds.empty()) return crew;
    crew->begin(7, "general", rules::HouseRules{}, "en");
    while (!crew->poll()) std::this_thread::sleep_for(std::chrono::milliseconds(5));
    REQUIRE(crew->quiz());
    for (const quiz::Event& event : events) REQUIRE(crew->take(event).has_value());
    return crew;
}

// The brush of a vine pruned well: wet, some of it bundled.
std::shared_ptr<weighing::Exercise> heap(const Practice& vine) {
    const auto pruned = prune(vine.start(), scenes::beginners_plan(vine.start(), {}));
    REQUIRE(pruned.has_value());
    std::uint64_t seed = 1;
    const auto pieces = weighing::pieces_of(vine.start(), *pruned, vine.task().house);
    auto exercise = std::make_shared<weighing::Exercise>(pieces, seed, vine.task().house);
    while (!exercise->wet()) exercise = std::make_shared<weighing::Exercise>(pieces, ++seed, vine.task().house);
    return exercise;
}

// All in the bundle, old wood too, hung wet on a scale that was never set to zero; written in another unit.
void weigh_badly(weighing::Exercise& exercise, bool write) {
    using weighing::Deed;
    for (std::size_t i = 0; i < exercise.pieces().size(); ++i)
        if (exercise.lies(i) == weighing::Lies::heap && !exercise.still_on(i)) REQUIRE(exercise.act({Deed::take, i}).has_value());
    REQUIRE(exercise.act({Deed::shorten, 0}).has_value());
    REQUIRE(exercise.act({Deed::tie, 0}).has_value());
    REQUIRE(exercise.act({Deed::hang, 0}).has_value());
    if (write) REQUIRE(exercise.write(exercise.shown_text() + (exercise.unit() == weighing::ScaleUnit::kg ? " lb" : " kg"), false).has_value());
}

// The book with the invented block in it, made once; each desk reads it anew.
std::string book_with_demo() {
    static const Folder folder;
    static const std::string path = [] {
        std::string at = folder.file("records.sqlite");
        practice::BookDesk desk(at, {2026, 11, 30});
        REQUIRE(desk.take(practice::desk::NewBlock{"north", "1.8 m"}).has_value());
        REQUIRE(desk.take(practice::desk::Demo{}).has_value());
        while (desk.making_demo()) {
            desk.poll();
            std::this_thread::sleep_for(std::chrono::milliseconds(10));
        }
        return at;
    }();
    return path;
}

std::shared_ptr<practice::BookDesk> desk_at(const std::vector<practice::BookAct>& acts) {
    auto desk = std::make_shared<practice::BookDesk>(book_with_demo(), records::Day{2026, 11, 30});
    REQUIRE(desk->read().has_value());
    for (const practice::BookAct& act : acts) REQUIRE(desk->take(act).has_value());
    return desk;
}

std::vector<Staged> all_staged() {
    const Practice start = grown_practice(), done = finished_practice();
    const std::vector<AxisId> canes = cane_candidates(start.start());
    REQUIRE(canes.size() > 2);
    std::vector<Staged> all;
    const auto add = [&](std::string name, Shell shell, std::shared_ptr<Practice> practice = nullptr) -> Staged& {
        all.push_back({std::move(name), std::move(shell), std::move(practice), {}, {}});
        return all.back();
    };
    Shell first = at(Screen::safety);
    first.settings.safety_seen = false;
    add("safety-first", first);
    add("safety-again", at(Screen::safety));
    add("home-empty", at(Screen::home));
    Shell walked = at(Screen::home);
    walked.walked = {{code, "first", 0}, {"00RM-K1SX-G00Q-0004-0006-0000", "", 0}};
    add("home-walked", walked, changed(start, [](Practice&) {}));
    Shell offered = at(Screen::home);
    offered.offered = true;
    offered.offered_vine = {code, {}, 0};
    offered.offered_acts = 12;
    add("home-offer", offered);
    offered.offered_vine = {{}, "far-beauty", 2};
    add("home-offer-scene", offered);
    add("row-start", at(Screen::row), changed(start, [](Practice&) {})).marks = some_marks();
    Staged& acts = add("row-acts", at(Screen::row), changed(start, [&](Practice& p) {
                           REQUIRE(p.mark(canes[0], Role::left).has_value());
                           REQUIRE(p.mark(canes[1], Role::spur).has_value());
                           REQUIRE(p.cut({canes[2], {}, {}}, Tool::loppers).has_value());
                           p.undo();
                           p.go_to(rules::Step::choose);
                           p.choose(canes[1]);
                       }));
    acts.views.row.set = acts.views.row.acts_open = true;
    acts.views.row.card_open = false;
    Staged& card = add("row-card", at(Screen::row), changed(start, [&](Practice& p) {
                           p.go_to(rules::Step::lay_and_tie);
                           p.choose(canes[1]);
                           p.walk_buds(1);
                           p.calliper_asked = true;
                       }));
    card.views.row.set = true;
    add("row-tape", at(Screen::row),
        changed(start,
                [&](Practice& p) {
                    p.choose(canes[0]);
                    p.tool = HandTool::tape;
                }))
        .marks = some_marks();
    Shell second = at(Screen::row);
    second.read_only = true;
    Staged& looks = add("row-looks", second, changed(start, [](Practice& p) { p.finish(), p.cut_again(); }));
    looks.views.row.set = looks.views.row.looks_open = true;
    looks.views.row.card_open = false;
    add("row-waiting", at(Screen::row), changed(start, [&](Practice& p) {
            const AxisId trunk = p.start().axes.front().id;
            REQUIRE(p.act(Cut{node_id(trunk, 2), Length{20'000}, Tool::saw, {}}).has_value());
            REQUIRE(p.waiting().has_value());
        }));
    add("row-nothing-cut", at(Screen::row), changed(start, [&](Practice& p) {
            REQUIRE(p.mark(canes[0], Role::left).has_value());
            p.go_to(rules::Step::look_back);
            REQUIRE(p.waiting().has_value());
        }));
    Staged& silent = add("row-silent", at(Screen::row), changed(start, [](Practice& p) { p.silent = true; }));
    silent.views.row.set = silent.views.row.card_open = true;
    Shell told = at(Screen::row);
    told.message = practice::Message{TextKey{"error.practice.choose-first"}, {}};
    add("row-message", told, changed(start, [](Practice&) {}));
    Shell offer = at(Screen::row);
    offer.offers_watch = offer.offers_drill = true;
    add("row-offer", offer, changed(start, [](Practice&) {}));
    Shell offer_drill = at(Screen::row);
    offer_drill.offers_drill = true;
    add("row-offer-drill", offer_drill, changed(start, [](Practice&) {}));
    Shell looking = at(Screen::row);
    looking.searching = true;
    add("watch-looking", looking, changed(start, [](Practice& p) { REQUIRE(p.watch().has_value()); }));
    Practice watching = start;
    watching.add_plans(practice::search_plans(start.start(), start.task().house));
    REQUIRE(watching.watch().has_value());
    const std::size_t watched = watching.watching()->acts().size();
    for (std::size_t i = 0; i <= watched; ++i, watching.watch_next()) { // every act has its own sentences
        const practice::WatchedAct* act = watching.watching()->shown();
        Staged& one = add("watch-" + std::to_string(i), at(Screen::row), changed(watching, [](Practice&) {}));
        one.views.shown.why_open = act && act->step == rules::Step::lengths;
        one.marks = some_marks();
        one.marks.rings = {{640, 320}};
        one.marks.going = {{{{700, 360}, {705, 300}, {720, 200}}}};
    }
    Practice touching = start;
    REQUIRE(touching.begin_drill().has_value());
    for (std::size_t i = 0; i < touching.drill()->touches().size(); ++i) {
        if (i == 0) add("drill-asks", at(Screen::row), changed(touching, [](Practice&) {})).marks.rings = {{640, 320}};
        touching.drill()->answer(i % 2 == 0);
        Staged& answered = add("drill-told-" + std::to_string(i), at(Screen::row), changed(touching, [](Practice&) {}));
        answered.views.shown.why_open = i == 1;
        touching.drill()->next();
    }
    add("drill-end", at(Screen::row), changed(touching, [](Practice&) {}));
    Practice opening = start;
    REQUIRE(opening.begin_buds().has_value());
    for (std::size_t i = 0; i < 2; ++i) {
        add("buds-asks-" + std::to_string(i), at(Screen::row), changed(opening, [](Practice&) {}));
        opening.buds()->answer(i == 0 ? 0 : opening.buds()->here()->dead());
        add("buds-told-" + std::to_string(i), at(Screen::row), changed(opening, [](Practice&) {}));
        opening.buds()->next();
    }
    while (opening.buds()->here()) {
        opening.buds()->answer(opening.buds()->here()->dead());
        opening.buds()->next();
    }
    add("buds-end", at(Screen::row), changed(opening, [](Practice&) {}));
    add("keys-buds", at(Screen::row), changed(opening, [](Practice&) {})).views.sheet = ui::Sheet::keys;
    add("find-watch", at(Screen::row), changed(watching, [](Practice& p) { p.watch_back(); })).views.sheet = ui::Sheet::find;
    add("keys-drill", at(Screen::row), changed(touching, [](Practice&) {})).views.sheet = ui::Sheet::keys;
    add("look-first", at(Screen::row), changed(done, [](Practice& p) { p.look()->current = 0; })).marks = some_marks();
    Staged& whole = add("look-whole", at(Screen::row),
                        changed(done, [](Practice& p) { p.look()->current = p.look()->walk.size(); }));
    whole.views.look.list_open = true;
    Staged& why = add("look-why", at(Screen::row), changed(done, [](Practice& p) { p.look()->current = 1; }));
    why.views.look.why_open = why.views.look.points_open = why.views.look.noting = true;
    // A loss that goes to an act, to the vine, and the list of all; a cut tried elsewhere, on a cane and a spur.
    Staged& charged = add("look-charged", at(Screen::row), changed(done, [](Practice& p) {
        practice::LookBack& look = *p.look();
        for (std::size_t i = 0; i < look.walk.size(); ++i)
            if (const auto share = practice::charged_to(look, look.walk[i]); share && share->to == planning::LostTo::act) look.current = i;
        const auto wish = p.take_acts_wish(); // and what the acts mean next season
        REQUIRE(wish.has_value());
        p.add_seasons(practice::acts_ahead(*wish));
    }));
    charged.views.look.charges_open = true;
    add("look-charged-vine", at(Screen::row), changed(done, [](Practice& p) {
        practice::LookBack& look = *p.look();
        for (std::size_t i = 0; i < look.walk.size(); ++i)
            if (const auto share = practice::charged_to(look, look.walk[i]); share && share->to == planning::LostTo::vine) look.current = i;
    }));
    add("look-cut", at(Screen::row), changed(done, [](Practice& p) {
        p.take_cut({});
        REQUIRE(p.look()->moved.has_value());
        p.move_cut(0);
    }));
    add("look-cut-best", at(Screen::row), changed(done, [](Practice& p) {
        p.take_cut({});
        p.take_next_cut(-1);
        p.move_cut(p.look()->moved->best());
    }));
    add("find-look", at(Screen::row), changed(done, [](Practice& p) { p.take_cut({}); })).views.sheet = ui::Sheet::find;
    add("row-cordon", at(Screen::row), cordon_practice(false));
    add("look-cordon", at(Screen::row), cordon_practice(true));
    Shell asks = at(Screen::row);
    asks.offers_questions = true;
    add("row-offer-questions", asks, asking("weak-vine", 0)).practice->end_showing();
    for (const char* name : {"weak-vine", "tight-space", "spur-place", "climbed-head"}) {
        const std::size_t count = asking(name, 0)->questions()->all().size();
        for (std::size_t i = 1; i <= count; ++i) {
            const auto vine = asking(name, i);
            add("question-" + std::string(name) + "-" + std::to_string(i), at(Screen::row), vine).marks.rings = {{640, 320}};
            if (i == 1) add("question-" + std::string(name) + "-asks", at(Screen::row), asking(name, 0));
        }
    }
    const auto answered_all = asking("weak-vine", 4);
    answered_all->questions()->next();
    add("question-end", at(Screen::row), answered_all);
    Shell counting = at(Screen::row);
    counting.searching = true;
    add("look-counting", counting, changed(start, [](Practice& p) {
            p.finish();
            p.look()->current = p.look()->walk.size();
        }));
    add("look-grown", at(Screen::row), std::make_shared<Practice>(grown_on_practice()));
    Practice frosty = frost_practice();
    add("look-frost", at(Screen::row), changed(frosty, [](Practice& p) { p.look()->current = p.look()->walk.size(); }));
    add("look-spring-living", at(Screen::row), changed(frosty, [](Practice& p) { p.await_spring(std::make_shared<std::atomic<int>>(31)); }));
    std::atomic<int> springs{0};
    frosty.await_spring(std::make_shared<std::atomic<int>>(0));
    frosty.add_spring(practice::spring_visit(frosty.spring_wish(), springs));
    add("look-spring-asks", at(Screen::row), changed(frosty, [](Practice&) {}));
    add("look-spring-off", at(Screen::row), changed(frosty, [](Practice& p) { p.say_standing(true); }));
    add("look-spring-kept", at(Screen::row), changed(frosty, [](Practice& p) { p.say_standing(false); }));
    const auto two = std::make_shared<practice::TwoVines>();
    *two->lived = 13;
    add("two-living", at(Screen::row), changed(done, [](Practice&) {})).two = two;
    const auto lived = std::make_shared<practice::TwoVines>();
    practice::NextWinterWish wish = practice::next_winter_wish(done);
    wish.climate = "colder-continental"; // where buds die too: every line is told
    lived->found = practice::next_winter(wish, *lived->lived);
    add("two-shown", at(Screen::row), changed(done, [](Practice&) {})).two = lived;
    Staged& two_sheet = add("find-two", at(Screen::row), changed(done, [](Practice&) {}));
    two_sheet.two = lived;
    two_sheet.views.sheet = ui::Sheet::find;
    const auto alike = std::make_shared<practice::TwoVines>(*lived);
    alike->found->alike = true;
    add("two-alike", at(Screen::row), changed(done, [](Practice&) {})).two = alike;
    const auto in_hand = std::make_shared<practice::TwoVines>(*lived);
    in_hand->in_hand = practice::mine;
    in_hand->from = done;
    add("two-in-hand", at(Screen::row), std::make_shared<Practice>(practice::next_practice(done, *lived->found, practice::mine))).two = in_hand;
    add("settings", at(Screen::settings));
    add("settings-vine", at(Screen::settings), changed(start, [](Practice&) {}));
    const auto house_shell = [](int steps) {
        Shell shell = at(Screen::house);
        shell.house.base = "general";
        if (steps != 0) house::step(shell.house.rules, {"cane-diameter", "full", true}, steps);
        if (steps != 0) shell.house.own = {"cane-diameter.full"};
        if (steps != 0) shell.house.rules.set_by_house[0] = true;
        return shell;
    };
    add("house", house_shell(0));
    add("house-vine", house_shell(1), changed(done, [](Practice&) {})).views.house.files_open = true;
    for (const std::string_view group : house::groups()) {
        Staged& one = add("house-" + std::string(group), house_shell(2), changed(done, [](Practice&) {}));
        one.views.house.group = group;
        one.views.house.works_open = true;
    }
    namespace happened = quiz::event;
    const auto says = [](int post, quiz::Answer answer) { return quiz::Event{happened::Answered{{quiz::Way::post, post}, std::move(answer)}}; };
    add("crew-empty", at(Screen::crew)).crew_page = std::make_shared<records::CrewView>();
    Staged& page = add("crew", at(Screen::crew)); // as many as a page is asked to hold
    page.crew_page = std::make_shared<records::CrewView>();
    for (std::size_t i = 0; i < records::most_rules_shown; ++i) page.crew_page->rules.push_back(static_cast<rules::RuleName>(3 * i));
    page.crew_page->most_wrong = rules::RuleName::bud_load;
    page.crew_page->quizzes = 3;
    for (int number = 1; number <= 30; ++number) {
        records::CrewMember member;
        member.person = {number, number % 4 ? "Marisol " + std::to_string(number) : "", "es", "", ""};
        for (std::size_t i = 0; i < page.crew_page->rules.size(); ++i)
            if ((static_cast<std::size_t>(number) + i) % 5) member.rules[page.crew_page->rules[i]] = {{static_cast<int>(i) + 2, 10}, static_cast<drill::Mastery>((static_cast<std::size_t>(number) + i) % 3 + 1)};
        if (number % 3 == 0) member.signed_off.push_back({number, number, 1, std::string(rules::key_of(page.crew_page->rules[1])), "row 4", {2026, 11, 2}, {2027, 11, 2}});
        page.crew_page->members.push_back(std::move(member));
    }
    const auto to_sign = std::make_shared<practice::SignDesk>();
    to_sign->today = {2026, 11, 30};
    for (int number = 1; number <= 30; ++number)
        to_sign->people.push_back({{number, number % 4 ? "Marisol " + std::to_string(number) : "", "es", "", ""}, static_cast<std::size_t>(number % 3)});
    add("sign-empty", at(Screen::sign)).sign = std::make_shared<practice::SignDesk>();
    add("sign-list", at(Screen::sign)).sign = to_sign;
    const auto of_one = std::make_shared<practice::SignDesk>(*to_sign);
    practice::SignPage about;
    about.person = to_sign->people[6].person;
    about.notice = test::words_of_language("es")("crew.notice");
    about.unchecked = test::words_of_language("es")("words.unchecked");
    about.language = "es";
    about.met[rules::RuleName::bud_load] = {{7, 10}, drill::Mastery::with_help};
    about.signed_off = {{41, 7, 3, "origin-distance", "row 4, vines 1 to 20", {2026, 11, 2}, {2027, 11, 2}}, {12, 7, 99, "bud-load", "row 2", {2025, 11, 2}, {2026, 11, 2}}};
    of_one->page = about;
    add("sign", at(Screen::sign)).sign = of_one;
    const auto filled = [&](Staged& page) -> ui::SignView& { // as begin_page leaves it
        page.sign = of_one;
        page.views.sign.person = 7;
        page.views.sign.by.text = "3";
        page.views.sign.on.text = "2026-11-30";
        page.views.sign.until.text = "2027-11-30";
        return page.views.sign;
    };
    ui::SignView& signing = filled(add("sign-skill", at(Screen::sign)));
    signing.skill = rules::RuleName::bud_load;
    signing.saw.text = "row 4, vines 1 to 20";
    filled(add("sign-skills", at(Screen::sign))).skills_open = true;
    ui::SignView& withdrawing = filled(add("sign-withdraw", at(Screen::sign)));
    withdrawing.withdraws = 41;
    withdrawing.reason.text = "the wrong person";
    Shell sought = at(Screen::home);
    sought.growing = practice::Growing{};
    sought.growing->of = 60;
    *sought.growing->tried = 12;
    add("growing", sought);
    add("seat-empty", at(Screen::seat));
    Staged& seat = add("seat", at(Screen::seat));
    for (int number = 1; number <= 30; ++number) seat.shell.people.push_back({number, number % 4 ? "Marisol " + std::to_string(number) : "", "es", number % 3 ? "Norte" : "", ""});
    seat.shell.sits = seat.shell.people[6];
    Staged& at_home = add("home-sits", at(Screen::home));
    at_home.shell.sits = seat.shell.people[6];
    add("ladder-begins", at(Screen::ladder)).ladder = std::make_shared<practice::LadderDesk>(shed_ladder());
    Staged& ladder = add("ladder", at(Screen::ladder));
    ladder.ladder = ladder_walked();
    Staged& other_rung = add("ladder-other-rung", at(Screen::ladder));
    other_rung.ladder = ladder_walked();
    other_rung.views.ladder.rung = 6;
    const auto on_ladder = [&](const std::string& name, std::shared_ptr<Practice> vine) {
        Staged& page = add(name, at(Screen::row));
        page.practice = std::move(vine);
        page.ladder = ladder_walked();
    };
    on_ladder("row-ladder-choose", changed(*on_rung(1), [](Practice& vine) { vine.undo(); }));
    on_ladder("row-ladder-to-show", on_rung(1));
    on_ladder("row-ladder-laying", changed(*on_rung(4), [](Practice& vine) { vine.go_to(rules::Step::lay_and_tie); }));
    on_ladder("watch-ladder", changed(*on_rung(1), [](Practice& vine) { vine.go_to(rules::Step::clear); }));
    on_ladder("watch-ladder-over", changed(*on_rung(0), [](Practice& vine) {
                  REQUIRE(vine.watch().has_value());
                  vine.watch_rest();
              }));
    on_ladder("look-ladder", changed(*on_rung(1), [](Practice& vine) { vine.go_to(rules::Step::look_back); }));
    Staged& empty_way = add("way-empty", at(Screen::way));
    empty_way.way = std::make_shared<practice::WayAhead>();
    empty_way.way->next = learning::way_on({}, {}, {2026, 11, 30}, 1);
    Staged& way = add("way", at(Screen::way));
    way.way = std::make_shared<practice::WayAhead>();
    for (int i = 0; i < 7; ++i) {
        records::PastVine past;
        past.day = {2026, 11, 20 + i};
        past.vine_hash = "0123456789abcde" + std::to_string(i);
        if (i % 2) past.code = "00RM-K1SX-G00Q-0004-0005-046T";
        past.best = Tenths{956};
        past.marks = Tenths{956 - 60 * i};
        past.worst = rules::RuleName::internode_evenness;
        past.lost_by = {rules::RuleName::internode_evenness, rules::RuleName::origin_distance};
        way.way->past.push_back(std::move(past));
    }
    way.way->returning = learning::returning_vines(way.way->past, {2026, 11, 30});
    way.way->rules = learning::rules_to_look_at(way.way->past);
    way.way->next = learning::way_on(way.way->past, {}, {2026, 11, 30}, 1);
    add("looks-set-up", at(Screen::looks)).looks = std::make_shared<practice::LookDrill>("", std::nullopt, "en", rules::HouseRules{}, [] { return std::int64_t{0}; }, 100);
    for (const drill::Skill skill : drill::all_skills) add("looks-" + std::string(word_of(skill)), at(Screen::looks)).looks = look_drill({skill}, 0);
    Staged& looked = add("looks-told", at(Screen::looks));
    looked.looks = look_drill({drill::Skill::cane_size}, 0);
    REQUIRE(looked.looks->answer(0).has_value());
    Staged& sitting = add("looks-over", at(Screen::looks));
    sitting.looks = look_drill({drill::Skill::wood_age, drill::Skill::cane_size, drill::Skill::which_job}, 24);
    sitting.looks->end();
    add("wall-set-up", at(Screen::wall)).crew = crew_quiz({}, {});
    add("wall-gathered", at(Screen::wall)).crew = crew_quiz({quiz::Kind::count}, {});
    for (const quiz::Kind kind : quiz::all_kinds) add("wall-" + std::string(word_of(kind)), at(Screen::wall)).crew = crew_quiz({kind}, {happened::Next{}});
    const std::vector<quiz::Event> closed{happened::Next{}, says(1, {1}), says(2, {2}), happened::Counted{{3}, 4}, happened::Locked{}};
    std::vector<quiz::Event> shown = closed, ended = closed;
    shown.emplace_back(happened::Revealed{});
    ended = shown;
    ended.emplace_back(happened::Ended{});
    add("wall-closed", at(Screen::wall)).crew = crew_quiz({quiz::Kind::never}, closed);
    for (const quiz::Kind kind : {quiz::Kind::never, quiz::Kind::which_rule}) {
        add("wall-shown-" + std::string(word_of(kind)), at(Screen::wall)).crew = crew_quiz({kind}, shown);
        Staged& disagrees = add("wall-disagrees-" + std::string(word_of(kind)), at(Screen::wall));
        disagrees.crew = crew_quiz({kind}, shown);
        disagrees.views.wall.disagrees = true;
    }
    add("wall-results", at(Screen::wall)).crew = crew_quiz({quiz::Kind::never}, ended);
    add("weigh-start", at(Screen::weigh)).weighing = heap(start);
    const auto bundled = heap(start);
    for (std::size_t i = 0; i < bundled->pieces().size() / 2; ++i) (void)bundled->act({weighing::Deed::take, i});
    add("weigh-some", at(Screen::weigh)).weighing = bundled;
    const auto hung = heap(start), badly = heap(start);
    weigh_badly(*hung, false);
    add("weigh-hung", at(Screen::weigh)).weighing = hung;
    weigh_badly(*badly, true);
    Staged& verdict = add("weigh-written", at(Screen::weigh));
    verdict.weighing = badly;
    verdict.views.shown.why_open = true;
    const weighing::NextBudsTask next{"20+20", {}, from_mm(2000), {{2022, from_g(720), false}, {2023, from_g(690), false}, {2024, from_g(810), true}, {2025, from_g(740), false}, {2026, from_g(700), false}}};
    Staged& asked_next = add("weigh-next", at(Screen::weigh));
    asked_next.weighing = badly;
    asked_next.next_buds = std::make_shared<weighing::NextBuds>(next, *badly->verdict());
    Staged& said_next = add("weigh-next-said", at(Screen::weigh));
    said_next.weighing = badly;
    said_next.next_buds = std::make_shared<weighing::NextBuds>(next, *badly->verdict());
    said_next.next_buds->leave_out(0, true);
    said_next.next_buds->say({50, 50, 50});
    Staged& weighed_look = add("look-weighed", at(Screen::row), changed(done, [&](Practice& p) { p.look()->weighed = badly->verdict(); }));
    weighed_look.views.look.list_open = true;
    practice::Task from_book = start.task();
    practice::ask_for(from_book, {"demo-invented", "107", true, 2027, from_g(820), from_mm(1800), "20+20"});
    add("row-from-book", at(Screen::row), std::make_shared<Practice>(from_book));
    Staged& weigh_sheet = add("keys-weigh", at(Screen::weigh));
    weigh_sheet.weighing = hung;
    weigh_sheet.views.sheet = ui::Sheet::keys;
    Staged& weigh_find = add("find-weigh", at(Screen::weigh));
    weigh_find.weighing = hung;
    weigh_find.views.sheet = ui::Sheet::find;
    namespace desk = practice::desk;
    using practice::BookPage;
    add("book-empty", at(Screen::book)).book = std::make_shared<practice::BookDesk>("", records::Day{2026, 11, 30});
    Staged& blocks = add("book-blocks", at(Screen::book));
    blocks.book = desk_at({});
    blocks.views.book.new_open = blocks.views.book.files_open = true;
    add("book-no-vines", at(Screen::book)).book = desk_at({desk::Open{"north"}});
    Staged& entry = add("book-entry", at(Screen::book));
    entry.book = desk_at({desk::Open{"demo-invented"}, desk::At{3}});
    entry.views.book.more_open = true;
    add("book-end", at(Screen::book)).book = desk_at({desk::Open{"demo-invented"}, desk::At{60}});
    const auto odd = desk_at({desk::Open{"demo-invented"}, desk::Enter{"9.9 kg", {}, {}, {}, {}}});
    REQUIRE(odd->odd().has_value());
    add("book-odd", at(Screen::book)).book = odd;
    Staged& compared = add("book-compare", at(Screen::book));
    compared.book = desk_at({desk::Open{"demo-invented"}, desk::Page{BookPage::compare}});
    compared.views.book.suggested_open = true;
    add("book-compare-row", at(Screen::book)).book = desk_at({desk::Open{"demo-invented"}, desk::Row{3}, desk::Page{BookPage::compare}});
    add("book-compare-none", at(Screen::book)).book = desk_at({desk::Open{"north"}, desk::Page{BookPage::compare}});
    add("book-map", at(Screen::book)).book = desk_at({desk::Open{"demo-invented"}, desk::Page{BookPage::map}});
    std::vector<practice::BookAct> points{desk::Open{"demo-invented"}, desk::At{0}, desk::Placed{"1", "1", "44.1234567", "-1.2345678"}};
    for (std::size_t i = 1; i < 12; ++i) points.insert(points.end(), {desk::At{i}, desk::Nudge{3.0 * static_cast<double>(i), 1.5 * static_cast<double>(i)}});
    points.insert(points.end(), {desk::At{4}, desk::Page{BookPage::map}});
    Staged& pointed = add("book-points", at(Screen::book));
    pointed.book = desk_at(points);
    pointed.views.book.puts_points = true;
    Staged& placed = add("book-place", at(Screen::book));
    placed.book = desk_at({desk::Open{"demo-invented"}, desk::At{2}});
    placed.views.book.place_open = placed.views.book.history_open = placed.views.book.papers_open = true;
    Staged& book_sheet = add("keys-book", at(Screen::book));
    book_sheet.book = desk_at({desk::Open{"demo-invented"}});
    book_sheet.views.sheet = ui::Sheet::keys;
    Staged& book_find = add("find-book", at(Screen::book));
    book_find.book = desk_at({desk::Open{"demo-invented"}});
    book_find.views.sheet = ui::Sheet::find;
    add("find-row", at(Screen::row), changed(start, [](Practice&) {})).views.sheet = ui::Sheet::find;
    add("find-home", at(Screen::home)).views.sheet = ui::Sheet::find;
    add("keys-row", at(Screen::row), changed(start, [](Practice&) {})).views.sheet = ui::Sheet::keys;
    add("keys-look", at(Screen::row), changed(done, [](Practice&) {})).views.sheet = ui::Sheet::keys;
    add("keys-home", at(Screen::home)).views.sheet = ui::Sheet::keys;
    add("words-home", at(Screen::home)).views.sheet = ui::Sheet::words;
    add("words-row", at(Screen::row), changed(start, [](Practice&) {})).views.sheet = ui::Sheet::words;
    return all;
}

} // namespace spurwright::test
