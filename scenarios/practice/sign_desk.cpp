#include "scenarios/practice/sign_desk.h"

#include <algorithm>

#include "scenarios/commands/quantities.h"
#include "scenarios/records/backup.h"
#include "scenarios/words/load_words.h"

namespace spurwright::practice {
namespace {

Result<records::Store> store_to_sign(const std::string& store_file) { return records::open_backed_up(store_file, records::today()); }

std::string without_ends(const std::string& text) {
    const auto from = text.find_first_not_of(' ');
    if (from == std::string::npos) return {};
    return text.substr(from, text.find_last_not_of(' ') + 1 - from);
}

Result<std::int64_t> signer(const std::string& typed) { return commands::read_whole(without_ends(typed), "by", 1, records::highest_number); }

Result<records::Day> day_typed(const std::string& typed) {
    const auto day = records::read_day(without_ends(typed));
    if (day) return *day;
    return failure({Fault::bad_text, {"error.crew.no-day"}, {{"text", typed}}, {}});
}

Error nobody(std::int64_t number) { return {Fault::unknown_part, {"error.crew.nobody"}, {{"n", std::to_string(number)}}, {}}; }

// The notice is said in the person's own language; the leader's screen may speak another.
Result<void> say_notice(SignPage& page, const io::Assets& assets, const std::string& language) {
    auto words = words::load_words(assets, page.person.language);
    if (!words) words = words::load_words(assets, language);
    if (!words) return failure(std::move(words.error()));
    page.notice = (*words)("crew.notice");
    if (words->unchecked()) page.unchecked = (*words)("words.unchecked");
    page.language = words->language();
    return {};
}

} // namespace

const records::Person* SignDesk::find(std::int64_t number) const {
    const auto found = std::find_if(people.begin(), people.end(), [number](const SignPerson& one) { return one.person.number == number; });
    return found == people.end() ? nullptr : &found->person;
}

Result<SignDesk> sign_desk(const std::string& store_file, const records::Day& today) {
    SignDesk desk;
    desk.today = today;
    if (store_file.empty()) return desk;
    auto store = records::Store::open_to_read(store_file);
    if (!store) return failure(std::move(store.error()));
    if (!*store) return desk;
    auto people = records::people_of(**store);
    if (!people) return failure(std::move(people.error()));
    const auto standing = records::sign_offs(**store);
    if (!standing) return failure(standing.error());
    for (records::Person& person : *people) {
        const auto holds = std::count_if(standing->begin(), standing->end(), [&](const records::SignOff& sign) { return sign.person == person.number && sign.until >= today; });
        desk.people.push_back({std::move(person), static_cast<std::size_t>(holds)});
    }
    return desk;
}

Result<SignPage> sign_page(const std::string& store_file, const io::Assets& assets, std::int64_t number, const std::string& language, const records::Day& today) {
    auto store = records::Store::open_to_read(store_file);
    if (!store) return failure(std::move(store.error()));
    if (!*store) return failure(nobody(number));
    auto people = records::people_of(**store);
    if (!people) return failure(std::move(people.error()));
    const auto found = std::find_if(people->begin(), people->end(), [number](const records::Person& person) { return person.number == number; });
    if (found == people->end()) return failure(nobody(number));
    SignPage page;
    page.person = std::move(*found);
    auto standing = records::sign_offs(**store);
    if (!standing) return failure(std::move(standing.error()));
    for (records::SignOff& sign : *standing)
        if (sign.person == number) page.signed_off.push_back(std::move(sign));
    const auto said = records::consent_of(**store, number);
    if (!said) return failure(said.error());
    page.consent = *said;
    auto view = records::crew_view(**store, today);
    if (!view) return failure(std::move(view.error()));
    for (records::CrewMember& member : view->members)
        if (member.person.number == number) page.met = std::move(member.rules);
    if (auto noticed = say_notice(page, assets, language); !noticed) return failure(std::move(noticed.error()));
    return page;
}

Result<records::SignOff> keep_sign_off(const std::string& store_file, std::int64_t person, const ask::SignOff& typed) {
    const auto by = signer(typed.by);
    if (!by) return failure(by.error());
    const auto on = day_typed(typed.on), until = day_typed(typed.until);
    if (!on) return failure(on.error());
    if (!until) return failure(until.error());
    auto store = store_to_sign(store_file);
    if (!store) return failure(std::move(store.error()));
    records::SignOff sign{0, person, *by, std::string(rules::key_of(typed.skill)), typed.saw, *on, *until};
    const auto id = records::sign_off(*store, sign, records::utc_now());
    if (!id) return failure(id.error());
    sign.id = *id;
    return sign;
}

Result<void> keep_withdrawal(const std::string& store_file, const ask::WithdrawSign& typed) {
    const auto by = signer(typed.by);
    if (!by) return failure(by.error());
    auto store = store_to_sign(store_file);
    if (!store) return failure(std::move(store.error()));
    const auto done = records::withdraw(*store, typed.id, *by, typed.reason, records::utc_now());
    return done ? Result<void>{} : Result<void>(failure(done.error()));
}

Result<void> keep_consent(const std::string& store_file, const SignPage& page, bool yes) {
    auto store = store_to_sign(store_file);
    if (!store) return failure(std::move(store.error()));
    const auto said = records::say_consent(*store, page.person.number, yes, page.language, records::utc_now());
    return said ? Result<void>{} : Result<void>(failure(said.error()));
}

} // namespace spurwright::practice
