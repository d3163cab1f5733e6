// What happened, one after another: answers, quizzes, sign-offs. Events are only added; a correction is a new event that
// names the one it corrects. Their order is their number, never the clock. What an answer needs to be opened years later
// is kept beside them once: the whole vine and the rule set, each by its hash. Must not know: what the bodies say.
#pragma once

#include "scenarios/records/store.h"

namespace spurwright::records {

struct Event {
    std::int64_t id = 0; // given by the store
    std::string kind;    // "answer", "quiz", "sign-off", ...
    int version = 1;     // of the body, by kind
    std::string when_utc;
    std::optional<std::int64_t> person; // a number of the roster; never a name
    std::string body;                   // JSON
    std::optional<std::int64_t> corrects;
};

// One event, on the disk when it returns; its number. Inside an act it is kept with that act.
[[nodiscard]] Result<std::int64_t> add_event(Store& store, const Event& event);

// In their order, from the one after `after`; of one kind, or of all where `kind` is empty.
[[nodiscard]] Result<void> each_event(Store& store, std::string_view kind, std::int64_t after, const std::function<void(const Event&)>& event);

// Those of one person, in their order.
[[nodiscard]] Result<void> each_event_of(Store& store, std::int64_t person, const std::function<void(const Event&)>& event);

struct KeptVine {
    std::optional<std::string> code; // none where no code grows it
    std::string file;                // a vine file's text
};
// Once a hash; a second time says nothing. Kept small (zlib).
[[nodiscard]] Result<void> keep_vine(Store& store, const std::string& hash, const KeptVine& vine);
// Nothing where it was never kept; bad_file where what is kept is damaged.
[[nodiscard]] Result<std::optional<KeptVine>> kept_vine(Store& store, const std::string& hash);

struct KeptRuleSet {
    std::string name;
    int judge_version = 0;
    std::string lines; // the text its hash is over
};
[[nodiscard]] Result<void> keep_rule_set(Store& store, const std::string& hash, const KeptRuleSet& rules);
[[nodiscard]] Result<std::optional<KeptRuleSet>> kept_rule_set(Store& store, const std::string& hash);

} // namespace spurwright::records
