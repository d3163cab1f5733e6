// The weighing exercise: what lies in the heap adds up to what the rule of weighed prunings measures, a bundle rightly
// weighed is within the house's band [fiola-2021, cornell-fifteen: one-year wood alone], and each planted fault is found
// with its mass.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>

#include "scenarios/scenes/beginner.h"
#include "scenarios/weighing/exercise.h"
#include "scenarios/words/load_words.h"
#include "sim/core/random.h"
#include "sim/growth/history.h"
#include "sim/pruning/plan.h"
#include "sim/pruning/prunings.h"
#include "sim/rules/judge.h"
#include "sim/vine/canonical_text.h"
#include "sim/vine/vine_query.h"
#include "tests/support/full_size.h"
#include "tests/support/grown.h"

using namespace spurwright;
using weighing::Act;
using weighing::Deed;
using weighing::Exercise;
using weighing::Kind;
using weighing::Lies;
using weighing::Piece;
using weighing::Slip;

namespace {

struct Weighed {
    Vine before, after;
};

Weighed pruned_vine(std::uint32_t number) {
    growth::Site site;
    site.seed = 4'000 + number;
    site.age = std::array{6, 9, 12, 20}[number % 4];
    site.pruner = static_cast<Pruner>(number % 8);
    Weighed weighed;
    weighed.before = test::grown(site);
    const std::array<std::vector<Pruner>, 3> flaws{{{}, {Pruner::thin_wood, Pruner::too_many_buds}, {Pruner::no_spurs}}};
    auto after = prune(weighed.before, scenes::beginners_plan(weighed.before, flaws[number % 3]));
    REQUIRE(after.has_value());
    weighed.after = *std::move(after);
    return weighed;
}
constexpr std::uint32_t vines = 40;

Exercise exercise_of(const Weighed& weighed, const rules::HouseRules& house = {}) {
    return {weighing::pieces_of(weighed.before, weighed.after, house), vine_hash(weighed.before), house};
}

void does(Exercise& exercise, Deed deed, std::size_t piece = 0) {
    const auto done = exercise.act({deed, piece});
    CHECK_MESSAGE(done.has_value(), std::string(word_of(deed)), " ", done ? "" : done.error().key.name);
}

// Everything that belongs, stripped off old wood, in the bundle.
void sort_rightly(Exercise& exercise) {
    for (std::size_t i = 0; i < exercise.pieces().size(); ++i)
        if (exercise.canes_on(i) > 0) does(exercise, Deed::strip, i);
    for (std::size_t i = 0; i < exercise.pieces().size(); ++i)
        if (exercise.pieces()[i].belongs) does(exercise, Deed::take, i);
}

void make_bundle(Exercise& exercise) {
    if (exercise.has_long()) does(exercise, Deed::shorten);
    does(exercise, Deed::tie);
    if (exercise.wet()) does(exercise, Deed::let_dry);
}

bool slipped(const Exercise& exercise, Slip slip) {
    const auto& slips = exercise.verdict()->slips;
    return std::any_of(slips.begin(), slips.end(), [&](const auto& s) { return s.slip == slip; });
}

// What was written, less what the bundle truly has, less what the slips account for.
double unexplained_g(const Exercise& exercise) {
    double by = 0;
    for (const auto& slip : exercise.verdict()->slips) by += in_g(slip.by);
    return in_g(exercise.verdict()->written) - in_g(exercise.verdict()->truly.mass) - by;
}

double step_g(const Exercise& exercise) { return exercise.unit() == weighing::ScaleUnit::kg ? 10 : 4.5359237; }

std::optional<std::size_t> piece_of_kind(const Exercise& exercise, Kind kind) {
    for (std::size_t i = 0; i < exercise.pieces().size(); ++i)
        if (exercise.pieces()[i].kind == kind && exercise.pieces()[i].belongs) return i;
    return std::nullopt;
}

}  // namespace

