// Who sits at the window, from the session: whose records are written and read from now on.
#include <algorithm>

#include "scenarios/practice/session.h"

namespace spurwright::practice {

void Session::go_to_seat() {
    shell_.message.reset();
    shell_.screen = Screen::seat;
    auto people = people_to_pick(records_.store_file());
    if (!people) say(people.error());
    shell_.people = people ? *std::move(people) : std::vector<records::Person>{};
}

void Session::sit(std::optional<std::int64_t> number) {
    if (!number) return seat(std::nullopt);
    const auto found = std::find_if(shell_.people.begin(), shell_.people.end(), [&](const records::Person& p) { return p.number == *number; });
    if (found == shell_.people.end()) return say({Fault::unknown_part, {"error.crew.nobody"}, {{"n", Count{*number}}}, {}});
    seat(*found);
}

void Session::sit_new() {
    if (shell_.read_only || !records_.keeps()) return;
    auto person = take_new_number(records_.store_file(), words_.language(), records::utc_now().substr(0, 10), records::utc_now());
    if (!person) return say(person.error());
    seat(*std::move(person));
}

void Session::seat(std::optional<records::Person> person) {
    keep_finished();  // what is finished is whoever's sat here until now
    looks_.reset();
    way_.reset();
    ladder_.reset();
    shell_.walked.clear();
    told_vines_ = 0;
    shell_.message.reset();
    shell_.screen = Screen::home;
    shell_.sits = std::move(person);
    if (shell_.sits && shell_.sits->language != words_.language()) (void)speak(shell_.sits->language);  // a language that is gone: the one in force stays
}

std::optional<std::int64_t> Session::sitter() const { return shell_.sits ? std::optional(shell_.sits->number) : std::nullopt; }

}  // namespace spurwright::practice
