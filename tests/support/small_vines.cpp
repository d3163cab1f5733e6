#include "tests/support/small_vines.h"

#include <cmath>
#include <cstdio>
#include <cstdlib>

#include "sim/vine/vine_builder.h"
#include "tests/support/little_vine.h"

namespace spurwright::test {
namespace {

// A straight shoot: mm, and a direction that need not have length 1.
struct Shoot {
    std::uint32_t id;
    NodeId on;
    int born;
    Side side;
    double x, y, z;  // of the crown
    double dx, dy, dz;
    int nodes;           // besides the crown
    double joint, base;  // length of a joint; larger diameter at the base, tapering to 0.7 of it
    double collar = 4, ripe_share = 1;
};

class Pen {
public:
    explicit Pen(int winter) {
        b.vine.winter = winter;
        b.vine.spacing = {1'200'000};
        b.vine.row_spacing = {2'400'000};
        b.vine.wires = {{WireId{1}, WireKind::fruiting, {900'000}, {}, WireState::up},
                        {WireId{2}, WireKind::catching, {1'200'000}, {45'000}, WireState::up}};
        b.vine.neighbours = {Neighbour{NeighbourKind::vine, {550'000}}, Neighbour{NeighbourKind::none, {}}};
    }

    // A trunk of three joints up to the head at 0.8 m.
    NodeId trunk() {
        Axis& axis = b.add_axis(AxisId{1}, {}, 1);
        axis.side = Side::none;
        axis.ripe = from_mm(800);
        b.add_node({}, from_mm(44), from_mm(42), {});
        for (const double y : {100.0, 500.0, 800.0})
            b.add_node(from_mm(y == 100 ? 100 : y == 500 ? 400 : 300), from_mm(40), from_mm(38), {{}, from_mm(y), {}});
        b.vine.head = node_id(AxisId{1}, 3);
        return b.vine.head;
    }

    void shoot(const Shoot& s, std::vector<int> dead_buds = {}, int spot_at = -1) {
        Axis& axis = b.add_axis(AxisId{s.id}, s.on, s.born);
        axis.side = s.side;
        axis.ripe = from_mm(std::floor(s.joint * s.nodes * s.ripe_share));
        const bool one_year = s.born == b.vine.winter;
        axis.end = one_year ? AxisEnd::tip : AxisEnd::cut;
        const double length = std::sqrt(s.dx * s.dx + s.dy * s.dy + s.dz * s.dz);
        for (int i = 0; i <= s.nodes; ++i) {
            const double along = s.joint * i / length, d = s.base * (1 - 0.3 * i / (s.nodes + 1.0));
            Node& node =
                b.add_node(from_mm(i == 0 ? s.collar : s.joint), from_mm(d), from_mm(d * 0.95),
                           {from_mm(s.x + s.dx * along), from_mm(s.y + s.dy * along), from_mm(s.z + s.dz * along)});
            if (i == spot_at) node.harm = Harm::spot;
            if (!one_year) continue;
            if (i == 0) {
                b.add_bud(BudKind::crown);
                b.add_bud(BudKind::crown);
                continue;
            }
            Bud& bud = b.add_bud(BudKind::node, i % 2 == 1 ? Points::outward : Points::inward);
            for (const int dead : dead_buds)
                if (dead == i) bud.harmed = true, bud.primary = bud.secondary = bud.tertiary = false;
        }
    }

    Vine done() {
        auto built = b.build();
        if (!built) {
            std::fprintf(stderr, "a small vine breaks %s (%s)\n", built.error().key.name.data(),
                         std::get<std::string>(built.error().arguments[0].value).c_str());
            std::abort();
        }
        return *std::move(built);
    }

    VineBuilder b;
};

NodeId on(std::uint32_t axis, std::uint32_t index) { return node_id(AxisId{axis}, index); }

Laid laid_last_winter(std::uint32_t axis, Side side, int winter) {
    return {AxisId{axis}, winter - 1, side, 2, {15'000}, on(axis, 1), LaidState::held};
}

}  // namespace

Vine one_sided_vine() {
    Pen pen(5);
    const NodeId head = pen.trunk();
    pen.shoot({2, head, 4, Side::left, -15, 805, 0, -1, 0.4, 0, 3, 50, 13});
    pen.shoot({3, head, 4, Side::right, 15, 805, 0, 1, 0.6, 0, 1, 40, 9});
    pen.shoot({4, on(2, 3), 5, Side::left, -155, 868, 0, -0.5, 1, 0.2, 6, 70, 9.5});
    pen.shoot({5, on(2, 2), 5, Side::left, -108, 850, 0, -0.3, 1, 0.1, 7, 66, 9.0});
    pen.shoot({6, on(2, 1), 5, Side::left, -62, 828, 0, -0.6, 1, -0.2, 5, 60, 7.1});
    pen.shoot({8, on(3, 1), 5, Side::right, 52, 832, 0, 0.4, 1, 0, 2, 40, 5.6});
    pen.b.vine.laid = {laid_last_winter(2, Side::left, 5)};
    pen.b.vine.origin_left = Length{0};
    return pen.done();
}

Vine sucker_vine() {
    Pen pen(6);
    const NodeId head = pen.trunk();
    pen.b.vine.graft = on(1, 1);
    pen.shoot({2, head, 5, Side::left, -15, 805, 0, -1, 0.5, 0, 2, 60, 12.6});
    pen.shoot({3, head, 5, Side::right, 15, 805, 0, 1, 0.5, 0, 2, 45, 11});
    pen.shoot({4, on(2, 2), 6, Side::left, -125, 862, 0, -0.6, 1, 0.1, 5, 68, 9.2});
    pen.shoot({5, on(2, 1), 6, Side::left, -70, 836, 0, -0.4, 1, -0.1, 3, 55, 7.4});
    pen.shoot({6, on(3, 1), 6, Side::right, 58, 828, 0, 0.4, 1, 0.1, 3, 52, 6.9});
    pen.shoot({7, on(3, 2), 6, Side::right, 98, 848, 0, 0.6, 1, -0.1, 5, 64, 8.8});
    pen.shoot({8, on(1, 2), 6, Side::right, 20, 500, 0, 0.5, 1, 0, 5, 70, 9.0});
    pen.shoot({9, on(1, 0), 6, Side::left, -22, 5, 0, -0.5, 1, 0, 4, 80, 8.2});
    pen.shoot({10, on(1, 2), 6, Side::left, -20, 505, 0, -0.5, 1, 0, 2, 60, 6.0, 3.27});
    pen.b.vine.laid = {laid_last_winter(2, Side::left, 6)};
    pen.b.vine.origin_left = Length{0};
    pen.b.vine.neighbours = {Neighbour{NeighbourKind::vine, {400'000}}, Neighbour{NeighbourKind::vine, {550'000}}};
    return pen.done();
}

Vine young_vine() {
    Pen pen(3);
    const NodeId head = pen.trunk();
    pen.shoot({2, head, 3, Side::left, -18, 806, 0, -0.6, 1, 0.1, 6, 72, 8.6});
    pen.shoot({3, on(1, 3), 3, Side::left, 4, 812, 10, 0.05, 1, 0.2, 4, 60, 7.7});
    pen.shoot({4, head, 3, Side::right, 18, 806, 0, 0.7, 1, 0, 5, 65, 8.1});
    pen.shoot({5, head, 2, Side::right, 20, 800, 0, 1, 0.3, 0, 1, 40, 10});
    pen.shoot({6, on(5, 1), 3, Side::right, 58, 812, 0, 0.4, 1, 0, 3, 55, 6.8});
    return pen.done();
}

Vine rough_vine() {
    Pen pen(9);
    const NodeId head = pen.trunk();
    // Old arms, then two-year wood on them.
    pen.shoot({2, head, 3, Side::left, -20, 802, 0, -1, 0.3, 0, 1, 60, 26});
    pen.shoot({3, head, 4, Side::right, 20, 802, 0, 1, 0.3, 0, 1, 50, 22});
    pen.shoot({4, on(2, 1), 8, Side::left, -80, 822, 0, -1, 0.6, 0, 3, 60, 14});
    pen.shoot({5, on(3, 1), 8, Side::right, 70, 818, 0, 1, 0.5, 0, 2, 30, 11});
    pen.shoot({6, on(4, 2), 8, Side::left, -180, 880, 5, -0.3, 1, 0, 1, 50, 6});  // an old lateral of last year's cane
    // Last summer's: twins, one with a dead bud, one spotted and green at the tip.
    pen.shoot({7, on(4, 1), 9, Side::left, -132, 852, 4, -0.5, 1, 0.2, 6, 62, 8.6}, {3});
    pen.shoot({8, on(4, 1), 9, Side::left, -130, 853, -4, -0.3, 1, -0.2, 5, 58, 8.0});
    pen.shoot({9, on(4, 3), 9, Side::left, -232, 908, 0, -0.2, 1, 0, 6, 70, 10.2, 4, 0.86}, {}, 2);
    pen.shoot({10, on(5, 1), 9, Side::right, 98, 832, 0, 0.4, 1, 0.1, 3, 50, 7.0}, {1});
    pen.shoot({11, on(5, 2), 9, Side::right, 124, 846, 0, 0.7, 1, -0.2, 7, 24, 8.4});
    pen.shoot({12, on(2, 0), 9, Side::left, -30, 806, 0, -0.1, 1, 0.5, 5, 66, 7.8, 2.35});  // water shoot near the head
    pen.shoot({13, on(3, 1), 9, Side::right, 60, 822, 6, 0.3, 1, 0.4, 1, 30, 5.2});
    pen.shoot({14, on(5, 2), 9, Side::right, 126, 844, 0, 0.2, 1, 0, 4, 60, 8.0});
    // Laterals on last summer's canes.
    pen.shoot({15, on(7, 2), 9, Side::left, -190, 970, 20, -1, 0.5, 0, 4, 30, 3.4});
    pen.shoot({16, on(7, 5), 9, Side::left, -270, 1130, 50, -1, 0.5, 0, 1, 2.4, 3.0, 1.2});
    pen.shoot({17, on(11, 3), 9, Side::right, 160, 905, 0, 1, 0.5, 0, 2, 25, 3.2});
    Vine& v = pen.b.vine;
    v.laid = {laid_last_winter(4, Side::left, 9)};
    v.origin_left = Length{60'000};
    v.origin_right = Length{50'000};
    Vine vine = pen.done();
    vine.axes[13].state = AxisState::dead;  // a14 died over the winter
    return vine;
}

Vine single_cane_vine() {
    Pen pen(6);
    pen.b.vine.system = System::one_cane;
    const NodeId head = pen.trunk();
    pen.shoot({2, head, 5, Side::left, -15, 795, 0, -1, 0.05, 0, 3, 40, 12.4});
    pen.shoot({3, head, 5, Side::right, 15, 803, 0, 1, 0.3, 0, 2, 35, 10});
    pen.shoot({4, on(2, 3), 6, Side::left, -135, 801, 0, -0.9, 1, 0.1, 5, 70, 9.4});
    pen.shoot({5, on(2, 1), 6, Side::left, -55, 797, 0, -0.3, 1, -0.1, 2, 55, 7.0});
    pen.shoot({6, on(3, 2), 6, Side::right, 82, 824, 0, 0.8, 1, 0, 6, 72, 9.0});
    pen.shoot({7, on(3, 1), 6, Side::right, 48, 814, 0, 0.5, 1, 0.1, 4, 60, 7.6});
    pen.b.vine.laid = {laid_last_winter(2, Side::left, 6)};
    pen.b.vine.origin_left = Length{0};
    pen.b.vine.neighbours = {Neighbour{NeighbourKind::vine, {0}}, Neighbour{NeighbourKind::vine, {0}}};
    return pen.done();
}

Vine cordon_vine() {
    Pen pen(6);
    pen.b.vine.system = System::cordon;
    const NodeId head = pen.trunk();
    pen.shoot({2, head, 3, Side::left, -15, 805, 0, -1, 0.15, 0, 4, 110, 24});
    pen.shoot({3, head, 3, Side::right, 15, 805, 0, 1, 0.15, 0, 4, 110, 24});
    pen.shoot({4, on(2, 1), 5, Side::left, -124, 835, 0, -0.1, 1, 0, 2, 30, 11});
    pen.shoot({5, on(2, 3), 5, Side::left, -342, 868, 0, 0, 1, 0, 1, 35, 10});
    pen.shoot({6, on(2, 4), 5, Side::left, -450, 884, 0, 0, 1, 0.1, 2, 40, 12});
    pen.shoot({7, on(3, 2), 5, Side::right, 233, 851, 0, 0, 1, 0, 2, 30, 10});
    pen.shoot({8, on(3, 4), 5, Side::right, 450, 884, 0, 0.1, 1, 0, 1, 45, 12});
    pen.shoot({9, on(4, 1), 6, Side::left, -128, 866, 0, -0.4, 1, 0.1, 4, 70, 8.4});
    pen.shoot({10, on(4, 2), 6, Side::left, -130, 896, 0, 0.1, 1, 0, 4, 66, 9.0});
    pen.shoot({11, on(5, 1), 6, Side::left, -342, 904, 0, 0.1, 1, 0, 4, 64, 7.1});
    pen.shoot({12, on(6, 1), 6, Side::left, -450, 925, 4, -0.8, 1, 0.2, 2, 55, 6.1});
    pen.shoot({13, on(6, 2), 6, Side::left, -450, 964, 8, 0, 1, 0, 4, 72, 9.8});
    pen.shoot({14, on(7, 1), 6, Side::right, 233, 882, 0, -0.3, 1, 0, 4, 60, 8.8});
    pen.shoot({15, on(7, 2), 6, Side::right, 233, 912, 0, 1.6, 1, 0, 4, 75, 8.1});
    pen.shoot({16, on(8, 1), 6, Side::right, 454, 930, 0, 0.2, 1, 0.1, 4, 58, 7.7});
    pen.shoot({17, on(3, 1), 6, Side::right, 124, 842, 0, 0, 1, 0.3, 3, 50, 6.6});
    for (const std::uint32_t arm : {2u, 3u})
        pen.b.vine.laid.push_back({AxisId{arm}, 3, arm == 2 ? Side::left : Side::right, 0, {15'000}, on(arm, 1), LaidState::held});
    pen.b.vine.neighbours = {Neighbour{NeighbourKind::vine, {550'000}}, Neighbour{NeighbourKind::vine, {550'000}}};
    return pen.done();
}

std::vector<NamedVine> small_vines() {
    return {{"little", little_vine()},
            {"one-sided", one_sided_vine()},
            {"sucker", sucker_vine()},
            {"young", young_vine()},
            {"rough", rough_vine()}};
}

}  // namespace spurwright::test
