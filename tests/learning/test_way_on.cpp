// What to do next and why, which vines come back and why: from vines written by hand.
#include <doctest/doctest.h>

#include "scenarios/learning/way_on.h"

using namespace spurwright;
using namespace spurwright::learning;
using records::Day;
using records::PastVine;

namespace {

PastVine vine(const std::string& hash, Day day, int lost_tenths, std::optional<rules::RuleName> by = {}, std::int32_t difficulty = 0) {
    PastVine past;
    past.day = day;
    past.vine_hash = hash;
    past.best = Tenths{950};
    past.marks = Tenths{950 - lost_tenths};
    past.tolerance = Tenths{20};
    past.difficulty = difficulty;
    past.worst = by;
    if (by && lost_tenths > 20) past.lost_by = {*by};
    return past;
}
constexpr Day monday{2026, 11, 30}, sunday{2026, 11, 29}, before{2026, 11, 21};
const rules::RuleName load = rules::RuleName::bud_load, place = rules::RuleName::origin_distance;

std::vector<std::string> hashes(const std::vector<PastVine>& past, const std::vector<Returning>& returning) {
    std::vector<std::string> all;
    for (const Returning& one : returning) all.push_back(past[one.at].vine_hash);
    return all;
}

} // namespace

TEST_CASE("vines that were not as good come back, most lost first, each with its reason; the last one only after a day") {
    std::vector<PastVine> past{vine("a", before, 50, load), vine("b", before, 15), vine("c", sunday, 120, place), vine("d", monday, 200, load)};
    CHECK(hashes(past, returning_vines(past, monday)) == std::vector<std::string>{"c", "a"});
    const auto returning = returning_vines(past, monday);
    CHECK(returning[1].why.name == "way.lost-by");
    for (const Named& named : returning[1].arguments) {
        if (named.gap == "points") CHECK(std::get<Tenths>(named.value) == Tenths{50});
        if (named.gap == "n") CHECK(std::get<Count>(named.value).value == 9);
        if (named.gap == "rule") CHECK(std::get<TextKey>(named.value).name == "rule.bud-load.name");
    }
    CHECK(hashes(past, returning_vines(past, {2026, 12, 1})) == std::vector<std::string>{"d", "c", "a"});
    // A clock put back behind the last vine: it comes back, and nothing was done in days to come.
    CHECK(hashes(past, returning_vines(past, before)) == std::vector<std::string>{"d", "c", "a"});
    const auto put_back = returning_vines(past, before);
    CHECK(put_back[0].why.name == "way.lost-by-today");
    past.push_back(vine("c", monday, 5)); // cut again, as good: done with
    CHECK(hashes(past, returning_vines(past, {2026, 12, 1})) == std::vector<std::string>{"d", "a"});
    past.clear();
    for (int i = 0; i < 9; ++i) past.push_back(vine(std::string(1, static_cast<char>('a' + i)), before, 30 + i));
    CHECK(returning_vines(past, monday).size() == most_returning);
    CHECK(returning_vines({}, monday).empty());
}

TEST_CASE("a rule on whole vines: needs a look, with help, alone on two days (our choice); the most lost first") {
    std::vector<PastVine> past{vine("a", before, 50, load), vine("b", before, 60, load), vine("c", sunday, 0), vine("d", sunday, 40, place), vine("e", monday, 0)};
    auto rules = rules_to_look_at(past);
    REQUIRE(rules.size() == 2);
    CHECK(rules[0].rule == load);
    CHECK(rules[0].lost == 2);
    CHECK(rules[0].mastery == drill::Mastery::needs_a_look);
    CHECK(rules[1].rule == place);
    CHECK(rules[1].mastery == drill::Mastery::alone); // one of five, on three days
    past = {vine("a", monday, 0), vine("b", monday, 0), vine("c", monday, 0), vine("d", monday, 40, place), vine("e", monday, 0)};
    CHECK(rules_to_look_at(past).front().mastery == drill::Mastery::with_help); // one day alone
    CHECK(rules_to_look_at({vine("a", monday, 0)}).empty());
}

TEST_CASE("who does well gets harder vines, who does badly easier ones; what is foretold is what the model says") {
    std::vector<PastVine> good, bad;
    for (int i = 0; i < 12; ++i) {
        good.push_back(vine("g" + std::to_string(i), {2026, 11, 1 + i}, 0, {}, 500));
        bad.push_back(vine("b" + std::to_string(i), {2026, 11, 1 + i}, 300, load, 500));
    }
    const double none = wanted_vine_difficulty({}), hard = wanted_vine_difficulty(good), easy = wanted_vine_difficulty(bad);
    CHECK(none == doctest::Approx(-1.7346).epsilon(1e-3)); // logit of 0.85 under middling
    CHECK(hard > none + 0.5);
    CHECK(easy < none - 0.5);
    CHECK(expected_success({}, none) == doctest::Approx(0.85));
    CHECK(expected_success(good, 0) > expected_success({}, 0));
    CHECK(expected_success(bad, 0) < expected_success({}, 0));
    // A loss of a few points is a part of a win, so it lowers less than a large one.
    auto slight = bad;
    for (PastVine& one : slight) one.marks = Tenths{950 - 25};
    CHECK(ability_of(strength_on_vines(slight)) > ability_of(strength_on_vines(bad)));
    // A vine without a plan tells nothing.
    auto nothing = good;
    for (PastVine& one : nothing) one.best.reset();
    CHECK(strength_on_vines(nothing).rating == 1500);
}

TEST_CASE("what next: the first scene, a look that went wrong, a vine met before and a new one in turn, each with its reason") {
    CHECK(way_on({}, {}, monday, 10).thing == NextThing::first_scene);
    std::vector<PastVine> past{vine("a", before, 50, load), vine("b", sunday, 0)};
    WayOn way = way_on(past, {}, monday, 10);
    CHECK(way.thing == NextThing::met_vine);
    CHECK(past[way.at].vine_hash == "a");
    past.push_back(vine("a", monday, 60, load)); // met again, lost again: now a new one
    way = way_on(past, {}, monday, 10);
    CHECK(way.thing == NextThing::new_vine);
    CHECK(way.why.name == "way.new");
    past.push_back(vine("c", monday, 0));
    CHECK(way_on(past, {}, monday, 10).thing == NextThing::met_vine);
    drill::LookAnswers looks;
    for (int i = 0; i < 9; ++i) looks.push_back({drill::Skill::joints, 0, i < 6 ? 0u : 1u, 2'000, 10});
    way = way_on(past, looks, monday, 10);
    CHECK(way.thing == NextThing::looks);
    CHECK(std::get<TextKey>(way.arguments.front().value).name == "drill.skill.joints");
}
