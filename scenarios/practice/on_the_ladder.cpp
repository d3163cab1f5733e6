// A vine on the ladder: steps that are not the trainee's are shown act by act as the best plan that goes with their choice,
// and each act is done as it is shown. All acts stand in one list, so that undo, work kept and judgement know no others.
#include <algorithm>

#include "scenarios/practice/practice.h"
#include "sim/pruning/legal_edits.h"

namespace spurwright::practice {

void Practice::reckon_shown() {
    to_show_.clear();
    not_held_.clear();
    if (!task_.ladder || task_.ladder->rung.watched()) return;
    ShownRest rest = shown_rest(task_.vine, now_, done(), task_.house, task_.ladder->rung);
    to_show_ = std::move(rest.acts);
    not_held_ = std::move(rest.not_held);
}

bool Practice::to_be_shown(Step step) const {
    return !finished() && std::any_of(to_show_.begin(), to_show_.end(), [step](const WatchedAct& act) { return act.step == step; });
}

void Practice::show(Step step) {
    std::vector<WatchedAct> acts;
    for (const WatchedAct& act : to_show_)
        if (act.step == step) acts.push_back(act);
    // Of steps in between that are not done, an act may need another first: that one waits for its own step.
    Vine hand = now_;
    std::erase_if(acts, [&](const WatchedAct& act) { return why_not(hand, *act.edit) || !prune_one(hand, *act.edit, task_.vine); });
    if (acts.empty()) return;
    end_showing();
    put_down();
    watching_.emplace(task_.vine, now_, std::move(acts));
    showing_ = step;
    ++change_;
}

// The act is done as it is shown; after the last of a step the next step that is not the trainee's follows by itself.
void Practice::next_shown() {
    const WatchedAct* act = watching_->shown();
    if (!act) return end_showing();
    if (!carry_out(*act->edit, true)) return end_showing();
    watching_->next();
    hover = {};
    if (watching_->shown()) return;
    end_showing();
    held_.reset();
    step_ = next_step(strip_);
    if (to_be_shown(step_)) show(step_);
}

void Practice::watch_rest() {
    if (!watching_) return;
    if (!showing_) {
        while (watching_->shown()) watching_->next();
        hover = {};
        ++change_;
        return;
    }
    const Step step = *showing_;
    while (showing_ == step) next_shown();
}

void Practice::do_at_once(std::vector<WatchedAct> acts) {
    bool any = false;
    for (WatchedAct& act : acts) {
        const Edit edit = *act.edit;
        if (why_not(now_, edit) || done_count() >= most_edits || !prune_one(now_, edit, task_.vine)) continue;
        named_.resize(done_count());
        shown_.resize(named_.size());
        named_.push_back(named(edit, now_));
        shown_.push_back(true);
        log_.add(edit);
        any = true;
    }
    if (any) changed();
}

void Practice::tell_shown(const std::vector<bool>& shown) {
    shown_ = shown;
    shown_.resize(named_.size());
}

std::optional<YoursOnVine> Practice::yours() const {
    if (!task_.ladder || task_.ladder->rung.watched() || !look_ || !look_->charged) return std::nullopt;
    return yours_on(*look_, task_.ladder->rung, shown_);
}

void Practice::tell_yours_alone() {
    if (task_.ladder && !task_.ladder->rung.watched() && look_) fold_to_yours(*look_, task_.ladder->rung, shown_);
}

}  // namespace spurwright::practice