TEST_CASE("the pieces of the heap add up to what was cut off: one-year wood to the bundle of the rule, older wood apart") {
    int on_old = 0, in_wires = 0, handfuls = 0;
    for (std::uint32_t i = 0; i < vines; ++i)
        for (const bool suckers : {true, false}) {
            rules::HouseRules house;
            house.prunings_weighed.suckers = suckers;
            house.prunings_weighed.asked = true;  // else the rule measures nothing
            const Weighed weighed = pruned_vine(i);
            const std::vector<Piece> pieces = weighing::pieces_of(weighed.before, weighed.after, house);
            const Prunings off = prunings(weighed.before, weighed.after);
            const rules::PlanFacts facts = rules::measure_plan(weighed.before, weighed.after, house, rules::offers(weighed.before, house));
            double young = 0, old = 0, belongs = 0;
            for (const Piece& piece : pieces) {
                (piece.kind == Kind::old_wood ? old : young) += piece.mass.count;
                belongs += piece.belongs ? piece.mass.count : 0;
                CHECK(piece.mass.count > 0);
                CHECK_FALSE((piece.belongs && piece.kind == Kind::old_wood));
                if (piece.on) {
                    CHECK(pieces[*piece.on].kind == Kind::old_wood);
                    ++on_old;
                }
                in_wires += piece.found == Lies::wires;
                handfuls += piece.kind == Kind::bits;
            }
            const double each = static_cast<double>(pieces.size());  // one rounding a piece, and the sum's own
            CHECK(std::abs(young - off.removed.one_year_mg) <= each);
            CHECK(std::abs(old - off.removed.older_mg) <= each);
            // A lateral of a sucker goes with it here; the rule counts it with the canes.
            const bool laterals_on_suckers = !suckers && std::any_of(pieces.begin(), pieces.end(), [](const Piece& p) { return p.kind == Kind::sucker && p.laterals > 0; });
            if (laterals_on_suckers) CHECK(belongs < facts.weighing.bundle.count);
            else CHECK(std::abs(belongs - facts.weighing.bundle.count) <= each + 1);
            if (suckers) CHECK(std::abs(young - belongs) < 0.5);
        }
    CHECK(on_old > 20);
    CHECK(in_wires > 20);
    CHECK(handfuls > 5);
}

TEST_CASE("ends of canes laid this winter hang in the wires, and nothing that was kept is in the heap") {
    for (std::uint32_t i = 0; i < vines; ++i) {
        const Weighed weighed = pruned_vine(i);
        for (const Piece& piece : weighing::pieces_of(weighed.before, weighed.after, {})) {
            if (piece.kind == Kind::bits) continue;
            const Axis &was = *weighed.before.find(piece.axis), &is = *weighed.after.find(piece.axis);
            CHECK(standing_mass_mg(weighed.before, was) > standing_mass_mg(weighed.after, is));
            if (piece.kind == Kind::end) CHECK_FALSE(is.removed);
            if (piece.kind == Kind::cane) CHECK(is.removed);
            const bool laid = std::any_of(weighed.after.laid.begin(), weighed.after.laid.end(), [&](const Laid& l) { return l.winter == weighed.after.winter && l.axis == piece.axis; });
            CHECK((piece.found == Lies::wires) == (laid && piece.kind == Kind::end));
        }
    }
}

