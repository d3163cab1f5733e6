// Who sits at this window: a number of the crew's list, or nobody. No password and no name asked for, since several share
// one machine; nobody again when the window closes. What is done from then on is that number's in the records. Must not
// know: screens, the vine in hand.
#pragma once

#include <string>
#include <vector>

#include "scenarios/records/people.h"

namespace spurwright::practice {

// By number; empty where there is no store yet or `store_file` is empty. Faults: what the store says.
[[nodiscard]] Result<std::vector<records::Person>> people_to_pick(const std::string& store_file);

// Puts the next free number on the list: one above every number of the list and of the records, so that nothing kept
// before becomes theirs. `start` is the day. Faults: what the store says; out_of_range where no number is free.
[[nodiscard]] Result<records::Person> take_new_number(const std::string& store_file, const std::string& language, const std::string& start,
                                                      const std::string& when_utc);

}  // namespace spurwright::practice
