// What every screen draws with: words, face, fonts, the keys pressed since the last frame, and the probe where a test
// looks on. Handed down; nothing here is global. Must not know: the vine, files, OpenGL.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "render/ui/probe.h"
#include "render/ui/theme.h"
#include "scenarios/words/words.h"

namespace spurwright::ui {

// Numbers of keys as GLFW gives them; letters and digits are their capital letters.
namespace key {
inline constexpr int space = 32, comma = 44, minus = 45, period = 46, equal = 61, escape = 256, enter = 257, tab = 258,
                     backspace = 259, del = 261, right = 262, left = 263, down = 264, up = 265, home = 268, end = 269,
                     f1 = 290, f2 = 291, f3 = 292, f4 = 293, f5 = 294, f6 = 295, f7 = 296, f8 = 297, page_up = 266, page_down = 267, pad_minus = 333,
                     pad_plus = 334, pad_enter = 335;
}

// One press, in the order they came. From the window's key events: asking once a frame would lose quick taps.
struct KeyPress {
    int key = 0;
    bool ctrl = false, shift = false, alt = false;
    bool operator==(const KeyPress&) const = default;
};

inline constexpr float narrow_below_em = 60; // a window less wide holds less beside each other

// How many, as a sentence takes it.
inline Count counted(std::size_t n) { return Count{static_cast<std::int64_t>(n)}; }

struct Ui {
    const words::Words& words;
    Face face = Face::paper;
    Grid grid;
    Fonts fonts;
    std::span<const KeyPress> keys;
    UiProbe* probe = nullptr;
    int panels = 0;           // begun this frame
    std::string panel{};      // the one begun last
    bool over = false;        // drawing a sheet that lies over the screen
    std::vector<Box> boxes{}; // of the panels drawn this frame
    bool free_keys = true;    // no text is being typed: letters are commands
    bool scrolls = false;     // the panel at hand is moved by keys: its focus does not pull it back

    const Palette& colours() const { return palette(face); }
    std::string say(std::string_view text_key, const Arguments& arguments = {}) const {
        return words(text_key, arguments);
    }
    float em() const { return grid.em; }
    bool narrow() const { return ImGui::GetIO().DisplaySize.x < grid.em * narrow_below_em; } // large text on a small window
    bool pressed(const KeyPress& wanted) const {
        for (const KeyPress& press : keys)
            if (press == wanted) return true;
        return false;
    }
};

} // namespace spurwright::ui
