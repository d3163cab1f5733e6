// What a person says of another by name: a skill signed off, a sign-off withdrawn, a yes to keeping a name. Events, each
// with the number of who said it; nobody is signed off by the program. Must not know: screens, sentences.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "scenarios/records/clock.h"
#include "scenarios/records/events.h"

namespace spurwright::records {

inline constexpr std::string_view sign_off_kind = "sign-off", withdrawn_kind = "sign-off-withdrawn", consent_kind = "consent";

inline constexpr int sign_off_days = 365; // it holds a season where nothing else is said; our choice

struct SignOff {
    std::int64_t id = 0; // of its event
    std::int64_t person = 0, by = 0;
    std::string skill; // a rule's key
    std::string saw;   // what was seen in the row
    Day on, until;     // holds to the end of that day
};

// Refused: nobody has one of the numbers (unknown_part); the signer has no name in the list, or signs for herself
// (not_allowed); it ends before it begins (out_of_range); it says nothing of what was seen (bad_text).
[[nodiscard]] Result<std::int64_t> sign_off(Store& store, const SignOff& sign, const std::string& when_utc);

// Refused: as above of the signer; no such sign-off, or withdrawn before (unknown_part); no reason (bad_text).
[[nodiscard]] Result<std::int64_t> withdraw(Store& store, std::int64_t id, std::int64_t by, const std::string& reason, const std::string& when_utc);

// Those that stand, by person and skill; lapsed ones too, the reader looks at `until`.
[[nodiscard]] Result<std::vector<SignOff>> sign_offs(Store& store);

// Whether the person said yes or no to a name being kept, in which language it was asked. The last word counts.
[[nodiscard]] Result<std::int64_t> say_consent(Store& store, std::int64_t person, bool yes, const std::string& language, const std::string& when_utc);
[[nodiscard]] Result<std::optional<bool>> consent_of(Store& store, std::int64_t person); // nothing: never asked

// ---- how long results of people are kept (our choice, no law)
// Practice and quiz answers of a person to a year after the end of the season (30 September) they are of; sign-offs and
// what goes with them three seasons. What has no person stays.
Day kept_until(const Event& event);

struct DueEvent {
    std::int64_t id = 0, person = 0;
    std::string kind;
    Day until;
};
inline constexpr int days_of_notice = 30;
// Those whose time ends within the days of notice from `today`; that they were shown is noted.
[[nodiscard]] Result<std::vector<DueEvent>> show_due(Store& store, const Day& today);
// Takes out those whose time is over and that were shown the days of notice before, for good; how many.
[[nodiscard]] Result<std::int64_t> drop_due(Store& store, const Day& today, const std::string& when_utc);

Day days_after(const Day& day, int days);

} // namespace spurwright::records
