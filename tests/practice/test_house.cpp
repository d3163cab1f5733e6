// The house's own rules: changed by steps, kept, refused where they cannot be used, and the vine in hand judged anew.
#include <doctest/doctest.h>

#include <chrono>
#include <thread>

#include "scenarios/house/own_house.h"
#include "scenarios/io/safe_file.h"
#include "scenarios/practice/session.h"
#include "scenarios/words/load_words.h"
#include "tests/support/folder.h"

using namespace spurwright;
using namespace spurwright::house;
using practice::Session;
namespace ask = practice::ask;

namespace {

const io::Assets house_assets(std::string(SPURWRIGHT_SOURCE) + "/assets");

OwnHouse own_at(const std::string& path) {
    auto own = OwnHouse::make(house_assets, path);
    REQUIRE(own.has_value());
    return *std::move(own);
}

std::string dashes(std::string_view name) {
    std::string key(name);
    std::replace(key.begin(), key.end(), '_', '-');
    return key;
}

void wait_for_plans(Session& session) {
    for (int i = 0; i < 2000 && session.works(); ++i) {
        if (!session.poll()) std::this_thread::sleep_for(std::chrono::milliseconds(5));
    }
    REQUIRE_FALSE(session.works());
}

constexpr Part thick_end{"cane-diameter", "full", true}, thickest{"cane-diameter", "half", true};

} // namespace

TEST_CASE("every parameter can be seen and changed, and has its words in every language") {
    for (const std::string language : {"en", "es"}) {
        const auto words = words::load_words(house_assets, language);
        REQUIRE(words.has_value());
        for (const std::string_view group : groups()) {
            const bool rule = std::find(rules::rule_keys.begin(), rules::rule_keys.end(), group) != rules::rule_keys.end();
            if (!rule) CHECK_MESSAGE(words->has("house.group." + dashes(group)), group);
            if (!rule) CHECK_MESSAGE(words->has("house.about." + dashes(group)), group);
            REQUIRE_FALSE(parts_of(group).empty());
            for (const Part& part : parts_of(group)) CHECK_MESSAGE(words->has("house.value." + dashes(part.name)), part.name);
        }
        for (const std::string_view word : {"distance", "creep", "out-or-down", "up", "stop", "run-on"}) CHECK(words->has("house.word." + std::string(word)));
    }
}

TEST_CASE("a step up and one down is the same number again, and no number falls below nothing") {
    const rules::HouseRules shipped;
    for (const std::string_view group : groups())
        for (const Part& part : parts_of(group)) {
            CAPTURE(part.rule);
            CAPTURE(part.name);
            rules::HouseRules house = shipped;
            const Value before = value_of(house, part);
            step(house, part, 1);
            if (!before.open) CHECK_FALSE(house == shipped);
            step(house, part, before.open ? 0 : -1);
            CHECK(house == shipped);
            step(house, part, -1000);
            CHECK(value_of(house, part).thousandths >= 0);
        }
}

