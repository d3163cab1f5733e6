#include "scenarios/quiz/item.h"

#include <algorithm>

namespace spurwright::quiz {

bool Item::accepts(const Answer& answer) const { return std::find(accepted.begin(), accepted.end(), answer) != accepted.end(); }

bool Item::takes(const Answer& answer) const {
    if (answer.size() != static_cast<std::size_t>(asked())) return false;
    for (std::size_t i = 0; i < answer.size(); ++i)
        if (answer[i] < lowest() || answer[i] > highest() || (i > 0 && answer[i] <= answer[i - 1])) return false;
    return true;
}

}  // namespace spurwright::quiz
