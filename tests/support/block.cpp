#include "tests/support/block.h"

#include <array>

#include "sim/growth/history.h"
#include "sim/growth/history_pruner.h"
#include "sim/growth/row.h"
#include "sim/growth/season.h"
#include "sim/pruning/prunings.h"
#include "sim/vine/vine_query.h"

namespace spurwright::test {
namespace {

double trunk_mm(const Vine& vine) {
    const Length height{300'000};
    for (const Axis& axis : vine.axes)
        if (is_trunk(axis))
            for (const Node& node : vine.nodes_of(axis))
                if (node.place.y >= height) return in_mm(node.major);
    return 0;
}

BlockVine counted(const growth::Site& site, double load) {
    const auto winters = growth::grow_winters(site);
    const Vine& before = (*winters)[winters->size() - 2];
    growth::PrunerHabits habits = growth::habits_in(site, before.winter);
    habits.load *= load;
    const Vine cut = *prune(before, growth::history_plan(before, habits));
    growth::SeasonSettings settings;
    settings.site_capacity = growth::own_site_capacity(cut, settings.constants);
    growth::SeasonNotes notes;
    const Vine vine = growth::season(cut, settings, &notes);

    BlockVine found;
    found.prunings_kg = prunings(vine, vine).before.one_year_mg / 1e6;
    found.count_shoots = notes.burst + notes.doubles_kept;
    found.non_count = notes.non_count_kept + notes.suckers_kept;
    found.bunches = notes.bunches;
    found.fruit_kg = notes.yield_kg;
    found.trunk_mm = trunk_mm(vine);
    for (const Axis& axis : vine.axes)
        if (is_cane(vine, axis)) found.nodes.push_back(axis.node_count - 1.0);
    return found;
}

}  // namespace

std::vector<SystemSite> system_sites() {
    std::vector<SystemSite> all{{"two canes", {}}, {"one cane", {}}, {"spur cordon", {}}, {"two trunks", {}}};
    all[1].site.system = System::one_cane;
    all[2].site.system = System::cordon;
    all[3].site.trunks = 2;
    return all;
}

std::vector<BlockVine> block(growth::Site site, const BlockWish& wish) {
    constexpr std::array loads{0.7, 1.0, 1.3, 1.6};
    std::vector<BlockVine> all;
    const growth::Constants constants;
    for (std::uint64_t row = 0; static_cast<int>(all.size()) < wish.vines; ++row)
        for (const double patch : growth::row_patches(wish.seed + row, wish.a_row, constants)) {
            if (static_cast<int>(all.size()) == wish.vines) break;
            const std::uint64_t nth = all.size();
            site.seed = wish.seed + nth;
            site.capacity_share = patch;
            all.push_back(counted(site, wish.mixed_loads ? loads[nth % loads.size()] : 1.0));
        }
    return all;
}

}  // namespace spurwright::test
