#include "scenarios/reference_vines/compare.h"

#include <algorithm>
#include <map>

#include "sim/balance/vines_needed.h"

namespace spurwright::reference_vines {
namespace {

using balance::vine_spread;

double in_kg(Mass mass) { return mass.count / 1e6; }

const Weighing* weighed_in(const ReferenceVine& vine, int winter) {
    const auto at = std::lower_bound(vine.winters.begin(), vine.winters.end(), winter, [](const Weighing& w, int wanted) { return w.winter < wanted; });
    return at != vine.winters.end() && at->winter == winter ? &*at : nullptr;
}

WinterSummary summary_of(int winter, const std::vector<const Weighing*>& weighed, const Block& block, const CompareWish& wish) {
    WinterSummary summary;
    summary.winter = winter;
    std::vector<double> kg, per_m, buds, crop;
    for (const Weighing* w : weighed) {
        kg.push_back(in_kg(w->prunings));
        per_m.push_back(balance::size_of(kg.back(), in_m(block.spacing)));
        ++summary.classes[static_cast<std::size_t>(balance::size_class(per_m.back(), wish.sizes))];
        if (w->buds) buds.push_back(static_cast<double>(*w->buds) / kg.back());
        if (w->crop)
            if (const auto ratio = balance::crop_to_prunings(in_kg(*w->crop), kg.back())) crop.push_back(*ratio);
    }
    summary.kg = vine_spread(std::move(kg));
    summary.kg_per_m = vine_spread(std::move(per_m));
    summary.buds_a_kg = vine_spread(std::move(buds));
    summary.crop_ratio = vine_spread(std::move(crop));
    if (summary.kg.n >= 2) {
        summary.half_width = balance::half_width(summary.kg.deviation, summary.kg.n, wish.confidence);
        summary.vines_for_wish = balance::vines_for(summary.kg.deviation, wish.within * summary.kg.mean, wish.confidence);
    }
    return summary;
}

WinterChange change_of(int from, int to, const std::vector<ReferenceVine>& vines, const CompareWish& wish) {
    WinterChange change{from, to, {}, 0, 0};
    std::vector<double> before, after;
    for (const ReferenceVine& vine : vines) {
        const Weighing *a = weighed_in(vine, from), *b = weighed_in(vine, to);
        if (!a || !b) continue;
        before.push_back(in_kg(a->prunings));
        after.push_back(in_kg(b->prunings));
    }
    change.kg = balance::paired_change(before, after, wish.confidence);
    const double mean = vine_spread(before).mean;
    if (mean > 0) change.share = change.kg.mean / mean;
    if (change.kg.tested) change.vines_to_see = balance::vines_to_see(wish.within * mean, change.kg.deviation);
    return change;
}

} // namespace

std::vector<balance::KeptYear> kept_years(const std::vector<ReferenceVine>& vines) {
    std::vector<balance::KeptYear> years;
    for (const ReferenceVine& vine : vines)
        for (std::size_t i = 0; i + 1 < vine.winters.size(); ++i) {
            const Weighing &w = vine.winters[i], &next = vine.winters[i + 1];
            if (w.buds && next.winter == w.winter + 1) years.push_back({static_cast<double>(*w.buds), in_kg(w.prunings), in_kg(next.prunings)});
        }
    return years;
}

BlockComparison compare(const BlockBook& book, const CompareWish& wish) {
    BlockComparison answer;
    answer.block = book.block;
    std::vector<ReferenceVine> vines;
    for (ReferenceVine vine : book.vines) {
        if (wish.row && vine.row != *wish.row) continue;
        std::erase_if(vine.winters, [&](const Weighing& w) { return (wish.first && w.winter < *wish.first) || (wish.last && w.winter > *wish.last); });
        if (!vine.winters.empty()) vines.push_back(std::move(vine));
    }
    answer.vines = static_cast<int>(vines.size());
    std::map<int, std::vector<const Weighing*>> by_winter;
    for (const ReferenceVine& vine : vines)
        for (const Weighing& w : vine.winters) by_winter[w.winter].push_back(&w);
    for (const auto& [winter, weighed] : by_winter) answer.winters.push_back(summary_of(winter, weighed, book.block, wish));
    for (std::size_t i = 0; i + 1 < answer.winters.size(); ++i)
        answer.changes.push_back(change_of(answer.winters[i].winter, answer.winters[i + 1].winter, vines, wish));
    const auto years = kept_years(vines);
    for (const balance::KeptYear& year : years) {
        answer.buds.push_back(year.buds);
        answer.next_kg.push_back(year.next_kg);
    }
    answer.next_by_buds = balance::line_through(answer.buds, answer.next_kg, wish.confidence);
    answer.history = balance::own_history(years);
    return answer;
}

} // namespace spurwright::reference_vines
