// Checks 29, 35, 37 to 39 and 46: what the wood of single vines must obey.
#include <algorithm>
#include <cmath>

#include "sim/checks/census.h"
#include "sim/checks/compared.h"
#include "sim/core/numeric.h"
#include "sim/growth/rhythm.h"
#include "sim/pruning/legal_edits.h"
#include "sim/pruning/prunings.h"

namespace spurwright::checks {
namespace {

growth::Site wood_site(std::uint64_t seed, int age = 12) {
    growth::Site site;
    site.seed = seed;
    site.age = age;
    return site;
}

double section(const Node& node) { return static_cast<double>(node.major.count) * node.minor.count; }

// Junctions of this vine whose wood below is thinner than what it bears.
int too_thin(const Vine& vine) {
    int count = 0;
    for (const Axis& axis : vine.axes) {
        const bool perennial = is_trunk(axis) || age(vine, axis) >= 3;
        double beyond = 0;
        for (std::uint32_t i = axis.node_count; i-- > 0;) {
            const Node& node = vine.nodes_of(axis)[i];
            double borne = 0;
            for (const Axis& child : vine.axes)
                if (child.parent == node.id && child.state == AxisState::live) borne += section(vine.nodes_of(child)[0]);
            count += section(node) < (borne + (perennial ? beyond : 0)) * (1 - 1e-6);
            beyond += borne;
        }
    }
    return count;
}

// Places of a cane where the rhythm or the ranks are broken.
int broken_rhythm(const Vine& vine, const Axis& cane) {
    int count = 0;
    const auto nodes = vine.nodes_of(cane);
    for (std::uint32_t i = 1; i < nodes.size(); ++i) {
        count += nodes[i].rank != -nodes[i - 1].rank;
        count += (nodes[i].tendril_class != 0) != (nodes[i].tendril != Tendril::none || nodes[i].bunch != Bunch::none);
        if (i < 4 || i + 2 >= nodes.size()) continue;
        count += (nodes[i].tendril_class != 0) + (nodes[i + 1].tendril_class != 0) + (nodes[i + 2].tendril_class != 0) != 2;
    }
    return count;
}

double cylinder(const Node& node, double length_mm) {
    return density_fresh * numeric::pi / 4 * in_mm(node.major) * in_mm(node.minor) * length_mm;
}

// One-year wood that a pruning took, by where each axis is cut now: apart from how prunings are weighed.
double taken_by_rows(const Vine& before, const Vine& after) {
    double mg = 0;
    for (std::size_t row = 0; row < before.axes.size(); ++row) {
        const Axis& axis = before.axes[row];
        if (age(before, axis) != 1) continue;
        const auto nodes = before.nodes_of(axis), left = after.nodes_of(after.axes[row]);
        const Wound* cut = nullptr;
        for (const Wound& wound : after.wounds)
            if (wound.winter == after.winter && wound.axis == axis.id && (!cut || wound.node < cut->node || (wound.node == cut->node && wound.beyond < cut->beyond)))
                cut = &wound;
        double stub = cut ? in_mm(cut->beyond) : 0.0;
        if (left[0].removed && axis.parent && after.find(axis.parent)->removed) stub = 0;
        for (std::uint32_t i = 0; i < nodes.size(); ++i) {
            if (!left[i].removed) continue;
            mg += cylinder(nodes[i], in_mm(nodes[i].joint) - stub);
            stub = 0; // in the first joint that came off
        }
        const double tip = std::max(0.0, in_mm(axis.ripe - along(before, axis, axis.node_count - 1)));
        mg += cylinder(nodes.back(), left.back().removed ? tip : cut ? std::max(0.0, tip - stub) : 0.0);
    }
    return mg;
}

// Cuts in older wood that bear no one-year wood further out: what they add to the prunings, mg, and how many were tried.
std::pair<double, int> bare_cuts(const Vine& vine) {
    double added = 0;
    int tried = 0;
    for (const CutRange& range : legal_edits(vine).cuts) {
        const Axis& axis = *vine.find(axis_of(range.past));
        if (age(vine, axis) < 2 || is_trunk(axis)) continue;
        Vine cut = vine;
        if (!prune_one(cut, Cut{range.past, range.highest, Tool::saw, {}}, vine)) continue;
        const bool bears = std::any_of(cut.axes.begin(), cut.axes.end(),
                                       [&](const Axis& a) { return a.removed && age(cut, a) == 1; });
        if (bears) continue;
        const Prunings p = prunings(vine, cut);
        if (p.removed.older_mg <= 0) continue;
        added = std::max(added, std::fabs(p.removed.one_year_mg));
        ++tried;
    }
    return {added, tried};
}

} // namespace

Numbers ideal_cane() {
    Numbers numbers;
    for (const auto& [name, thick] : {std::pair{"7.1 mm, g", 7.1}, std::pair{"7.5 mm, g", 7.5}, std::pair{"8.0 mm, g", 8.0}}) {
        // Its joints as rows of a table, weighed as prunings are: thirteen and a half joints of 60 mm, in halves.
        Node joint;
        joint.joint = from_mm(30);
        joint.major = joint.minor = from_mm(thick);
        numbers.push_back(within(name, 30, 40, 27 * joint_mass_mg(joint) / 1000));
    }
    return numbers;
}

Numbers dry_share() { return {within("", 1 - 0.45, 1 - 0.40, growth::Constants{}.dry_over_fresh)}; }

Numbers area_rule() {
    int thin = 0;
    for (std::uint64_t seed = 0; seed < 30; ++seed) thin += too_thin(*growth::grow_vine(wood_site(seed, 20)));
    return {none("junctions too thin", thin)};
}

Numbers tendril_pattern() {
    int broken = 0, bare_labruscana = 0, canes = 0;
    for (const int bare : {2, 3}) {
        for (int i = 1; i <= bare; ++i) broken += growth::tendril_class(i, bare) != 0;
        for (int i = bare + 1; i + 2 <= 24; ++i) {
            int places = 0;
            for (int k = i; k < i + 3; ++k) places += growth::tendril_class(k, bare) != 0;
            broken += places != 2;
            bare_labruscana += growth::tendril_class(i, bare, true) == 0;
        }
    }
    for (std::uint64_t seed = 0; seed < 20; ++seed) {
        const Vine vine = *growth::grow_vine(wood_site(seed));
        for (const Axis& axis : vine.axes) {
            if (!is_cane(vine, axis)) continue;
            broken += broken_rhythm(vine, axis);
            ++canes;
        }
    }
    return {none("places out of rhythm, vinifera", broken), none("bare places, labruscana", bare_labruscana),
            within("canes looked at", 400, no_limit, canes)};
}

Numbers weight_conserved() {
    double worst = 0, added = 0;
    int tried = 0;
    for (std::uint64_t seed = 0; seed < 40; ++seed) {
        const Vine vine = *growth::grow_vine(wood_site(seed));
        const Vine cut = *prune(vine, growth::history_plan(vine, growth::habits_of(static_cast<Pruner>(seed % 8))));
        const Prunings p = prunings(vine, cut);
        const double before = p.before.one_year_mg, by_rows = taken_by_rows(vine, cut);
        worst = std::max(worst, std::fabs(before - by_rows - p.kept.one_year_mg) / before);
        const auto [one_year, cuts] = bare_cuts(vine);
        added = std::max(added, one_year);
        tried += cuts;
    }
    return {within("largest relative error", 0, 1e-9, worst), within("older wood's cuts change prunings, mg", 0, 1e-6, added),
            within("such cuts tried", 10, no_limit, tried)};
}

Numbers summer_conserved() {
    double worst = 0, least_hedged = 1e18, trimmings_weighed = 0;
    for (std::uint64_t seed = 0; seed < 40; ++seed) {
        growth::Site site = wood_site(seed);
        site.vigour = static_cast<Vigour>(seed % 3);
        const Vine vine = *growth::grow_vine(site);
        const Vine cut = *prune(vine, growth::history_plan(vine, growth::habits_of(Pruner::good)));
        growth::SeasonNotes n;
        const Vine next = growth::season(cut, {}, &n);
        const Vine again = *prune(next, growth::history_plan(next, growth::habits_of(Pruner::good)));
        const Prunings p = prunings(next, again);
        const double summer = n.thinned_mg + n.leaf_removal_mg + n.hedged_mg;
        const double found = taken_by_rows(next, again) + p.kept.one_year_mg + summer + n.fallen_mg;
        worst = std::max(worst, std::fabs(n.grown_mg - found) / n.grown_mg);
        least_hedged = std::min(least_hedged, n.hedged_mg);
        trimmings_weighed += p.before.one_year_mg > n.grown_mg - summer;
    }
    return {within("largest relative error", 0, 1e-9, worst), none("vines whose trimmings were weighed", trimmings_weighed),
            within("least hedged, mg", 1, no_limit, least_hedged)};
}

} // namespace spurwright::checks
