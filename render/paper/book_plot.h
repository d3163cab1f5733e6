// A block of reference vines as one picture: every vine through its winters with the middle of each row, what changed from
// winter to winter with its interval, and buds kept against next winter's weight. What differs by colour differs by shape
// too. Drawn by cairo, set by Pango. Must not know: verbs, where the bytes go.
#pragma once

#include <string>

#include "scenarios/reference_vines/compare.h"
#include "scenarios/words/words.h"

namespace spurwright::paper {

inline constexpr int plot_width = 1280, plot_height = 960; // pixels

// The bytes of a PNG, the same for the same book and words; empty where cairo cannot draw. Needs a winter that was weighed.
std::string book_plot(const reference_vines::BlockBook& book, const reference_vines::BlockComparison& compared, const reference_vines::CompareWish& wish, const words::Words& words);

// What is drawn, as a table: a row a vine and winter, with what it changed by and what followed.
std::string plot_data(const reference_vines::BlockBook& book);

} // namespace spurwright::paper