TEST_CASE("fixture WG-1: 430 g of canes, 35 g of laterals and 45 g of ends are a bundle of 510 g, right from 484.5 to 535.5 g; 190 g of two-year wood is found") {
    const auto piece = [](Kind kind, double g, bool belongs) {
        Piece one;
        one.kind = kind;
        one.mass = from_g(g);
        one.length = Length{400'000};
        one.belongs = belongs;
        return one;
    };
    const std::vector<Piece> heap{piece(Kind::cane, 430, true), piece(Kind::lateral, 35, true), piece(Kind::end, 45, true), piece(Kind::old_wood, 190, false)};
    CHECK(weighing::true_bundle(heap).mass == from_g(510));
    const auto written = [&](const std::vector<std::size_t>& taken, const std::string& text) {
        Exercise exercise(heap, 1, {});
        for (const std::size_t i : taken) does(exercise, Deed::take, i);
        does(exercise, Deed::zero);
        make_bundle(exercise);
        does(exercise, Deed::hang);
        REQUIRE(exercise.write(text, false).has_value());
        return exercise;
    };
    for (const char* text : {"484.5 g", "535.5 g", "510 g"}) CHECK_MESSAGE(written({0, 1, 2}, text).verdict()->within, std::string(text));
    for (const char* text : {"484.4 g", "535.6 g"}) CHECK_FALSE_MESSAGE(written({0, 1, 2}, text).verdict()->within, std::string(text));
    const Exercise all = written({0, 1, 2, 3}, "700 g");
    CHECK_FALSE(all.verdict()->within);
    REQUIRE(slipped(all, Slip::old_wood));
    CHECK(all.verdict()->slips.front().by == from_g(190));
    const Exercise no_ends = written({0, 1}, "470 g");
    REQUIRE(slipped(no_ends, Slip::ends));
    CHECK(no_ends.verdict()->slips.front().by == from_g(-45));
    // Fresh wood of 0.85 to 1.05 g/cm3 where the pieces are taken at 0.95.
    CHECK(in_g(weighing::true_bundle(heap).least) == doctest::Approx(456.3).epsilon(0.001));
    CHECK(in_g(weighing::true_bundle(heap).most) == doctest::Approx(563.7).epsilon(0.001));
}

TEST_CASE("sorted, dried, zeroed, hung and written as shown, a bundle is within the house's band and nothing is said against it") {
    for (std::uint32_t i = 0; i < vines; ++i) {
        Exercise exercise = exercise_of(pruned_vine(i));
        sort_rightly(exercise);
        does(exercise, Deed::zero);
        make_bundle(exercise);
        does(exercise, Deed::hang);
        if (i % 2) does(exercise, Deed::turn_unit);
        REQUIRE(exercise.write(written_as(exercise), false).has_value());
        CHECK(exercise.verdict()->slips.empty());
        CHECK(exercise.verdict()->within);
        CHECK(exercise.verdict()->for_the_trend);
        CHECK(std::abs(unexplained_g(exercise)) <= step_g(exercise) / 2 + 0.05);
    }
}

TEST_CASE("each fault planted alone is found, with the mass it makes; no other is said") {
    int found[11] = {};
    for (std::uint32_t i = 0; i < vines; ++i)
        for (int fault = 0; fault < 11; ++fault) {
            CAPTURE(i);
            CAPTURE(fault);
            const auto slip = static_cast<Slip>(fault);
            rules::HouseRules house;
            if (slip == Slip::suckers_in) house.prunings_weighed.suckers = false;
            Exercise exercise = exercise_of(pruned_vine(i), house);
            sort_rightly(exercise);
            Mass by;
            const std::optional<std::size_t> one = slip == Slip::ends ? piece_of_kind(exercise, Kind::end) : slip == Slip::canes ? piece_of_kind(exercise, Kind::cane)
                                                   : slip == Slip::laterals ? piece_of_kind(exercise, i % 2 ? Kind::bits : Kind::lateral) : slip == Slip::suckers_out ? piece_of_kind(exercise, Kind::sucker)
                                                                                                                              : std::nullopt;
            if (slip <= Slip::suckers_out && slip >= Slip::ends) {
                if (!one) continue;
                by = -exercise.pieces()[*one].mass;
                does(exercise, Deed::put_back, *one);
            }
            if (slip == Slip::old_wood || slip == Slip::suckers_in) {
                const Kind kind = slip == Slip::old_wood ? Kind::old_wood : Kind::sucker;
                for (std::size_t p = 0; p < exercise.pieces().size(); ++p)
                    if (exercise.pieces()[p].kind == kind && by.count == 0) {
                        by = exercise.pieces()[p].mass;
                        does(exercise, Deed::take, p);
                    }
                if (by.count == 0) continue;
            }
            if (exercise.bundle_size() == 0) continue;
            if (slip != Slip::not_zeroed && slip != Slip::zeroed_with_bundle) does(exercise, Deed::zero);
            if (exercise.has_long()) does(exercise, Deed::shorten);
            does(exercise, Deed::tie);
            if (slip == Slip::wet && !exercise.wet()) continue;
            if (slip != Slip::wet && exercise.wet()) does(exercise, Deed::let_dry);
            does(exercise, Deed::hang);
            if (slip == Slip::zeroed_with_bundle) does(exercise, Deed::zero);
            std::string text = written_as(exercise);
            if (slip == Slip::wrong_unit) text = exercise.shown_text() + (exercise.unit() == weighing::ScaleUnit::kg ? " lb" : " kg");
            if (slip == Slip::misread) text = std::to_string(exercise.shown() + 20) + (exercise.unit() == weighing::ScaleUnit::kg ? "0 g" : " oz");
            const auto wrote = exercise.write(text, false);
            REQUIRE_MESSAGE(wrote.has_value(), text);
            CHECK(slipped(exercise, slip));
            CHECK(exercise.verdict()->slips.size() == 1);
            if (by.count != 0) CHECK(exercise.verdict()->slips.front().by == by);
            CHECK(std::abs(unexplained_g(exercise)) <= step_g(exercise) + 0.05);
            ++found[fault];
        }
    for (int fault = 0; fault < 11; ++fault) CHECK_MESSAGE(found[fault] > 0, std::string(word_of(static_cast<Slip>(fault))));
}

TEST_CASE("whatever is done, the slips account for what is written to a step of the scale, undo brings back every state, and nothing crashes") {
    const std::uint32_t runs = test::sized(200u, 2'000u);
    int written = 0;
    for (std::uint32_t run = 0; run < runs; ++run) {
        static const std::vector<Weighed> pruned = [] {
            std::vector<Weighed> all;
            for (std::uint32_t i = 0; i < 8; ++i) all.push_back(pruned_vine(i));
            return all;
        }();
        const Weighed& weighed = pruned[run % pruned.size()];
        Exercise exercise(weighing::pieces_of(weighed.before, weighed.after, {}), run, {});
        std::vector<std::string> seen{exercise.shown_text() + std::to_string(exercise.in_bundle().count)};
        const auto n = static_cast<std::int32_t>(exercise.pieces().size());
        for (std::uint32_t step = 0; step < 60; ++step) {
            const auto deed = static_cast<Deed>(between(draw(run, 1, step), 0, 10));
            const Deed chosen = step < 40 && between(draw(run, 2, step), 0, 2) ? Deed::take : deed;
            const std::size_t before = exercise.acts();
            (void)exercise.act({chosen, static_cast<std::size_t>(between(draw(run, 3, step), 0, n))});  // one past the last too
            if (exercise.acts() > before) seen.push_back(exercise.shown_text() + std::to_string(exercise.in_bundle().count));
        }
        while (exercise.acts() > 0 && between(draw(run, 4, static_cast<std::uint32_t>(exercise.acts())), 0, 9) == 0) {
            exercise.undo();
            seen.pop_back();
        }
        CHECK(exercise.shown_text() + std::to_string(exercise.in_bundle().count) == seen.back());
        if (exercise.has_long() && !exercise.tied()) (void)exercise.act({Deed::shorten, 0});
        if (!exercise.tied()) (void)exercise.act({Deed::tie, 0});
        if (!exercise.hangs()) (void)exercise.act({Deed::hang, 0});
        if (!exercise.hangs()) continue;
        if (exercise.shown() < 0) continue;  // nobody writes a weight below nothing
        if (!exercise.write(written_as(exercise), run % 2 == 0)) continue;
        ++written;
        CHECK(std::abs(unexplained_g(exercise)) <= step_g(exercise) / 2 + 0.1);
        CHECK_FALSE(exercise.act({Deed::untie, 0}).has_value());
        exercise.undo();
        CHECK_FALSE(exercise.written().has_value());
    }
    CHECK(written > static_cast<int>(runs / 3));
}

TEST_CASE("a weight that is none is refused with a sentence and nothing is written") {
    Exercise exercise = exercise_of(pruned_vine(1));
    CHECK_FALSE(exercise.write("0.5 kg", false).has_value());  // nothing hangs
    sort_rightly(exercise);
    make_bundle(exercise);
    does(exercise, Deed::hang);
    for (const char* text : {"", "abc", "0.74", "0,74 kg", "-1 kg", "nan kg", "1e999 kg", "0.74 stone"}) {
        const auto wrote = exercise.write(text, false);
        REQUIRE_FALSE(wrote.has_value());
        CHECK_FALSE(exercise.written().has_value());
    }
}

TEST_CASE("every sentence of the exercise is in both languages") {
    const io::Assets assets(std::string(SPURWRIGHT_SOURCE) + "/assets");
    for (const std::string language : {"en", "es"}) {
        const auto words = words::load_words(assets, language);
        REQUIRE(words.has_value());
        for (const std::string_view slip : words_of(Slip{})) CHECK(words->has("weigh.slip." + std::string(slip)));
        CHECK(words->has("weigh.slip.wet-noted"));
    }
}
