#include "sim/planning/charged_findings.h"

#include <algorithm>
#include <map>
#include <tuple>

#include "sim/core/check.h"
#include "sim/planning/complete.h"
#include "sim/rules/judge.h"

namespace spurwright::planning {
namespace {

// What a share is told of: one finding; of a row all findings of a rule on a side.
using SharedBy = std::tuple<std::size_t, Side, std::size_t>;
using Marks = std::map<SharedBy, Tenths>;

SharedBy shared_by(const rules::Judgement& judged, std::size_t finding, bool in_rows) {
    const rules::Finding& f = judged.findings[finding];
    return {rules::index_of(f.rule->name), f.side, in_rows ? 0 : finding};
}

template <class Open>
class Sharing {
public:
    Sharing(const Vine& before, const rules::HouseRules& house, const rules::Judgement& mine, bool in_rows)
        : before_(before), house_(house), mine_(mine), in_rows_(in_rows), offers_(rules::offers(before, house)),
          asked_(rules::asked(offers_, house)) {
        for (std::size_t i = 0; i < mine.findings.size(); ++i) now_[shared_by(mine, i, in_rows)] += mine.findings[i].out_of;
    }

    // From what was open, or kept, to the next; what led there.
    void to(const Open& choice, LostTo by, std::size_t edit) { to(judged(choice), {by, edit, {}}); }
    void to_mine(LostTo by, std::size_t edit) { to(mine_, {by, edit, {}}); }

    std::vector<FindingShares> of_findings() const {
        std::vector<FindingShares> all;
        for (std::size_t i = 0; i < mine_.findings.size(); ++i) {
            const auto found = shares_.find(shared_by(mine_, i, in_rows_));
            all.push_back(found == shares_.end() ? FindingShares{} : found->second);
        }
        return all;
    }

private:
    rules::Judgement judged(const Open& choice) const {
        const auto careful = prune(before_, complete(before_, house_, choice));
        SPURWRIGHT_CHECK(careful.has_value(), ==, true);
        return rules::judge(before_, *careful, house_, offers_, asked_);
    }

    void to(const rules::Judgement& next, FindingShare share) {
        Marks then;
        for (std::size_t i = 0; i < next.findings.size(); ++i) then[shared_by(next, i, in_rows_)] += next.findings[i].points;
        for (auto& [where, marks] : now_) {
            share.lost = marks - then[where];
            if (share.lost.count != 0) shares_[where].push_back(share);
            marks = then[where];
        }
    }

    const Vine& before_;
    const rules::HouseRules& house_;
    const rules::Judgement& mine_;
    bool in_rows_;
    rules::Offers offers_;
    rules::Asked asked_;
    Marks now_;  // at the station before; to begin with all that there is
    std::map<SharedBy, FindingShares> shares_;
};

// After each charged edit what was open before the next; `last`: open at the end.
template <class Open>
void walk(Sharing<Open>& sharing, std::vector<std::pair<std::size_t, Open>> open_before, const Open& first, const Open& last) {
    std::stable_sort(open_before.begin(), open_before.end(), [](const auto& one, const auto& other) { return one.first < other.first; });
    sharing.to(first, LostTo::vine, 0);
    for (std::size_t i = 0; i < open_before.size(); ++i)
        sharing.to(i + 1 < open_before.size() ? open_before[i + 1].second : last, LostTo::act, open_before[i].first);
}

}  // namespace

std::vector<FindingShares> charged_findings(const Vine& before, const rules::HouseRules& house, const Planning& planning,
                                            const Charges& found, const rules::Judgement& mine) {
    Sharing<Choice> sharing(before, house, mine, false);
    std::vector<std::pair<std::size_t, Choice>> open_before;
    for (const auto* list : {&found.edits, &found.even})
        for (const Charge& charge : *list)
            if (charge.left) open_before.emplace_back(charge.edit, charge.better);
    const Choice best = planning.best()->choice;
    Choice last = best;
    std::optional<std::size_t> last_edit, ended;
    for (const auto* list : {&found.edits, &found.even})
        for (const Charge& charge : *list) {
            if (!charge.left) ended = charge.edit;
            else if (!last_edit || charge.edit > *last_edit) last = *charge.left, last_edit = charge.edit;
        }
    walk(sharing, std::move(open_before), best, last);
    if (ended) {  // with no cane left to lay, all that is still lost was lost there
        sharing.to_mine(LostTo::act, *ended);
        return sharing.of_findings();
    }
    if (found.mending) sharing.to(found.mending->kept, LostTo::open, 0);
    sharing.to_mine(LostTo::hand, 0);
    return sharing.of_findings();
}

std::vector<FindingShares> charged_findings(const Vine& before, const rules::HouseRules& house, const CordonTables& tables,
                                            const CordonCharges& found, const rules::Judgement& mine) {
    Sharing<CordonChoice> sharing(before, house, mine, true);
    std::vector<std::pair<std::size_t, CordonChoice>> open_before;
    for (std::size_t i = 0; i < found.better.size(); ++i) open_before.emplace_back(found.charges.edits[i].edit, found.better[i]);
    for (std::size_t i = 0; i < found.even_better.size(); ++i) open_before.emplace_back(found.charges.even[i].edit, found.even_better[i]);
    walk(sharing, std::move(open_before), choice_of(tables, best_pick(tables).pick), found.meant);
    if (found.charges.mending) sharing.to(found.kept, LostTo::open, 0);
    sharing.to_mine(LostTo::hand, 0);
    return sharing.of_findings();
}

const FindingShare* most_of(const FindingShares& shares) {
    const FindingShare* most = nullptr;
    for (const FindingShare& share : shares)
        if (share.lost.count > 0 && (!most || share.lost > most->lost)) most = &share;
    return most;
}

}  // namespace spurwright::planning
