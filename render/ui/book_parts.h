// The pages of the book of reference vines. Must not know: the store.
#pragma once

#include "render/ui/asked.h"
#include "render/ui/screens.h"

namespace spurwright::ui {

Asked book_blocks(const State& state, Views& views, Ui& ui);   // the list of blocks, a new one, files
Asked book_entry(const State& state, Views& views, Ui& ui);    // one vine after another
Asked book_compare(const State& state, Views& views, Ui& ui);  // winters, changes, rows, buds
Asked book_map(const State& state, Views& views, Ui& ui);      // the block's vines by their size

// Where the vine at hand stands; what was changed of it; the block's papers.
Asked book_place(const State& state, Views& views, Ui& ui);
void book_history(const State& state, Views& views, Ui& ui);
Asked book_papers(const State& state, Views& views, Ui& ui);
// The points on the map, where there are any; the vine at hand stands out.
Asked book_points(const State& state, Views& views, Ui& ui);

// The ways between the pages, and out of the book.
Asked book_ways(const State& state, Views& views, Ui& ui);
// The block that lies open, labelled where it is invented.
void book_head(const State& state, Ui& ui);
// Of the open block, winter by winter: each vine, the middle, and the half about it.
void draw_winters(Ui& ui, const practice::BookDesk& desk);
// A vine's size as a mark with a shape of its own: colour is never the only sign.
void draw_size(ImDrawList& draw, ImVec2 middle, float radius, balance::SizeClass size, const Palette& palette);

} // namespace spurwright::ui
