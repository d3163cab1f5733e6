// What people are told of a part they point at: its name, its thickness as a hand measure, its buds; millimetres when
// asked. Never the age of its wood: that is for the eye. Must not know: the camera.
#pragma once

#include <string>

#include "render/ui/marks.h"
#include "scenarios/practice/practice.h"

namespace spurwright::ui {

// "like a pencil", "like a thick pencil", "like a marker pen", ... (a pencil about 7 mm, a marker pen 12, a thumb 20:
// from memory, our choice of bounds).
TextKey thickness_words(Length diameter);
// "half a thumb", "2 fists", "1½ hand spans": rounded to halves; a thumb 20 mm, a fist 90, a hand span 200.
std::string distance_words(const Ui& ui, Length distance);
// In the units set: "8.5 mm", "0.33 in".
std::string exact_length(const Ui& ui, Length length, bool inch);

// Of what the hand points at on the vine now. `exact`: with the measure beside the hand words.
Label hover_label(const Ui& ui, const Vine& vine, const practice::Spot& spot, bool exact, bool inch, At at);
// "a finger past node 9, 2 buds kept", with what comes off below.
Label cut_label(const Ui& ui, const practice::CutPreview& cut, At at);
// How a cane in the hand bears the bend, in a word and as a share of what it stands.
Label bend_label(const Ui& ui, const HandBend& bend, At at);
std::string bend_words(const Ui& ui, const HandBend& bend);
// Why it cannot be cut there.
Label refusal_label(const Ui& ui, const Error& why, At at);

} // namespace spurwright::ui