TEST_CASE("what the house sets is kept, and the rest follows the shipped set it begins from") {
    const test::Folder here;
    const std::string path = here.file("casa ñ/house-rules.json");
    {
        OwnHouse own = own_at(path);
        REQUIRE(own.recall().has_value());
        CHECK_FALSE(own.differs());
        CHECK(own.name() == "general");
        REQUIRE(own.step(thick_end, 2).has_value());
        CHECK(own.rules().cane_diameter.band.full.high == Length{13'000});
        CHECK(own.file().own == std::vector<std::string>{"cane-diameter.full"});
        CHECK(own.rules().set_by_house[rules::index_of(rules::RuleName::cane_diameter)]);
        CHECK(own.name() == path);
    }
    OwnHouse again = own_at(path);
    REQUIRE(again.recall().has_value());
    CHECK(again.rules().cane_diameter.band.full.high == Length{13'000});
    REQUIRE(again.begin_from("slow-arms").has_value());
    const auto slow = io::load_house_rules("slow-arms", house_assets);
    REQUIRE(slow.has_value());
    CHECK(again.rules().origin_distance == slow->rules.origin_distance);
    CHECK(again.rules().cane_diameter.band.full.high == Length{13'000});
    REQUIRE(again.step(thick_end, -2).has_value());
    CHECK(again.file().own.empty());  // as shipped again, so not its own any more
    REQUIRE(again.step(thick_end, 1).has_value());
    REQUIRE(again.all_as_shipped().has_value());
    CHECK(rules::rule_set_hash(again.rules()) == rules::rule_set_hash(slow->rules));
}

TEST_CASE("a change that cannot be used is refused by name, and the old rules stay") {
    const test::Folder here;
    const std::string path = here.file("house-rules.json");
    OwnHouse own = own_at(path);
    const std::uint64_t before = rules::rule_set_hash(own.rules());
    const auto crossed = own.step(thick_end, 20);  // past where part of the points ends
    REQUIRE_FALSE(crossed.has_value());
    CHECK(crossed.error().key.name == "error.house-rules.crossed");
    CHECK(rules::rule_set_hash(own.rules()) == before);
    CHECK_FALSE(io::is_there(path));
    CHECK(own.step(thickest, 10).has_value());
    CHECK(own.step(thick_end, 5).has_value());
    for (const std::string bad : {"", "{", "{\"kind\": \"spurwright-house-rules\", \"version\": 1, \"name\": \"x\", \"base\": \"general\", \"rules\": {\"cane-width\": {}}}"}) {
        REQUIRE(io::write_file(path, bad).has_value());
        OwnHouse fresh = own_at(path);
        CHECK_FALSE(fresh.recall().has_value());
        CHECK_FALSE(fresh.differs());
        CHECK(fresh.step(thick_end, 1).has_value());  // in force for this run
        CHECK(*io::read_file(path, 1 << 20) == bad);  // and the file untouched
    }
}

TEST_CASE("rules written to a file and read in again are the same rules") {
    const test::Folder here;
    OwnHouse own = own_at("");
    REQUIRE(own.step({"bud-load", "per_metre", false}, -2).has_value());
    REQUIRE(own.step({"origin-distance", "measure", false}, 1).has_value());
    REQUIRE(own.write_out(here.file("out.json")).has_value());
    OwnHouse other = own_at("");
    REQUIRE(other.read_in(here.file("out.json")).has_value());
    CHECK(rules::rule_set_hash(other.rules()) == rules::rule_set_hash(own.rules()));
    const auto none = other.read_in(here.file("no such file.json"));
    REQUIRE_FALSE(none.has_value());
    CHECK(rules::rule_set_hash(other.rules()) == rules::rule_set_hash(own.rules()));
}

TEST_CASE("a finished vine is judged anew under each change, its plans are found anew, and a scene's own rules come back") {
    const test::Folder here;
    std::uint64_t next = 5;
    auto made = Session::make(house_assets, {here.file("c/settings.json"), here.file("w"), here.file("c/house-rules.json")}, {{}, {}, "first"}, [next]() mutable { return next++; });
    REQUIRE(made.has_value());
    Session& session = **made;
    session.carry_out(ask::SafetySeen{});
    wait_for_plans(session);
    session.practice()->finish();
    const Tenths before = session.practice()->look()->mine.points;
    const Tenths best = session.practice()->look()->plans->best().points;
    session.carry_out(ask::HouseStep{{"bud-load", "per_metre", false}, -6});
    CHECK_FALSE(session.shell().message.has_value());
    CHECK(session.shell().house.own == std::vector<std::string>{"bud-load.per_metre"});
    wait_for_plans(session);
    const rules::HouseRules& house = session.shell().house.rules;
    CHECK(house.bud_load.per_metre == 9);
    REQUIRE(session.practice()->look().has_value());
    const auto anew = rules::judge(session.practice()->start(), session.practice()->now(), house);
    CHECK(session.practice()->look()->mine.points == anew.points);
    CHECK(session.practice()->task().house == house);
    const practice::PlansFound found = practice::search_plans(session.practice()->start(), house);
    CHECK(session.practice()->look()->plans->best().points == found.best().points);
    CHECK(session.practice()->look()->plans->as_good_count == found.as_good_count);
    session.carry_out(ask::HouseStep{{"bud-load", "per_metre", false}, 40});
    CHECK(house.bud_load.per_metre == 49);  // a house may ask anything that can be judged
    session.carry_out(ask::HouseAsShipped{});
    wait_for_plans(session);
    CHECK(session.practice()->look()->mine.points == before);
    CHECK(session.practice()->look()->plans->best().points == best);
    session.carry_out(ask::HouseStep{{"bud-load", "per_metre", false}, -6});
    session.carry_out(ask::NextVine{});
    CHECK(session.practice()->task().house.bud_load.per_metre == 15);  // the scene's
    session.carry_out(ask::OpenCode{"00RM-K1SX-G00Q-0004-0005-046T"});
    CHECK(session.practice()->task().house.bud_load.per_metre == 9);  // an own vine
    session.carry_out(ask::HouseIn{here.file("nothing.json")});
    CHECK(session.shell().message.has_value());
    CHECK(session.practice()->task().house.bud_load.per_metre == 9);
}
