// A block sheet on one page of A4 as PDF, two languages side by side. Shaped and laid out by Pango, written by cairo.
// Must not know: verbs, where the bytes go.
#pragma once

#include <string>

#include "scenarios/sheet/block_sheet.h"
#include "scenarios/words/words.h"
#include "sim/core/error.h"

namespace spurwright::paper {

// The bytes of the file: the same for the same sheet and words. The type is 12 pt, smaller where the page would not hold
// it. Faults: not_allowed where even the smallest type that can be read on a wall does not fit.
[[nodiscard]] Result<std::string> sheet_pdf(const sheet::BlockSheet& sheet, const words::Words& first, const words::Words& second);

} // namespace spurwright::paper
