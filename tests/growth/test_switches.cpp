// The switches of place, form and fault: each puts on the vine what its name says, as the rules read it, on many vines.
#include <cmath>

#include "sim/growth/history_pruner.h"
#include "sim/pruning/legal_edits.h"
#include "sim/rules/cane_diameter.h"
#include "sim/rules/cane_health.h"
#include "sim/rules/cane_side.h"
#include "sim/rules/internode_length.h"
#include "sim/rules/judge.h"
#include "sim/rules/origin_distance.h"
#include "sim/rules/origin_height.h"
#include "sim/rules/spur_size.h"
#include "sim/vine/neighbours_wood.h"
#include "tests/growth/over_vines.h"

using namespace spurwright;
using namespace spurwright::growth;
using test::is_near;
using test::is_sound;
using test::over_vines;
using test::read_cane;

namespace {

const rules::HouseRules house;

// Round, of the asked thickness and joints, full marks on both.
void check_good_wood(const rules::CaneFacts& cane, Length diameter, Length joint) {
    CHECK(is_near(cane.diameter, diameter, 50));
    CHECK(is_near(cane.mean_joint, joint, 1'500));
    CHECK(rules::mark_cane_diameter(cane, house) == rules::full_mark);
    CHECK(rules::mark_internode_length(cane, house) == rules::full_mark);
}

// A good cane near the head whose fault alone costs it its health.
template <class Fault>
void check_faulty(const Tempted& made, const Fault& wanted) {
    const rules::CaneFacts cane = read_cane(made);
    check_good_wood(cane, wanted.diameter, wanted.joint);
    CHECK(cane.distance_to_head <= Length{160'000});
    CHECK(rules::mark_origin_distance(cane.distance_to_head, cane.creep, house) > rules::no_mark);
    CHECK(rules::mark_cane_health(cane, house) < rules::full_mark);
}

int faults(const rules::HealthFacts& health) {
    return health.spot + health.wound + health.cracked + health.twin + (health.ripe_share < whole);
}

const Axis& bearer_of(const Tempted& made) { return *made.vine.find(axis_of(made.vine.find(made.axis)->parent)); }

} // namespace

TEST_CASE("the alley cane is faultless but for leaving the head across the row") {
    over_vines<AlleyCane>([](const Vine& vine, const Tempted& made, const AlleyCane& wanted) {
        rules::CaneFacts cane = read_cane(made);
        cane.off_row = base_azimuth(made.vine, *made.vine.find(made.axis), wanted.side);
        check_good_wood(cane, wanted.diameter, wanted.joint);
        CHECK(is_sound(cane.health));
        CHECK(cane.distance_to_head == Length{});
        CAPTURE(in_deg(cane.off_row));
        CHECK(cane.off_row >= from_deg(68));
        CHECK(cane.off_row <= from_deg(92));
        CHECK(rules::mark_cane_side(cane, house) < rules::full_mark);
        CHECK(made.vine.axes.size() == vine.axes.size() + 1);
    });
}

TEST_CASE("the bull at the bend is thick, flat and long-jointed, where last winter's laid cane comes to the wire") {
    over_vines<BendBull>([](const Vine&, const Tempted& made, const BendBull& wanted) {
        const rules::CaneFacts cane = read_cane(made);
        CHECK(is_near(cane.diameter, wanted.diameter, 50));
        CHECK(std::abs(cane.axis_ratio.count - wanted.axis_ratio.count) <= 3);
        CHECK(is_near(cane.mean_joint, wanted.joint, 1'500));
        CHECK(std::string(rules::say_cane_diameter(cane, house).key.name) == "rule.cane-diameter.bull");
        CHECK(rules::mark_internode_length(cane, house) == rules::no_mark);
        CHECK(made.vine.find(made.axis)->grew == CaneClass::bull);
        const Axis& laid = bearer_of(made);
        CHECK(was_laid_last_winter(made.vine, laid));
        // Nearer the head than this node the laid cane is still rising.
        const Length wire = fruiting_wire_height(made.vine);
        for (const Node& node : made.vine.nodes_of(laid))
            if (index_of(node.id) >= 2 && node.id < made.vine.find(made.axis)->parent) CHECK(node.place.y < wire - Length{30'000});
        CHECK(cane.distance_to_head < Length{420'000});
    });
}

TEST_CASE("the trunk sucker stands on the scion's trunk, far below the head, straight and sound") {
    over_vines<TrunkSucker>([](const Vine&, const Tempted& made, const TrunkSucker& wanted) {
        const Axis& axis = *made.vine.find(made.axis);
        const rules::CaneFacts cane = read_cane(made);
        check_good_wood(cane, wanted.diameter, wanted.joint);
        CHECK(is_sound(cane.health));
        CHECK(is_sucker(made.vine, axis));
        CHECK_FALSE(on_rootstock(made.vine, axis));
        CHECK(is_near(made.vine.find(axis.parent)->place.y, wanted.height, 60'000));
    });
}

TEST_CASE("the rootstock sucker stands below the graft union") {
    over_vines<RootstockSucker>([](const Vine&, const Tempted& made, const RootstockSucker& wanted) {
        const Axis& axis = *made.vine.find(made.axis);
        check_good_wood(read_cane(made), wanted.diameter, wanted.joint);
        CHECK(on_rootstock(made.vine, axis));
        CHECK(axis.parent < made.vine.graft);
    });
    Site own;
    own.graft = false;
    own.seed = 5;
    CHECK(std::string(tempted(*grow_vine(own), RootstockSucker{}).error().key.name) == "error.tempt.no-place");
}

TEST_CASE("the neighbour's cane hangs over by its tendrils, is nobody's candidate here, and no edit may touch it") {
    over_vines<NeighbourCane>([](const Vine& vine, const Tempted& made, const NeighbourCane& wanted) {
        const Axis& axis = *made.vine.find(made.axis);
        CHECK(is_neighbours(made.vine, axis));
        CHECK(is_near(thickness(made.vine, axis), wanted.diameter, 300));
        CHECK(cane_candidates(made.vine) == cane_candidates(vine));
        // From beyond half the spacing it comes as near as a forearm to the head's upright, and tendrils hold it.
        const auto nodes = made.vine.nodes_of(axis);
        CHECK(std::abs(nodes[0].place.x.count) > vine.spacing.count / 2);
        CHECK(std::abs(nodes.back().place.x.count) < vine.spacing.count / 4);
        CHECK(std::count_if(nodes.begin(), nodes.end(), [](const Node& n) { return n.tendril == Tendril::gripping; }) >= 3);
        for (const Edit& edit : {Edit{Cut{nodes[3].id, Length{10'000}, Tool::shears, {}}}, Edit{Lay{axis.id, wanted.side, 1}}, Edit{Fasten{nodes[0].id, {}, true}}}) {
            const auto error = why_not(made.vine, edit);
            REQUIRE(error.has_value());
            CHECK(std::string(error->key.name) == "error.plan.neighbours");
        }
        // Judged with it or without it: the same points; next winter it is gone.
        const Plan plan = history_plan(vine, {});
        CHECK(history_plan(made.vine, {}) == plan);
        CHECK(rules::judge(made.vine, *prune(made.vine, plan), house).points == rules::judge(vine, *prune(vine, plan), house).points);
        CHECK(season(*prune(made.vine, plan), {}).find(made.axis) == nullptr);
    });
    Site alone;
    alone.neighbours = Neighbours::none;
    alone.seed = 5;
    CHECK(std::string(tempted(*grow_vine(alone), NeighbourCane{}).error().key.name) == "error.tempt.no-place");
}

TEST_CASE("the lateral like a cane is pencil-thick, and last summer's wood bears it") {
    over_vines<LateralLikeCane>([](const Vine&, const Tempted& made, const LateralLikeCane& wanted) {
        const Axis& axis = *made.vine.find(made.axis);
        CHECK(is_lateral(made.vine, axis));
        CHECK_FALSE(is_cane(made.vine, axis));
        CHECK(is_near(thickness(made.vine, axis), wanted.diameter, 50));
        CHECK(ripe_count_nodes(made.vine, axis).size() >= 8);
        CHECK(mean_diameter(*made.vine.find(axis.parent)) > wanted.diameter);
        CHECK(made.vine.find(axis.parent)->lateral == Lateral::axis);
        CHECK(is_cane(made.vine, bearer_of(made)));
    });
}

TEST_CASE("the shaded cane is thin, flat and long-jointed, near the head, and no tendril of it holds") {
    over_vines<ShadedCane>([](const Vine&, const Tempted& made, const ShadedCane& wanted) {
        const rules::CaneFacts cane = read_cane(made);
        CHECK(is_near(cane.diameter, wanted.diameter, 50));
        CHECK(std::abs(cane.axis_ratio.count - wanted.axis_ratio.count) <= 3);
        CHECK(is_near(cane.mean_joint, wanted.joint, 1'500));
        CHECK(rules::mark_cane_diameter(cane, house) < rules::full_mark);
        CHECK(rules::mark_internode_length(cane, house) < rules::full_mark);
        CHECK(cane.distance_to_head == Length{});
        CHECK(made.vine.find(made.axis)->grew == CaneClass::shaded);
        for (const Node& node : made.vine.nodes_of(*made.vine.find(made.axis))) CHECK(node.tendril != Tendril::gripping);
    });
}

TEST_CASE("cracked base: a good cane near the head, cracked at its base and nowhere else at fault") {
    over_vines<CrackedBase>([](const Vine&, const Tempted& made, const CrackedBase& wanted) {
        check_faulty(made, wanted);
        CHECK(read_cane(made).health.cracked);
        CHECK(faults(read_cane(made).health) == 1);
        CHECK(made.vine.nodes_of(*made.vine.find(made.axis))[0].harm == Harm::cracked);
    });
}

TEST_CASE("double cane: two canes from one node, both read as doubles, and both leave it") {
    over_vines<DoubleCane>([](const Vine&, const Tempted& made, const DoubleCane& wanted) {
        check_faulty(made, wanted);
        CHECK(read_cane(made).health.twin);
        CHECK(faults(read_cane(made).health) == 1);
        const Axis& one = *made.vine.find(made.axis);
        std::vector<AxisId> both;
        for (const Axis& axis : made.vine.axes)
            if (axis.parent == one.parent && age(made.vine, axis) == 1) both.push_back(axis.id);
        REQUIRE(both.size() == 2);
        for (const AxisId id : both) CHECK(is_double(made.vine, *made.vine.find(id)));
        const auto z = [&](AxisId id) { return made.vine.nodes_of(*made.vine.find(id))[3].place.z; };
        CHECK(z(both[0]) > z(both[1]));
    });
}

TEST_CASE("short-ripe cane: ripe for 200 to 400 mm, dead buds beyond") {
    over_vines<ShortRipeCane>([](const Vine&, const Tempted& made, const ShortRipeCane& wanted) {
        const Axis& axis = *made.vine.find(made.axis);
        CHECK(axis.ripe == wanted.ripe);
        CHECK(along(made.vine, axis, axis.node_count - 1) > Length{900'000});
        const auto buds = ripe_count_nodes(made.vine, axis);
        REQUIRE(buds.size() >= 2);
        CHECK(buds.size() <= 6);
        CHECK(count_buds(made.vine, axis) == static_cast<int>(buds.size()));
        for (const Node& node : made.vine.nodes_of(axis))
            for (const Bud& bud : made.vine.buds_of(node))
                if (bud.kind == BudKind::node) CHECK(bud.harmed == (along(made.vine, axis, index_of(node.id)) > wanted.ripe));
        CHECK(is_near(thickness(made.vine, axis), wanted.diameter, 50));
        CHECK(distance_to_head(made.vine, axis) <= Length{160'000});
    });
}

TEST_CASE("wire scar: one wound within the part that would be kept, where the wires rub") {
    over_vines<WireScar>([](const Vine&, const Tempted& made, const WireScar& wanted) {
        check_faulty(made, wanted);
        const Axis& axis = *made.vine.find(made.axis);
        CHECK(read_cane(made).health.wound);
        CHECK(faults(read_cane(made).health) == 1);
        int scars = 0;
        for (const Node& node : made.vine.nodes_of(axis)) {
            if (node.harm == Harm::none) continue;
            ++scars;
            CHECK(node.harm == Harm::scar);
            CHECK(node.place.y > fruiting_wire_height(made.vine) + Length{150'000});
            CHECK(index_of(node.id) <= ripe_count_nodes(made.vine, axis)[9]);
        }
        CHECK(scars == 1);
    });
}

TEST_CASE("spotted cane: spots along its lower joints and no other fault") {
    over_vines<SpottedCane>([](const Vine&, const Tempted& made, const SpottedCane& wanted) {
        check_faulty(made, wanted);
        CHECK(read_cane(made).health.spot);
        CHECK(faults(read_cane(made).health) == 1);
        const auto nodes = made.vine.nodes_of(*made.vine.find(made.axis));
        CHECK(std::count_if(nodes.begin(), nodes.end(), [](const Node& n) { return n.harm == Harm::spot; }) >= 5);
    });
}

TEST_CASE("single spur place: a low near cane, a further cane above it, and nothing else to make a spur of") {
    over_vines<SingleSpurPlace>([](const Vine&, const Tempted& made, const SingleSpurPlace& wanted) {
        const rules::CaneFacts near = read_cane(made);
        check_good_wood(near, wanted.diameter, wanted.joint);
        CHECK(is_sound(near.health));
        CHECK(near.distance_to_head <= Length{60'000});
        int further = 0;
        for (const Axis& axis : made.vine.axes) {
            if (axis.side != wanted.side || age(made.vine, axis) != 1 || axis.id == made.axis) continue;
            if (is_near(thickness(made.vine, axis), wanted.further_diameter, 50)) {
                ++further;
                CHECK(distance_to_head(made.vine, axis) > near.distance_to_head);
                CHECK(distance_to_head(made.vine, axis) <= Length{130'000});
                CHECK(below_wire(made.vine, axis) < near.below_wire);
                CHECK(ripe_count_nodes(made.vine, axis).size() >= 8);
                continue;
            }
            for (const Node& node : made.vine.nodes_of(axis)) CHECK(mean_diameter(node) <= wanted.others);
            if (ripe_count_nodes(made.vine, axis).size() >= 2 && is_cane(made.vine, axis))
                CHECK(rules::mark_spur_size(rules::measure_spur(made.vine, house, axis, 2), house) == rules::no_mark);
        }
        CHECK(further == 1);
        // As a spur the near one is worth all that the rules give for its size.
        CHECK(rules::mark_spur_size(rules::measure_spur(made.vine, house, *made.vine.find(made.axis), 2), house) == rules::full_mark);
    });
}

TEST_CASE("climbed head: both crown points close below the wire, sawn scars and a dead stub on top, the wire's wood where it was") {
    over_vines<ClimbedHead>([](const Vine& vine, const Tempted& made, const ClimbedHead& wanted) {
        const Length wire = fruiting_wire_height(made.vine);
        for (const Side side : both_sides) {
            const Length below = wire - made.vine.find(made.vine.crown(side))->place.y;
            CHECK(below >= Length{});
            CHECK(below <= Length{40'000});
            // It stands as far along the wood from it as it did.
            CHECK(made.vine.origin(side) == vine.origin(side));
        }
        const Axis& stub = *made.vine.find(made.axis);
        CHECK(stub.state == AxisState::dead);
        CHECK(age(made.vine, stub) >= 3);
        CHECK(thickness(made.vine, stub) >= Length{wanted.stub.count * 9 / 10});
        CHECK(made.vine.nodes_of(stub).back().place.y > made.vine.find(made.vine.crown(wanted.side))->place.y + Length{40'000});
        int sawn = 0;
        for (const Wound& wound : made.vine.wounds) sawn += wound.tool == Tool::saw && wound.node.value >= made.vine.head.value - 1 && axis_of(wound.node) == axis_of(made.vine.head) && wound.major >= Length{20'000};
        CHECK(sawn >= 3);
        // No cane stands over the hedge of before, and what lay on the wire lies there.
        Length top;
        for (const Axis& axis : vine.axes)
            if (age(vine, axis) == 1 && axis.end == AxisEnd::hedge)
                for (const Node& node : vine.nodes_of(axis)) top = std::max(top, node.place.y);
        for (const Axis& axis : made.vine.axes) {
            if (age(made.vine, axis) == 1 && axis.node_count > 4)
                for (const Node& node : made.vine.nodes_of(axis)) CHECK(node.place.y <= top);
            if (!was_laid_last_winter(made.vine, axis)) continue;
            const auto now = made.vine.nodes_of(axis), before = vine.nodes_of(*vine.find(axis.id));
            for (std::size_t i = 0; i < before.size(); ++i) {
                CHECK(now[i].place.y >= before[i].place.y);
                if (before[i].place.y >= wire) CHECK(now[i].place.y == before[i].place.y);
            }
        }
    });
}

TEST_CASE("switches with numbers no wood can have are refused by name") {
    const Vine vine = test::grown_for_switches(5);
    const auto refused = [&](const Temptation& t) {
        const auto made = tempted(vine, t);
        REQUIRE_FALSE(made.has_value());
        return std::string(made.error().key.name);
    };
    AlleyCane alley;
    alley.azimuth = from_deg(20);
    CHECK(refused(alley) == "error.tempt.range");
    ShortRipeCane ripe;
    ripe.ripe = Length{900'000};
    CHECK(refused(ripe) == "error.tempt.range");
    ClimbedHead head;
    head.below_wire = Length{-50'000};
    CHECK(refused(head) == "error.tempt.range");
    SingleSpurPlace place;
    place.further_out = Length{20'000};
    CHECK(refused(place) == "error.tempt.range");
    BendBull bull;
    bull.diameter = Length{70'000};
    CHECK(refused(bull) == "error.tempt.range");
    TrunkSucker sucker;
    sucker.height = Length{2'000'000};
    CHECK(refused(sucker) == "error.tempt.range");
}
