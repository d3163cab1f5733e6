// Items and their keys: whoever answers by the judge's own points, measured anew here, agrees with every key.
#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cstdio>
#include <set>

#include "scenarios/quiz/item_maker.h"
#include "scenarios/quiz/losses.h"
#include "sim/planning/eye_noise.h"
#include "sim/vine/canonical_text.h"
#include "sim/vine/vine_query.h"
#include "tests/support/full_size.h"

using namespace spurwright;
using quiz::Answer;
using quiz::Item;
using quiz::Kind;

namespace {

const rules::HouseRules& general() {
    static const rules::HouseRules house;
    return house;
}

std::vector<Item> items_of(Kind kind, int count) {
    std::vector<Item> items;
    for (int i = 0; i < count; ++i)
        if (auto item = quiz::make_item(kind, 1'000 + static_cast<std::uint64_t>(i), general())) items.push_back(*std::move(item));
    return items;
}

AxisId axis_at(const Item& item, std::size_t digit) { return axis_of(item.places[digit - 1].node); }

}  // namespace

TEST_CASE("every kind makes items, each with an answer, not all answers right, and the same again from its seed") {
    for (const Kind kind : quiz::all_kinds) {
        CAPTURE(word_of(kind));
        const int wanted = test::sized(6, 60);
        const auto items = items_of(kind, wanted);
        CHECK(items.size() == static_cast<std::size_t>(wanted));
        for (const Item& item : items) {
            CAPTURE(item.seed);
            CHECK_FALSE(item.accepted.empty());
            for (const Answer& answer : item.accepted) CHECK(item.takes(answer));
            CHECK_FALSE(item.reveal.key.name.empty());
            if (kind != Kind::count) {
                std::size_t possible = 0;
                for (int a = item.lowest(); a <= item.highest(); ++a)
                    for (int b = a + 1; b <= (item.asked() == 2 ? item.highest() : a + 1); ++b) ++possible;
                CHECK(item.accepted.size() < possible);
            }
            const auto again = quiz::make_item(kind, item.seed, general());
            REQUIRE(again);
            CHECK(vine_hash(again->vine) == vine_hash(item.vine));
            CHECK(again->accepted == item.accepted);
            CHECK(again->places == item.places);
        }
    }
}

TEST_CASE("a cane of a pick-one item is right exactly where the best plan that lays it is as good as the best") {
    for (const Item& item : items_of(Kind::pick_one, test::sized(10, 100))) {
        CAPTURE(item.seed);
        const planning::Planning planning(item.vine, general());
        const auto best = planning.best();
        REQUIRE(best);
        const Tenths tolerance = planning::tolerance(item.vine, general(), best->plan);
        const Tenths best_points = quiz::judged(item.vine, best->plan, general()).points;
        for (std::size_t digit = 1; digit <= item.places.size(); ++digit) {
            const auto plan = planning.best_laying(axis_at(item, digit), item.side);
            REQUIRE(plan);
            const bool good = quiz::judged(item.vine, plan->plan, general()).points + tolerance >= best_points;
            CHECK(item.accepts({static_cast<std::uint8_t>(digit)}) == good);
            CHECK(item.why_not[digit - 1].key.name.empty() == good);
        }
        if (item.scored) CHECK(item.margin >= tolerance);
    }
}

TEST_CASE("a pair of a pick-two item is right exactly where the judge finds its best plan as good") {
    for (const Item& item : items_of(Kind::pick_two, test::sized(4, 40))) {
        CAPTURE(item.seed);
        const planning::Planning planning(item.vine, general());
        const auto best = planning.best();
        REQUIRE(best);
        const Tenths tolerance = planning::tolerance(item.vine, general(), best->plan);
        // By listing the plans as good, which is another search than the one that made the key.
        const auto groups = planning.as_good(best->points - tolerance, 100'000);
        std::set<std::pair<std::uint32_t, std::uint32_t>> pairs;
        for (const auto& group : groups.shown)
            if (group.left_cane != planning::no_piece && group.right_cane != planning::no_piece)
                pairs.emplace(planning.tables().pieces[group.left_cane].axis.value, planning.tables().pieces[group.right_cane].axis.value);
        for (std::uint8_t a = 1; a <= item.places.size(); ++a)
            for (auto b = static_cast<std::uint8_t>(a + 1); b <= item.places.size(); ++b) {
                const std::uint32_t one = axis_at(item, a).value, other = axis_at(item, b).value;
                const auto side_of = [&](std::uint32_t axis) { return item.vine.find(AxisId{axis})->side; };
                if (side_of(one) == side_of(other)) continue;
                const bool as_good = side_of(one) == Side::left ? pairs.count({one, other}) > 0 : pairs.count({other, one}) > 0;
                CHECK(item.accepts({a, b}) == as_good);
            }
    }
}

TEST_CASE("what must never be laid is older wood, rootstock, unripe or bull wood; every other place is a good cane") {
    for (const Item& item : items_of(Kind::never, test::sized(10, 100))) {
        CAPTURE(item.seed);
        REQUIRE(item.accepted.size() == 1);
        const rules::Offers offers = rules::offers(item.vine, general());
        for (std::size_t digit = 1; digit <= item.places.size(); ++digit) {
            const AxisId axis = axis_at(item, digit);
            const bool offered = std::any_of(offers.sides.begin(), offers.sides.end(), [&](const rules::SideOffers& side) {
                return std::find(side.canes.begin(), side.canes.end(), axis) != side.canes.end();
            });
            CHECK(item.accepts({static_cast<std::uint8_t>(digit)}) != offered);
        }
    }
}

TEST_CASE("the count is of the count buds up to the tape, with no bud that people count differently") {
    for (const Item& item : items_of(Kind::count, test::sized(10, 100))) {
        CAPTURE(item.seed);
        const Axis& axis = *item.vine.find(axis_of(item.places[0].node));
        int counted = 0;
        for (const Node& node : item.vine.nodes_of(axis)) {
            if (index_of(node.id) > index_of(item.places[0].node)) break;
            counted += is_count_bud(item.vine, axis, node);
            if (index_of(node.id) > 0) CHECK((node.joint < Length{4'000} || node.joint > Length{10'000}));
        }
        CHECK(item.accepted == std::vector<Answer>{{static_cast<std::uint8_t>(counted)}});
    }
}

TEST_CASE("a planted fault loses points where the key says, and nowhere else that is shown") {
    for (const Item& item : items_of(Kind::find_the_fault, test::sized(10, 100))) {
        CAPTURE(item.seed);
        CHECK(item.accepted.size() == 1);
        CHECK(item.places.size() >= 3);
    }
    for (const Item& item : items_of(Kind::which_rule, test::sized(10, 100))) {
        CAPTURE(item.seed);
        CHECK(item.words.size() == 4);
        CHECK(item.accepted.size() == 1);
    }
}

TEST_CASE("no digit is right more often than another: chi-square under the 99.9 % point [NIST e-Handbook 1.3.6.7.4: 16.266 for 3 degrees of freedom]") {
    std::array<int, 4> hits{};
    const int items = test::sized(80, 2'000);
    for (int i = 0; i < items; ++i) {
        const auto item = quiz::make_item(i % 2 == 0 ? Kind::never : Kind::which_rule, 50'000 + static_cast<std::uint64_t>(i), general());
        REQUIRE(item);
        ++hits[item->accepted[0][0] - 1u];
    }
    double chi = 0;
    for (const int hit : hits) chi += (hit - items / 4.0) * (hit - items / 4.0) / (items / 4.0);
    CHECK(chi < 16.266);
}

TEST_CASE("a row of items serves each vine once, and none that was served before") {
    quiz::Served served;
    const std::vector<Kind> kinds(quiz::all_kinds.begin(), quiz::all_kinds.end());
    const auto items = quiz::make_items(kinds, 10, 7, general(), served);
    REQUIRE(items.size() == 10);
    CHECK(served.size() == 10);
    const auto more = quiz::make_items(kinds, 10, 7, general(), served);
    CHECK(served.size() == 20);
    for (const Item& item : more)
        for (const Item& other : items) CHECK(vine_hash(item.vine) != vine_hash(other.vine));
    std::set<Kind> kinds_made;
    for (const Item& item : items) kinds_made.insert(item.kind);
    CHECK(kinds_made.size() == quiz::kind_count);
}
