// The shed's lessons as files: they read, hold to their schemas, speak both languages, cover the ten scenes; and what is wrong
// with one is said in one sentence with file, place and key. Vines of a scene past its file's own are the scene's as well.
#include <doctest/doctest.h>

#include <filesystem>
#include <set>

#include "scenarios/commands/error_text.h"
#include "scenarios/io/json.h"
#include "scenarios/io/safe_file.h"
#include "scenarios/lessons/lesson_file.h"
#include "scenarios/practice/open_vine.h"
#include "scenarios/scenes/drawn_vine.h"
#include "scenarios/scenes/scene_vine.h"
#include "scenarios/words/load_words.h"
#include "sim/planning/planning.h"
#include "sim/vine/canonical_text.h"
#include "tests/scenarios/schema.h"

using namespace spurwright;
using namespace spurwright::lessons;
using rules::Step;

namespace {

const io::Assets lesson_assets(std::string(SPURWRIGHT_SOURCE) + "/assets");

std::string file_of(const std::string& name) {
    auto text = io::read_file(lesson_assets.path("lessons", name + ".json"), io::largest_json);
    REQUIRE(text.has_value());
    return *std::move(text);
}

std::string replaced(std::string text, const std::string& from, const std::string& to) {
    const std::size_t at = text.find(from);
    REQUIRE(at != std::string::npos);
    return text.replace(at, from.size(), to);
}

}  // namespace

TEST_CASE("the lessons read, hold to their schemas, and every file of the folder is one of them") {
    const auto all = load_lessons(lesson_assets);
    REQUIRE(all.has_value());
    CHECK(all->lessons.size() == 10);
    CHECK(test::schema_fault("ladder-1", file_of("ladder")) == "");
    std::set<std::string> names{"ladder.json"};
    for (const Lesson& lesson : all->lessons) {
        names.insert(lesson.name + ".json");
        CHECK(test::schema_fault("lesson-1", file_of(lesson.name)) == "");
        CHECK(all->of_scene(lesson.scene) == &lesson);
    }
    for (const auto& entry : std::filesystem::directory_iterator(lesson_assets.folder() + "/lessons")) CHECK(names.contains(entry.path().filename().string()));
}

TEST_CASE("the ladder is watched; choosing; and the lengths; and the cuts; and laying; then the whole, told at each step and afterwards") {
    const auto all = load_lessons(lesson_assets);
    REQUIRE(all.has_value());
    const auto& rungs = all->ladder.rungs;
    REQUIRE(rungs.size() == 7);
    CHECK(rungs[0].watched());
    const auto adds = [&](std::size_t rung, std::initializer_list<Step> steps) {
        std::array<bool, 7> mine = rungs[rung - 1].mine;
        for (const Step step : steps) mine[static_cast<std::size_t>(step)] = true;
        return mine == rungs[rung].mine;
    };
    CHECK(adds(1, {Step::look, Step::choose}));
    CHECK(adds(2, {Step::lengths}));
    CHECK(adds(3, {Step::clear, Step::spurs}));
    CHECK(adds(4, {Step::lay_and_tie}));
    CHECK(adds(5, {}));
    CHECK(adds(6, {}));
    CHECK(rungs[5].feedback);
    CHECK_FALSE(rungs[5].explained);
    CHECK_FALSE(rungs[6].feedback);
    for (std::size_t i = 0; i < rungs.size(); ++i) CHECK(rungs[i].whole() == (i >= 4));
}

TEST_CASE("every word that the lessons name is there in English and Spanish") {
    const auto all = load_lessons(lesson_assets);
    REQUIRE(all.has_value());
    for (const char* language : {"en", "es"}) {
        const auto words = words::load_words(lesson_assets, language);
        REQUIRE(words.has_value());
        std::set<std::string> keys;
        for (const Rung& rung : all->ladder.rungs) keys.insert({rung.title_key, rung.says_key});
        for (const Lesson& lesson : all->lessons)
            for (const Step step : {Step::look, Step::choose, Step::clear, Step::spurs, Step::lengths, Step::lay_and_tie}) keys.insert(lesson.says_of(step));
        for (const std::string& key : keys) {
            CAPTURE(key);
            const std::string says = words->sentence(TextKey{key}, {});
            CHECK_FALSE(says.starts_with("["));
            CHECK(says.find('{') == std::string::npos);
        }
    }
}

TEST_CASE("the lessons take the ten scenes that begin uncut, in the order a new crew walks them") {
    const auto all = load_lessons(lesson_assets);
    const auto order = scenes::load_scene_order(lesson_assets);
    REQUIRE(all.has_value());
    REQUIRE(order.has_value());
    std::vector<std::string> uncut, taken;
    for (const std::string& name : *order) {
        const auto scene = scenes::load_scene(lesson_assets, name);
        REQUIRE(scene.has_value());
        if (scene->vines[0].acts.edits.empty()) uncut.push_back(name);
    }
    for (const Lesson& lesson : all->lessons) taken.push_back(lesson.scene);
    CHECK(taken == uncut);
}

