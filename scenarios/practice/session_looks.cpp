// Look and say from the session: whose rules, whose language, which item stands before the eye.
#include <chrono>

#include "scenarios/practice/session.h"

namespace spurwright::practice {
namespace {

std::int64_t steady_ms() { return std::chrono::duration_cast<std::chrono::milliseconds>(std::chrono::steady_clock::now().time_since_epoch()).count(); }

}  // namespace

void Session::go_to_looks() {
    shell_.message.reset();
    shell_.screen = Screen::looks;
    if (looks_) return;
    looks_.emplace(shell_.read_only ? std::string() : records_.store_file(), sitter(), words_.language(), house_.rules(), steady_ms, day_today());
    if (auto read = looks_->recall(); !read) say(read.error());
}

void Session::close_looks() {
    looks_.reset();
    shell_.message.reset();
    shell_.screen = Screen::home;
}

const quiz::Item* Session::shown_item() const {
    if (const quiz::Item* item = on_wall()) return item;
    const drill::Look* look = looks_ && shell_.screen == Screen::looks ? looks_->look() : nullptr;
    return look ? &look->item : nullptr;
}

std::uint64_t Session::shown_item_number() const {
    if (on_wall()) return crew_->shown();
    return looks_ ? (std::uint64_t{1} << 32) + looks_->shown() : 0;
}

}  // namespace spurwright::practice
