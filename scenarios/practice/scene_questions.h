// What a scene asks before the first cut: one question at a time with a few answers, told at once why. Every key is worked
// out from the vine, its tag and the house, never written down: what a scene file names is which questions are asked.
// Must not know: pictures, sentences.
#pragma once

#include <optional>
#include <vector>

#include "scenarios/practice/hand.h"
#include "scenarios/scenes/scene_file.h"
#include "sim/rules/house_rules.h"

namespace spurwright::practice {

struct Worded {
    TextKey key;
    Arguments arguments{};
};

struct Question {
    Worded asks;
    std::vector<Worded> answers;  // digit 1 first; two to four
    std::size_t right = 0;        // from 0
    Worded why;
    Spot spot;                    // what it is about; none: the vine as a whole
    std::optional<std::size_t> said;
    bool was_right() const { return said == right; }
};

class SceneQuestions {
public:
    explicit SceneQuestions(std::vector<Question> all) : all_(std::move(all)) {}

    const std::vector<Question>& all() const { return all_; }
    std::size_t at() const { return at_; }  // all().size(): the end
    const Question* here() const { return at_ < all_.size() ? &all_[at_] : nullptr; }
    bool answered() const { return here() && here()->said; }
    int right() const;

    void answer(std::size_t which);  // the first answer stands; past the last: nothing
    void next();                     // only from an answered one

private:
    std::vector<Question> all_;
    std::size_t at_ = 0;
};

// Those of a scene on its uncut vine. One whose key would hinge on less than an eye can tell is left
// out; so is one about the tag where there is none.
std::vector<Question> scene_questions(const Vine& vine, const rules::HouseRules& house, const std::vector<scenes::Ask>& asks,
                                      const std::optional<Mass>& tag);

}  // namespace spurwright::practice
