// The next winter's two vines: lived on a worker, shown beside each other, one of them taken in hand and put back.
#include <algorithm>

#include "scenarios/practice/session.h"
#include "sim/vine/course_book.h"

namespace spurwright::practice {

Result<void> Session::live_on() {
    if (shows_two()) return {};
    if (!practice_->may_live_on()) return failure({Fault::not_allowed, {"error.practice.no-next-winter"}, {}, {}});
    if (winters_.size() >= most_winters_on)
        return failure({Fault::not_allowed,
                        {"error.practice.winters-enough"},
                        {{"most", Count{static_cast<std::int64_t>(most_winters_on)}}},
                        {}});
    TwoVines two;
    practice_->close_spring();
    year_worker_.ask([wish = next_winter_wish(*practice_), lived = two.lived] { return next_winter(wish, *lived); });
    winters_.push_back(std::move(two));
    return {};
}

void Session::prune_of_two(std::size_t which) {
    if (!shows_two() || !two_vines()->found || which > better) return;
    TwoVines& two = winters_.back();
    Practice next = two.left[which] ? *std::move(two.left[which]) : next_practice(*practice_, *two.found, which);
    two.left[which].reset();
    two.in_hand = which;
    two.from = std::move(practice_);
    take_in_hand(std::move(next));
}

void Session::back_to_two() {
    if (winters_.empty() || shows_two()) return;
    TwoVines& two = winters_.back();
    practice_->end_showing();
    two.left[*two.in_hand] = std::move(practice_);
    two.in_hand.reset();
    Practice from = *std::move(two.from);
    two.from.reset();
    take_in_hand(std::move(from));
}

void Session::leave_two() {
    if (!shows_two()) return;
    year_worker_.forget();
    winters_.pop_back();
    shell_.message.reset();
}

void Session::visit_in_spring(bool on) {
    if (shows_two()) return;
    year_worker_.forget();
    practice_->close_spring();
    if (!on || !practice_->may_visit_in_spring()) return;
    SpringVisitWish wish = practice_->spring_wish();
    wish.pruned.courses = std::make_shared<CourseBook>();
    const auto lived = std::make_shared<std::atomic<int>>(0);
    practice_->await_spring(lived);
    year_worker_.ask([wish = std::move(wish), lived] { return spring_visit(wish, *lived); });
}

// A vine that stood aside, or the next winter's: the acts on it are its own.
void Session::take_in_hand(Practice practice) {
    practice_ = std::move(practice);
    practice_->step_feedback = shell_.settings.step_feedback;
    shell_.message.reset();
    shell_.screen = Screen::row;
    no_offers();
    ++vine_number_;
    seek_plans();
    keep_work();
}

} // namespace spurwright::practice
