// Vines on the ladder: what is not the trainee's is done for them to go with their tapes and cuts, is the best plan that holds
// these, told by the same acts and reasons as a watched vine; what it cost goes back to their choice, to the tenth; and who
// stands on which rung is kept with a number's records, of nobody for the sitting.
#include <doctest/doctest.h>

#include <chrono>
#include <thread>

#include "scenarios/io/safe_file.h"
#include "scenarios/practice/session.h"
#include "scenarios/records/past_vines.h"
#include "scenarios/records/replay.h"
#include "sim/planning/held_plan.h"
#include "sim/rules/judge.h"
#include "sim/vine/canonical_text.h"
#include "tests/support/folder.h"

using namespace spurwright;
using namespace spurwright::practice;

namespace {

const io::Assets ladder_assets(std::string(SPURWRIGHT_SOURCE) + "/assets");

const LadderDesk& shed() {
    static const LadderDesk desk = [] {
        auto made = ladder_desk(ladder_assets, "", std::nullopt);
        REQUIRE(made.has_value());
        return *std::move(made);
    }();
    return desk;
}

Practice on_rung(int rung, std::size_t lesson = 0, std::size_t number = 1) {
    auto opened = open_on_rung(ladder_assets, shed(), lesson, number, rung);
    REQUIRE(opened.has_value());
    return Practice(std::move(opened->task));
}

planning::BestPlan best_of(const Practice& practice) { return *planning::Planning(practice.start(), practice.task().house).best(); }

void tape(Practice& practice, const planning::Choice& choice) {
    if (choice.left_cane) REQUIRE(practice.mark(axis_of(choice.left_cane), Role::left).has_value());
    if (choice.right_cane) REQUIRE(practice.mark(axis_of(choice.right_cane), Role::right).has_value());
    if (choice.left_spur) REQUIRE(practice.mark(choice.left_spur, Role::spur).has_value());
    if (choice.right_spur) REQUIRE(practice.mark(choice.right_spur, Role::spur).has_value());
}

// As a person goes through: the next step, what is shown act by act.
int watch_all(Practice& practice) {
    int acts = 0;
    while (practice.showing_step()) {
        const WatchedAct* act = practice.watching()->shown();
        REQUIRE(act != nullptr);
        CHECK(act->step == *practice.showing_step());
        CHECK_FALSE(practice.is_mine(act->step));
        REQUIRE_FALSE(act->why.empty());
        CHECK_FALSE(act->why.front().lacks);
        const std::size_t before = practice.done_count();
        practice.watch_next();
        CHECK(practice.done_count() == before + 1);
        CHECK(practice.shown_acts().back());
        ++acts;
    }
    return acts;
}

int show_what_is_not_mine(Practice& practice) {
    int acts = 0;
    for (const Step step : {Step::clear, Step::spurs, Step::lengths, Step::lay_and_tie})
        if (practice.to_be_shown(step)) {
            practice.go_to(step);
            acts += watch_all(practice);
        }
    return acts;
}

void look_back_on(Practice& practice) {
    practice.finish();
    practice.add_plans(search_plans(practice.start(), practice.task().house));
    REQUIRE(practice.yours().has_value());
}

const records::StepResult& result_of(const YoursOnVine& yours, Step step) {
    for (const records::StepResult& result : yours.steps)
        if (result.step == step) return result;
    FAIL("not a step of theirs");
    return yours.steps.front();
}

// Choices of other canes and spurs, worth less and less.
std::vector<planning::Choice> other_choices(const Practice& practice) {
    const planning::Planning planning(practice.start(), practice.task().house);
    std::vector<planning::Choice> found;
    for (const planning::Piece& piece : planning.tables().pieces)
        for (const Side side : both_sides)
            if (const auto laying = planning.best_laying(piece.axis, side)) found.push_back(laying->choice);
    return found;
}

std::unique_ptr<Session> session_in(const test::Folder& here, std::uint64_t seed = 5) {
    settings::Folders folders{here.file("settings.json"), here.file("work"), here.file("house.json"), here.file("store.sqlite")};
    auto session = Session::make(ladder_assets, folders, {}, [seed]() mutable { return seed++; });
    REQUIRE(session.has_value());
    (*session)->carry_out(ask::SafetySeen{});
    return *std::move(session);
}

void await_plans(Session& session) {
    for (int i = 0; i < 3'000 && session.shell().searching; ++i) {
        (void)session.poll();
        std::this_thread::sleep_for(std::chrono::milliseconds(10));
    }
    REQUIRE_FALSE(session.shell().searching);
}

// One vine of the rung that is suggested, with the best plan's pieces taped.
void walk_one(Session& session) {
    session.carry_out(ask::LadderVine{});
    await_plans(session);
    Practice& practice = *session.practice();
    if (practice.task().ladder->rung.watched()) {
        while (practice.watching()->shown()) session.carry_out(ask::WatchNext{});
        return;
    }
    tape(practice, practice.plans()->best().choice);
    session.carry_out(ask::GoToStep{Step::look_back});
    REQUIRE(practice.finished());
}

}  // namespace

