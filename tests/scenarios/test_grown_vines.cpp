// Grown vines through files, and everything that is said of them: no gap left open in any sentence.
#include <doctest/doctest.h>

#include "scenarios/commands/vine_answer.h"
#include "scenarios/io/vine_file.h"
#include "scenarios/scenes/beginner.h"
#include "scenarios/words/load_words.h"
#include "sim/growth/history.h"
#include "sim/planning/planning.h"
#include "sim/pruning/plan_text.h"
#include "sim/rules/judge.h"
#include "sim/vine/canonical_text.h"
#include "sim/vine/vine_query.h"
#include "tests/scenarios/schema.h"
#include "tests/support/random_edits.h"

using namespace spurwright;

namespace {

const io::Assets assets(SPURWRIGHT_SOURCE "/assets");

growth::Site site_of(std::uint64_t seed) {
    growth::Site site;
    site.seed = seed;
    site.age = static_cast<int>(3 + seed * 7 % 30);
    site.vigour = static_cast<Vigour>(seed % 3);
    site.pruner = static_cast<Pruner>(seed % 8);
    site.neighbours = seed % 4 == 0 ? growth::Neighbours::near : growth::Neighbours::both;
    return site;
}

Vine grown(std::uint64_t seed) {
    auto vine = growth::grow_vine(site_of(seed));
    REQUIRE(vine);
    return *std::move(vine);
}

// Written, read and written again: the same vine and the same bytes. Gives the bytes.
std::string round_trip(const io::VineFile& file) {
    const std::string written = io::print_vine_file(file);
    const auto again = io::read_vine_file(written, "again.json");
    if (!again) FAIL(again.error().key.name);
    CHECK(canonical_text(again->vine) == canonical_text(file.vine));
    CHECK(io::print_vine_file(*again) == written);
    return written;
}

void check_sentence(const std::string& sentence, std::string_view key) {
    CAPTURE(key);
    CAPTURE(sentence);
    CHECK(sentence.find_first_of("[]{}") == std::string::npos);
    CHECK(sentence.size() > 10);
    CHECK(sentence.ends_with('.'));
}

void check_said(const rules::Judgement& judgement, const words::Words& words) {
    for (const auto* list : {&judgement.findings, &judgement.remarks})
        for (const rules::Finding& f : *list)
            check_sentence(words.sentence(f.said.key, f.said.arguments), f.said.key.name);
    for (const rules::Cap& cap : judgement.caps) check_sentence(words.sentence(cap.key, cap.arguments), cap.key.name);
}

} // namespace

TEST_SUITE("scenarios/grown-vines") {
    TEST_CASE("24 grown vines keep hash and bytes through a file, uncut and after their best plan") {
        const rules::HouseRules house;
        for (std::uint64_t seed = 1; seed <= 24; ++seed) {
            CAPTURE(seed);
            io::VineFile file;
            file.vine = grown(seed);
            const auto coded = growth::coded(site_of(seed));
            REQUIRE(coded);
            file.code = print_code(*coded);
            const std::string written = round_trip(file);
            if (seed <= 4) CHECK(test::schema_fault("vine-1", written) == "");
            const planning::Planning planning(file.vine, house);
            const auto best = planning.best();
            if (!best) continue;
            io::VineFile after;
            after.vine = *prune(file.vine, best->plan);
            after.pruned_from = vine_hash(file.vine);
            after.plan = print_plan(best->plan);
            round_trip(after);
        }
    }
    TEST_CASE("the code in a file is grown again: with another vine's code the file is refused") {
        io::VineFile file;
        file.vine = grown(5);
        file.code = print_code(*growth::coded(site_of(6)));
        const auto read = io::read_vine_file(io::print_vine_file(file), "f.json");
        REQUIRE_FALSE(read);
        CHECK(read.error().key.name == "error.file.code");
        file.code[0] = file.code[0] == '1' ? '2' : '1';
        const auto mistyped = io::read_vine_file(io::print_vine_file(file), "f.json");
        REQUIRE_FALSE(mistyped);
        CHECK(mistyped.error().key.name == "error.code.group");
        CHECK(mistyped.error().where.line > 1);
    }
    TEST_CASE("random plans on grown vines: every sentence of every language is whole") {
        std::vector<words::Words> all;
        for (const std::string_view language : words::languages) all.push_back(*words::load_words(assets, language));
        const rules::HouseRules house;
        for (std::uint64_t seed = 1; seed <= 12; ++seed) {
            const Vine before = grown(seed);
            for (std::uint64_t draw = 0; draw < 8; ++draw) {
                CAPTURE(seed);
                CAPTURE(draw);
                const Plan plan = test::random_edits(before, seed * 100 + draw, 3 + static_cast<int>(draw) * 8);
                const auto after = prune(before, plan);
                REQUIRE(after);
                const rules::Judgement judgement = rules::judge(before, *after, house);
                for (const words::Words& words : all) check_said(judgement, words);
                io::VineFile file;
                file.vine = *after;
                round_trip(file);
            }
        }
    }
    TEST_CASE("a beginner's plan is legal on any vine and worth less than the best") {
        const rules::HouseRules house;
        for (std::uint64_t seed = 1; seed <= 24; ++seed) {
            const Vine before = grown(seed);
            const Plan plan =
                scenes::beginners_plan(before, {Pruner::too_many_buds, Pruner::thin_wood, Pruner::flush_cuts});
            const auto after = prune(before, plan);
            REQUIRE(after);
            const auto best = planning::Planning(before, house).best();
            if (best) CHECK(rules::judge(before, *after, house).points <= best->points);
        }
    }
    TEST_CASE("habits of several characters together are each one's own flaw") {
        const auto habits = scenes::habits_together({Pruner::too_many_buds, Pruner::thin_wood, Pruner::flush_cuts});
        CHECK(habits.load == growth::habits_of(Pruner::too_many_buds).load);
        CHECK(habits.thin_mm == growth::habits_of(Pruner::thin_wood).thin_mm);
        CHECK(habits.stub_high == growth::habits_of(Pruner::flush_cuts).stub_high);
        CHECK(habits.wanted_mm == growth::PrunerHabits{}.wanted_mm);
    }
    TEST_CASE("every cane of a grown vine is shown, last winter's laid canes too") {
        const auto words = words::load_words(assets, "en");
        for (std::uint64_t seed = 1; seed <= 12; ++seed) {
            const commands::FoundVine found{grown(seed), "", {}};
            const commands::Answer answer = commands::vine_answer(found, *words);
            std::size_t laid = 0;
            for (const Axis& axis : found.vine.axes) laid += was_laid_last_winter(found.vine, axis);
            CHECK(answer.object.find("candidates")->items.size() == cane_candidates(found.vine).size() + laid);
            CHECK(answer.text.find('[') == std::string::npos);
        }
    }
}
