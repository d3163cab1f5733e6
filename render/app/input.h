// Events of a window in the order they came, and the one place that hands them to the screens: one edge of a key or
// button a frame, so that no tap is lost however slow the frames are. The same for a real window and for a script.
// Must not know: GLFW, screens.
#pragma once

#include <deque>
#include <string>
#include <vector>

#include "render/ui/ui.h"

struct ImGuiIO;

namespace spurwright::app {

struct Event {
    enum class Kind : unsigned char { move, button, wheel, key, text, focus } kind{};
    float x = 0, y = 0;      // pixels of the framebuffer; of a wheel its steps
    int code = 0;            // button 0 to 2; key as GLFW numbers them; code point of a text
    bool down = false;       // of an edge; of focus: gained
    bool repeat = false;     // of a key held
    bool ctrl = false, shift = false, alt = false;
};

// Sets up the keys and clipboardless state of a fresh context.
void begin_input(ImGuiIO& io);

class Input {
public:
    void push(const Event& event) { events_.push_back(event); }
    bool waiting() const { return !events_.empty(); }
    bool key_held() const { return keys_held_ > 0; }

    // Hands over what one frame may take; key presses also in `presses`.
    void feed(ImGuiIO& io, std::vector<ui::KeyPress>& presses);

private:
    std::deque<Event> events_;
    int keys_held_ = 0;
};

}  // namespace spurwright::app
