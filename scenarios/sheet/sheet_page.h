// A block sheet as lines and as one page for the shed's wall, in two languages side by side: what is asked stands once, the
// words beside it twice.
#pragma once

#include "scenarios/sheet/block_sheet.h"
#include "scenarios/words/words.h"

namespace spurwright::sheet {

struct SheetLine {
    std::string what, value;
};
// Every line that the sheet says something about.
std::vector<SheetLine> sheet_lines(const BlockSheet& sheet, const words::Words& words);

// HTML, one page of A4 when printed, nothing beside it needed.
std::string sheet_page(const BlockSheet& sheet, const words::Words& first, const words::Words& second);

} // namespace spurwright::sheet