TEST_CASE("what is wrong with a file is said in one sentence with the file, the place and the key") {
    const auto words = words::load_words(lesson_assets, "en");
    REQUIRE(words.has_value());
    const std::string ladder = file_of("ladder"), lesson = file_of("first");
    struct Wrong {
        std::string text, says;
    };
    const Wrong ladders[] = {
        {replaced(ladder, "\"lessons\":", "\"lesson\":"), "lessons"},
        {replaced(ladder, "\"explained\": true,", ""), "explained"},
        {replaced(ladder, "\"feedback\": false}", "\"feedback\": false, \"clock\": 3}"), "clock"},
        {replaced(ladder, "\"mine\": []", "\"mine\": [\"look\"]"), "first rung"},
        {replaced(ladder, "[\"look\", \"choose\"]", "[\"look\", \"prune\"]"), "prune"},
        {replaced(ladder, "[\"look\", \"choose\"]", "[\"look\", \"look-back\"]"), "look-back"},
        {replaced(ladder, "[\"look\", \"choose\"]", "[\"look\", \"look\"]"), "twice"},
        {replaced(ladder, "[\"look\", \"choose\", \"lengths\"]", "[\"look\", \"lengths\"]"), "Rung 2"},
        {replaced(ladder, "\"old-or-new\"", "\"first\""), "twice"},
        {replaced(ladder, "\"old-or-new\"", "\"../words/en\""), "../words/en"},
        {replaced(ladder, "\"version\": 1", "\"version\": 2"), "version 2"},
        {replaced(ladder, "spurwright-ladder", "spurwright-lesson"), "spurwright-lesson"},
        {replaced(ladder, "\"explained\": true", "\"explained\": 1"), "explained"},
    };
    for (const Wrong& wrong : ladders) {
        CAPTURE(wrong.says);
        const auto read = read_ladder(wrong.text, "ladder.json");
        REQUIRE_FALSE(read.has_value());
        CHECK(read.error().where.source == "ladder.json");
        CHECK(read.error().where.line > 0);
        CHECK(words->sentence(read.error().key, read.error().arguments).find(wrong.says) != std::string::npos);
    }
    const Wrong lessons[] = {
        {replaced(lesson, "\"spurs\":", "\"spur\":"), "spurs"},
        {replaced(lesson, "\"scene\": \"first\",", ""), "scene"},
        {replaced(lesson, "\"says\":", "\"house\": \"general\", \"says\":"), "house"},
        {replaced(lesson, "\"lesson.say.look\"", "7"), "look"},
        {replaced(lesson, "\"lesson.say.look\"", "\"Look first!\""), "Look first!"},
        {replaced(lesson, "\"name\": \"first\"", "\"name\": \"\""), "name"},
    };
    for (const Wrong& wrong : lessons) {
        CAPTURE(wrong.says);
        const auto read = read_lesson(wrong.text, "first.json");
        REQUIRE_FALSE(read.has_value());
        CHECK(read.error().where.source == "first.json");
        CHECK(words->sentence(read.error().key, read.error().arguments).find(wrong.says) != std::string::npos);
    }
}

TEST_CASE("past its own vines a lesson goes on with new ones of the scene: its temptations, its house, 95 points to be had, each time the same") {
    const auto all = load_lessons(lesson_assets);
    REQUIRE(all.has_value());
    std::set<std::uint64_t> seen;
    int tempting = 0;
    for (const Lesson& lesson : all->lessons) {
        CAPTURE(lesson.scene);
        for (const std::size_t number : {std::size_t{5}, std::size_t{6}}) {
            const auto opened = practice::open_scene(lesson_assets, lesson.scene, number);
            REQUIRE(opened.has_value());
            const practice::Task& task = opened->task;
            CHECK(task.scene_number == number);
            CHECK(seen.insert(vine_hash(task.vine)).second);  // no vine twice
            const auto again = practice::open_scene(lesson_assets, lesson.scene, number);
            CHECK(vine_hash(again->task.vine) == vine_hash(task.vine));
            const auto best = planning::Planning(task.vine, task.house).best();
            REQUIRE(best.has_value());
            CHECK(best->points >= scenes::to_be_had);
            const auto& own = opened->scene->vines;
            CHECK(own[number].switches.size() == own[number % 5].switches.size());
            tempting += own[number].switches.empty() ? 0 : 1;
        }
        for (std::size_t number = 0; number < 5; ++number) seen.insert(vine_hash(practice::open_scene(lesson_assets, lesson.scene, number)->task.vine));
    }
    CHECK(tempting >= 6);
}
