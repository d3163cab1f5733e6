#include "scenarios/reference_vines/suggest.h"

#include <algorithm>

namespace spurwright::reference_vines {
namespace {

SuggestedBuds buds_of(Mass prunings, const BlockSuggestion& block, balance::SizeSet sizes) {
    SuggestedBuds suggested;
    const double kg = prunings.count / 1e6, spacing = in_m(block.block.spacing);
    suggested.winter = block.winter;
    suggested.prunings = prunings;
    suggested.kg_per_m = balance::size_of(kg, spacing);
    suggested.size = balance::size_class(suggested.kg_per_m, sizes);
    const balance::FormulaBuds asked = balance::buds_for(block.formula, kg);
    suggested.small_vine = asked.small_vine;
    suggested.buds = balance::bud_target(asked.buds, spacing);
    if (block.history) {
        suggested.by_history = block.history->median * kg;
        suggested.history_low = block.history->low * kg;
        suggested.history_high = block.history->high * kg;
    }
    return suggested;
}

} // namespace

BlockSuggestion suggest(const BlockBook& book, const balance::BudFormula& formula, balance::SizeSet sizes) {
    BlockSuggestion answer;
    answer.block = book.block;
    answer.formula = formula;
    answer.history = balance::own_history(kept_years(book.vines));
    for (const ReferenceVine& vine : book.vines)
        for (const Weighing& w : vine.winters) answer.winter = std::max(answer.winter, w.winter);
    std::vector<double> mg, kept, before, after;
    for (const ReferenceVine& vine : book.vines)
        for (const Weighing& w : vine.winters)
            if (w.winter < answer.winter) answer.before = std::max(answer.before, w.winter);
    for (const ReferenceVine& vine : book.vines) {
        if (vine.winters.empty() || vine.winters.back().winter != answer.winter) continue;
        const Weighing& w = vine.winters.back();
        SuggestedBuds suggested = buds_of(w.prunings, answer, sizes);
        suggested.tag = vine.tag;
        suggested.row = vine.row;
        suggested.place = vine.place;
        suggested.kept = w.buds;
        mg.push_back(w.prunings.count);
        if (w.buds) kept.push_back(static_cast<double>(*w.buds));
        if (vine.winters.size() > 1 && vine.winters[vine.winters.size() - 2].winter == answer.before) {
            before.push_back(vine.winters[vine.winters.size() - 2].prunings.count / 1e6);
            after.push_back(w.prunings.count / 1e6);
        }
        answer.vines.push_back(std::move(suggested));
    }
    if (!kept.empty()) answer.kept = balance::vine_spread(std::move(kept)).median;
    answer.change = balance::paired_change(before, after, 0.95);
    if (mg.empty()) return answer;
    const double middle = balance::vine_spread(std::move(mg)).median;
    answer.middle = buds_of(Mass{rounded(middle)}, answer, sizes);
    answer.low = buds_of(Mass{rounded(middle * (1 - weight_off))}, answer, sizes).buds.smaller;
    answer.high = buds_of(Mass{rounded(middle * (1 + weight_off))}, answer, sizes).buds.smaller;
    return answer;
}

} // namespace spurwright::reference_vines