TEST_CASE("with the best plan's pieces taped, what is shown makes the best plan of them, act by act, and nothing is lost") {
    for (std::size_t lesson = 0; lesson < shed().lessons.lessons.size(); ++lesson) {
        CAPTURE(shed().lessons.lessons[lesson].name);
        Practice practice = on_rung(1, lesson, 0);
        const planning::BestPlan best = best_of(practice);
        tape(practice, best.choice);
        for (const Edit& edit : best.plan.edits)  // of the frost scene the one that stands
            if (const auto* mark = std::get_if<Mark>(&edit); mark && mark->role == Role::kicker) REQUIRE(practice.mark(mark->axis, mark->role).has_value());
        const std::size_t taped = practice.done_count();
        CHECK(practice.step() == Step::clear);
        CHECK(practice.to_be_shown(Step::clear));
        const int shown = show_what_is_not_mine(practice);
        CHECK(static_cast<std::size_t>(shown) + taped == best.plan.edits.size());
        CHECK_FALSE(practice.hand_rests());
        CHECK(rules::judge(practice.start(), practice.now(), practice.task().house).points == best.points);
        look_back_on(practice);
        CHECK(practice.yours()->lost() == Tenths{0});
        CHECK(practice.look()->mine_as_good);
    }
}

TEST_CASE("with other pieces taped, what is shown goes with them, is the best plan that holds them, and all that is lost is the choice's") {
    int tried = 0, lost = 0;
    for (const std::size_t lesson : {std::size_t{0}, std::size_t{2}, std::size_t{4}}) {
        const Practice fresh = on_rung(1, lesson, 0);
        const planning::VineTables tables = planning::vine_tables(fresh.start(), fresh.task().house);
        for (const planning::Choice& choice : other_choices(fresh)) {
            Practice practice = fresh;
            tape(practice, choice);
            const auto held = planning::best_holding(practice.start(), practice.task().house, tables, practice.now());
            REQUIRE(held.has_value());
            CHECK(held->not_held.empty());
            show_what_is_not_mine(practice);
            const rules::PlanFacts facts = rules::measure_plan(practice.start(), practice.now(), practice.task().house, rules::offers(practice.start(), practice.task().house));
            const auto axis = [](NodeId cane) { return cane ? axis_of(cane) : AxisId{}; };
            CHECK((facts.sides[0].cane ? facts.sides[0].cane->axis : AxisId{}) == axis(choice.left_cane));
            CHECK((facts.sides[1].cane ? facts.sides[1].cane->axis : AxisId{}) == axis(choice.right_cane));
            CHECK((facts.sides[0].spur ? facts.sides[0].spur->axis : AxisId{}) == choice.left_spur);
            CHECK((facts.sides[1].spur ? facts.sides[1].spur->axis : AxisId{}) == choice.right_spur);
            look_back_on(practice);
            CHECK(practice.look()->mine.points == held->best.points);
            const planning::Charges& charges = practice.look()->charged->charges;
            CHECK(practice.yours()->lost() == charges.best - charges.mine);
            CHECK(result_of(*practice.yours(), Step::choose).lost == charges.best - charges.mine);
            ++tried;
            lost += practice.yours()->lost().count > 0;
        }
    }
    MESSAGE(tried << " choices, " << lost << " of them worth less than the best");
    CHECK(tried >= 20);
    CHECK(lost >= 10);
}

