// A crew's quiz as events: one of kind "quiz" that plays it again, and one of kind "quiz-answers" for each person, which
// alone ties the number in the quiz to a person: without it the answers are nobody's. Must not know: files, screens.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "scenarios/io/json.h"
#include "scenarios/quiz/results.h"
#include "scenarios/records/events.h"
#include "sim/rules/house_rules.h"

namespace spurwright::records {

inline constexpr std::string_view quiz_kind = "quiz", quiz_answers_kind = "quiz-answers";
inline constexpr int quiz_version = 1;

struct FinishedQuiz {
    const quiz::Quiz& quiz;
    const std::vector<quiz::Event>& happened; // after it was gathered
    const rules::HouseRules& house;
};

// Keeps it with its vines and rules in one act; the number of its event. Nothing where it is there already as far as it
// went; where more happened since (a dispute after the end) the new event corrects the one before.
[[nodiscard]] Result<std::optional<std::int64_t>> keep_quiz(Store& store, const FinishedQuiz& finished, const std::string& when_utc);

// Which quiz it is: the hash of how it began.
std::string quiz_name(const quiz::event::Gathered& gathered);

io::Json results_object(const quiz::Results& results);

// The quiz of an event's body, with questions that can be answered but not shown. Refused (bad_file): no such body.
struct KeptQuestion {
    std::string vine_hash;
    std::vector<quiz::Answer> accepted;
    bool scored = true;
};
struct KeptQuiz {
    quiz::Quiz quiz; // played to where it ended
    std::vector<KeptQuestion> questions;
    std::string rule_set_hash, results; // results: the object's line as it was kept
    int judge_version = 0;
};
[[nodiscard]] Result<KeptQuiz> read_kept_quiz(const std::string& body, const std::string& source);

} // namespace spurwright::records
