// What a comparison of a block's winters and a suggestion of buds say, as tables of texts and as sentences: a verb lays
// them out for a console, the window on a panel. Must not know: consoles, screens.
#pragma once

#include <string>
#include <vector>

#include "scenarios/reference_vines/compare.h"
#include "scenarios/reference_vines/suggest.h"
#include "scenarios/words/words.h"

namespace spurwright::commands {

using TextRows = std::vector<std::vector<std::string>>; // the first is the head

struct CompareLines {
    std::string head;                       // the block, its vines, its spacing
    TextRows winters;                       // all numbers; empty where nothing was weighed
    std::vector<std::string> about_winters; // how the columns are meant; how many vines a wished precision takes
    std::vector<std::string> changes;       // one winter to the next, with what doubt
    std::vector<std::string> about_changes;
    TextRows rows;                          // of the block, named in the first column; empty of one row alone
    std::vector<std::string> about_rows;    // whether they changed by different measures
    std::vector<std::string> sizes, relations;
};
CompareLines compare_lines(const reference_vines::BlockComparison& compared, const reference_vines::CompareWish& wish, const words::Words& words);

// The vines, each with its buds: row and tag, then numbers. One vine alone where its tag is given.
TextRows suggest_rows(const reference_vines::BlockSuggestion& suggested, const std::optional<std::string>& tag, const words::Words& words);
// Of the block's middle vine: the three numbers, why they part, the own years'. None where no vine was weighed.
std::vector<std::string> suggest_middle(const reference_vines::BlockSuggestion& suggested, const words::Words& words);

// How a vine of a size stands, in the middle of a sentence.
std::string_view size_key(balance::SizeClass size);

} // namespace spurwright::commands
