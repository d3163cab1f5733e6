#include "scenarios/practice/two_vines.h"

#include "sim/core/check.h"
#include "sim/vine/course_book.h"

namespace spurwright::practice {

NextWinterWish next_winter_wish(const Practice& looked_back) {
    const Task& task = looked_back.task();
    auto best = prune(task.vine, looked_back.plans()->best().plan);
    SPURWRIGHT_CHECK(best.has_value(), ==, true); // plans of planning are legal
    NextWinterWish wish{{looked_back.now(), *std::move(best)}, task.house, std::string(ahead::usual_climate), 0};
    if (task.frost) {
        wish.climate = task.frost->climate;
        wish.kickers_until = task.frost->over_day;
    }
    // It goes to another thread, while the window goes on writing in the vine's own book.
    for (Vine& vine : wish.pruned) vine.courses = std::make_shared<CourseBook>();
    return wish;
}

Practice next_practice(const Practice& from, const NextWinter& found, std::size_t which) {
    Task task;
    task.vine = found.lives.at(which).next->vine;
    task.house_name = from.task().house_name;
    task.house = from.task().house;
    return Practice(std::move(task));
}

} // namespace spurwright::practice
