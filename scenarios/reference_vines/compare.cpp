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
        summary.vines_if_known = balance::vines_for_known(summary.kg.deviation, wish.within * summary.kg.mean, wish.confidence);
    }
    return summary;
}

// Pairs of two winters' weights, kg, of the vines weighed in both.
struct WeighedTwice {
    std::vector<double> before, after;
};
WeighedTwice weighed_twice(int from, int to, const std::vector<ReferenceVine>& vines) {
    WeighedTwice twice;
    for (const ReferenceVine& vine : vines) {
        const Weighing *a = weighed_in(vine, from), *b = weighed_in(vine, to);
        if (!a || !b) continue;
        twice.before.push_back(in_kg(a->prunings));
        twice.after.push_back(in_kg(b->prunings));
    }
    return twice;
}

WinterChange change_of(int from, int to, const std::vector<ReferenceVine>& vines, const CompareWish& wish) {
    WinterChange change{from, to, {}, 0, 0};
    const WeighedTwice twice = weighed_twice(from, to, vines);
    change.kg = balance::paired_change(twice.before, twice.after, wish.confidence);
    const double mean = vine_spread(twice.before).mean;
    if (mean > 0) change.share = change.kg.mean / mean;
    if (change.kg.tested) change.vines_to_see = balance::vines_to_see(wish.within * mean, change.kg.deviation);
    return change;
}

RowSummary row_summary(const std::vector<ReferenceVine>& vines, const CompareWish& wish) {
    RowSummary summary;
    summary.row = vines.front().row;
    summary.first = vines.front().winters.front().winter;
    for (const ReferenceVine& vine : vines) {
        summary.first = std::min(summary.first, vine.winters.front().winter);
        summary.last = std::max(summary.last, vine.winters.back().winter);
    }
    std::vector<double> kg, buds;
    for (const ReferenceVine& vine : vines)
        if (const Weighing* w = weighed_in(vine, summary.last)) {
            kg.push_back(in_kg(w->prunings));
            if (w->buds) buds.push_back(static_cast<double>(*w->buds));
        }
    summary.kg = vine_spread(std::move(kg));
    summary.buds = vine_spread(std::move(buds));
    const WeighedTwice twice = weighed_twice(summary.first, summary.last, vines);
    summary.since = balance::paired_change(twice.before, twice.after, wish.confidence);
    for (std::size_t i = 0; i < twice.before.size(); ++i) summary.changes.push_back(twice.after[i] - twice.before[i]);
    return summary;
}

std::vector<RowDifference> row_differences(const std::vector<RowSummary>& rows, const CompareWish& wish) {
    std::vector<RowDifference> all;
    if (rows.size() > most_rows_paired) return all;
    for (std::size_t i = 0; i < rows.size(); ++i)
        for (std::size_t j = i + 1; j < rows.size(); ++j)
            if (rows[i].first == rows[j].first && rows[i].last == rows[j].last) // over the same summers alone
                all.push_back({rows[i].row, rows[j].row, balance::group_difference(rows[i].changes, rows[j].changes, wish.confidence)});
    return all;
}

// Vines stand in walking order, so those of a row follow one another.
std::vector<RowSummary> row_summaries(const std::vector<ReferenceVine>& vines, const CompareWish& wish) {
    std::vector<RowSummary> rows;
    for (std::size_t from = 0, to = 0; from < vines.size(); from = to) {
        while (to < vines.size() && vines[to].row == vines[from].row) ++to;
        if (from == 0 && to == vines.size()) return {};
        rows.push_back(row_summary({vines.begin() + static_cast<std::ptrdiff_t>(from), vines.begin() + static_cast<std::ptrdiff_t>(to)}, wish));
    }
    return rows;
}

} // namespace

void keep_winters(ReferenceVine& vine, const CompareWish& wish) {
    std::erase_if(vine.winters, [&](const Weighing& w) { return (wish.first && w.winter < *wish.first) || (wish.last && w.winter > *wish.last); });
}

std::vector<balance::KeptYear> kept_years(const std::vector<ReferenceVine>& vines) {
    std::vector<balance::KeptYear> years;
    for (const ReferenceVine& vine : vines)
        for (std::size_t i = 0; i + 1 < vine.winters.size(); ++i) {
            const Weighing &w = vine.winters[i], &next = vine.winters[i + 1];
            if (w.buds && next.winter == w.winter + 1) years.push_back({static_cast<double>(*w.buds), in_kg(w.prunings), in_kg(next.prunings)});
        }
    return years;
}

BlockComparison compare(BlockBook book, const CompareWish& wish) {
    BlockComparison answer;
    answer.block = std::move(book.block);
    std::vector<ReferenceVine> vines = std::move(book.vines);
    if (wish.first || wish.last)
        for (ReferenceVine& vine : vines) keep_winters(vine, wish);
    std::erase_if(vines, [](const ReferenceVine& vine) { return vine.winters.empty(); });
    answer.vines = static_cast<int>(vines.size());
    std::map<int, std::vector<const Weighing*>> by_winter;
    for (const ReferenceVine& vine : vines)
        for (const Weighing& w : vine.winters) by_winter[w.winter].push_back(&w);
    for (const auto& [winter, weighed] : by_winter) answer.winters.push_back(summary_of(winter, weighed, answer.block, wish));
    for (std::size_t i = 0; i + 1 < answer.winters.size(); ++i)
        answer.changes.push_back(change_of(answer.winters[i].winter, answer.winters[i + 1].winter, vines, wish));
    answer.rows = row_summaries(vines, wish);
    answer.row_differences = row_differences(answer.rows, wish);
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
