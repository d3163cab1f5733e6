#include "scenarios/practice/watching.h"

#include "sim/core/check.h"

namespace spurwright::practice {

Watching::Watching(const Vine& start, const rules::HouseRules& house, const Plan& plan) : Watching(start, start, watched_acts(start, house, plan)) {}

Watching::Watching(const Vine& start, const Vine& now, std::vector<WatchedAct> acts) : start_(start), before_(now), now_(now), acts_(std::move(acts)) { look_ahead(); }

void Watching::look_ahead() {
    goes_.reset();
    lies_.clear();
    if (!shown() || !shown()->edit) return;
    if (const auto* lay = std::get_if<Lay>(&*shown()->edit)) {
        Vine laid = now_;
        (void)prune_one(laid, *lay, start_);
        for (const Node& node : laid.nodes_of(*laid.find(lay->cane)))
            if (!node.removed) lies_.push_back(node.place);
    }
    if (const auto* cut = std::get_if<Cut>(&*shown()->edit)) goes_ = preview(now_, *cut);
}

void Watching::next() {
    if (!shown()) return;
    if (const auto& edit = shown()->edit) {
        const auto done = prune_one(now_, *edit, start_);
        SPURWRIGHT_CHECK(done.has_value(), ==, true);  // the whole plan was legal
    }
    ++at_;
    look_ahead();
}

void Watching::back() {
    if (at_ == 0) return;
    --at_;
    now_ = before_;  // nothing is ever un-cut: what went before is done anew
    for (std::size_t i = 0; i < at_; ++i)
        if (acts_[i].edit) (void)prune_one(now_, *acts_[i].edit, start_);
    look_ahead();
}

}  // namespace spurwright::practice
