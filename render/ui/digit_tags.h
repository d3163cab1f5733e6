// Tapes with a digit for the questions on the wall: each is told by digit, pattern and colour. They keep apart, keep
// inside the window and clear of the panels; a line leads to the wood. Must not know: the vine, quizzes.
#pragma once

#include <vector>

#include "render/ui/marks.h"

namespace spurwright::ui {

inline constexpr int digit_tapes = 6;
// A tag is so high, its digit so large in it: on the wall a digit is as high as the rule there asks of all that is read.
inline constexpr float tag_height_em = 1.15f, digit_share = 0.88f;
unsigned digit_colour(int digit); // of the tape; 1 to 6

// Where each tag stands: boxes of one size that do not overlap, near and above their places where there is room.
std::vector<Box> digit_boxes(const std::vector<DigitTag>& tags, float width, float height, const Box& within,
                             const std::vector<Box>& panels);
void draw_digit_tags(Ui& ui, ImDrawList& draw, const std::vector<DigitTag>& tags, const std::vector<Box>& panels);
// The same tape lying in a line of text, as wide as a widget is high; drawn, not pressed.
void digit_tape(Ui& ui, ImDrawList& draw, int digit, const Box& box, bool pale = false);

} // namespace spurwright::ui
