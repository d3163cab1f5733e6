#include "scenarios/learning/ladder.h"

#include <algorithm>

namespace spurwright::learning {
namespace {

using rules::Step;

std::optional<Step> poor_in_both(const LadderVine& one, const LadderVine& other) {
    const std::vector<Step> first = poor_steps(one), second = poor_steps(other);
    for (const Step step : first)
        if (std::find(second.begin(), second.end(), step) != second.end()) return step;
    return std::nullopt;
}

TextKey step_key(Step step) {
    static const std::array<std::string, 7> keys = [] {
        std::array<std::string, 7> all;
        for (std::size_t i = 0; i < all.size(); ++i) all[i] = "screen.step." + std::string(word_of(static_cast<Step>(i)));
        return all;
    }();
    return TextKey{keys[static_cast<std::size_t>(step)]};
}

class Climb {
public:
    Climb(int top, int from) : top_(top), rung_(from) {}

    void walk(const LadderVine& vine) {
        moved_ = Moved::stays;
        well_ = went_well(vine);
        if (vine.rung == 0) return watched();
        if (vine.rung < rung_) return;
        run_.push_back(vine);
        if (well_) climb();
        else if (vine.rung == rung_ && run_.size() > 1 && run_[run_.size() - 2].rung == rung_) fall(run_[run_.size() - 2], vine);
    }

    Standing said(bool any) const {
        Standing standing{rung_, any ? moved_ : Moved::begins, step_, {}, {}};
        switch (standing.moved) {
            case Moved::begins: standing.why = {rung_ == 0 ? "ladder.why.begins" : "ladder.why.goes-on"}; break;
            case Moved::up: standing.why = {watched_ ? "ladder.why.watched" : "ladder.why.up"}; break;
            case Moved::down:
                standing.why = {"ladder.why.down"};
                standing.arguments = {{"step", step_key(*step_)}};
                break;
            case Moved::stays: standing.why = {rung_ == top_ && well_ ? "ladder.why.top" : well_ ? "ladder.why.one-more" : "ladder.why.again"}; break;
        }
        return standing;
    }

private:
    void watched() {
        watched_ = rung_ == 0;
        if (rung_ != 0) return;
        together_ = false;  // it is theirs again
        move_to(std::min(1, top_), Moved::up);
    }

    void move_to(int rung, Moved moved) {
        rung_ = rung;
        moved_ = moved;
        run_.clear();
    }

    void climb() {
        watched_ = false;
        const std::size_t needed = together_ ? 1 : vines_to_move;
        if (run_.size() < needed) return;
        int lower = top_;
        for (std::size_t i = run_.size() - needed; i < run_.size(); ++i) {
            if (!went_well(run_[i])) return;
            lower = std::min(lower, run_[i].rung);
        }
        if (rung_ == top_) return;
        together_ = false;
        move_to(std::min(top_, lower + 1), Moved::up);
    }

    void fall(const LadderVine& before, const LadderVine& vine) {
        const auto step = poor_in_both(before, vine);
        if (!step || rung_ == 0) return;
        step_ = step;
        together_ = true;
        move_to(rung_ - 1, Moved::down);
    }

    int top_, rung_;
    Moved moved_{};
    bool together_ = false, watched_ = false, well_ = false;
    std::optional<Step> step_;
    std::vector<LadderVine> run_;  // since the last move, on this rung or a higher one
};

}  // namespace

bool went_well(const LadderVine& vine) {
    Tenths lost, now;
    for (const records::StepResult& result : vine.yours) {
        if (result.capped) return false;
        lost += std::max(Tenths{0}, result.lost);
        now += std::min(std::max(Tenths{0}, result.lost), result.mend_now);
    }
    return lost <= vine.tolerance || (lost - now <= vine.tolerance && now <= most_to_mend);
}

std::vector<Step> poor_steps(const LadderVine& vine) {
    std::vector<Step> poor;
    for (const records::StepResult& result : vine.yours)
        if (result.capped || result.lost > much_lost) poor.push_back(result.step);
    return poor;
}

Standing standing(const std::vector<LadderVine>& walked, int top, int from) {
    Climb climb(top, std::clamp(from, 0, top));
    for (const LadderVine& vine : walked) climb.walk(vine);
    return climb.said(!walked.empty());
}

LessonProgress progress_of(const std::vector<LadderVine>& walked, const std::string& scene) {
    LessonProgress progress;
    for (const LadderVine& vine : walked) {
        if (vine.scene != scene) continue;
        progress.next = std::max(progress.next, vine.number + 1);
        progress.walked += vine.rung > 0;
        progress.well += vine.rung > 0 && went_well(vine);
    }
    return progress;
}

std::size_t next_lesson(const std::vector<LadderVine>& walked, const std::vector<std::string>& scenes) {
    std::size_t at = 0;
    if (!walked.empty()) {
        const auto found = std::find(scenes.begin(), scenes.end(), walked.back().scene);
        if (found != scenes.end()) at = static_cast<std::size_t>(found - scenes.begin());
    }
    for (std::size_t i = 0; i < scenes.size(); ++i) {
        const std::size_t here = (at + i) % scenes.size();
        if (!progress_of(walked, scenes[here]).through()) return here;
    }
    std::size_t longest = 0, last_of_it = walked.size();
    for (std::size_t i = 0; i < scenes.size(); ++i) {
        std::size_t last = 0;
        for (std::size_t v = 0; v < walked.size(); ++v)
            if (walked[v].scene == scenes[i]) last = v;
        if (last < last_of_it) longest = i, last_of_it = last;
    }
    return longest;
}

}  // namespace spurwright::learning
