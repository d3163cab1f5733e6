// The text of a plan, one line of ASCII: "cut a12.4+20.0 shears; lay a12 left wraps 1; tie a12.3+15.0 tight".
// The empty text is the plan that does nothing. Names no vine: whether the parts exist is prune()'s to say.
#pragma once

#include <string>
#include <string_view>

#include "sim/pruning/plan.h"

namespace spurwright {

inline constexpr std::size_t longest_plan_text = 64 * 1024;

// Canonical form: lower case, "; " between edits, mm with one decimal, tie's place always written, `loose` and tilt 0
// never. Needs lengths that are whole tenths of a millimetre and whole-degree tilts, as parse_plan gives.
std::string print_plan(const Plan& plan);
std::string print_edit(const Edit& edit);

// parse(print(p)) == p, and print(parse(t)) is a fixed point. Refused with step and column: unknown words, words of
// later versions (named as such), numbers out of range, more than most_edits, more than longest_plan_text.
[[nodiscard]] Result<Plan> parse_plan(std::string_view text);

// Column, from 1, at which each edit of the text begins: what prune() refuses by step a person finds by column.
std::vector<int> edit_columns(std::string_view text);

}  // namespace spurwright
