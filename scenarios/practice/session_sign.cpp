// Sign-offs and consent from the session: read from the records, written to them, read again.
#include "scenarios/practice/session.h"

namespace spurwright::practice {

void Session::go_to_sign() {
    shell_.message.reset();
    shell_.screen = Screen::sign;
    const std::uint64_t written = sign_ ? sign_->written : 0;
    auto desk = sign_desk(records_.store_file(), records::today());
    if (!desk) say(desk.error());
    sign_ = desk ? *std::move(desk) : SignDesk{};
    sign_->written = written;
}

void Session::open_sign_page(std::optional<std::int64_t> number) {
    go_to_sign();
    if (!number || shell_.message) return;
    auto page = sign_page(records_.store_file(), assets_, *number, words_.language(), sign_->today);
    if (!page) return say(page.error());
    sign_->page = *std::move(page);
}

// Two windows: the first keeps all.
bool Session::may_sign() {
    if (!sign_ || !sign_->page) return false;
    const bool may = !shell_.read_only && records_.keeps();
    if (!may) shell_.message = Message{{"screen.sign.not-kept"}, {}};
    return may;
}

void Session::wrote_sign(const Result<void>& written, std::optional<Message> says) {
    if (!written) return say(written.error());
    ++sign_->written;
    open_sign_page(sign_->page->person.number);
    if (!shell_.message) shell_.message = std::move(says);
}

void Session::sign_off(const ask::SignOff& typed) {
    if (!may_sign()) return;
    const auto kept = keep_sign_off(records_.store_file(), sign_->page->person.number, typed);
    if (!kept) return say(kept.error());
    wrote_sign({}, Message{{"crew.signed-off"},
                           {{"id", std::to_string(kept->id)},
                            {"number", std::to_string(kept->person)},
                            {"skill", words_("rule." + kept->skill + ".name")},
                            {"by", std::to_string(kept->by)},
                            {"until", records::day_text(kept->until)}}});
}

void Session::withdraw(const ask::WithdrawSign& typed) {
    if (!may_sign()) return;
    wrote_sign(keep_withdrawal(records_.store_file(), typed), Message{{"crew.withdrawn"}, {{"id", std::to_string(typed.id)}}});
}

void Session::say_consent(bool yes) {
    if (!may_sign()) return;
    wrote_sign(keep_consent(records_.store_file(), *sign_->page, yes), std::nullopt);
}

} // namespace spurwright::practice
