// Varieties and sites of one's own: what ships prints as a file that reads back to the same values, a base says what is
// left out, and what cannot be used is refused by key and line.
#include <doctest/doctest.h>

#include "scenarios/io/json.h"
#include "scenarios/io/safe_file.h"
#include "scenarios/io/site_file.h"
#include "scenarios/io/variety_file.h"
#include "sim/growth/history.h"
#include "sim/vine/canonical_text.h"
#include "tests/scenarios/schema.h"

using namespace spurwright;
using growth::Variety;

namespace {

std::string variety_text(const std::string& rest) {
    return R"({"kind": "spurwright-variety", "version": 1, "name": "our-red")" + rest + "}";
}
std::string site_text(const std::string& rest) {
    return R"({"kind": "spurwright-site", "version": 1, "name": "our-slope")" + rest + "}";
}

struct Refused {
    std::string key, named;
    int line = 0;
    bool operator==(const Refused&) const = default;
};
template <class Read>
Refused refusal_of(const Read& read) {
    if (read) return {};
    Refused r{std::string(read.error().key.name), "", read.error().where.line};
    for (const Named& argument : read.error().arguments)
        if (argument.gap == "key" || argument.gap == "text")
            if (const auto* text = std::get_if<std::string>(&argument.value); text && r.named.empty()) r.named = *text;
    return r;
}
Refused variety_refusal(const std::string& text) { return refusal_of(io::read_variety(text, "v.json")); }
Refused site_refusal(const std::string& text) { return refusal_of(io::read_site(text, "s.json")); }

} // namespace

