#include "render/ui/context.h"

#include "render/ui/ui.h"

namespace spurwright::ui {

void prepare_context() {
    ImGuiIO& io = ImGui::GetIO();
    io.IniFilename = nullptr;
    io.LogFilename = nullptr;
    io.ConfigFlags |= ImGuiConfigFlags_NavEnableKeyboard;
    io.ConfigInputTextCursorBlink = false;
    const auto map = [&](ImGuiKey_ ours, int number) { io.KeyMap[ours] = number; };
    map(ImGuiKey_Tab, key::tab);
    map(ImGuiKey_LeftArrow, key::left);
    map(ImGuiKey_RightArrow, key::right);
    map(ImGuiKey_UpArrow, key::up);
    map(ImGuiKey_DownArrow, key::down);
    map(ImGuiKey_Home, key::home);
    map(ImGuiKey_End, key::end);
    map(ImGuiKey_Delete, key::del);
    map(ImGuiKey_Backspace, key::backspace);
    map(ImGuiKey_Space, key::space);
    map(ImGuiKey_Enter, key::enter);
    map(ImGuiKey_Escape, key::escape);
    map(ImGuiKey_KeyPadEnter, key::pad_enter);
    for (const auto& [ours, letter] : {std::pair{ImGuiKey_A, 'A'},
                                       {ImGuiKey_C, 'C'},
                                       {ImGuiKey_V, 'V'},
                                       {ImGuiKey_X, 'X'},
                                       {ImGuiKey_Y, 'Y'},
                                       {ImGuiKey_Z, 'Z'}})
        map(ours, letter);
}

} // namespace spurwright::ui
