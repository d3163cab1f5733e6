// Nothing of the best plan reaches whoever has not finished: two people with the same vine in hand, for one of whom the
// search found the true plans and for the other quite another plan, are shown the same until they look back. Compared is
// all that a Practice tells, in words, after every act of many plans.
#include <doctest/doctest.h>

#include "scenarios/practice/practice.h"
#include "scenarios/words/load_words.h"
#include "sim/growth/history.h"
#include "sim/pruning/plan_text.h"
#include "tests/support/full_size.h"
#include "tests/support/judged.h"
#include "tests/support/random_edits.h"

using namespace spurwright;
using namespace spurwright::practice;

namespace {

const io::Assets leak_assets(SPURWRIGHT_SOURCE "/assets");

const words::Words& leak_words() {
    static const auto words = words::load_words(leak_assets, "en");
    return *words;
}

void tell(std::string& out, TextKey key, const Arguments& arguments) { out += leak_words().sentence(key, arguments) + "\n"; }

void tell(std::string& out, const Walked& w) {
    out += name_of(w.axis) + " " + std::to_string(w.lost.count) + " ";
    tell(out, w.key, w.arguments);
}

void tell(std::string& out, const StepStrip& strip) {
    for (const StepSaid& said : strip) {
        out += std::string(word_of(said.step)) + (said.done ? " done " : " ");
        tell(out, said.key, said.arguments);
    }
}

// Everything a screen can read of it before the end, apart from the plans themselves.
std::string all_told(Practice& p) {
    std::string out = std::to_string(p.change()) + " " + std::to_string(p.asked_buds()) + " " + std::to_string(p.done_count()) +
                      std::string(p.can_undo() ? " undo" : "") + std::string(p.can_redo() ? " redo" : "") + "\n";
    for (const NamedAct& act : p.acts()) tell(out, act.key, act.arguments);
    tell(out, p.strip());
    out += std::string(word_of(p.step())) + " " + std::string(word_of(p.next())) + "\n";
    if (p.waiting()) tell(out, p.waiting()->key, p.waiting()->arguments);
    for (std::size_t s = 0; s < step_count; ++s)
        for (const Walked& w : p.feedback(static_cast<Step>(s))) tell(out, w);
    // The order in which keys walk the canes, and what a cut at each would take.
    const AxisId chosen = p.chosen;
    for (int n = 0; n < 12; ++n) {
        p.walk_canes(1);
        out += name_of(p.chosen) + " " + std::to_string(static_cast<int>(p.role_of(p.chosen)));
        p.tool = HandTool::shears;
        if (const auto cut = p.would_cut())
            for (const AxisId axis : cut->axes) out += " " + name_of(axis);
        p.tool = HandTool::none;
        out += "\n";
    }
    p.choose(chosen);
    out += p.look() ? "look back" : "at work";
    out += p.may_live_on() || p.may_grow_on() || p.grown_on() || p.spring() || p.watching() ? " shown" : "";
    return out;
}

struct Leaks {
    int vines = 0, told = 0, differ = 0, told_at_the_end = 0;
    std::string first;

    void look_at(std::uint32_t number) {
        growth::Site site;
        site.seed = 90'000 + number;
        site.age = 4 + static_cast<int>(number % 12);
        site.system = number % 5 == 4 ? System::one_cane : System::two_cane;
        const auto vine = growth::grow_vine(site);
        if (!vine) return;
        const rules::HouseRules house;
        const PlansFound truth = search_plans(*vine, house);
        if (truth.none()) return;
        // The key: another choice is called the best, others as good, and the tolerance is another.
        PlansFound lie = truth;
        const auto& tables = truth.planning->tables();
        const auto pick = test::random_pick(tables.tables, number);
        if (!pick) return;
        const planning::Choice other = planning::choice_of(tables, *pick);
        lie.as_good = {{other, planning::complete(*vine, house, other), Tenths{999}, Tenths{999}}};
        lie.as_good_count = 1;
        lie.tolerance = Tenths{55};
        ++vines;
        Task task{*vine, "", "", "general", house, {}};
        Practice one(task), two(task), searching(task);
        one.add_plans(truth);
        two.add_plans(lie);
        for (Practice* p : {&one, &two, &searching}) p->step_feedback = number % 2 == 0;
        const Plan plan = number % 3 == 0 ? truth.best().plan
                          : number % 3 == 1 ? test::spoilt(*vine, lie.best().plan, number)
                                            : test::random_edits(*vine, number, 12);
        compare(one, two, searching);
        for (const Edit& edit : plan.edits) {
            for (Practice* p : {&one, &two, &searching}) {
                (void)p->act(edit);
                if (p->waiting()) (void)p->confirm();
            }
            if (one.done_count() % 7 == 0 || one.done_count() < 5) compare(one, two, searching);
        }
        compare(one, two, searching);
        one.finish();
        two.finish();
        // Then it is told, so the comparison can tell a key from a lie.
        told_at_the_end += one.look()->twins != two.look()->twins || one.look()->mine_as_good != two.look()->mine_as_good;
    }

    void compare(Practice& one, Practice& two, Practice& searching) {
        const std::string told_one = all_told(one), told_two = all_told(two), told_before = all_told(searching);
        ++told;
        if ((told_one != told_two || told_one != told_before) && differ++ == 0) first = told_one + "\n---\n" + told_two;
    }
};

}  // namespace

TEST_CASE("no leak: whatever the best plan is, all that is told before the end is the same") {
    Leaks found;
    for (std::uint32_t number = 0; number < test::sized(60u, 500u); ++number) found.look_at(number);
    CAPTURE(found.first);
    CHECK(found.vines > test::sized(50, 400));
    CHECK(found.told > 8 * found.vines / 2);
    CHECK(found.differ == 0);
    CHECK(found.told_at_the_end > found.vines * 9 / 10);
}