TEST_SUITE("scenarios/own-files") {
    TEST_CASE("every shipped variety prints as a file that says the same of fruit, hardiness and tendrils") {
        for (const Variety& shipped : growth::varieties()) {
            CAPTURE(std::string(shipped.name));
            const std::string printed = io::print_variety(shipped);
            CHECK(test::schema_fault("variety-1", printed) == "");
            const auto own = io::read_variety(printed, "v.json");
            REQUIRE(own.has_value());
            CHECK((*own)->name == "own-" + std::string(shipped.name));
            CHECK((*own)->species == shipped.species);
            CHECK((*own)->burst == shipped.burst);
            CHECK((*own)->hardiness == shipped.hardiness);
            CHECK((*own)->tendrils_everywhere == shipped.tendrils_everywhere);
            for (const growth::VarietyField& field : growth::variety_fields()) {
                const growth::Told &mine = (**own).*field.value, &ours = shipped.*field.value;
                CHECK(mine.value == ours.value);
                CHECK(mine.status == ours.status);
                CHECK(mine.source == ours.source);
            }
            CHECK(io::print_variety(**own) == printed);
        }
    }
    TEST_CASE("every shipped site prints as a file that says the same") {
        for (const weather::Climate& shipped : weather::climates()) {
            const auto site = io::load_site(std::string(shipped.name), "--climate");
            REQUIRE(site.has_value());
            const std::string printed = io::print_site(*site);
            CHECK(test::schema_fault("site-1", printed) == "");
            const auto own = io::read_site(printed, "s.json");
            REQUIRE(own.has_value());
            for (const weather::ClimateField& field : weather::climate_fields())
                CHECK((*own->climate).*field.value == shipped.*field.value);
            CHECK(own->climate->status == shipped.status);
            CHECK(growth::coded(own->vineyard) == growth::coded(growth::Site{})); // the practice vineyard
            CHECK(io::print_site(*own) == printed);
        }
    }
    TEST_CASE("a base says what is left out; a number alone is our choice, a status and a source stand beside it") {
        const auto own = io::read_variety(
            variety_text(R"(, "base": "concord", "bunch_mass_g": 111.5, "ri_star": {"value": 9, "status": "read", "source": "our log"})"),
            "v.json");
        REQUIRE(own.has_value());
        const Variety &mine = **own, &concord = *growth::find_variety("concord");
        CHECK(mine.bunch_mass_g.value == 111.5);
        CHECK(mine.bunch_mass_g.status == growth::ValueStatus::choice);
        CHECK(mine.ri_star.source == "our log");
        CHECK(mine.ri_star.status == growth::ValueStatus::read);
        CHECK(mine.noncount_f.value == concord.noncount_f.value);
        CHECK(mine.species == growth::Species::labruscana);
        CHECK(mine.shown == "our-red");

        const auto site = io::read_site(
            site_text(R"(, "base": "warm", "climate": {"mean_c": 16.5}, "vineyard": {"spacing": 1500, "hedge": null})"), "s.json");
        REQUIRE(site.has_value());
        CHECK(site->climate->mean_c == 16.5);
        CHECK(site->climate->swing_c == weather::find_climate("warm")->swing_c);
        CHECK(site->vineyard.spacing_m == 1.5);
        CHECK_FALSE(site->vineyard.hedge_m.has_value());
        CHECK(site->vineyard.wire_m == growth::Site{}.wire_m);
    }
    TEST_CASE("unknown keys, missing keys and values out of the constants' ranges are refused by key and line") {
        const std::string concord = R"(, "base": "concord")";
        CHECK(variety_refusal(variety_text(concord + ",\n\"colour\": 1")) == Refused{"error.json.unknown-key", "colour", 2});
        CHECK(variety_refusal(variety_text("")) == Refused{"error.json.missing", "species", 1});
        CHECK(variety_refusal(variety_text(concord + ",\n\"bunch_mass_g\": 39.9")) == Refused{"error.json.range", "bunch_mass_g", 2});
        CHECK(variety_refusal(variety_text(concord + ",\n\n\"reserve_a\": {\"value\": 0.51}")) == Refused{"error.json.range", "reserve_a", 3});
        CHECK(variety_refusal(variety_text(concord + R"(, "ri_star": {"status": "read"})")) == Refused{"error.json.missing", "value", 1});
        CHECK(variety_refusal(variety_text(concord + R"(, "ri_star": {"value": 9, "from": "us"})")) == Refused{"error.json.unknown-key", "from", 1});
        CHECK(variety_refusal(variety_text(concord + R"(, "hardiness": "plain")")).key == "error.json.not-a-word");
        CHECK(variety_refusal(variety_text(concord + R"(, "species": "rose")")).key == "error.json.not-a-word");
        CHECK(variety_refusal(variety_text(R"(, "base": "moon")")).key == "error.json.not-a-word");
        CHECK(variety_refusal(variety_text(concord + R"(, "ri_star": "9")")) == Refused{"error.json.kind", "ri_star", 1});
        CHECK(variety_refusal(R"({"kind": "spurwright-variety", "version": 1, "name": "merlot", "base": "plain"})") == Refused{"error.named.taken", "merlot", 1});
        CHECK(variety_refusal(R"({"kind": "spurwright-variety", "version": 1, "name": "Our Red", "base": "plain"})") == Refused{"error.named.name", "Our Red", 1});
        CHECK(variety_refusal(R"({"kind": "spurwright-variety", "version": 2, "name": "a"})").key == "error.file.newer");
        CHECK(variety_refusal(R"({"kind": "spurwright-site", "version": 1, "name": "a"})").key == "error.file.kind");

        const std::string warm = R"(, "base": "warm")";
        CHECK(site_refusal(site_text("")) == Refused{"error.json.missing", "climate", 1});
        CHECK(site_refusal(site_text(R"(, "climate": {"mean_c": 11})")) == Refused{"error.json.missing", "swing_c", 1});
        CHECK(site_refusal(site_text(warm + ",\n\"soil\": \"sand\"")) == Refused{"error.json.unknown-key", "soil", 2});
        CHECK(site_refusal(site_text(warm + ",\n\"climate\": {\n\"warmest_day\": 149}")) == Refused{"error.json.range", "warmest_day", 3});
        CHECK(site_refusal(site_text(warm + ",\n\"vineyard\": {\n\"spacing\": 899}")) == Refused{"error.site.range", "spacing", 3});
        CHECK(site_refusal(site_text(warm + ",\n\"vineyard\": {\"head_below\": 301}")) == Refused{"error.site.range", "head_below", 2});
        CHECK(site_refusal(site_text(warm + ",\n\"vineyard\": {\"catch\": [300, 310]}")) == Refused{"error.site.range", "catch", 2});
        CHECK(site_refusal(site_text(warm + ",\n\"vineyard\": {\"catch\": [300, 600, 900, 1200, 1400]}")).key == "error.grow.catch-pairs");
        CHECK(site_refusal(site_text(warm + R"(, "vineyard": {"seed": 4})")) == Refused{"error.json.unknown-key", "seed", 1});
        CHECK(site_refusal(site_text(warm + R"(, "vineyard": {"drip": "yes"})")) == Refused{"error.json.kind", "drip", 1});
    }
    TEST_CASE("a file cut short anywhere, and one of noughts, is refused and never crashes") {
        const std::string variety = io::print_variety(growth::varieties()[11]);
        const std::string site = io::print_site(*io::load_site("warm", "--climate"));
        for (std::size_t i = 0; i + 2 < variety.size(); ++i) CHECK_FALSE(io::read_variety(variety.substr(0, i), "v").has_value());
        for (std::size_t i = 0; i + 2 < site.size(); ++i) CHECK_FALSE(io::read_site(site.substr(0, i), "s").has_value());
        CHECK_FALSE(io::read_site(std::string(100, '\0'), "s").has_value());
        CHECK_FALSE(io::load_variety("/no/such/file.json", "--variety").has_value());
        CHECK_FALSE(io::load_site("..", "--climate").has_value());
    }
    TEST_CASE("an own variety with the values of a shipped one grows the same wood under its own name, and has no code") {
        growth::Site site;
        site.seed = 11;
        site.age = 6;
        site.variety = "concord";
        site.graft = false;
        const auto shipped = growth::grow_vine(site);
        const auto own = io::read_variety(io::print_variety(*growth::find_variety("concord")), "v.json");
        REQUIRE(own.has_value());
        site.own_variety = *own;
        site.variety = (*own)->name;
        CHECK_FALSE(growth::coded(site).has_value());
        auto grown = growth::grow_vine(site);
        REQUIRE(shipped.has_value());
        REQUIRE(grown.has_value());
        CHECK(grown->variety == "own-concord");
        grown->variety = "concord";
        CHECK(vine_hash(*grown) == vine_hash(*shipped));
        site.own_variety.reset();
        CHECK_FALSE(growth::grow_vine(site).has_value()); // no table knows it
    }
}
