// Limits charged to the act that broke the plan, over plans gone wrong in any way.
#include <doctest/doctest.h>

#include <algorithm>
#include <map>

#include "sim/planning/charged_caps.h"
#include "sim/pruning/plan_text.h"
#include "sim/rules/say.h"
#include "tests/support/cordons.h"
#include "tests/support/grown.h"
#include "tests/support/judged.h"
#include "tests/support/random_edits.h"
#include "tests/support/small_vines.h"

using namespace spurwright;
using namespace spurwright::planning;

namespace {

Plan first_of(const Plan& plan, std::size_t edits) {
    return {{plan.edits.begin(), plan.edits.begin() + static_cast<std::ptrdiff_t>(edits)}};
}

Side bare_side(const rules::Cap& cap) {
    return cap.arguments.front().value == Argument(rules::side_key(Side::right)) ? Side::right : Side::left;
}

struct Tried {
    int plans = 0, wrong_sums = 0, wrong_acts = 0, wrong_open = 0;
    std::map<std::pair<std::string, LostTo>, int> found;
    std::string first;
};

// What a plan of these first edits is worth and still could be, by the judge alone.
struct Then {
    rules::Judgement mine;
    rules::PlanFacts facts;
};
Then then(const Vine& vine, const test::Judged& judged, const Plan& plan, std::size_t edits) {
    const Plan some = first_of(plan, edits);
    return {*judged(some), rules::measure_plan(vine, *prune(vine, some), judged.house, judged.offers)};
}

// It held already, and nothing good stood there any more that could have filled a bare side.
bool broken(const Then& then, const rules::Cap& cap) {
    const bool held = std::any_of(then.mine.caps.begin(), then.mine.caps.end(), [&](const rules::Cap& other) {
        const bool numbers_differ = cap.cap == "overloaded" || cap.cap == "old-cane-left";
        return other.cap == cap.cap && (numbers_differ || other.arguments == cap.arguments);
    });
    if (!held || cap.cap != "side-bare") return held;
    const rules::SidePieces& pieces = then.facts.sides[bare_side(cap) == Side::right ? 1 : 0];
    return !pieces.good_cane_stands && !pieces.good_spur_stands;
}

void try_plan(const Vine& vine, const test::Judged& judged, const std::vector<rules::Cap>& of_best, const Plan& plan, Tried& tried) {
    const auto mine = judged(plan);
    if (!mine) return;
    ++tried.plans;
    const std::vector<ChargedCap> charged = charged_caps(vine, judged.house, plan, *mine, of_best);
    REQUIRE(charged.size() == mine->caps.size());
    Tenths taken;
    int wrong_acts = 0, wrong_open = 0;
    for (std::size_t i = 0; i < charged.size(); ++i) {
        const rules::Cap& cap = mine->caps[i];
        const std::size_t edit = charged[i].edit;
        taken += charged[i].taken;
        ++tried.found[{std::string(cap.cap), charged[i].to}];
        if (charged[i].to == LostTo::open) wrong_open += cap.cap == "side-bare" && broken(then(vine, judged, plan, plan.edits.size()), cap);
        if (charged[i].to != LostTo::act) continue;
        bool since = !broken(then(vine, judged, plan, edit), cap);
        for (std::size_t n = edit + 1; n <= plan.edits.size(); ++n) since = since && broken(then(vine, judged, plan, n), cap);
        const auto* lay = std::get_if<Lay>(&plan.edits[edit]);
        if (cap.cap == "two-year-laid" || cap.cap.ends_with("sucker-laid") || cap.cap == "rootstock-laid") since = since && lay && name_of(lay->cane) == cap.on;
        if (cap.cap == "trunk-cut") since = since && std::holds_alternative<Cut>(plan.edits[edit]);
        wrong_acts += !since;
    }
    const bool sums = taken == mine->points_before_caps - mine->points;
    tried.wrong_sums += !sums;
    tried.wrong_acts += wrong_acts;
    tried.wrong_open += wrong_open;
    if ((!sums || wrong_acts + wrong_open > 0) && tried.first.empty()) tried.first = print_plan(plan);
}

}  // namespace

TEST_SUITE("planning/charged-caps") {
    const rules::HouseRules house;

    TEST_CASE("a limit goes to the first act since which it stands, what limits took is their sum to the tenth") {
        Tried tried;
        std::uint64_t seed = 0;
        const auto try_on = [&](const Vine& vine, int each) {
            const Planning planning(vine, house);
            const auto best = planning.best();
            if (!best) return;
            const test::Judged judged{vine, house};
            const auto of_best = judged(best->plan)->caps;
            for (int i = 0; i < each; ++i) {
                const std::uint64_t number = ++seed;
                Plan plan = test::random_edits(vine, number, between(draw(number, 1, 0), 1, 30));
                try_plan(vine, judged, of_best, plan, tried);
                const Plan wrong = test::spoilt(vine, best->plan, number);
                plan.edits.insert(plan.edits.end(), wrong.edits.begin(), wrong.edits.end());
                try_plan(vine, judged, of_best, wrong, tried);
                try_plan(vine, judged, of_best, plan, tried);
            }
        };
        for (const test::NamedVine& small : test::small_vines()) try_on(small.vine, 60);
        try_on(test::single_cane_vine(), 60);
        for (std::uint32_t seed_of_vine = 1; seed_of_vine <= 4; ++seed_of_vine) try_on(test::grown(System::two_cane, seed_of_vine, 12, 1.8), 10);
        CAPTURE(tried.first);
        CHECK(tried.wrong_sums == 0);
        CHECK(tried.wrong_acts == 0);
        CHECK(tried.wrong_open == 0);
        CHECK(tried.plans > 500);
        const auto found = [&](const char* cap, LostTo to) { return tried.found[{cap, to}]; };
        CHECK(found("two-year-laid", LostTo::act) > 5);
        CHECK(found("trunk-cut", LostTo::act) > 5);
        CHECK(found("side-bare", LostTo::act) > 5);
        CHECK(found("side-bare", LostTo::open) > 5);
        CHECK(found("old-cane-left", LostTo::open) > 5);
        CHECK(found("old-cane-left", LostTo::act) == 0);  // left on is nobody's act
        CHECK(found("overloaded", LostTo::act) == 0);
    }

    TEST_CASE("of a cordon an arm made bare goes to the act that took its last good cane") {
        const rules::HouseRules spurs = test::spur_cordon();
        const Vine vine = test::cordon_vine();
        const test::Judged judged{vine, spurs};
        const auto of_best = judged(best_of_cordon(vine, spurs).plan)->caps;
        Tried tried;
        for (std::uint64_t seed = 1; seed <= 150; ++seed) try_plan(vine, judged, of_best, test::random_edits(vine, seed, 25), tried);
        CAPTURE(tried.first);
        CHECK(tried.wrong_sums == 0);
        CHECK(tried.wrong_acts == 0);
        CHECK(tried.plans > 50);
        CHECK(tried.found[{"side-bare", LostTo::act}] > 0);
    }
}
