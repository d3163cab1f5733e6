// What a named person says of another on screen: skills signed off, sign-offs withdrawn, a yes or no to a name being kept.
// All of it is written and refused by records/sign_off.h, as the command's is. Must not know: screens, the vine in hand.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "scenarios/io/assets.h"
#include "scenarios/practice/request.h"
#include "scenarios/records/crew_view.h"
#include "scenarios/records/people.h"
#include "scenarios/records/sign_off.h"

namespace spurwright::practice {

struct SignPerson {
    records::Person person;
    std::size_t holds = 0; // skills signed off that hold today
};

// Of one person.
struct SignPage {
    records::Person person;
    std::map<rules::RuleName, records::CrewCell> met; // in quizzes
    std::vector<records::SignOff> signed_off;         // that stand, lapsed ones too
    std::optional<bool> consent;                      // nothing: never asked
    std::string notice, unchecked;                    // in their language; unchecked: its line about open wording, where due
    std::string language;                             // of the notice
};

struct SignDesk {
    std::vector<SignPerson> people; // by number
    std::optional<SignPage> page;
    records::Day today;
    std::uint64_t written = 0; // rises with each event

    const records::Person* find(std::int64_t number) const; // null where nobody on the list has it
};

// Nobody, and no folder made, where nothing was ever kept. Faults: what the store says.
[[nodiscard]] Result<SignDesk> sign_desk(const std::string& store_file, const records::Day& today);
// `language`: of the notice where the person's own is gone. Faults: what the store says; unknown_part where nobody has the
// number.
[[nodiscard]] Result<SignPage> sign_page(const std::string& store_file, const io::Assets& assets, std::int64_t number, const std::string& language,
                                         const records::Day& today);

// As typed; what is no number or no day is refused here, the rest by the store. Answers what was kept.
[[nodiscard]] Result<records::SignOff> keep_sign_off(const std::string& store_file, std::int64_t person, const ask::SignOff& typed);
[[nodiscard]] Result<void> keep_withdrawal(const std::string& store_file, const ask::WithdrawSign& typed);
[[nodiscard]] Result<void> keep_consent(const std::string& store_file, const SignPage& page, bool yes);

} // namespace spurwright::practice
