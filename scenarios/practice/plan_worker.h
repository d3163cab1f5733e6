// The search for plans in a thread of its own, on copies: the picture never waits for it. A new question makes the answer
// to an old one worthless; closing waits at most for the running search. May also run in slices where there are no threads.
#pragma once

#include <condition_variable>
#include <memory>
#include <mutex>
#include <optional>
#include <thread>

#include "scenarios/practice/plan_search.h"

namespace spurwright::practice {

class PlanWorker {
public:
    PlanWorker();
    ~PlanWorker();
    PlanWorker(const PlanWorker&) = delete;
    PlanWorker& operator=(const PlanWorker&) = delete;

    // Asks for the plans of this vine; what was asked before is forgotten. Answers the number of the question.
    std::uint64_t ask(const Vine& vine, const rules::HouseRules& house);
    // The answer to the newest question, once; nothing while it is searched for.
    std::optional<PlansFound> take();
    bool searching() const;

private:
    struct Question {
        Vine vine;
        rules::HouseRules house;
        std::uint64_t number = 0;
    };
    void work();

    mutable std::mutex mutex_;
    std::condition_variable wake_;
    std::optional<Question> question_;
    std::optional<PlansFound> answer_;
    std::uint64_t newest_ = 0, answered_ = 0;
    bool stop_ = false;
    std::thread thread_;  // last: it uses the rest
};

}  // namespace spurwright::practice
