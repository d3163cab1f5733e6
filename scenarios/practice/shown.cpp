// What is shown to the trainee on the vine in hand: the best plan watched, places touched. The own acts stay apart.
#include "scenarios/practice/practice.h"

namespace spurwright::practice {

void Practice::put_down() {
    tool = HandTool::none;
    calliper_asked = false;
    hover = {};
    chosen = {};
    chosen_node = {};
    waiting_.reset();
    pull({});
}

Result<void> Practice::watch() {
    if (watching_) return {};
    if (done_count() > 0 || finished()) return failure({Fault::not_allowed, {"error.practice.watch-own-acts"}, {}, {}});
    end_showing();
    if (plans_) return begin_watching();
    put_down();
    watch_waits_ = true;
    return {};
}

Result<void> Practice::begin_watching() {
    watch_waits_ = false;
    if (plans_->none()) return failure({Fault::not_allowed, {"best.none"}, {}, {}});
    put_down();
    watching_.emplace(task_.vine, task_.house, plans_->best().plan);
    ++change_;
    return {};
}

void Practice::watch_next() {
    if (!watching_) return;
    if (showing_) return next_shown();
    watching_->next();
    hover = {};
    ++change_;
}

void Practice::watch_back() {
    if (!watching_) return;
    if (showing_ && watching_->at() > 0 && log_.undo()) replay();
    watching_->back();
    hover = {};
    ++change_;
}

Result<void> Practice::begin_drill() {
    if (finished()) return failure({Fault::not_allowed, {"error.practice.drill-finished"}, {}, {}});
    TouchDrill drill(now_);
    if (drill.touches().empty()) return failure({Fault::not_allowed, {"error.practice.drill-no-wood"}, {}, {}});
    end_showing();
    put_down();
    drill_ = std::move(drill);
    return {};
}

Result<void> Practice::begin_buds() {
    if (finished()) return failure({Fault::not_allowed, {"error.practice.drill-finished"}, {}, {}});
    BudSample sample(task_.vine);
    if (sample.canes().empty()) return failure({Fault::not_allowed, {"error.practice.no-buds"}, {}, {}});
    end_showing();
    put_down();
    buds_ = std::move(sample);
    return {};
}

Result<void> Practice::begin_questions() {
    if (finished()) return failure({Fault::not_allowed, {"error.practice.drill-finished"}, {}, {}});
    SceneQuestions asked(scene_questions(task_.vine, task_.house, task_.asks, task_.tag));
    if (asked.all().empty()) return failure({Fault::not_allowed, {"error.practice.no-questions"}, {}, {}});
    end_showing();
    put_down();
    questions_ = std::move(asked);
    return {};
}

void Practice::end_showing() {
    if (watching_) ++change_;
    watching_.reset();
    drill_.reset();
    buds_.reset();
    questions_.reset();
    watch_waits_ = false;
    showing_.reset();
    hover = {};
}

}  // namespace spurwright::practice
