// L24: prune and judge one plan against a copy of the vine's tables. L28: how the cost of pruning, judging, undo and
// the best plan grows with the vine.
#include "sim/growth/history.h"
#include "sim/growth/history_pruner.h"
#include "sim/planning/best_plan.h"
#include "sim/pruning/edit_log.h"
#include "sim/rules/judge.h"
#include "sim/vine/canonical_text.h"
#include "sim/vine/vine_builder.h"
#include "sim/vine/vine_query.h"
#include "tests/bench/ratio.h"
#include "tests/support/random_tables.h"

using namespace spurwright;

namespace {

// The vine whose one-year wood comes nearest to the reference load of 1,150 nodes among a few grown ones.
Vine reference_vine() {
    Vine best;
    int nearest = 1 << 30;
    for (std::uint64_t seed = 1; seed <= 40; ++seed) {
        growth::Site site;
        site.vigour = Vigour::high;
        site.spacing_m = 2.4;
        site.seed = seed;
        const Vine vine = growth::grow_vine(site).value();
        int nodes = 0;
        for (const Axis& axis : vine.axes) nodes += age(vine, axis) == 1 ? static_cast<int>(axis.node_count) : 0;
        if (std::abs(nodes - 1150) < nearest) nearest = std::abs(nodes - 1150), best = vine;
    }
    return best;
}

template <class Row>
std::size_t bytes_of(const std::vector<Row>& rows) { return rows.size() * sizeof(Row); }

// Copies every table into warm memory, as a floor: no allocation.
class TableCopy {
public:
    explicit TableCopy(const Vine& vine) : vine_(vine) {
        memory_.resize(bytes_of(vine.axes) + bytes_of(vine.nodes) + bytes_of(vine.buds) + bytes_of(vine.wounds) + bytes_of(vine.ties) + bytes_of(vine.laid));
    }
    std::uint64_t operator()() {
        char* at = memory_.data();
        const auto put = [&](const auto& rows) { std::memcpy(at, static_cast<const void*>(rows.data()), bytes_of(rows)), at += bytes_of(rows); };
        put(vine_.axes), put(vine_.nodes), put(vine_.buds), put(vine_.wounds), put(vine_.ties), put(vine_.laid);
        return static_cast<unsigned char>(memory_[memory_.size() / 2]);
    }

private:
    const Vine& vine_;
    std::vector<char> memory_;
};

// A vine of `canes` upright canes of 24 joints on one two-year cane, and the cuts that take all but one off.
Vine comb(int canes) {
    VineBuilder b;
    b.vine.winter = 4;
    b.vine.spacing = {3'600'000};
    b.vine.row_spacing = {2'400'000};
    b.vine.wires = {{WireId{1}, WireKind::fruiting, {900'000}, {}, WireState::up}};
    b.vine.head = node_id(AxisId{1}, 1);
    b.add_axis(AxisId{1}, {}, 1).ripe = {800'000};
    b.add_node({}, {40'000}, {38'000}, {});
    b.add_node({800'000}, {40'000}, {38'000}, {{0}, {800'000}, {0}});
    b.add_axis(AxisId{2}, b.vine.head, 3).side = Side::right;
    b.add_node({4'000}, {13'000}, {12'000}, {{0}, {804'000}, {0}});
    for (int i = 1; i <= canes; ++i) b.add_node({20'000}, {12'000}, {12'000}, {{i * 20'000}, {804'000}, {0}});
    for (int i = 1; i <= canes; ++i) {
        Axis& axis = b.add_axis(AxisId{static_cast<std::uint32_t>(i + 2)}, node_id(AxisId{2}, static_cast<std::uint32_t>(i)), 4);
        axis.side = Side::right;
        axis.ripe = {24 * 60'000};
        for (int n = 0; n <= 24; ++n) {
            b.add_node({n == 0 ? 4'000 : 60'000}, {9'000}, {8'500}, {{i * 20'000}, {808'000 + n * 60'000}, {0}});
            b.add_bud(n == 0 ? BudKind::crown : BudKind::node);
        }
    }
    return b.build().value();
}

Plan clearing(const Vine& vine) {
    Plan plan;
    for (const Axis& axis : vine.axes)
        if (is_cane(vine, axis) && axis.id.value > 3) plan.edits.push_back(Cut{node_id(axis.id, 0), {8'000}, Tool::shears, {}});
    plan.edits.push_back(Lay{AxisId{3}, Side::right, 2});
    return plan;
}

}  // namespace

int main(int argc, char** argv) {
    bench::Bench bench(argc, argv);
    const rules::HouseRules house;

    const Vine vine = reference_vine();
    const Plan plan = growth::history_plan(vine, growth::habits_of(Pruner::good));
    TableCopy copy(vine);
    std::printf("reference vine: %zu axes, %zu nodes, %zu buds, plan of %zu edits\n", vine.axes.size(), vine.nodes.size(), vine.buds.size(), plan.edits.size());
    const rules::Offers offers = rules::offers(vine, house);
    const rules::Asked asked = rules::asked(offers, house);
    bench.ratio("L24 prune and judge one plan / copy of the vine's tables", bench::Bar::at_most, 30,
                [&] { return static_cast<std::uint64_t>(rules::judge(vine, prune(vine, plan).value(), house, offers, asked).points.count); }, 20,
                [&] { return copy(); }, 400);

    const std::vector<double> sizes{12, 24, 48, 96};
    std::vector<Vine> combs;
    std::vector<Plan> plans;
    for (const double size : sizes) {
        combs.push_back(comb(static_cast<int>(size)));
        plans.push_back(clearing(combs.back()));
    }
    bench.slope("L28 prune by replay, in canes (edits grow with them)", 1.1, sizes, [&](std::size_t i) {
        return [&, i] { return static_cast<std::uint64_t>(prune(combs[i], plans[i]).value().wounds.size()); };
    }, 50);
    std::vector<Vine> after;
    for (std::size_t i = 0; i < sizes.size(); ++i) after.push_back(prune(combs[i], plans[i]).value());
    bench.slope("L28 rules for one plan, in nodes", 1.1, sizes, [&](std::size_t i) {
        return [&, i] { return static_cast<std::uint64_t>(rules::judge(combs[i], after[i], house).points.count) + 1; };
    }, 20);
    bench.slope("L28 hash of a vine, in nodes", 1.1, sizes, [&](std::size_t i) { return [&, i] { return vine_hash(combs[i]); }; }, 20);
    const std::vector<double> canes{12, 24, 48};
    std::vector<planning::Tables> tables;
    for (const double c : canes) tables.push_back(test::reference_tables(7, static_cast<int>(c) / 2, static_cast<int>(c) / 2, 11));
    bench.slope("L28 best plan without the bound, in canes", 2.2, canes, [&](std::size_t i) {
        return [&, i] { return static_cast<std::uint64_t>(planning::best_pick(tables[i], planning::Bound::off)->sum); };
    }, 3);
    return bench.status();
}
