#include "tests/support/little_vine.h"

#include <cstdio>
#include <cstdlib>

#include "sim/vine/vine_builder.h"

namespace spurwright::test {
namespace {

struct Drawn { double joint, major, minor; double x, y, z; };

void draw_axis(VineBuilder& b, std::uint32_t id, NodeId on, int born, Side side, double ripe, AxisEnd end, std::initializer_list<Drawn> nodes) {
    Axis& axis = b.add_axis(AxisId{id}, on, born);
    axis.side = side;
    axis.ripe = from_mm(ripe);
    axis.end = end;
    const bool one_year = born == b.vine.winter;
    for (const Drawn& d : nodes) {
        const Node& node = b.add_node(from_mm(d.joint), from_mm(d.major), from_mm(d.minor), {from_mm(d.x), from_mm(d.y), from_mm(d.z)});
        if (!one_year) continue;
        const std::uint32_t index = index_of(node.id);
        if (index == 0) {
            b.add_bud(BudKind::crown);
            b.add_bud(BudKind::crown);
        } else {
            b.add_bud(BudKind::node, index % 2 == 1 ? Points::outward : Points::inward);
        }
    }
}

}  // namespace

Vine little_vine() {
    VineBuilder b;
    Vine& v = b.vine;
    v.winter = 4;
    v.spacing = {1'800'000};
    v.row_spacing = {2'400'000};
    v.capacity = 0;
    v.wires = {{WireId{1}, WireKind::fruiting, {900'000}, {}, WireState::up},
               {WireId{2}, WireKind::catching, {1'200'000}, {45'000}, WireState::down},
               {WireId{3}, WireKind::catching, {1'500'000}, {45'000}, WireState::down}};
    v.neighbours = {Neighbour{NeighbourKind::vine, {850'000}}, Neighbour{NeighbourKind::vine, {850'000}}};
    const NodeId head = node_id(AxisId{1}, 2), a2_1 = node_id(AxisId{2}, 1), a2_2 = node_id(AxisId{2}, 2), a3_1 = node_id(AxisId{3}, 1), a3_2 = node_id(AxisId{3}, 2);
    v.head = head;
    v.origin_left = Length{0};
    draw_axis(b, 1, {}, 1, Side::none, 800, AxisEnd::tip, {{0, 40, 38, 0, 0, 0}, {400, 38, 36, 0, 400, 0}, {400, 36, 34, 0, 800, 0}});
    draw_axis(b, 2, head, 3, Side::left, 203, AxisEnd::cut, {{4, 13, 12.4, -20, 806, 0}, {90, 12.6, 12, -60, 882, 0}, {93, 12, 11.4, -150, 900, 0}});
    draw_axis(b, 3, head, 3, Side::right, 93, AxisEnd::cut, {{3, 11, 10.6, 20, 804, 0}, {30, 10.6, 10.2, 36, 828, 0}, {45, 10.2, 9.8, 57, 866, 0}});
    draw_axis(b, 4, a2_1, 4, Side::left, 340, AxisEnd::tip,
              {{4, 9.4, 8.8, -62, 886, 0}, {40, 9.1, 8.6, -62, 926, 0}, {60, 8.8, 8.3, -62, 986, 0}, {70, 8.6, 8.1, -62, 1056, 0}, {70, 8.3, 7.8, -62, 1126, 0}, {65, 8, 7.5, -62, 1191, 0}});
    draw_axis(b, 5, a2_2, 4, Side::left, 360, AxisEnd::tip,
              {{4, 10, 9.4, -152, 904, 0}, {45, 9.7, 9.1, -152, 949, 0}, {65, 9.4, 8.8, -152, 1014, 0}, {75, 9.1, 8.6, -152, 1089, 0}, {75, 8.8, 8.3, -152, 1164, 0}, {70, 8.5, 8, -152, 1234, 0}});
    draw_axis(b, 6, a3_1, 4, Side::right, 130, AxisEnd::tip, {{3, 7.2, 6.8, 42, 831, 0}, {35, 7, 6.6, 42, 866, 0}, {55, 6.8, 6.4, 42, 921, 0}});
    draw_axis(b, 7, a3_2, 4, Side::right, 290, AxisEnd::tip,
              {{4, 9, 8.5, 61, 870, 0}, {40, 8.8, 8.3, 61, 910, 0}, {62, 8.6, 8.1, 61, 972, 0}, {72, 8.4, 7.9, 61, 1044, 0}, {70, 8.2, 7.7, 61, 1114, 0}});
    v.wounds = {{WoundId{1}, AxisId{2}, a2_2, {20'000}, {11'600}, {11'000}, 1, 3, Tool::shears, {}, false},
                {WoundId{2}, AxisId{3}, a3_2, {18'000}, {10'000}, {9'600}, 1, 3, Tool::shears, {}, false}};
    v.laid = {{AxisId{2}, 3, Side::left, 2, {18'000}, a2_1, LaidState::held}};
    v.ties = {{TieId{1}, a2_1, {15'000}, 3, true, TieState::sunk}};
    auto built = b.build();
    if (!built) {
        std::fprintf(stderr, "the little vine breaks %s (%s)\n", built.error().key.name.data(), std::get<std::string>(built.error().arguments[0].value).c_str());
        std::abort();
    }
    return *std::move(built);
}

}  // namespace spurwright::test
