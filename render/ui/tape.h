// Flagging tape as drawn everywhere: on the vine, in lists, on buttons. Knots and ends tell it apart, colour and word
// stand beside. Must not know: the vine, screens.
#pragma once

#include <string>

#include "render/ui/ui.h"
#include "sim/rules/rule.h"
#include "sim/vine/words_of.h"

namespace spurwright::ui {

enum class TapeEnd : unsigned char { plain, loop, tag, one_knot, two_knots, frayed, bars };

struct Tape {
    unsigned rgb = 0; // frayed: ink of the face
    TapeEnd end{};
};
Tape tape_of(rules::Mend mend);
Tape tape_of(Role role);

// Hangs from `at`, `length` pixels down, with a 1 px dark and a 1 px light edge, so that it shows on any ground.
void hang_tape(ImDrawList& draw, ImVec2 at, float length, float width, const Tape& tape, Face face);

// Tape and word in one line; drawn, not pressed.
void tape_word(Ui& ui, std::string_view name, const Tape& tape, const std::string& word);

} // namespace spurwright::ui
