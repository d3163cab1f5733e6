// A review in sentences, in the order they are read: what the plan is worth, limits, where the points went and by which
// act, each loss with what can be done about it and where the rule comes from, the best plan beside it, what a moved cut
// would win. Console text and page print the same.
#pragma once

#include "scenarios/review/review.h"
#include "scenarios/words/words.h"

namespace spurwright::review {

inline constexpr Tenths too_small_to_tell{10}; // under one point a loss is folded: our choice

struct Told {
    std::vector<std::string> head; // points, rank, as good, another house's way
    std::vector<std::string> caps; // each limit, by which act and what it took
    struct StepLost {
        std::string step, lost;
    };
    std::vector<StepLost> steps; // only those that lost something
    struct Act {
        std::string text;
        std::vector<std::string> season; // what it means next season, where it was lived
    };
    std::vector<Act> acts; // what each charge, the mending and the hand cost
    std::string season_how; // how the seasons were drawn; empty where none is told
    struct Loss {
        std::string lost, sentence, mend, source;
        rules::Mend kind{};
        Tenths points; // lost
    };
    std::vector<Loss> losses; // what can be mended now first, then by size
    std::string folded;       // the small ones together; empty where there are none
    struct TwinLine {
        std::string where, mine, best;
        bool same = false;
    };
    std::vector<TwinLine> twins;
    std::vector<std::string> mistakes, ends, remarks;
};

Told told(const Review& review, const words::Words& words);

// "With cut a5 at its base went a5, which ...": one charge as a sentence.
std::string charge_sentence(const planning::Charge& charge, const Review& r, const words::Words& words);
// `after`: the vine with its acts done; `row`: of a cordon the row that was open before the act, else null.
std::string charge_sentence(const planning::Charge& charge, const Edit& edit, const Vine& after, const planning::CordonChoice* row,
                            const words::Words& words);
// One for each figure in which the two ways part; one that they come out alike where none does.
std::vector<std::string> season_sentences(const ahead::ActAhead& act, const words::Words& words);
// Which act brought a limit, and what the limit took.
std::string cap_charge_sentence(const planning::ChargedCap& charged, const Plan& plan, const Vine& after, const words::Words& words);
std::string mending_sentence(const planning::Mending& mending, const words::Words& words);
// What the hand cost, or won where it did better than asked.
std::string hand_sentence(Tenths lost, const words::Words& words);
std::string mistake_sentence(const rules::Mistake& mistake, const words::Words& words);
std::string end_sentence(const planning::WhatIf& end, const words::Words& words);

} // namespace spurwright::review
