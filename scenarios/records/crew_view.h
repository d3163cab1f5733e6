// The crew on one page: who is how far with which rule, by the quizzes; what the crew gets wrong most. For the
// supervisor's eyes, not for the wall; by number, never in order of merit. Must not know: screens, sentences.
#pragma once

#include <map>
#include <optional>
#include <vector>

#include "scenarios/drill/progress.h"
#include "scenarios/quiz/results.h"
#include "scenarios/records/people.h"
#include "scenarios/records/sign_off.h"

namespace spurwright::records {

struct CrewCell {
    quiz::Share answers;
    drill::Mastery word{}; // fresh: not met
};
struct CrewMember {
    Person person; // only its number where it is not on the list
    std::map<rules::RuleName, CrewCell> rules;
    quiz::Share all;
    int quizzes = 0;
    std::vector<SignOff> signed_off; // that hold today
};
struct CrewView {
    std::vector<CrewMember> members;       // by number: those on the list and those who answered
    std::vector<rules::RuleName> rules;    // met, most wrong answers of the crew first; at most most_rules_shown
    std::map<rules::RuleName, quiz::Share> crew;
    std::optional<rules::RuleName> most_wrong; // of eight answers and more
    int quizzes = 0;
};
inline constexpr std::size_t most_rules_shown = 8; // that a page holds beside thirty people

// Alone is nine of ten of eight answers and more, on two days; needs a look is under half of eight and more (our choice).
[[nodiscard]] Result<CrewView> crew_view(Store& store, const Day& today);

} // namespace spurwright::records
