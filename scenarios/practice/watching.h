// A vine pruned by somebody else, watched act by act, forwards and back: the vine as it stands before the act shown, and
// what that act would take off. The trainee's own acts are kept apart, in Practice. Must not know: screens, sentences.
#pragma once

#include "scenarios/practice/cut_preview.h"
#include "scenarios/practice/watched_acts.h"

namespace spurwright::practice {

class Watching {
public:
    // `plan` must be legal on `start`, uncut this winter.
    Watching(const Vine& start, const rules::HouseRules& house, const Plan& plan);
    // Some acts more on a vine that was worked on: each legal after those before it.
    Watching(const Vine& start, const Vine& now, std::vector<WatchedAct> acts);

    const std::vector<WatchedAct>& acts() const { return acts_; }
    std::size_t at() const { return at_; }  // the act shown, not yet done; acts().size(): watched to the end
    const WatchedAct* shown() const { return at_ < acts_.size() ? &acts_[at_] : nullptr; }
    const Vine& now() const { return now_; }
    const std::optional<CutPreview>& goes() const { return goes_; }  // by the act shown, where it is a cut
    const std::vector<Place>& lies() const { return lies_; }  // where the cane would lie, crown first, where it is a laying

    void next();  // does the act shown and shows the one after it
    void back();  // the act before is undone and shown again

private:
    Vine start_, before_, now_;  // uncut; before the first act
    std::vector<WatchedAct> acts_;
    std::size_t at_ = 0;
    std::optional<CutPreview> goes_;
    std::vector<Place> lies_;
    void look_ahead();
};

}  // namespace spurwright::practice
