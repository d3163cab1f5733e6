// What is finished in the window goes into the records: own vines and the crew's quizzes. The store is opened for each
// and closed again, so that a command may write between. Must not know: screens, requests.
#pragma once

#include <optional>
#include <string>

#include "scenarios/practice/crew_quiz.h"
#include "scenarios/practice/practice.h"
#include "scenarios/records/lesson_record.h"
#include "scenarios/words/words.h"

namespace spurwright::practice {

class RecordKeeper {
public:
    // An empty path: nothing is kept.
    explicit RecordKeeper(std::string store_file) : store_file_(std::move(store_file)) {}

    const std::string& store_file() const { return store_file_; }
    bool keeps() const { return !store_file_.empty(); }
    // A finished vine whose plans were found; once, whatever the house changes its mind about. `vine_number` tells one
    // vine in hand from the next. Fault: what the store says; the next call tries again.
    [[nodiscard]] Result<void> keep(const Practice& practice, std::uint64_t vine_number, bool orbit, std::optional<std::int64_t> person, const words::Words& words);
    // A vine of the ladder, once. Fault: what the store says.
    [[nodiscard]] Result<void> keep(const records::LadderVine& walked, const records::LessonDone& done, std::optional<std::int64_t> person) const;
    // A quiz that came to its end, and again where more happened after it.
    [[nodiscard]] Result<void> keep(const CrewQuiz& crew, const rules::HouseRules& house);
    bool has_kept(const CrewQuiz& crew) const { return crew.quiz() && quiz_kept_ == crew.happened().size() && quiz_kept_ > 0; }
    void new_quiz() { quiz_kept_ = 0; }

private:
    std::string store_file_;
    std::uint64_t vine_kept_ = 0;
    std::string plan_kept_;
    std::size_t quiz_kept_ = 0; // events of the quiz at hand that are in the records
};

}  // namespace spurwright::practice
