// Every invariant of the tables is broken once, on the little vine, and named by its own key.
#include <doctest/doctest.h>

#include <functional>

#include "sim/vine/vine_builder.h"
#include "sim/vine/vine_check.h"
#include "sim/vine/vine_query.h"
#include "tests/support/little_vine.h"

using namespace spurwright;

namespace {

Axis& axis(Vine& v, std::uint32_t id) { return v.axes[row_of(v, *v.find(AxisId{id}))]; }
Node& node(Vine& v, std::uint32_t id, std::uint32_t index) { return v.nodes[axis(v, id).first_node + index]; }

struct Damage {
    const char* key;
    std::function<void(Vine&)> damage;
};

const std::vector<Damage>& faults() {
    static const std::vector<Damage> all{
        {"error.vine.winter", [](Vine& v) { v.winter = 0; }},
        {"error.vine.recipe", [](Vine& v) { v.recipe = 256; }},
        {"error.vine.seed", [](Vine& v) { v.seed = std::uint64_t{1} << 40; }},
        {"error.vine.spacing", [](Vine& v) { v.spacing = {599'999}; }},
        {"error.vine.row-spacing", [](Vine& v) { v.row_spacing = {4'100'001}; }},
        {"error.vine.capacity", [](Vine& v) { v.capacity = -1; }},
        {"error.vine.reserves", [](Vine& v) { v.reserves = {1001}; }},
        {"error.vine.last-weights", [](Vine& v) { v.last_yield = {-1}; }},
        {"error.vine.wire-order", [](Vine& v) { v.wires[1].id = v.wires[0].id; }},
        {"error.vine.wire-heights", [](Vine& v) { v.wires[1].height = {1}; }},
        {"error.vine.no-fruiting-wire", [](Vine& v) { v.wires.erase(v.wires.begin()); }},
        {"error.vine.no-axes", [](Vine& v) { v.axes.clear(), v.nodes.clear(), v.buds.clear(); }},
        {"error.vine.axis-order", [](Vine& v) { axis(v, 7).id = AxisId{6}; }},
        {"error.vine.ripe", [](Vine& v) { axis(v, 7).ripe = {-1}; }},
        {"error.vine.born", [](Vine& v) { axis(v, 7).born = 5; }},
        {"error.vine.order", [](Vine& v) { axis(v, 7).order = 3; }},
        {"error.vine.side", [](Vine& v) { axis(v, 7).side = Side::left; }},
        {"error.vine.side", [](Vine& v) { axis(v, 1).side = Side::left; }},
        {"error.vine.parent", [](Vine& v) { axis(v, 7).parent = node_id(AxisId{3}, 9); }},
        {"error.vine.parent-after", [](Vine& v) { axis(v, 2).parent = node_id(AxisId{3}, 1); }},
        {"error.vine.older-than-parent", [](Vine& v) { axis(v, 7).born = 2; }},
        {"error.vine.on-removed", [](Vine& v) { node(v, 3, 2).removed = true; }},
        {"error.vine.kept-on-removed", [](Vine& v) { node(v, 7, 1).removed = true; }},
        {"error.vine.kept-on-removed", [](Vine& v) { axis(v, 7).removed = true; }},
        {"error.vine.joint", [](Vine& v) { node(v, 7, 1).joint = {0}; }},
        {"error.vine.diameters", [](Vine& v) { node(v, 7, 1).minor = node(v, 7, 1).major + Length{1}; }},
        {"error.vine.diameters", [](Vine& v) { node(v, 7, 1).minor = {0}; }},
        {"error.vine.rank", [](Vine& v) { node(v, 7, 1).rank = 0; }},
        {"error.vine.tendril-class", [](Vine& v) { node(v, 7, 1).tendril_class = 3; }},
        {"error.vine.stretched", [](Vine& v) { node(v, 7, 1).place.y += Length{60}; }},
        {"error.vine.bud-order", [](Vine& v) { std::swap(v.buds[0].id, v.buds[1].id); }},
        {"error.vine.bud-kind", [](Vine& v) { v.buds[0].kind = BudKind::node; }},
        {"error.vine.head", [](Vine& v) { v.head = node_id(AxisId{1}, 1); }},
        {"error.vine.head", [](Vine& v) { v.head = {}; }},
        {"error.vine.crown-point", [](Vine& v) { v.crown_left = node_id(AxisId{2}, 1); }},
        {"error.vine.graft", [](Vine& v) { v.graft = node_id(AxisId{4}, 1); }},
        {"error.vine.wound-order", [](Vine& v) { v.wounds[1].id = v.wounds[0].id; }},
        {"error.vine.wound-place", [](Vine& v) { v.wounds[0].node = node_id(AxisId{9}, 0); }},
        {"error.vine.wound-face", [](Vine& v) { v.wounds[0].beyond = {-1}; }},
        {"error.vine.wound-time", [](Vine& v) { v.wounds[0].winter = 5; }},
        {"error.vine.wound-tilt", [](Vine& v) { v.wounds[0].tilt = {60'001}; }},
        {"error.vine.laid-order", [](Vine& v) { v.laid[0].axis = AxisId{9}; }},
        {"error.vine.laid", [](Vine& v) { v.laid[0].side = Side::none; }},
        {"error.vine.laid", [](Vine& v) { v.laid[0].half_wraps = 7; }},
        {"error.vine.tie-order", [](Vine& v) { v.ties.push_back(v.ties[0]); }},
        {"error.vine.tie", [](Vine& v) { v.ties[0].node = node_id(AxisId{9}, 0); }},
        {"error.vine.brush", [](Vine& v) { v.brush.push_back({BrushId{1}, node_id(AxisId{9}, 0), false}); }},
    };
    return all;
}

}  // namespace

TEST_SUITE("vine/vine-check") {
    TEST_CASE("a sound vine breaks nothing, and each damage is named by its own sentence") {
        CHECK_FALSE(check_vine(test::little_vine()));
        for (const Damage& fault : faults()) {
            CAPTURE(fault.key);
            Vine vine = test::little_vine();
            fault.damage(vine);
            const auto broken = check_vine(vine);
            REQUIRE(broken);
            CHECK(broken->key.name == fault.key);
            CHECK(broken->fault == Fault::bad_file);
        }
    }
    TEST_CASE("an axis without a crown is refused by the builder, and so is a wrong parent") {
        VineBuilder b;
        b.vine = test::little_vine();
        b.vine.axes.clear(), b.vine.nodes.clear(), b.vine.buds.clear();
        b.add_axis(AxisId{1}, {}, 1);
        CHECK(b.build().error().key.name == "error.vine.no-crown");
    }
    TEST_CASE("rows given in any order are sorted, order and sides are found by place") {
        const Vine little = test::little_vine();
        VineBuilder b;
        b.vine = little;
        b.vine.axes.clear(), b.vine.nodes.clear(), b.vine.buds.clear(), b.vine.laid.clear(), b.vine.wounds.clear(), b.vine.ties.clear();
        for (std::size_t i = little.axes.size(); i-- > 0;) {
            b.add_axis(little.axes[i].id, little.axes[i].parent, little.axes[i].born);
            for (const Node& n : little.nodes_of(little.axes[i])) b.add_node(n.joint, n.major, n.minor, n.place);
        }
        const Vine built = b.build(true).value();
        for (const Axis& a : little.axes) {
            CHECK(built.find(a.id)->order == a.order);
            CHECK(built.find(a.id)->side == a.side);
            CHECK(built.find(a.id)->node_count == a.node_count);
        }
    }
    TEST_CASE("what an axis is called follows from its age, its parent and its place") {
        const Vine v = test::little_vine();
        const BearingMap bearing(v);
        CHECK(is_trunk(*v.find(AxisId{1})));
        CHECK(age(v, *v.find(AxisId{2})) == 2);
        CHECK_FALSE(is_cane(v, *v.find(AxisId{2})));
        CHECK_FALSE(is_sucker(v, *v.find(AxisId{4})));
        CHECK_FALSE(is_water_shoot(v, *v.find(AxisId{4})));
        const auto borne = bearing.borne_by(row_of(v, *v.find(AxisId{2})));
        REQUIRE(borne.last - borne.first == 2);
        CHECK(v.axes[*borne.first].id == AxisId{4});
        CHECK(bearing.parent_row(*borne.first) == row_of(v, *v.find(AxisId{2})));
    }
    TEST_CASE("a cane low on the trunk or below the graft is a sucker, high on it a water shoot") {
        Vine v = test::little_vine();
        axis(v, 7).parent = node_id(AxisId{1}, 1);  // 400 mm below the head
        CHECK(is_sucker(v, *v.find(AxisId{7})));
        CHECK_FALSE(on_rootstock(v, *v.find(AxisId{7})));
        v.graft = node_id(AxisId{1}, 2);
        CHECK(on_rootstock(v, *v.find(AxisId{7})));
        axis(v, 7).parent = v.head;
        v.graft = {};
        CHECK_FALSE(is_sucker(v, *v.find(AxisId{7})));
        CHECK(is_water_shoot(v, *v.find(AxisId{7})));
    }
}
