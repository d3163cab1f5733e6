#include "scenarios/reference_vines/vine_target.h"

#include <algorithm>
#include <cmath>

#include "scenarios/commands/formula_option.h"
#include "scenarios/reference_vines/book.h"
#include "sim/balance/vine_size.h"
#include "sim/growth/history.h"
#include "sim/growth/history_pruner.h"
#include "sim/pruning/plan.h"
#include "sim/pruning/prunings.h"
#include "sim/vine/vine_query.h"

namespace spurwright::reference_vines {
namespace {

// All our choice.
constexpr int vines_drawn = 12;
constexpr std::size_t canes_to_choose_among = 5;
constexpr double spacing_step_m = 0.05, least_code_m = 0.9, most_code_m = 3.0;
constexpr int youngest = 8, ages = 8; // winters: grown up, and no needlessly old head

// Small vines stand where growth is weak.
Vigour vigour_for(const VineTarget& target) {
    switch (balance::size_class(balance::size_of(target.prunings.count / 1e6, in_m(target.spacing)), balance::SizeSet::cool)) {
        case balance::SizeClass::small:
        case balance::SizeClass::target: return Vigour::low;
        case balance::SizeClass::large: return Vigour::moderate;
        case balance::SizeClass::excessive: return Vigour::high;
    }
    return Vigour::moderate;
}

} // namespace

std::optional<VineTarget> target_of(const Block& block, const ReferenceVine& vine) {
    if (vine.winters.empty()) return std::nullopt;
    const Weighing& last = vine.winters.back();
    return VineTarget{block.name, vine.tag, block.invented, last.winter, last.prunings, block.spacing, block.formula.empty() ? std::string(usual_formula) : block.formula};
}

AskedBuds asked_buds(const VineTarget& target) {
    const auto formula = commands::read_formula(target.formula);
    const balance::FormulaBuds by_weight = balance::buds_for(formula ? *formula : balance::BudFormula{}, target.prunings.count / 1e6);
    AskedBuds asked{balance::bud_target(by_weight.buds, in_m(target.spacing)), 0, by_weight.small_vine};
    asked.number = std::max(1, balance::whole_buds(asked.buds.smaller));
    return asked;
}

Result<std::string> vine_like(const VineTarget& target, const std::function<std::uint64_t()>& fresh_seed) {
    std::string nearest;
    double off = 0;
    for (int i = 0; i < vines_drawn; ++i) {
        growth::Site site;
        site.seed = fresh_seed() & ((std::uint64_t{1} << 40) - 1);
        site.age = youngest + static_cast<int>(site.seed % ages);
        site.spacing_m = spacing_step_m * std::round(std::clamp(in_m(target.spacing), least_code_m, most_code_m) / spacing_step_m);
        site.vigour = vigour_for(target);
        const auto coded = growth::coded(site);
        if (!coded) continue;
        const std::string code = print_code(*coded);
        const auto said = read_code(code);
        const auto read = said ? growth::site_of(*said) : Result<growth::Site>(failure(said.error()));
        const auto vine = read ? growth::grow_vine(*read) : Result<Vine>(failure(read.error()));
        if (!vine || cane_candidates(*vine).size() < canes_to_choose_among) continue;
        const auto pruned = prune(*vine, growth::history_plan(*vine, growth::habits_of(Pruner::good)));
        if (!pruned) continue;
        const double now = std::abs(prunings(*vine, *pruned).removed.one_year_mg - target.prunings.count);
        if (!nearest.empty() && now >= off) continue;
        nearest = code;
        off = now;
    }
    if (nearest.empty()) return failure({Fault::bad_file, {"screen.message.no-next-vine"}, {}, {}});
    return nearest;
}

} // namespace spurwright::reference_vines
