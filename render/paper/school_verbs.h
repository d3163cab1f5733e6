// The verbs of the school's papers: a quiz on paper, the audit sheets.
#pragma once

#include "scenarios/commands/verb.h"

namespace spurwright::paper {

[[nodiscard]] Result<commands::Answer> answer_quiz_make(const commands::Asked& asked, const commands::Surroundings& around);
[[nodiscard]] Result<commands::Answer> answer_audit_sheet(const commands::Asked& asked, const commands::Surroundings& around);

} // namespace spurwright::paper
