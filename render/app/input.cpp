#include "render/app/input.h"

#include <algorithm>
#include <array>

#include <imgui.h>

namespace spurwright::app {
namespace {

namespace key = ui::key;
constexpr int shift_left = 340, ctrl_left = 341, alt_left = 342, shift_right = 344, ctrl_right = 345, alt_right = 346, delete_key = 261, insert = 260,
              end_key = 269, page_up = 266, page_down = 267;

// Keys that go on while they are held: turning, walking. Acts happen once a press.
bool goes_on(int k) {
    return (k >= key::right && k <= key::up) || k == key::tab || k == key::comma || k == key::period || k == key::minus || k == key::equal ||
           k == key::pad_minus || k == key::pad_plus;
}

bool is_modifier(int k) { return k >= shift_left && k <= alt_right + 1; }

}  // namespace

void begin_input(ImGuiIO& io) {
    io.KeyMap[ImGuiKey_Tab] = key::tab;
    io.KeyMap[ImGuiKey_LeftArrow] = key::left;
    io.KeyMap[ImGuiKey_RightArrow] = key::right;
    io.KeyMap[ImGuiKey_UpArrow] = key::up;
    io.KeyMap[ImGuiKey_DownArrow] = key::down;
    io.KeyMap[ImGuiKey_PageUp] = page_up;
    io.KeyMap[ImGuiKey_PageDown] = page_down;
    io.KeyMap[ImGuiKey_Home] = key::home;
    io.KeyMap[ImGuiKey_End] = end_key;
    io.KeyMap[ImGuiKey_Insert] = insert;
    io.KeyMap[ImGuiKey_Delete] = delete_key;
    io.KeyMap[ImGuiKey_Backspace] = key::backspace;
    io.KeyMap[ImGuiKey_Space] = key::space;
    io.KeyMap[ImGuiKey_Enter] = key::enter;
    io.KeyMap[ImGuiKey_KeyPadEnter] = key::pad_enter;
    io.KeyMap[ImGuiKey_Escape] = key::escape;
    for (const int letter : {'A', 'C', 'V', 'X', 'Y', 'Z'}) {
        const int to = letter == 'A'   ? ImGuiKey_A
                       : letter == 'C' ? ImGuiKey_C
                       : letter == 'V' ? ImGuiKey_V
                       : letter == 'X' ? ImGuiKey_X
                       : letter == 'Y' ? ImGuiKey_Y
                                       : ImGuiKey_Z;
        io.KeyMap[to] = letter;
    }
    io.MousePos = {-1e6f, -1e6f};
    io.IniFilename = nullptr;
    io.LogFilename = nullptr;
    io.ConfigFlags |= ImGuiConfigFlags_NavEnableKeyboard;
}

void Input::feed(ImGuiIO& io, std::vector<ui::KeyPress>& presses) {
    presses.clear();
    std::array<bool, 512> key_edge{};
    std::array<bool, 5> button_edge{};
    bool any_button = false, any_key = false;
    while (!events_.empty()) {
        const Event e = events_.front();
        const auto at = static_cast<std::size_t>(std::clamp(e.code, 0, 511));
        switch (e.kind) {
            case Event::Kind::move:
                if (any_button) return;  // what was clicked lies where it was clicked
                io.MousePos = {e.x, e.y};
                break;
            case Event::Kind::button:
                if (any_key || at >= button_edge.size() || button_edge[at]) {
                    if (at >= button_edge.size()) break;
                    return;
                }
                button_edge[at] = any_button = true;
                io.MousePos = {e.x, e.y};
                io.MouseDown[at] = e.down;
                io.KeyCtrl = e.ctrl;
                io.KeyShift = e.shift;
                io.KeyAlt = e.alt;
                break;
            case Event::Kind::wheel:
                io.MouseWheelH += e.x;
                io.MouseWheel += e.y;
                break;
            case Event::Kind::key:
                if (any_button || key_edge[at]) return;
                // A second press in one frame would be no press in order: commands come one a frame.
                if (e.down && !is_modifier(e.code) && any_key) return;
                key_edge[at] = true;
                if (!e.repeat) {
                    if (io.KeysDown[at] != e.down) keys_held_ += e.down ? 1 : -1;
                    io.KeysDown[at] = e.down;
                }
                if (e.code == ctrl_left || e.code == ctrl_right) io.KeyCtrl = e.down;
                if (e.code == shift_left || e.code == shift_right) io.KeyShift = e.down;
                if (e.code == alt_left || e.code == alt_right) io.KeyAlt = e.down;
                if (is_modifier(e.code)) break;
                io.KeyCtrl = e.ctrl;
                io.KeyShift = e.shift;
                io.KeyAlt = e.alt;
                if (e.down && (!e.repeat || goes_on(e.code))) {
                    presses.push_back({e.code, e.ctrl, e.shift, e.alt});
                    any_key = true;
                }
                break;
            case Event::Kind::text: io.AddInputCharacter(static_cast<unsigned>(e.code)); break;
            case Event::Kind::focus:
                io.AddFocusEvent(e.down);
                if (!e.down) {  // keys let go elsewhere never say so here
                    std::fill(std::begin(io.KeysDown), std::end(io.KeysDown), false);
                    std::fill(std::begin(io.MouseDown), std::end(io.MouseDown), false);
                    io.KeyCtrl = io.KeyShift = io.KeyAlt = false;
                    keys_held_ = 0;
                }
                break;
        }
        events_.pop_front();
    }
}

}  // namespace spurwright::app
