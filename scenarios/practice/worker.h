// One question at a time answered in a thread of its own, on copies: the picture never waits for it. A new question makes
// the answer to an old one worthless; closing waits at most for the one being answered.
#pragma once

#include <condition_variable>
#include <cstdint>
#include <functional>
#include <mutex>
#include <optional>
#include <thread>
#include <utility>

namespace spurwright::practice {

template <class Answer>
class Worker {
public:
    // Owns all it reads: it runs beside whoever asked.
    using Question = std::function<Answer()>;

    Worker() : thread_([this] { work(); }) {}
    ~Worker() {
        {
            const std::lock_guard lock(mutex_);
            stop_ = true;
        }
        wake_.notify_all();
        thread_.join();
    }
    Worker(const Worker&) = delete;
    Worker& operator=(const Worker&) = delete;

    void ask(Question question) {
        {
            const std::lock_guard lock(mutex_);
            ++newest_;
            question_ = std::move(question);
            answer_.reset();
        }
        wake_.notify_all();
    }
    // Nobody wants to know any more.
    void forget() {
        const std::lock_guard lock(mutex_);
        ++newest_;
        question_ = nullptr;
        answer_.reset();
    }
    // The answer to the newest question, once; nothing while it is looked for.
    std::optional<Answer> take() {
        const std::lock_guard lock(mutex_);
        return std::exchange(answer_, std::nullopt);
    }

private:
    void work() {
        std::unique_lock lock(mutex_);
        for (;;) {
            wake_.wait(lock, [this] { return stop_ || question_; });
            if (stop_) return;
            const Question question = std::exchange(question_, nullptr);
            const std::uint64_t number = newest_;
            lock.unlock();
            Answer found = question();
            lock.lock();
            if (number == newest_) answer_ = std::move(found);
        }
    }

    std::mutex mutex_;
    std::condition_variable wake_;
    Question question_;
    std::optional<Answer> answer_;
    std::uint64_t newest_ = 0;
    bool stop_ = false;
    std::thread thread_; // last: it uses the rest
};

} // namespace spurwright::practice
