#include "sim/vine/course_book.h"

#include <utility>

namespace spurwright {
namespace {

constexpr std::size_t most_courses = 4'000;  // a vine asks for a few hundred; one that is edited without end forgets

}  // namespace

std::shared_ptr<const Course> CourseBook::find(const Key& key) const {
    const auto found = courses_.find(key);
    return found == courses_.end() ? nullptr : found->second;
}

void CourseBook::keep(Key key, std::shared_ptr<const Course> course) {
    if (courses_.size() >= most_courses) courses_.clear();
    courses_.insert_or_assign(std::move(key), std::move(course));
}

}  // namespace spurwright
