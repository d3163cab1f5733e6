// Old or new: twelve places that stand, a fair mix, the same for the same vine, told by what can be seen there.
#include <doctest/doctest.h>

#include <set>

#include "scenarios/quiz/in_sight.h"
#include "scenarios/practice/practice.h"
#include "scenarios/words/load_words.h"
#include "sim/growth/history.h"
#include "sim/vine/vine_query.h"
#include "tests/support/grown.h"
#include "tests/support/little_vine.h"

using namespace spurwright;
using practice::Practice;
using practice::Touch;
using practice::TouchDrill;

namespace {

Vine grown(std::uint32_t number) {
    growth::Site site;
    site.seed = 700 + number;
    site.age = std::array{6, 9, 12, 20}[number % 4];
    site.pruner = static_cast<Pruner>(number % 8);
    return test::grown(site);
}
constexpr std::uint32_t vines = 24;

bool same(const TouchDrill& a, const TouchDrill& b) {
    if (a.touches().size() != b.touches().size()) return false;
    for (std::size_t i = 0; i < a.touches().size(); ++i)
        if (!(a.touches()[i].spot == b.touches()[i].spot)) return false;
    return true;
}

std::int64_t number_of(const Touch& touch, std::string_view gap) {
    for (const Named& named : touch.arguments)
        if (named.gap == gap) return std::get<Count>(named.value).value;
    return -1;
}

}  // namespace

TEST_CASE("twelve places of standing wood, none twice, five to seven of them older, never a trunk") {
    std::set<std::size_t> shares;
    for (std::uint32_t number = 0; number < vines; ++number) {
        CAPTURE(number);
        const Vine vine = grown(number);
        const TouchDrill drill(vine);
        REQUIRE(drill.touches().size() == practice::touches_in_a_drill);
        std::set<NodeId> places;
        std::size_t older = 0;
        for (const Touch& touch : drill.touches()) {
            const Axis* axis = vine.find(touch.spot.axis);
            REQUIRE(axis != nullptr);
            CHECK_FALSE(axis->removed);
            CHECK_FALSE(is_trunk(*axis));
            CHECK(axis->state == AxisState::live);
            CHECK(touch.older == (age(vine, *axis) > 1));
            const Node* beyond = vine.find(node_id(axis->id, index_of(touch.spot.node) + 1));
            REQUIRE(beyond != nullptr);  // the joint touched
            CHECK_FALSE(beyond->removed);
            CHECK(touch.spot.beyond > Length{});
            CHECK(touch.spot.beyond < beyond->joint);
            CHECK(quiz::in_sight(vine, beyond->id));
            places.insert(touch.spot.node);
            older += touch.older;
        }
        CHECK(places.size() == drill.touches().size());
        CHECK(older >= 5);
        CHECK(older <= 7);
        shares.insert(older);
    }
    CHECK(shares.size() > 1);  // so that the last answers cannot be counted out
}

TEST_CASE("wood before a place hides it, wood behind it does not") {
    Vine vine = test::little_vine();
    const NodeId joint = node_id(AxisId{4}, 3);
    REQUIRE(quiz::in_sight(vine, joint));
    const Place place = vine.find(joint)->place;
    // Another cane moved across the same place of the row, nearer to the eye and then farther from it.
    const auto moved = [&](std::int32_t across_um) {
        Vine other = vine;
        const Axis& axis = *other.find(AxisId{5});
        for (std::uint32_t i = 0; i < axis.node_count; ++i)
            other.nodes[axis.first_node + i].place = {{place.x.count + 400'000 * (static_cast<std::int32_t>(i) - 1)}, {place.y.count + 20'000}, {place.z.count + across_um}};
        return quiz::in_sight(other, joint);
    };
    CHECK_FALSE(moved(60'000));
    CHECK(moved(-60'000));
}

TEST_CASE("the same vine asks the same places, another vine others") {
    const Vine one = grown(1), other = grown(2);
    CHECK(same(TouchDrill(one), TouchDrill(one)));
    CHECK_FALSE(same(TouchDrill(one), TouchDrill(other)));
}

TEST_CASE("neither the order nor the place tells the answer: both kinds come early and late") {
    int older_first = 0, older_last = 0;
    for (std::uint32_t number = 0; number < vines; ++number) {
        const TouchDrill drill(grown(number));
        older_first += drill.touches().front().older;
        older_last += drill.touches().back().older;
    }
    for (const int often : {older_first, older_last}) {
        CHECK(often > 4);
        CHECK(often < 20);
    }
}

TEST_CASE("what is said after the answer is true of the wood touched [hickey-psu] [wvda-grapes]") {
    const io::Assets assets(std::string(SPURWRIGHT_SOURCE) + "/assets");
    std::set<std::string_view> keys;
    for (std::uint32_t number = 0; number < vines; ++number) {
        const Vine vine = grown(number);
        const TouchDrill drill(vine);
        for (const Touch& touch : drill.touches()) {
            const Axis& axis = *vine.find(touch.spot.axis);
            keys.insert(touch.key.name);
            int canes = 0, ties = 0;
            for (const Axis& a : vine.axes) canes += !a.removed && a.parent && axis_of(a.parent) == axis.id && age(vine, a) == 1;
            for (const Tie& tie : vine.ties) ties += axis_of(tie.node) == axis.id && tie.winter + 1 == vine.winter;
            if (touch.key.name.starts_with("drill.older.")) {
                CHECK(touch.older);
                CHECK(number_of(touch, "years") == age(vine, axis));
            } else {
                CHECK_FALSE(touch.older);
            }
            if (touch.key.name == "drill.older.bears") CHECK(number_of(touch, "n") == canes);
            if (touch.key.name == "drill.older.bark") CHECK(canes == 0);
            if (touch.key.name == "drill.older.tied") CHECK((ties > 0 && age(vine, axis) == 2));
            if (touch.key.name == "drill.new.buds") CHECK(number_of(touch, "n") == count_buds(vine, axis));
            if (touch.key.name == "drill.new.lateral") CHECK(is_lateral(vine, axis));
            for (const char* language : {"en", "es"}) {
                const auto words = words::load_words(assets, language);
                REQUIRE(words.has_value());
                CHECK_FALSE(words->sentence(touch.key, touch.arguments).starts_with("["));
            }
        }
    }
    CHECK(keys.size() >= 4);
}

TEST_CASE("the first answer stands, and nothing goes on before it") {
    TouchDrill drill(grown(0));
    drill.next();
    CHECK(drill.at() == 0);
    for (std::size_t i = 0; i < drill.touches().size(); ++i) {
        const bool older = drill.here()->older;
        CHECK_FALSE(drill.answered());
        drill.answer(i % 3 == 0 ? !older : older);
        drill.answer(older);
        CHECK(drill.here()->right() == (i % 3 != 0));
        drill.next();
    }
    CHECK(drill.here() == nullptr);
    CHECK(drill.right() == 8);
    drill.answer(true);
    drill.next();
    CHECK(drill.right() == 8);
}

TEST_CASE("a drill on the vine in hand leaves the own acts alone, and is refused once the vine is finished") {
    Practice practice({test::little_vine(), "", "", "general", {}, {}});
    REQUIRE(practice.mark(AxisId{4}, Role::left).has_value());
    REQUIRE(practice.begin_drill().has_value());
    CHECK(practice.hand_rests());
    CHECK_FALSE(practice.drill()->touches().empty());
    practice.end_showing();
    CHECK(practice.done_count() == 1);
    practice.finish();
    CHECK_FALSE(practice.begin_drill().has_value());
}
