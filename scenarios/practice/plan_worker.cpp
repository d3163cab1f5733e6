#include "scenarios/practice/plan_worker.h"

#include <utility>

#include "sim/vine/course_book.h"

namespace spurwright::practice {

PlanWorker::PlanWorker() : thread_([this] { work(); }) {}

PlanWorker::~PlanWorker() {
    {
        const std::lock_guard lock(mutex_);
        stop_ = true;
    }
    wake_.notify_all();
    thread_.join();
}

std::uint64_t PlanWorker::ask(const Vine& vine, const rules::HouseRules& house) {
    std::uint64_t number = 0;
    {
        const std::lock_guard lock(mutex_);
        number = ++newest_;
        question_ = Question{vine, house, number};
        question_->vine.courses = std::make_shared<CourseBook>();  // the window goes on writing in the vine's own
        answer_.reset();
    }
    wake_.notify_all();
    return number;
}

std::optional<PlansFound> PlanWorker::take() {
    const std::lock_guard lock(mutex_);
    return std::exchange(answer_, std::nullopt);
}

bool PlanWorker::searching() const {
    const std::lock_guard lock(mutex_);
    return answered_ < newest_;
}

void PlanWorker::work() {
    std::unique_lock lock(mutex_);
    for (;;) {
        wake_.wait(lock, [this] { return stop_ || question_; });
        if (stop_) return;
        const Question question = *std::exchange(question_, std::nullopt);
        lock.unlock();
        PlansFound found = search_plans(question.vine, question.house);
        lock.lock();
        if (question.number != newest_) continue;  // the vine is another by now
        answer_ = std::move(found);
        answered_ = question.number;
    }
}

}  // namespace spurwright::practice
