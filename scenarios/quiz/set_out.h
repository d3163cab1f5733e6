// Which places are shown, and in which order: along the row, with a right one where the draw wants it, so that no digit
// is right more often than another.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "scenarios/quiz/item.h"

namespace spurwright::quiz {

struct Option {
    AxisId axis;
    TapedPlace place;
    Length along_row;  // of the tape, from the trunk, towards the far post
    bool good = false;
    Tenths points;     // of the best plan with it; 0 where it is good or not by a fact
};

// Where a tape hangs on a cane that stands, so that hands can reach it and others' tapes hang apart; the middle of a joint.
TapedPlace tape_place(const Vine& vine, const Axis& axis);
Length along_row(const Vine& vine, const TapedPlace& place);

// `count` of the options in the order of the row, a good one at `rank` (from 0), the best of the wrong ones among them.
// Nothing where these options cannot be set out so.
std::optional<std::vector<Option>> set_out(std::vector<Option> options, std::size_t count, std::size_t rank, std::uint64_t seed);

// In sentences the wood of a place is called by its digit, as on the tape.
void call_by_digits(const Item& item, Told& told);

// Places, the accepted digits (each alone), and the margin between right and wrong.
void fill_places(Item& item, const std::vector<Option>& shown);

}  // namespace spurwright::quiz
