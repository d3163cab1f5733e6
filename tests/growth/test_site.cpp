// The site of a vine: its ranges, and what the code of a vine can say of it.
#include <doctest/doctest.h>

#include <limits>

#include "sim/growth/site.h"

using namespace spurwright;
using growth::Site;

namespace {

std::string refusal(const Site& site) {
    const auto answer = growth::check(site);
    return answer ? "" : std::string(answer.error().key.name);
}

} // namespace

TEST_SUITE("growth/site") {
    TEST_CASE("the default site grows and has a code") {
        CHECK(refusal(Site{}) == "");
        const auto code = growth::coded(Site{});
        REQUIRE(code.has_value());
        CHECK(*code == CodedSite{});
    }
    TEST_CASE("NaN, negative and huge settings are refused by name, with the option and the range") {
        struct Field {
            double Site::*value;
            const char* key;
            const char* option;
        };
        for (const Field& field :
             {Field{&Site::spacing_m, "error.grow.spacing", "--spacing"},
              Field{&Site::rows_m, "error.grow.rows", "--rows"}, Field{&Site::wire_m, "error.grow.wire", "--wire"},
              Field{&Site::head_below_mm, "error.grow.head-below", "--head-below"}}) {
            for (const double value : {std::numeric_limits<double>::quiet_NaN(), -1.0, 0.0, 1e300,
                                       std::numeric_limits<double>::infinity()}) {
                Site site;
                site.*field.value = value;
                const auto answer = growth::check(site);
                REQUIRE_FALSE(answer.has_value());
                CHECK(answer.error().key.name == field.key);
                CHECK(answer.error().where.source == field.option);
                CHECK(answer.error().fault == Fault::out_of_range);
                CHECK(answer.error().arguments.size() == 3);
            }
        }
        for (const int age : {-5, 0, 2, 41, 2'000'000'000}) {
            Site site;
            site.age = age;
            CHECK(refusal(site) == "error.grow.age");
        }
        for (const double hedge : {std::numeric_limits<double>::quiet_NaN(), 0.5, 1.5}) {
            Site site;
            site.hedge_m = hedge;
            CHECK(refusal(site) == "error.grow.hedge");
        }
    }
    TEST_CASE("catch wires rise, and at most four pairs stand") {
        Site site;
        site.catch_m = {0.3, 0.3};
        CHECK(refusal(site) == "error.grow.catch");
        site.catch_m = {0.6, 0.3};
        CHECK(refusal(site) == "error.grow.catch");
        site.catch_m = {0.3, std::numeric_limits<double>::quiet_NaN()};
        CHECK(refusal(site) == "error.grow.catch");
        site.catch_m = {0.2, 0.4, 0.6, 0.8, 1.0};
        CHECK(refusal(site) == "error.grow.catch-pairs");
        site.catch_m = {};
        CHECK(refusal(site) == "");
    }
    TEST_CASE("what is not grown yet is refused, not grown as something else") {
        Site site;
        site.system = System::head_canes;
        CHECK(refusal(site) == "error.grow.system");
        site = {};
        site.trunks = 3;
        CHECK(refusal(site) == "error.grow.trunks");
        site = {};
        site.variety = "sweet";
        CHECK(refusal(site) == "error.grow.variety");
        site = {};
        site.seed = std::uint64_t{1} << 40;
        CHECK(refusal(site) == "error.grow.seed");
    }
    TEST_CASE("an option without a field, or a value between the steps, has no code") {
        const auto has_code = [](auto change) {
            Site site;
            change(site);
            return growth::coded(site).has_value();
        };
        CHECK_FALSE(has_code([](Site& s) { s.catch_m = {0.3}; }));
        CHECK_FALSE(has_code([](Site& s) { s.head_below_mm = 131; }));
        CHECK_FALSE(has_code([](Site& s) { s.hedge_m = std::nullopt; }));
        CHECK_FALSE(has_code([](Site& s) { s.thinning = false; }));
        CHECK_FALSE(has_code([](Site& s) { s.harvest = growth::Harvest::machine; }));
        CHECK_FALSE(has_code([](Site& s) { s.graft = false; }));
        CHECK_FALSE(has_code([](Site& s) { s.wires_in_winter = growth::WiresInWinter::dropped; }));
        CHECK_FALSE(has_code([](Site& s) { s.drip = false; }));
        CHECK_FALSE(has_code([](Site& s) { s.spacing_m = 1.82; }));
        CHECK_FALSE(has_code([](Site& s) { s.wire_m = 1.4; }));
        CHECK_FALSE(has_code([](Site& s) { s.rows_m = 2.45; }));
        CHECK(has_code([](Site& s) { s.spacing_m = 1.85; }));
    }
    TEST_CASE("a site and its code say the same, both ways") {
        for (int step = 0; step < 64; ++step) {
            CodedSite code;
            code.spacing_step = step;
            code.rows_step = 5 + step % 26;
            code.wire_step = step % 8;
            code.age = 3 + step % 38;
            code.vigour = static_cast<Vigour>(step % 3);
            code.pruner = static_cast<Pruner>(step % 8);
            code.missing_left = step & 1;
            code.missing_right = step & 2;
            code.frost = step & 4;
            code.seed = static_cast<std::uint64_t>(step) << 34;
            const auto site = growth::site_of(code);
            const bool grown = step >= 6 && step <= 48; // 0.9 to 3.0 m
            REQUIRE(site.has_value() == grown);
            if (!grown) continue;
            const auto again = growth::coded(*site);
            REQUIRE(again.has_value());
            CHECK(*again == code);
        }
    }
}