TEST_CASE("lengths of one's own stay as they were cut, the canes are laid and tied so, and their loss is told as the lengths'") {
    Practice practice = on_rung(2);
    const planning::BestPlan best = best_of(practice);
    tape(practice, best.choice);
    practice.go_to(Step::clear);
    watch_all(practice);
    // Much too short: the fourth bud of both.
    const planning::VineTables tables = planning::vine_tables(practice.start(), practice.task().house);
    for (const NodeId cane : {best.choice.left_cane, best.choice.right_cane})
        for (const planning::Piece& piece : tables.pieces)
            if (piece.axis == axis_of(cane)) REQUIRE(practice.cut({piece.axis, node_id(piece.axis, piece.cut_nodes.front()), {15'000}}, Tool::shears).has_value());
    const std::size_t own = practice.done_count();
    CHECK_FALSE(practice.to_be_shown(Step::lengths));
    practice.go_to(Step::lay_and_tie);
    REQUIRE(practice.showing_step() == Step::lay_and_tie);
    watch_all(practice);
    for (std::size_t i = own; i < practice.done().edits.size(); ++i) CHECK((std::holds_alternative<Lay>(practice.done().edits[i]) || std::holds_alternative<Fasten>(practice.done().edits[i])));
    look_back_on(practice);
    const YoursOnVine yours = *practice.yours();
    CHECK(result_of(yours, Step::lengths).lost > Tenths{150});
    CHECK(result_of(yours, Step::choose).lost <= Tenths{0});
    CHECK(yours.steps.size() == 3);
    CHECK(learning::poor_steps({"first", 1, 2, Tenths{20}, yours.steps}) == std::vector{Step::lengths});
    // On a rung where lengths are not theirs nothing of it is counted.
    lessons::Rung less = practice.task().ladder->rung;
    less.mine[static_cast<std::size_t>(Step::lengths)] = false;
    CHECK(yours_on(*practice.look(), less, practice.shown_acts()).lost() <= Tenths{0});
}

TEST_CASE("shown acts are acts: undone one by one, and forward again, the vine is the same; the hand may take over at any of them") {
    Practice practice = on_rung(1);
    tape(practice, best_of(practice).choice);
    const std::size_t taped = practice.done_count();
    practice.go_to(practice.step());
    std::vector<std::uint64_t> seen{vine_hash(practice.now())};
    for (int i = 0; i < 4; ++i) {
        practice.watch_next();
        seen.push_back(vine_hash(practice.now()));
    }
    for (int i = 3; i >= 0; --i) {
        practice.watch_back();
        CHECK(vine_hash(practice.now()) == seen[static_cast<std::size_t>(i)]);
        CHECK(practice.done_count() == taped + static_cast<std::size_t>(i));
    }
    practice.watch_back();  // the tapes stay: they are their own
    CHECK(practice.done_count() == taped);
    practice.watch_next();
    practice.end_showing();
    CHECK(practice.done_count() == taped + 1);
    CHECK_FALSE(practice.hand_rests());
    practice.undo();
    CHECK(vine_hash(practice.now()) == seen[0]);
    practice.undo();  // a tape of their own: another choice, and what is shown goes with that
    CHECK(practice.next() == Step::choose);
    // All of a step at once, and the steps after it follow.
    practice.redo();
    practice.go_to(Step::clear);
    practice.watch_rest();
    CHECK(practice.showing_step() == Step::spurs);
    practice.watch_rest();
    practice.watch_rest();
    practice.watch_rest();
    CHECK_FALSE(practice.hand_rests());
    CHECK(practice.next() == Step::look_back);
}

TEST_CASE("looked back on early, what was not theirs is done for them; without any tape that is the best plan, and choosing is lost") {
    Practice practice = on_rung(1);
    tape(practice, best_of(practice).choice);
    practice.go_to(Step::look_back);
    REQUIRE(practice.finished());
    CHECK(practice.look()->mine.points == best_of(practice).points);
    for (const Edit& edit : practice.done().edits)
        if (!std::holds_alternative<Mark>(edit)) return;
    FAIL("nothing was cut");
}

TEST_CASE("a piece that no plan can keep as it is taped is named, and the rest is shown without it") {
    Practice practice = on_rung(1);
    const planning::VineTables tables = planning::vine_tables(practice.start(), practice.task().house);
    AxisId never;
    for (std::size_t row = 0; row < tables.pieces.size(); ++row)
        if (tables.tables.candidates[row].spur.empty()) never = tables.pieces[row].axis;
    if (!never) return;
    REQUIRE(practice.mark(never, Role::spur).has_value());
    CHECK(practice.not_held() == std::vector{never});
    CHECK(practice.to_be_shown(Step::clear));
}

TEST_CASE("on the rungs that leave all to the trainee nothing is shown, and a vine off the ladder is as ever") {
    for (const int rung : {4, 5, 6}) {
        Practice practice = on_rung(rung);
        tape(practice, best_of(practice).choice);
        for (const Step step : {Step::clear, Step::spurs, Step::lengths, Step::lay_and_tie}) CHECK_FALSE(practice.to_be_shown(step));
    }
    auto opened = open_scene(ladder_assets, "first", 1);
    REQUIRE(opened.has_value());
    const Practice plain(std::move(opened->task));
    CHECK_FALSE(plain.on_ladder());
    CHECK(plain.is_mine(Step::clear));
    CHECK_FALSE(plain.to_be_shown(Step::clear));
}

TEST_CASE("on rungs that explain each step at most three things are spoken of, all of them in own steps") {
    Practice practice = on_rung(3);
    const auto choices = other_choices(practice);
    for (const planning::Choice& choice : choices) {
        practice.cut_again();
        tape(practice, choice);
        look_back_on(practice);
        int spoken = 0;
        for (const Walked& stop : practice.look()->walk) spoken += stop.stop == Stop::finding && !stop.folded;
        CHECK(spoken <= 3);
    }
}

TEST_CASE("a number's rung is kept with the records: watched, twice well, one up; another number begins, and vines with help are no answers") {
    const test::Folder here;
    {
        const auto session = session_in(here);
        session->carry_out(ask::Seat{});
        session->carry_out(ask::SitsNew{});
        session->carry_out(ask::Ladder{});
        REQUIRE(session->ladder() != nullptr);
        CHECK(session->ladder()->standing.rung == 0);
        walk_one(*session);
        CHECK(session->ladder()->standing.rung == 1);
        walk_one(*session);
        CHECK(session->practice()->task().scene_number == 1);
        CHECK(session->ladder()->standing.rung == 1);
        CHECK(session->practice()->yours()->lost() <= session->practice()->plans()->tolerance);
        session->carry_out(ask::CutAgain{});  // finished again: still one vine
        tape(*session->practice(), session->practice()->plans()->best().choice);
        session->carry_out(ask::GoToStep{Step::look_back});
        CHECK(session->ladder()->standing.rung == 1);
        walk_one(*session);
        CHECK(session->ladder()->standing.rung == 2);
        CHECK(session->ladder()->standing.why == TextKey{"ladder.why.up"});
    }
    const auto again = session_in(here);
    again->carry_out(ask::Ladder{});
    CHECK(again->ladder()->standing.rung == 0);  // nobody's begins anew
    again->carry_out(ask::Seat{});
    again->carry_out(ask::Sits{1});
    again->carry_out(ask::Ladder{});
    CHECK(again->ladder()->standing.rung == 2);
    CHECK(again->ladder()->progress[0].next == 3);
    CHECK(again->ladder()->next == 1);  // two went well: the next lesson
    again->carry_out(ask::SitsNew{});
    again->carry_out(ask::Ladder{});
    CHECK(again->ladder()->standing.rung == 0);
    auto store = records::Store::open_to_read(here.file("store.sqlite"));
    REQUIRE((store.has_value() && store->has_value()));
    CHECK(records::past_vines(**store, 1)->empty());
    CHECK(records::lessons_of(**store, 1)->size() == 3);
    const auto judged = records::replay(**store, std::nullopt);  // the two pruned, from what was kept with them
    REQUIRE(judged.has_value());
    CHECK(judged->size() == 2);
    for (const records::Replayed& one : *judged) CHECK(one.outcome == records::Outcome::same);
    const auto checked = records::check_records(**store);
    REQUIRE(checked.has_value());
    CHECK(checked->damaged.empty());
}

TEST_CASE("any rung may be taken: a whole vine of the ladder is an answer too; nobody's rung lasts for the sitting") {
    const test::Folder here;
    const auto session = session_in(here);
    session->carry_out(ask::Ladder{});
    session->carry_out(ask::LadderVine{2, 6});
    await_plans(*session);
    CHECK(session->practice()->task().scene == "fat-one");
    CHECK_FALSE(session->practice()->step_feedback);
    for (const Edit& edit : session->practice()->plans()->best().plan.edits) REQUIRE(session->practice()->act(edit).has_value());
    session->carry_out(ask::GoToStep{Step::look_back});
    CHECK(session->ladder()->walked.size() == 1);
    auto store = records::Store::open_to_read(here.file("store.sqlite"));
    REQUIRE((store.has_value() && store->has_value()));
    CHECK(records::past_vines(**store, std::nullopt)->size() == 1);
    session->carry_out(ask::NextStep{});  // on with the ladder
    CHECK(session->practice()->on_ladder());
    session->carry_out(ask::LadderVine{2, 5});
    CHECK(session->practice()->step_feedback);
}

TEST_CASE("work on a rung is offered back on that rung, with what was shown told from what was theirs") {
    const test::Folder here;
    std::size_t done = 0;
    std::vector<bool> shown;
    {
        const auto session = session_in(here);
        session->carry_out(ask::LadderVine{4, 1});
        await_plans(*session);
        tape(*session->practice(), session->practice()->plans()->best().choice);
        session->carry_out(ask::NextStep{});
        REQUIRE(session->practice()->showing_step() == Step::clear);
        for (int i = 0; i < 3; ++i) session->carry_out(ask::WatchNext{});
        done = session->practice()->done_count();
        shown = session->practice()->shown_acts();
    }  // as after a crash
    const auto again = session_in(here);
    REQUIRE(again->shell().offered);
    CHECK(again->shell().offered_acts == done);
    again->carry_out(ask::OfferTaken{true});
    REQUIRE(again->practice()->on_ladder());
    CHECK(again->practice()->task().ladder->number == 1);
    CHECK(again->practice()->task().scene == "far-beauty");
    CHECK(again->practice()->shown_acts() == shown);
    CHECK(again->practice()->to_be_shown(Step::clear));
}
