// Sheets for the row: the audit of one pruner's vines, the second audit after budburst, and the test of looking before
// anybody cuts. Headed by the block sheet; both languages.
#pragma once

#include <string>

#include "scenarios/sheet/block_sheet.h"
#include "scenarios/words/words.h"

namespace spurwright::paper {

enum class AuditKind { first, second, looking };

inline constexpr int fewest_audited = 5, most_audited = 24, usual_audited = 20, looked_at = 10;

struct AuditSheet {
    std::string bytes;
    int pages = 0;
};
AuditSheet audit_sheet(const sheet::BlockSheet& sheet, AuditKind kind, int vines, const words::Words& first, const words::Words& second);

} // namespace spurwright::paper
