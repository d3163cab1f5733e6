// The list of a block's reference vines to take along the rows, in walking order, with room for what is weighed and counted:
// A4 as PDF, two languages. What is keyed in from it later has the columns of a table of weighings. Set by Pango, written by
// cairo. Must not know: verbs, where the bytes go.
#pragma once

#include <string>

#include "scenarios/reference_vines/book.h"
#include "scenarios/words/words.h"

namespace spurwright::paper {

struct FieldSheet {
    std::string bytes; // the same for the same book and words
    int pages = 0;
};
// Needs a vine.
FieldSheet field_sheet(const reference_vines::BlockBook& book, const words::Words& first, const words::Words& second);

} // namespace spurwright::paper
