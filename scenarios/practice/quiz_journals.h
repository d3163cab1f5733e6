// Journals of quizzes beside the work, cleared of one person's answers: somebody who is forgotten is forgotten there too.
#pragma once

#include <string>

#include "sim/core/error.h"

namespace spurwright::practice {

// Refused (not_allowed): a window of this program is open and keeps the folder.
[[nodiscard]] Result<void> may_forget_in_journals(const std::string& work_folder);

// Takes every answer given under that number out of every journal there, each file whole or as it was; torn tails go. How
// many answers. Faults: as above, cannot_write.
[[nodiscard]] Result<std::int64_t> forget_in_journals(const std::string& work_folder, std::int64_t number);

}  // namespace spurwright::practice
